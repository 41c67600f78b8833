import io
from datetime import date

import pytest

from assistant.authoring.outcome_file import read_outcomes
from assistant.authoring.outcomes import Told, record
from tests.knowledge.broken import english

DAY = date(2026, 3, 31)


@pytest.fixture
def kept(begun):
    """A saved conversation: pale underneath, in an oven that its owner knows."""
    return begun(
        danger_now=["none"], which_appliance="electric_oven", any_heat="gets_warm", underside_pale="a_bit_pale"
    )


@pytest.fixture
def said(kept, script, tmp_path):
    """What recording prints, and its exit status."""

    def said(session="aaaa", group="visited", result="mended", found=("base_element_open",)):
        out = io.StringIO()
        told = Told(session, group, result, tuple(found))
        status = record(kept._log, script, english(), told, DAY, tmp_path / "o.jsonl", out)
        return status, out.getvalue()

    return said


def test_one_line_holds_what_was_found_and_the_evidence_as_belief_saw_it(said, kept, script, tmp_path):
    status, text = said()
    assert (status, text) == (0, "Recorded of session aaaaaaaa: mended. Causes found: base_element_open.\n")
    ((found,), bad) = read_outcomes(tmp_path / "o.jsonl")
    assert bad == ()
    told = found.model_dump(mode="json")
    unnamed = {report: told["evidence"].pop(report) for report in [*told["evidence"]] if "danger_now" in report}
    assert set(unnamed.values()) == {"no"}
    assert told == {
        "session": "a" * 32,
        "recorded_on": "2026-03-31",
        "group": "visited",
        "result": "mended",
        "causes_found": ["base_element_open"],
        "evidence": {"any_heat": "gets_warm", "underside_pale": "a_bit_pale"},
        "not_fitted": ["several_lines"],
        "rules_fingerprint": script.knowledge.fingerprint,
    }


def test_a_part_the_oven_has_not_is_recorded(begun, script, tmp_path):
    kept = begun(danger_now=["none"], functions_on_oven=["conventional"])
    told = Told("a", "visited", "no_fault_found", ())
    assert record(kept._log, script, english(), told, DAY, tmp_path / "o.jsonl", io.StringIO()) == 0
    ((found,), _) = read_outcomes(tmp_path / "o.jsonl")
    assert "ring_element" in found.not_fitted


def test_lines_are_only_added_and_something_else_can_be_found(said, tmp_path):
    said(found=["something_else", "base_element_open", "something_else"])
    first = (tmp_path / "o.jsonl").read_text()
    status, text = said(result="back_within_30_days", found=())
    assert status == 0
    assert "isn't counted" in text
    assert (tmp_path / "o.jsonl").read_text().startswith(first)
    outcomes, _ = read_outcomes(tmp_path / "o.jsonl")
    assert [one.causes_found for one in outcomes] == [("something_else", "base_element_open"), ()]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"session": "b"}, "There is no such session."),
        ({"session": ""}, "There is no such session."),
        ({"group": "visits"}, "There is no group “visits”. Use one of: visited, solved_by_phone. Did you mean"),
        ({"result": "fixed"}, "There is no result “fixed”. Use one of: mended, "),
        ({"found": ["base_element"]}, "There is no cause “base_element” in these rules."),
        ({"found": []}, "With “mended” name what was found"),
        ({"result": "no_access"}, "With “no_access” no cause can be said to be found"),
        ({"result": "no_fault_found"}, "With “no_fault_found” no cause"),
    ],
)
def test_what_can_not_be_recorded_is_said_and_nothing_is_written(said, tmp_path, changes, sentence):
    status, text = said(**changes)
    assert status == 1
    assert text.startswith(sentence)
    assert not (tmp_path / "o.jsonl").exists()


def test_a_file_that_can_not_be_written_is_a_sentence(said, tmp_path):
    (tmp_path / "o.jsonl").mkdir()
    assert said() == (1, f"{tmp_path / 'o.jsonl'} can't be written: Is a directory. Nothing was recorded.\n")


def test_a_file_of_another_kind_is_left_as_it_is(said, tmp_path):
    (tmp_path / "o.jsonl").write_text("notes\n")
    status, text = said()
    assert (status, text.endswith("holds something other than outcomes. Nothing was added to it.\n")) == (1, True)
    assert (tmp_path / "o.jsonl").read_text() == "notes\n"

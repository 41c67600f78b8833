import io

import pytest

from assistant.authoring.gathered_outcomes import outcomes_in
from assistant.authoring.outcome_export import export
from assistant.authoring.outcome_file import read_outcomes
from assistant.authoring.outcome_import import import_file
from assistant.authoring.outcome_table import rows_of_table
from assistant.cli import parser
from assistant.store.memory import MemoryStore
from tests.authoring.visited import NOW, event_of, keep_session
from tests.interview.told import told

FIRST, SECOND, THIRD = "a1" * 16, "b2" * 16, "c3" * 16
FORMULA = '=HYPERLINK("http://oven.invalid", "look")'


@pytest.fixture
def log():
    log = MemoryStore()
    keep_session(log, FIRST, told(minutes=5), told(text=FORMULA))
    keep_session(log, SECOND, told(result="no_access", causes_found=(), part_fitted=None, minutes=None, text=""))
    keep_session(log, THIRD)
    return log


@pytest.fixture
def exported(log, knowledge, sentences, tmp_path):
    """What exporting to a file of that name prints, its exit status, and the file."""

    def exported(name):
        out = io.StringIO()
        status = export(log, knowledge, tmp_path / name, sentences.wording, out)
        return status, out.getvalue(), tmp_path / name

    return exported


def test_a_table_holds_the_latest_outcome_of_each_session(exported):
    status, text, file = exported("o.csv")
    assert (status, text) == (0, f"2 outcomes are in {file}.\n")
    first, second = rows_of_table(file.read_bytes())
    assert first.cells == {
        "session": FIRST,
        "group": "visited",
        "result": "mended",
        "cause_found": "base_element_open",
        "second_cause": "",
        "part_fitted": "base_element",
        "minutes": "40",
        "note": FORMULA,
    }
    assert (second.cells["session"], second.cells["result"], second.cells["minutes"]) == (SECOND, "no_access", "")


def test_no_cell_of_a_table_begins_as_a_formula(exported):
    text = exported("o.csv")[2].read_text("utf-8-sig")
    assert "\"'=HYPERLINK" in text
    assert '"=' not in text


def test_a_table_is_for_its_owner_alone(exported):
    assert exported("o.csv")[2].stat().st_mode & 0o077 == 0


def test_importing_what_was_exported_changes_nothing(exported, log, knowledge, sentences):
    file, out = exported("o.csv")[2], io.StringIO()
    assert import_file(file, log, knowledge, sentences.wording, NOW, out, dry=False) == 0
    assert out.getvalue() == "0 outcomes were recorded; 2 were recorded before and stay as they are.\n"


def test_an_erased_note_is_in_no_table_and_does_not_come_back(exported, log, knowledge, sentences):
    before = exported("before.csv")[2]
    log.erase_text(FIRST)
    after = exported("after.csv")[2]
    assert b"HYPERLINK" not in after.read_bytes()
    for file in (before, after):
        import_file(file, log, knowledge, sentences.wording, NOW, io.StringIO(), dry=False)
    assert log.read(FIRST)[-1].happening == told(text=None)


def test_lines_hold_the_evidence_and_no_note(exported, log, knowledge):
    status, text, file = exported("o.JSONL")
    assert (status, text) == (0, f"2 outcomes are in {file}.\n")
    assert read_outcomes(file) == (tuple(outcomes_in(log, knowledge)), ())
    assert b"HYPERLINK" not in file.read_bytes()


@pytest.mark.parametrize("name", ["o.txt", "o", "csv"])
def test_another_kind_of_file_is_a_sentence(exported, name):
    status, text, file = exported(name)
    assert (status, file.exists()) == (1, False)
    assert text == f"{file} should end in .csv (a table) or .jsonl (lines to learn from).\n"


def test_what_can_not_be_written_is_a_sentence_and_leaves_nothing_behind(exported, tmp_path):
    (tmp_path / "o.csv").mkdir()
    status, text, file = exported("o.csv")
    assert (status, text) == (1, f"{file} can't be written: Is a directory.\n")
    assert [each.name for each in tmp_path.iterdir()] == ["o.csv"]
    assert exported("gone/o.csv")[0] == 1


def test_a_link_goes_on_leading_to_the_table(exported, tmp_path):
    (tmp_path / "o.csv").symlink_to(tmp_path / "kept.csv")
    assert exported("o.csv")[0] == 0
    assert (tmp_path / "o.csv").is_symlink()
    assert len(list(rows_of_table((tmp_path / "kept.csv").read_bytes()))) == 2


def test_without_a_file_the_table_and_nothing_else_is_written_out(log, knowledge, sentences):
    here, piped = io.StringIO(), io.BytesIO()
    assert export(log, knowledge, None, sentences.wording, here) == 0
    assert [row.cells["session"] for row in rows_of_table(here.getvalue().encode())] == [FIRST, SECOND]
    out = io.TextIOWrapper(piped, "ascii", newline="\r\n")
    assert export(log, knowledge, None, sentences.wording, out) == 0
    assert piped.getvalue() == here.getvalue().encode()


def test_a_dash_is_no_file_for_any_command_that_writes_one(tmp_path):
    for words in (["outcomes", "export"], ["summary", "a1a1"]):
        assert parser().parse_args([*words, "--to", "-"]).to is None
        assert str(parser().parse_args([*words, "--to", str(tmp_path)]).to) == str(tmp_path)


def test_the_latest_is_the_one_behind_the_others_whatever_the_clock_said(exported, log):
    log.append(THIRD, 2, [event_of(THIRD, 3, told(minutes=1), NOW)])
    log.append(THIRD, 3, [event_of(THIRD, 4, told(minutes=2), NOW.replace(year=2025))])
    rows = {row.cells["session"]: row.cells["minutes"] for row in rows_of_table(exported("o.csv")[2].read_bytes())}
    assert rows[THIRD] == "2"

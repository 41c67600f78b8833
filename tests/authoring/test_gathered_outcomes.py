import io
from datetime import timedelta

import pytest

from assistant.authoring.gathered_outcomes import gather, merged, outcomes_in
from assistant.belief.outcomes import latest_of_each_session
from assistant.interview.assess import assess
from assistant.interview.events import QuestionAnswered
from assistant.interview.state import fold
from assistant.store.memory import MemoryStore
from tests.authoring.visited import NOW, event_of, keep_session
from tests.belief.outcomes import add_to_file, outcome
from tests.interview.told import told

FIRST = "a1" * 16


@pytest.fixture
def log():
    return MemoryStore()


def test_an_outcome_holds_the_answers_as_belief_saw_them(log, script, knowledge):
    keep_session(log, FIRST, QuestionAnswered(question_id="any_heat", value="gets_warm"), told())
    (found,) = outcomes_in(log, knowledge)
    seen = assess(script, fold(log.read(FIRST)))
    assert found.evidence == seen.evidence == {"any_heat": "gets_warm", "underside_pale": "a_bit_pale"}
    assert (found.not_fitted, set(found.not_fitted)) == (("several_lines",), set(seen.not_fitted))
    assert (found.session, found.recorded_on, found.group) == (FIRST, NOW.date(), "visited")
    assert (found.result, found.causes_found) == ("mended", ("base_element_open",))
    assert found.rules_fingerprint == knowledge.fingerprint


def test_what_was_answered_after_the_visit_is_no_evidence(log, knowledge):
    well = QuestionAnswered(question_id="underside_pale", value="browned")
    keep_session(log, FIRST, told(), well, told(minutes=50))
    (found,) = outcomes_in(log, knowledge)
    assert found.evidence == {"underside_pale": "a_bit_pale"}


def test_of_several_outcomes_of_a_session_the_last_one_counts(log, knowledge):
    keep_session(log, FIRST, told(), told(result="back_within_30_days", causes_found=()))
    (found,) = outcomes_in(log, knowledge)
    assert (found.result, found.counts) == ("back_within_30_days", False)


def test_sessions_without_an_outcome_and_erased_ones_are_not_there(log, knowledge):
    keep_session(log, FIRST, told())
    keep_session(log, "b2" * 16)
    assert len(list(outcomes_in(log, knowledge))) == 1
    log.erase(FIRST)
    assert list(outcomes_in(log, knowledge)) == []


def test_without_evidence_the_rest_is_the_same(log, knowledge):
    keep_session(log, FIRST, told())
    (with_it,), (without,) = outcomes_in(log, knowledge), outcomes_in(log, knowledge, with_evidence=False)
    assert without == with_it.model_copy(update={"evidence": {}, "not_fitted": ()})


@pytest.mark.parametrize(
    ("in_file", "in_log", "counted"),
    [
        ("2026-03-30", "2026-03-31", "log"),
        ("2026-04-01", "2026-03-31", "file"),
        ("2026-03-31", "2026-03-31", "log"),
    ],
)
def test_a_session_in_both_counts_once_by_the_later_day_and_on_one_day_by_the_log(in_file, in_log, counted):
    of_file = outcome(1, recorded_on=in_file, causes_found=("worn_seal",))
    of_log = outcome(1, recorded_on=in_log, group="solved_by_phone")
    assert merged([of_file], [of_log]) == ((of_log if counted == "log" else of_file),)


def test_within_the_file_a_later_line_counts_whatever_its_day():
    early, late = outcome(1, recorded_on="2026-01-01"), outcome(1, recorded_on="2026-02-02", result="cancelled")
    assert merged([late, early], []) == latest_of_each_session([late, early]) == (early,)


def test_all_stand_in_the_order_of_their_days():
    days = ["2026-03-03", "2026-01-01", "2026-02-02"]
    found = merged(
        [outcome(number, recorded_on=day) for number, day in enumerate(days)], [outcome(9, recorded_on="2026-01-15")]
    )
    assert [one.recorded_on.isoformat() for one in found] == ["2026-01-01", "2026-01-15", "2026-02-02", "2026-03-03"]


def test_file_and_log_are_gathered_and_bad_lines_named(log, knowledge, sentences, tmp_path):
    keep_session(log, FIRST)
    log.append(FIRST, 2, [event_of(FIRST, 3, told(), NOW + timedelta(days=1))])
    add_to_file(tmp_path / "o.jsonl", outcome(1))
    with (tmp_path / "o.jsonl").open("a") as lines:
        lines.write("oh\n")
    out = io.StringIO()
    found = gather(log, knowledge, tmp_path / "o.jsonl", sentences.wording, out)
    assert [one.session for one in found] == [outcome(1).session, FIRST]
    assert out.getvalue() == "Line 2 is left out: it isn't JSON.\n"
    assert gather(log, knowledge, None, sentences.wording, out)[0].session == FIRST

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from assistant.belief.outcomes import RESULTS
from assistant.errors import Refused, SessionUnknown
from assistant.interview.assess import assess
from assistant.interview.commands import GiveAnswer, RecordOutcome, Start
from assistant.interview.conversation import Conversation
from assistant.interview.events import OutcomeRecorded, SessionStarted
from assistant.interview.log import SessionRecord
from assistant.interview.state import State, fold
from assistant.interview.view import look
from assistant.interview.visit_outcome import (
    is_same,
    misfits_of,
    outcome_event,
    read_outcome,
    record_outcome,
)
from assistant.store.memory import MemoryStore
from tests.belief.outcomes import outcome
from tests.interview.told import told

NOW = datetime(2026, 3, 31, 15, 0, tzinfo=UTC)
MENDED = RecordOutcome(result="mended", cause_found="base_element_open")
ANSWERS = {
    "danger_now": ["none"],
    "which_appliance": "electric_oven",
    "any_heat": "gets_warm",
    "underside_pale": "a_bit_pale",
}


def wrong(knowledge, **changes):
    return [(each.where, each.code, each.nearest) for each in misfits_of(knowledge, replace(MENDED, **changes))]


def test_what_was_told_becomes_an_event_with_names_as_the_rules_spell_them(knowledge):
    command = RecordOutcome(
        result=" Not worth  mending",
        cause_found="Base element-open",
        second_cause="cold_start",
        part_fitted="base element",
        minutes=" 45 ",
        note="  hums\r\nloudly\x1b ",
    )
    known = replace(command, second_cause=next(c for c, cause in knowledge.causes.items() if cause.kind == "habit"))
    assert read_outcome(knowledge, known) == OutcomeRecorded(
        group="visited",
        result="not_worth_mending",
        causes_found=("base_element_open", known.second_cause),
        part_fitted="base_element",
        minutes=45,
        text="hums\nloudly\N{REPLACEMENT CHARACTER}",
    )


def test_what_was_not_told_is_none(knowledge):
    assert read_outcome(knowledge, RecordOutcome(result="no_access")) == OutcomeRecorded(
        group="visited", result="no_access", causes_found=(), part_fitted=None, minutes=None, text=""
    )


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        ({"result": ""}, [("result", "result_needed", None)]),
        ({"result": "mendet"}, [("result", "result_unknown", "mended")]),
        ({"group": "visit"}, [("group", "group_unknown", "visited")]),
        ({"cause_found": "base_element"}, [("cause_found", "cause_unknown", "base_element_open")]),
        ({"second_cause": "base_element_opn"}, [("second_cause", "cause_unknown", "base_element_open")]),
        ({"part_fitted": "base_elemnt"}, [("part_fitted", "part_unknown", "base_element")]),
        ({"cause_found": ""}, [("cause_found", "causes_needed", None)]),
        ({"result": "no_fault_found"}, [("cause_found", "no_causes_wanted", None)]),
        ({"result": "not_fixed"}, [("cause_found", "no_causes_wanted", None)]),
        ({"result": "no_access"}, [("cause_found", "no_causes_wanted", None)]),
        (
            {"result": "no_access", "cause_found": "", "part_fitted": "knob"},
            [("part_fitted", "part_without_visit", None)],
        ),
        ({"cause_found": "", "second_cause": "base_element_open"}, [("second_cause", "second_without_first", None)]),
        ({"second_cause": "base_element_open"}, [("second_cause", "same_cause_twice", None)]),
        ({"cause_found": "shelf_position", "second_cause": "cold_start_habit"}, [("second_cause", "two_habits", None)]),
        ({"minutes": "0"}, [("minutes", "minutes_wrong", None)]),
        ({"minutes": "1441"}, [("minutes", "minutes_wrong", None)]),
        ({"minutes": "4e1"}, [("minutes", "minutes_wrong", None)]),
        ({"minutes": "٤٥"}, [("minutes", "minutes_wrong", None)]),
        ({"minutes": "9" * 5000}, [("minutes", "minutes_wrong", None)]),
        ({"note": "x" * 2001}, [("note", "note_too_long", None)]),
        ({"note": "card 4111 1111 1111 1111"}, [("note", "note_holds_card_number", None)]),
        (
            {"result": "x", "part_fitted": "zz", "minutes": "z"},
            [
                ("result", "result_unknown", None),
                ("part_fitted", "part_unknown", None),
                ("minutes", "minutes_wrong", None),
            ],
        ),
    ],
)
def test_all_that_can_not_be_is_named_by_its_place(knowledge, changes, found):
    habits = [cause for cause, entry in knowledge.causes.items() if entry.kind == "habit"]
    names = dict(zip(("shelf_position", "cold_start_habit"), habits, strict=False))
    assert wrong(knowledge, **{key: names.get(value, value) for key, value in changes.items()}) == found


def test_something_else_may_be_found_with_a_habit(knowledge):
    habit = next(cause for cause, entry in knowledge.causes.items() if entry.kind == "habit")
    assert wrong(knowledge, cause_found="something_else", second_cause=habit) == []


@settings(max_examples=400, deadline=None)
@given(
    some.builds(
        RecordOutcome,
        result=some.sampled_from([*RESULTS, "", "Mended ", "x"]),
        cause_found=some.sampled_from(["", "base_element_open", "something_else", "Base element open", "y"]),
        second_cause=some.sampled_from(["", "", "base_element_open", "ring_element_open"]),
        part_fitted=some.sampled_from(["", "knob"]),
        minutes=some.sampled_from(["", "1", "1440", "-1"]),
        note=some.text(max_size=30),
        group=some.sampled_from(["", "solved_by_phone"]),
    )
)
def test_whatever_is_told_is_refused_or_is_an_outcome_that_can_be_learned_from(knowledge, command):
    misfits = misfits_of(knowledge, command)
    happening = read_outcome(knowledge, command)
    if misfits:
        assert happening == misfits
        return
    learned_from = {"result": happening.result, "group": happening.group, "causes_found": happening.causes_found}
    assert outcome(**learned_from).causes_found == happening.causes_found
    assert read_outcome(knowledge, as_told(happening)) == happening


def as_told(happening):
    first, second, *_ = (*happening.causes_found, "", "")
    minutes = "" if happening.minutes is None else str(happening.minutes)
    part, note = happening.part_fitted or "", happening.text
    return RecordOutcome(happening.result, first, second, part, minutes, note, happening.group)


def test_what_can_not_be_is_refused_by_its_first_misfit_and_not_recorded(begun, knowledge):
    log = begun(**ANSWERS)._log
    before = log.read("a" * 32)
    with pytest.raises(Refused, match="result_unknown"):
        record_outcome(log, knowledge, "a" * 32, replace(MENDED, result="mendet", minutes="soon"), NOW)
    assert log.read("a" * 32) == before


def test_the_event_is_told_by_an_engineer_and_comes_after_all_others(begun, knowledge):
    kept = begun(**ANSWERS)
    before = kept._log.read("a" * 32)
    happening = record_outcome(kept._log, knowledge, "a" * 32, MENDED, NOW)
    *same, added = kept._log.read("a" * 32)
    assert tuple(same) == before
    assert (added.happening, added.role, added.actor) == (happening, "engineer", "engineer")
    assert (added.sequence, added.recorded_at) == (len(before) + 1, NOW)
    assert added.rules_fingerprint == knowledge.fingerprint


def test_a_session_that_is_not_there_is_unknown(begun, knowledge):
    with pytest.raises(SessionUnknown):
        record_outcome(begun()._log, knowledge, "b" * 32, MENDED, NOW)


def test_the_view_stays_what_it_was_and_the_session_goes_on(begun, script, knowledge):
    kept = begun(**ANSWERS)
    before = kept.view()
    record_outcome(kept._log, knowledge, "a" * 32, MENDED, NOW)
    resumed = Conversation.resume(script, kept._log, kept.record)
    assert resumed.view() == before
    assert resumed.state.role == "householder"
    resumed.do(GiveAnswer("any_heat", "stays_cold"))
    kept.refresh()
    assert kept.state.answers["any_heat"].value == "stays_cold"
    assert len(kept.state.outcomes) == 1


@settings(max_examples=40, deadline=None)
@given(places=some.lists(some.integers(0, 20), max_size=4))
def test_outcomes_anywhere_among_the_events_change_nothing_else(begun_once, script, knowledge, places):
    """Folded one by one as well as all at once; the later ones stand after the earlier ones."""
    plain = list(begun_once)
    happenings = [event.happening for event in plain]
    outcomes = [told(minutes=number + 1) for number in range(len(places))]
    for place, each in zip(places, outcomes, strict=True):
        happenings.insert(min(place, len(happenings) - 1) + 1, each)
    numbered = [
        replace(plain[0], sequence=number, event_id=str(number), happening=happening)
        for number, happening in enumerate(happenings, 1)
    ]
    state, without = fold(numbered), fold(_numbered_without(numbered))
    assert sorted(each.minutes for each in state.outcomes) == [each.minutes for each in outcomes]
    assert state.outcomes == tuple(each for each in happenings if isinstance(each, OutcomeRecorded))
    assert replace(state, outcomes=(), sequence=0) == replace(without, sequence=0)
    assert state.sequence == len(numbered)
    step = State()
    for event in numbered:
        step = fold([event], step)
    assert step == state
    assert look(script, assess(script, state)) == look(script, assess(script, without))


def _numbered_without(events):
    return [event for event in events if not isinstance(event.happening, OutcomeRecorded)]


@pytest.fixture(scope="module")
def begun_once(script):
    """The events of one conversation."""
    record = SessionRecord(session_id="a" * 32, code_hash="b" * 64, name=None, created_at=NOW)
    conversation = Conversation(script, MemoryStore(), record, clock=lambda: NOW)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"))
    for question_id, value in ANSWERS.items():
        conversation.do(GiveAnswer(question_id, value))
    events = conversation._log.read("a" * 32)
    assert isinstance(events[0].happening, SessionStarted)
    return events


def test_the_same_is_told_twice_only_where_all_of_it_is_the_same():
    assert is_same(told(), told())
    for changes in ({"result": "advised"}, {"causes_found": ()}, {"part_fitted": None}, {"minutes": 41}, {"text": ""}):
        assert not is_same(told(), told(**changes))


def test_a_note_that_was_erased_is_like_any_other():
    assert is_same(told(text=None), told(text="it hummed"))
    assert not is_same(told(text=""), told(text="it hummed"))
    assert not is_same(told(text=None, minutes=1), told())


def test_an_event_of_its_own_has_an_id_of_its_own(knowledge):
    first, second = (outcome_event(knowledge, "a" * 32, 2, told(), NOW) for _ in range(2))
    assert first.event_id != second.event_id

"""What came of a session, on the engineer's page once it was told."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from assistant.interview.events import OutcomeRecorded
from assistant.interview.script import Script
from assistant.interview.visit_outcome import outcome_event
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.household import household_summary
from assistant.reports.summary.session import Told
from assistant.wording.languages import Languages
from assistant.wording.pseudo import PSEUDO_LANG
from assistant.wording.sentences import Sentences
from tests.interview.told import told as outcome_told
from tests.reports.summary.hostile import HOSTILE
from tests.reports.summary.test_marked_language import plain_words
from tests.reports.summary.told_cases import names, pairs, section, told_with

WINTER = datetime(2026, 1, 15, 16, 45, tzinfo=UTC)


@pytest.fixture(scope="module")
def base_dead(script: Script, sentences: Sentences) -> Told:
    return told_with(script, sentences, {"what_goes_wrong": ["pale_below"], "underside_pale": "white_or_raw"})


def with_outcomes(told: Told, *outcomes: OutcomeRecorded) -> Told:
    """An hour apart."""
    events = list(told.events)
    for number, each in enumerate(outcomes):
        moment = WINTER + timedelta(hours=number)
        events.append(outcome_event(told.script.knowledge, "b2c4" * 8, len(events) + 1, each, moment))
    return replace(told, events=tuple(events))


def rows(told: Told) -> dict[str, str]:
    return pairs(section(engineer_summary(told), "outcome"))


def test_all_that_was_told_stands_there(base_dead: Told) -> None:
    assert rows(with_outcomes(base_dead, outcome_told())) == {
        "How it ended": "mended, it works again",
        "What it really was": base_dead.cause("base_element_open"),
        "Part fitted": base_dead.part("base_element"),
        "Minutes at the oven": "40",
        "Note": "it hummed",
        "Told": "2026-01-15 16:45 GMT",
    }


def test_it_stands_after_danger_and_only_for_the_engineer(base_dead: Told) -> None:
    ended = with_outcomes(base_dead, outcome_told())
    assert names(engineer_summary(ended))[0][:2] == ["off", "outcome"]
    for without in (household_summary(ended), engineer_summary(base_dead)):
        assert not any("outcome" in page for page in names(without))


def test_nothing_else_of_the_summary_changes(base_dead: Told) -> None:
    before, after = engineer_summary(base_dead), engineer_summary(with_outcomes(base_dead, outcome_told()))
    others = [tuple(each for each in page.sections if each.name != "outcome") for page in after.pages]
    assert others == [page.sections for page in before.pages]
    assert after.facts == before.facts


def test_what_was_not_told_has_no_row(base_dead: Told) -> None:
    short = outcome_told(result="no_fault_found", causes_found=(), part_fitted=None, minutes=None, text="")
    assert list(rows(with_outcomes(base_dead, short))) == ["How it ended", "Told"]


def test_the_latest_one_counts_and_the_others_are_told_in_short(base_dead: Told) -> None:
    nobody = outcome_told(result="no_access", causes_found=(), part_fitted=None, minutes=None, text="")
    first = outcome_told(causes_found=("base_element_open", "something_else"))
    found = rows(with_outcomes(base_dead, nobody, first, outcome_told(result="back_within_30_days", causes_found=())))
    assert found["How it ended"].startswith("back within 30 days")
    assert "What it really was" not in found
    both = f"{base_dead.cause('base_element_open')}; none of the named causes"
    assert found["Told before that"] == (
        "2026-01-15 16:45 GMT: no access, nobody could look at it; "
        f"2026-01-15 17:45 GMT: mended, it works again ({both})"
    )


def test_an_erased_note_says_so(base_dead: Told) -> None:
    assert rows(with_outcomes(base_dead, outcome_told(text=None)))["Note"] == "(erased)"


@pytest.mark.parametrize("note", HOSTILE.values(), ids=HOSTILE)
def test_a_note_holds_nothing_that_could_act(base_dead: Told, note: str) -> None:
    found = rows(with_outcomes(base_dead, outcome_told(text=note)))["Note"]
    assert not any(ord(letter) < 32 or letter in "\u202e\u200b" for letter in found)


def test_what_the_rules_no_longer_know_is_named_by_its_id(base_dead: Told) -> None:
    found = rows(with_outcomes(base_dead, outcome_told(causes_found=("gone_cause",), part_fitted="gone_part")))
    assert (found["What it really was"], found["Part fitted"]) == ("gone_cause", "gone_part")


def test_no_plain_english_is_left(base_dead: Told, languages: Languages) -> None:
    marked = replace(base_dead, sentences=languages.sentences(PSEUDO_LANG, "great_britain"))
    others = outcome_told(result="cancelled", causes_found=(), part_fitted=None, minutes=None, text="")
    told = with_outcomes(marked, others, outcome_told(), outcome_told(text=None))
    assert plain_words(engineer_summary(told)) == []

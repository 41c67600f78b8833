"""The household's page: what was found and what to do, and nothing for an engineer's hands."""

import re

import pytest

from assistant.interview.script import Script
from assistant.reports.summary.as_text import as_text
from assistant.reports.summary.household import household_summary
from assistant.wording.sentences import Sentences
from tests.reports.summary.samples import FOOTING
from tests.reports.summary.told_cases import names, paragraphs, section, told_case, told_with

ENDINGS = {
    "base_and_grill_dead": "book_visit",
    "base_dead_in_a_rented_flat": "maker_seller_or_landlord_first",
    "agent_hears_of_burning_plastic_late": "stop_and_isolate",
    "bakers_door_opened_every_five_minutes": "use_differently",
    "agent_unlocks_a_childs_lock": "do_one_thing",
    "always_a_little_uneven_at_the_back": "all_normal",
    "gas_oven": "outside",
}
FOR_ENGINEERS = re.compile(
    r"Ω|\bohms?\b|\bV\b|\bvolts?\b|decibans|\d+\s%|terminal|isolat|continuity|insulation|multimeter|\bscrews\b", re.I
)


@pytest.mark.parametrize("case", ENDINGS)
def test_no_ending_shows_the_household_test_points_readings_or_figures(
    script: Script, sentences: Sentences, case: str
) -> None:
    told = told_case(script, sentences, case)
    assert told.verdict.action == ENDINGS[case]
    summary = household_summary(told)
    assert FOR_ENGINEERS.findall(as_text(summary, FOOTING)) == []
    assert summary.about == sentences.headline(told.verdict)
    assert summary.facts.causes == ()
    assert summary.facts.tests == ()
    assert summary.facts.kit == ()


@pytest.mark.parametrize("case", ENDINGS)
def test_every_ending_says_what_was_found_and_what_to_mind(script: Script, sentences: Sentences, case: str) -> None:
    (page,) = names(household_summary(told_case(script, sentences, case)))
    comes = ENDINGS[case] in ("book_visit", "maker_seller_or_landlord_first", "stop_and_isolate")
    assert page[0] == "found"
    assert ("until_then" in page, "from_now_on" in page) == (comes, not comes)
    assert ("to_hand" in page) == comes


def test_a_stop_lists_its_steps_in_their_order(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"]})
    (steps,) = section(household_summary(told), "steps").blocks
    assert steps.numbered  # type: ignore[union-attr]
    assert steps.items == sentences.verdict(told.verdict).steps  # type: ignore[union-attr]


def test_after_a_stop_nobody_is_sent_back_to_read_the_plate(script: Script, sentences: Sentences) -> None:
    stopped = as_text(household_summary(told_with(script, sentences, {"danger_now": ["shock"]})), FOOTING)
    assert "serial number" not in stopped
    assert "serial number" in as_text(household_summary(told_case(script, sentences, "base_and_grill_dead")), FOOTING)


def test_a_gas_oven_gets_the_line_for_gas_and_no_word_of_electricity(script: Script, sentences: Sentences) -> None:
    summary = household_summary(told_case(script, sentences, "gas_oven"))
    assert "0800 111 999" in paragraphs(section(summary, "from_now_on"))[0]
    assert "fuse box" not in as_text(summary, FOOTING)


def test_food_that_stayed_lukewarm_is_never_called_safe(script: Script, sentences: Sentences) -> None:
    words = paragraphs(section(household_summary(told_case(script, sentences, "base_and_grill_dead")), "until_then"))
    assert any("in doubt, throw it away" in each for each in words)
    assert not any("safe" in each for each in words)


def test_only_what_was_answered_is_read_back(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    assert "not sure" not in as_text(household_summary(told), FOOTING)


def test_a_tenant_in_danger_is_told_to_tell_the_landlord_and_not_to_pay(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "whose_oven": "rented"})
    words = as_text(household_summary(told), FOOTING)
    assert "tell your landlord at once, in writing" in " ".join(words.split())
    assert "costs before you agree" not in words


@pytest.mark.parametrize("case", ["base_dead_in_a_rented_flat", "agent_hears_of_burning_plastic_late"])
def test_whoever_waits_for_somebody_is_told_to_leave_panels_on(script: Script, sentences: Sentences, case: str) -> None:
    words = " ".join(as_text(household_summary(told_case(script, sentences, case)), FOOTING).split())
    assert "take no panel off" in words

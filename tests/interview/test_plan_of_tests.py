"""The engineer's tests, by what each would tell in a minute."""

import pytest

from assistant.interview.assess import assess
from assistant.interview.plan_of_tests import (
    BEFORE_LIVE,
    LEADS,
    LEFT_LIKELY,
    MADE_FIRST,
    MOST_ADDED,
    SHOWS,
    faults_left,
    plan_of_tests,
    shown_by,
)
from assistant.interview.script import Script
from assistant.knowledge.model import Care
from tests.conftest import Begin

LIVE = {"test_supply", "test_relay_output", "test_thermostat_opening", "test_middle_temperature"}

PALE_BELOW = {
    "what_goes_wrong": ["pale_below"],
    "which_appliance": "built_in_knobs",
    "how_it_began": "from_one_day",
    "which_dishes": "everything",
    "underside_pale": "white_or_raw",
    "bottom_heat_alone": "white_or_raw",
    "fan_cooks": "cooks_well",
}


def test_a_dead_base_element_is_measured_before_the_selector(begun: Begin, script: Script) -> None:
    plan = plan_of_tests(script, assess(script, begun(**PALE_BELOW).state))
    assert plan.index("test_base_element") < plan.index("test_selector")


def test_a_heater_that_works_elsewhere_brings_the_selector_into_the_plan(begun: Begin, script: Script) -> None:
    plan = plan_of_tests(script, assess(script, begun(**PALE_BELOW | {"bottom_heat_alone": "browned"}).state))
    assert "test_selector" in plan


def test_what_the_oven_has_not_is_not_tested(begun: Begin, script: Script) -> None:
    answers = {"what_goes_wrong": ["no_heat"], "any_heat": "stays_cold", "how_it_began": "from_one_day"}
    digits = plan_of_tests(script, assess(script, begun(which_appliance="built_in_digits", **answers).state))
    knobs = plan_of_tests(script, assess(script, begun(which_appliance="built_in_knobs", **answers).state))
    assert {"test_thermostat_cold", "test_thermostat_opening"}.isdisjoint(digits)
    assert {"test_sensor", "test_relay_output"}.isdisjoint(knobs)


@pytest.mark.parametrize("role", ["householder", "agent"])
def test_no_test_is_ever_asked_of_somebody_who_is_no_engineer(script: Script, role: str) -> None:
    limit = script.knowledge.roles[role].asked_up_to
    tests = [question for question in script.knowledge.questions.values() if question.stage == "tests"]
    assert len(tests) > 20
    assert {question.care for question in tests} == {Care.ENGINEER}
    assert limit.rank < Care.ENGINEER.rank


def test_no_more_tests_are_named_than_are_planned(begun: Begin, script: Script) -> None:
    unclear = {"what_goes_wrong": ["too_cold_or_slow"], "which_appliance": "built_in_knobs", "any_heat": "gets_warm"}
    plan = plan_of_tests(script, assess(script, begun(**unclear).state))
    most = int(script.knowledge.settings.tests_planned.value) + MOST_ADDED + len(BEFORE_LIVE)
    assert int(script.knowledge.settings.tests_planned.value) <= len(plan) <= most


@pytest.mark.parametrize("told", [{"danger_now": ["shock"]}, {"sign_shock": "tingle"}, {"sign_trips": "went_again"}])
def test_the_earth_is_measured_first_after_a_shock_or_a_trip(
    begun: Begin, script: Script, told: dict[str, object]
) -> None:
    """Common practice: protective earth, then terminals and insulation, before anything else and all of it dead."""
    plan = plan_of_tests(script, assess(script, begun(**PALE_BELOW | told).state))
    assert plan[:2] == ("test_earth", "test_terminals")
    assert "test_insulation" in plan
    assert {"test_thermostat_opening", "test_middle_temperature"}.isdisjoint(plan)


def test_what_needs_the_oven_live_comes_after_what_is_done_dead(begun: Begin, script: Script) -> None:
    """Common practice: live only if it must be, and last."""
    pale = {"what_goes_wrong": ["too_cold_or_slow"], "less_done_than_meant": "much_longer", "fan_cooks": "cooks_weakly"}
    plan = plan_of_tests(script, assess(script, begun(which_appliance="built_in_knobs", **pale).state))
    live = [name in LIVE for name in plan]
    assert {*live} == {False, True}
    assert live == sorted(live)


def test_an_oven_that_stays_cold_is_not_heated_to_measure_it(begun: Begin, script: Script) -> None:
    cold = {"what_goes_wrong": ["no_heat"], "any_heat": "stays_cold", "how_it_began": "from_one_day"}
    plan = plan_of_tests(script, assess(script, begun(which_appliance="built_in_knobs", **cold).state))
    assert plan != ()
    assert {"test_thermostat_opening", "test_middle_temperature"}.isdisjoint(plan)


def test_the_plan_goes_on_to_what_its_own_sound_readings_leave_likeliest(begun: Begin, script: Script) -> None:
    """A sound base element leaves the selector's contact; so that is measured too."""
    assessment = assess(script, begun(**PALE_BELOW).state)
    assert faults_left(script, assessment, ["test_base_element"])[0] == "selector_contact_below"
    assert "test_selector" in plan_of_tests(script, assessment)


def test_after_a_smell_of_burning_the_board_is_looked_at(begun: Begin, script: Script) -> None:
    told = {
        "what_goes_wrong": ["stops_midway"],
        "which_appliance": "built_in_digits",
        "how_it_began": "from_one_day",
        "danger_now": ["burning_smell"],
        "sign_burning_smell": "like_plastic_or_fish",
    }
    assessment = assess(script, begun(**told).state)
    plan = plan_of_tests(script, assessment)
    assert "control_board_failed" in faults_left(script, assessment, [each for each in plan if each != "test_board"])
    assert "test_board" in plan


SESSIONS = [
    PALE_BELOW,
    PALE_BELOW | {"bottom_heat_alone": "browned"},
    {"what_goes_wrong": ["no_heat"], "any_heat": "stays_cold", "which_appliance": "built_in_digits"},
    {"what_goes_wrong": ["no_heat"], "any_heat": "stays_cold", "which_appliance": "built_in_knobs"},
    {"what_goes_wrong": ["too_cold_or_slow"], "which_appliance": "built_in_knobs", "any_heat": "gets_warm"},
    {"what_goes_wrong": ["too_hot"], "which_appliance": "built_in_digits"},
]


@pytest.mark.parametrize("answers", SESSIONS)
def test_a_likely_fault_that_sound_readings_leave_has_a_dead_test_or_the_plan_is_as_long_as_it_may_be(
    begun: Begin, script: Script, answers: dict[str, object]
) -> None:
    assessment = assess(script, begun(**answers).state)
    plan = plan_of_tests(script, assessment)
    questions = script.knowledge.questions
    dead = [q for q, question in questions.items() if question.stage == "tests" and question.made == "dead"]
    for fault in faults_left(script, assessment, [each for each in plan if each in dead]):
        tested = any(shown_by(script, each, fault) > SHOWS for each in plan if each in dead)
        can_be = any(shown_by(script, each, fault) > SHOWS for each in dead if each not in plan)
        long = len(plan) >= int(script.knowledge.settings.tests_planned.value) + MOST_ADDED
        assert tested or not can_be or long, fault


def test_a_fault_that_shows_dead_is_not_left_to_a_test_under_power_alone(begun: Begin, script: Script) -> None:
    """A failed board shows to the eye, dead, and at its outputs, live."""
    told = PALE_BELOW | {
        "what_goes_wrong": ["pale_below", "grill_weak"],
        "which_appliance": "electric_oven",
        "floor_of_oven": "bare",
        "grill_browns": "no_grill_heat",
        "top_pale": "browned",
        "any_heat": "gets_warm",
        "slower_to_heat": "slower",
    }
    plan = plan_of_tests(script, assess(script, begun(**told).state))
    assert shown_by(script, "test_board", "control_board_failed") > SHOWS
    assert shown_by(script, "test_relay_output", "control_board_failed") > SHOWS
    assert "test_relay_output" in plan
    assert plan.index("test_board") < plan.index("test_relay_output")


@pytest.mark.parametrize("answers", SESSIONS)
def test_before_a_test_under_power_earth_and_insulation_are_measured(
    begun: Begin, script: Script, answers: dict[str, object]
) -> None:
    plan = plan_of_tests(script, assess(script, begun(**answers).state))
    under_power = [each for each in plan if script.knowledge.questions[each].made != "dead"]
    if under_power:
        assert all(plan.index(each) < plan.index(under_power[0]) for each in BEFORE_LIVE)


@pytest.mark.parametrize("answers", SESSIONS)
def test_every_plan_begins_with_earth_and_insulation(begun: Begin, script: Script, answers: dict[str, object]) -> None:
    plan = plan_of_tests(script, assess(script, begun(**answers).state))
    first = [each for each in MADE_FIRST if each in plan]
    assert {*BEFORE_LIVE} <= {*first}
    assert list(plan[: len(first)]) == first


def test_a_fault_that_leads_is_tested_directly_before_what_is_easier_to_reach(begun: Begin, script: Script) -> None:
    answers = PALE_BELOW | {"floor_of_oven": "bare", "grill_browns": "browns_well"}
    assessment = assess(script, begun(**answers).state)
    assert assessment.posterior.of("base_element_open") > LEADS
    assert plan_of_tests(script, assessment)[:3] == (*BEFORE_LIVE, "test_base_element")


def test_some_of_these_sessions_are_tested_under_power(begun: Begin, script: Script) -> None:
    plans = [plan_of_tests(script, assess(script, begun(**answers).state)) for answers in SESSIONS]
    under_power = [any(script.knowledge.questions[each].made != "dead" for each in plan) for plan in plans]
    assert {*under_power} == {False, True}


def test_a_fault_that_sound_readings_leave_unlikely_adds_nothing(begun: Begin, script: Script) -> None:
    assessment = assess(script, begun(**PALE_BELOW).state)
    for cause in faults_left(script, assessment, []):
        assert assessment.posterior.of(cause) >= LEFT_LIKELY
        assert script.knowledge.causes[cause].kind == "fault"

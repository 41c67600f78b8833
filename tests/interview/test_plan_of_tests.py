"""The engineer's tests, by what each would tell in a minute."""

import pytest

from assistant.interview.assess import assess
from assistant.interview.plan_of_tests import plan_of_tests
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
    assert len(plan) == int(script.knowledge.settings.tests_planned.value)


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

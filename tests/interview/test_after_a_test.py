"""What each reading of a test would speak for, before the test is made."""

import pytest

from assistant.belief.posterior import posterior
from assistant.interview.after_a_test import Reading, after_a_test
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.verdict import named_causes
from tests.conftest import Begin

PALE = {
    "danger_now": ["none"],
    "what_goes_wrong": ["pale_below"],
    "which_appliance": "built_in_knobs",
    "underside_pale": "white_or_raw",
    "how_it_began": "from_one_day",
    "fan_cooks": "cooks_well",
    "bottom_heat_alone": "white_or_raw",
    "floor_of_oven": "bare",
}
TEST = "test_base_element"


@pytest.fixture
def pale(begun: Begin) -> Assessment:
    return begun(**PALE).assessment


def of_code(readings: tuple[Reading, ...], code: str) -> Reading:
    return next(each for each in readings if each.code == code)


def test_every_reading_of_the_test_is_foreseen_in_the_order_of_the_rules(pale: Assessment, script: Script) -> None:
    for test_id in (TEST, "test_selector", "test_thermostat_opening"):
        codes = [each.code for each in after_a_test(script, pale, test_id)]
        assert codes == list(script.knowledge.questions[test_id].choices)


def test_an_open_element_speaks_for_the_element_and_a_whole_one_for_another_cause(
    pale: Assessment, script: Script
) -> None:
    readings = after_a_test(script, pale, TEST)
    opened, whole = of_code(readings, "open"), of_code(readings, "near_marking")
    assert opened.leading == opened.raised == "base_element_open"
    assert opened.raised_to > opened.raised_from
    assert whole.raised == "selector_contact_below"
    assert whole.leading != "base_element_open"


def test_what_is_likeliest_is_what_belief_says_with_that_reading(pale: Assessment, script: Script) -> None:
    for reading in after_a_test(script, pale, TEST):
        evidence = {**pale.evidence, TEST: reading.code}
        belief = posterior(script.evidence_model, evidence, pale.not_fitted)
        assert (reading.leading, reading.probability) == named_causes(belief)[0]
        assert reading.raised_to == belief.of(reading.raised)
        assert reading.raised_from == pytest.approx(pale.posterior.of(reading.raised), abs=1e-12)


def test_no_named_cause_rises_more_than_the_one_that_is_told(pale: Assessment, script: Script) -> None:
    for reading in after_a_test(script, pale, "test_selector"):
        belief = posterior(script.evidence_model, {**pale.evidence, "test_selector": reading.code}, pale.not_fitted)
        rises = [p - pale.posterior.of(cause) for cause, p in belief.causes()]
        assert reading.raised_to - reading.raised_from == pytest.approx(max(rises), abs=1e-9)


def test_readings_of_tests_made_before_are_taken_as_told(pale: Assessment, script: Script, begun: Begin) -> None:
    made = {TEST: "near_marking"}
    foreseen = after_a_test(script, pale, "test_selector", made)
    told = after_a_test(script, begun(role="engineer", **PALE, **made).assessment, "test_selector")
    assert [each.code for each in foreseen] == [each.code for each in told]
    for one, other in zip(foreseen, told, strict=True):
        assert one.leading == other.leading
        assert one.probability == pytest.approx(other.probability, abs=1e-9)
    assert (
        of_code(foreseen, "one_below_open").probability
        > of_code(after_a_test(script, pale, "test_selector"), "one_below_open").probability
    )


def test_foreseeing_changes_nothing_of_what_is_believed(pale: Assessment, script: Script) -> None:
    before = pale.posterior.causes()
    assert after_a_test(script, pale, TEST) == after_a_test(script, pale, TEST)
    assert pale.posterior.causes() == before
    assert TEST not in pale.evidence

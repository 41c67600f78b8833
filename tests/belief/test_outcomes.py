import pytest
from pydantic import ValidationError

from assistant.belief.outcomes import FOUND_NOTHING, FOUND_SOMETHING, RESULTS, Outcome, latest_of_each_session
from tests.belief.outcomes import outcome


@pytest.mark.parametrize("result", ["no_access", "not_fixed", "cancelled", "back_within_30_days"])
def test_what_shows_nothing_counts_neither_as_found_nor_as_not_found(result):
    assert not outcome(result=result).counts
    with pytest.raises(ValidationError, match="don't go together"):
        outcome(result=result, causes_found=("weak_element",))


@pytest.mark.parametrize("result", sorted(FOUND_SOMETHING))
def test_what_was_found_is_named(result):
    assert outcome(result=result).counts
    with pytest.raises(ValidationError, match="don't go together"):
        outcome(result=result, causes_found=())


def test_nothing_wrong_counts_and_names_no_cause():
    assert outcome(result="no_fault_found").counts
    with pytest.raises(ValidationError, match="don't go together"):
        outcome(result="no_fault_found", causes_found=("weak_element",))
    assert set(RESULTS) > FOUND_NOTHING | FOUND_SOMETHING


def test_a_later_line_of_a_session_replaces_the_earlier_one_and_stands_later():
    first, second = outcome(1), outcome(2)
    back = outcome(1, result="back_within_30_days")
    assert latest_of_each_session([first, second, back]) == (second, back)
    again = outcome(1, causes_found=("worn_seal",))
    assert latest_of_each_session([first, back, second, again]) == (second, again)


def test_a_cause_that_the_rules_do_not_have_is_something_else():
    found = outcome(causes_found=("weak_element", "gone_since"))
    assert found.known_causes(["weak_element", "worn_seal"]) == {"weak_element", "something_else"}


@pytest.mark.parametrize(
    "changes",
    [
        {"session": "a name"},
        {"group": "unknown"},
        {"result": "part_fitted"},
        {"causes_found": ("Free text, with a name",)},
        {"evidence": {"question": "said in own words"}},
        {"recorded_on": "yesterday"},
        {"rules_fingerprint": ""},
        {"told_by": "somebody"},
    ],
)
def test_nothing_but_ids_and_closed_lists_fits_into_an_outcome(changes):
    with pytest.raises(ValidationError):
        outcome(**changes)


def test_an_outcome_is_read_back_from_its_line():
    written = outcome(evidence={"browning_seen": "hardly"}, not_fitted=("seal",))
    assert Outcome.model_validate_json(written.model_dump_json()) == written

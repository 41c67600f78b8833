import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.knowledge.likelihoods import WORD_SCALING, NotADistribution, share_of, shares
from assistant.knowledge.model import Figure


def percent(value):
    return Figure(value=value, unit="percent", source="a test")


WORDS = {
    "almost always": percent(95),
    "often": percent(75),
    "sometimes": percent(30),
    "seldom": percent(10),
    "almost never": percent(2),
}


def refusal(distribution):
    with pytest.raises(NotADistribution) as caught:
        shares(distribution, tuple(distribution), WORDS)
    return caught.value.code, round(caught.value.total, 6)


def test_figures_that_add_up_stay_as_they_are():
    assert shares({"a": percent(70), "b": percent(30)}, ("a", "b"), WORDS) == pytest.approx((0.7, 0.3))


def test_shares_stand_in_the_order_of_the_states():
    assert shares({"b": percent(30), "a": percent(70)}, ("a", "b"), WORDS) == pytest.approx((0.7, 0.3))


def test_words_alone_are_scaled_to_the_whole():
    found = shares({"a": "often", "b": "sometimes"}, ("a", "b"), WORDS)
    assert found == pytest.approx((75 / 105, 30 / 105))


def test_words_fill_what_figures_leave():
    found = shares({"a": percent(58), "b": "sometimes", "c": "seldom"}, ("a", "b", "c"), WORDS)
    assert found == pytest.approx((0.58, 0.42 * 30 / 40, 0.42 * 10 / 40))


def test_rest_takes_what_is_left_and_words_beside_it_are_not_scaled():
    assert shares({"a": "often", "b": "rest"}, ("a", "b"), WORDS) == pytest.approx((0.75, 0.25))


@pytest.mark.parametrize(
    ("distribution", "code", "total"),
    [
        ({"a": percent(70), "b": percent(29.9)}, "sum_not_one", 99.9),
        ({"a": percent(70), "b": percent(31)}, "sum_not_one", 101),
        ({"a": percent(100), "b": percent(0)}, "never_impossible", 100),
        ({"a": percent(0), "b": "rest"}, "never_impossible", 0),
        ({"a": "rest", "b": "rest"}, "rest_twice", 0),
        ({"a": percent(100), "b": "rest"}, "nothing_left", 100),
        ({"a": "often", "b": "often", "c": "rest"}, "nothing_left", 150),
        ({"a": "almost always", "b": "often"}, "words_far_from_whole", 170),
        ({"a": "seldom", "b": "seldom"}, "words_far_from_whole", 20),
        ({"a": percent(100), "b": "seldom"}, "words_far_from_whole", 110),
    ],
)
def test_what_is_no_distribution_is_refused_with_its_total(distribution, code, total):
    assert refusal(distribution) == (code, total)


@pytest.mark.parametrize(("left", "fits"), [(8, True), (7.9, False), (12.5, True), (12.6, False)])
def test_words_are_scaled_by_a_fifth_down_or_a_quarter_up_at_most(left, fits):
    distribution = {"a": percent(100 - left), "b": "seldom"}
    assert WORD_SCALING == (0.8, 1.25)
    if fits:
        assert shares(distribution, ("a", "b"), WORDS)[1] == pytest.approx(left / 100)
    else:
        assert refusal(distribution)[0] == "words_far_from_whole"


def test_rest_has_no_share_of_its_own():
    with pytest.raises(KeyError):
        share_of("rest", WORDS)


@pytest.mark.parametrize(("likelihood", "share"), [("seldom", 0.1), (percent(40), 0.4)])
def test_a_likelihood_alone_is_a_share_of_one(likelihood, share):
    assert share_of(likelihood, WORDS) == pytest.approx(share)


LIKELIHOODS = some.one_of(
    some.sampled_from([*WORDS, "rest"]),
    some.floats(0, 100).map(lambda value: percent(value)),
)


@given(some.lists(LIKELIHOODS, min_size=2, max_size=6))
def test_whatever_is_accepted_sums_to_one_and_holds_nothing_impossible(likelihoods):
    distribution = {f"s{number}": likelihood for number, likelihood in enumerate(likelihoods)}
    try:
        found = shares(distribution, tuple(distribution), WORDS)
    except NotADistribution:
        return
    assert sum(found) == pytest.approx(1, abs=1e-12)
    assert min(found) > 0


@given(some.lists(some.integers(1, 50), min_size=2, max_size=6))
def test_figures_in_proportion_are_always_accepted(parts):
    distribution = {f"s{number}": percent(100 * part / sum(parts)) for number, part in enumerate(parts)}
    found = shares(distribution, tuple(distribution), WORDS)
    assert found == pytest.approx([part / sum(parts) for part in parts])

"""Several measurements of one oven weighed as one, against normal densities of scipy."""

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from assistant.belief.synthetic import (
    BROADER,
    MODEL_WRONG,
    MOST_DECIBANS,
    SHRUNK,
    Compared,
    Features,
    broad,
    combined,
    jackknife_error,
    left_out,
    own,
    subsets,
)
from tests.belief.weighing import weighed

DRAWS = 400
NOISE = 0.5
BREADTH = 0.4


def measurement(values, told, pattern=0):
    """Of K behaviours whose features (K, D, F) were simulated, with one pattern only."""
    return Compared(
        Features(np.zeros(values.shape[:2], dtype=np.int_), values),
        Features(np.array(pattern), np.array(told)),
        np.full(values.shape[-1], NOISE),
        patterns=1,
    )


@pytest.fixture
def two():
    """Two measurements of the same ovens, which show nearly the same feature twice: of two behaviours, 3 apart."""
    chance = np.random.default_rng(7)
    ovens = chance.normal(0, 1, (2, DRAWS, 1)) + np.array([0.0, 3.0])[:, None, None]
    return [measurement(ovens + chance.normal(0, 0.1, ovens.shape), [told]) for told in (2.6, 2.7)]


def test_one_measurement_is_a_normal_density_with_shrunken_covariance():
    """The density by scipy.stats.multivariate_normal."""
    chance = np.random.default_rng(3)
    values = chance.multivariate_normal([1, 2], [[1.0, 0.6], [0.6, 2.0]], (1, DRAWS))
    found = own([measurement(values, [1.5, 1.0])])
    spread = np.cov(values[0].T)
    shrunk = (1 - SHRUNK) * spread + SHRUNK * np.diag(np.diag(spread)) + NOISE * np.eye(2)
    counted = np.log((DRAWS + 0.5) / (DRAWS + 0.5))
    expected = counted + multivariate_normal(values[0].mean(axis=0), shrunk).logpdf([1.5, 1.0])
    assert found[0] == pytest.approx(expected, abs=1e-6)


def test_the_broad_part_is_as_wide_as_all_behaviours_and_wider(two):
    values = two[0].simulated.values.ravel()
    expected = multivariate_normal(values.mean(), BROADER * values.var(ddof=1) + NOISE).logpdf(2.6)
    assert broad(two[0]) == pytest.approx(expected, abs=1e-6)


def test_what_two_measurements_tell_alike_counts_less_than_twice(two):
    apart = [np.diff(weighed([each], BREADTH).log_likelihood)[0] for each in two]
    together = np.diff(weighed(two, BREADTH).log_likelihood)[0]
    assert max(apart) < together < 0.8 * sum(apart)


def test_two_measurements_of_different_things_count_both():
    chance = np.random.default_rng(8)
    shift = np.array([0.0, 1.0])[:, None, None]
    two = [measurement(chance.normal(0, 1, (2, DRAWS, 1)) + shift, [1.0]) for _ in range(2)]
    apart = [np.diff(own([each]))[0] for each in two]
    assert np.diff(own(two))[0] == pytest.approx(sum(apart), rel=0.25)


def test_one_measurement_that_fits_nothing_leaves_the_other_its_voice(two):
    lost = Compared(two[1].simulated, Features(np.array(0), np.array([60.0])), two[1].noise, 1)
    alone = np.diff(weighed(two[:1], BREADTH).log_likelihood)[0]
    assert np.diff(weighed([two[0], lost], BREADTH).log_likelihood)[0] == pytest.approx(alone, rel=0.1)


def test_all_ways_to_be_wrong_are_mixed_by_their_shares():
    """By hand: nothing right, the first right, the second right, both right."""
    own_of = [np.zeros(()), np.log([0.2, 0.1]), np.log([0.3, 0.3]), np.log([0.05, 0.02])]
    found = combined(own_of, [np.log(0.04), np.log(0.05)], BREADTH)
    q, r = MODEL_WRONG, 1 - MODEL_WRONG
    expected = [
        q * q * 0.04 * 0.05 + r * q * first * 0.05 + q * r * 0.3 * 0.04 + r * r * both
        for first, both in ((0.2, 0.05), (0.1, 0.02))
    ]
    np.testing.assert_allclose(np.exp(found.log_likelihood), expected, rtol=1e-9)
    unnamed = (1 - BREADTH) * np.mean(expected) + BREADTH * 0.04 * 0.05
    assert np.exp(found.unnamed) == pytest.approx(unnamed)


def test_subsets_go_from_none_to_all():
    assert subsets("ab") == ((), ("a",), ("b",), ("a", "b"))


def _decibans_apart(found):
    everything = [*found.log_likelihood, found.unnamed]
    return np.ptp(everything) * 10 / np.log(10)


def test_however_many_are_measured_they_speak_no_louder_than_they_may(two):
    far = [Compared(each.simulated, Features(np.array(0), np.array([8.0])), np.full(1, 0.01), 1) for each in two * 2]
    assert 5 < _decibans_apart(weighed(far, BREADTH)) <= MOST_DECIBANS + 1e-6


def test_what_nothing_shows_speaks_for_something_else_but_no_louder_than_it_may(two):
    nowhere = [Compared(e.simulated, Features(np.array(0), np.array([900.0])), e.noise, 1) for e in two * 3]
    found = weighed(nowhere, BREADTH)
    assert found.unnamed > found.log_likelihood.max()
    assert _decibans_apart(found) <= MOST_DECIBANS + 1e-6


def _of_pattern(values, told, pattern):
    """A measurement that may have two patterns, of which the ovens show only the first."""
    return Compared(
        Features(np.zeros(values.shape[:2], dtype=np.int_), values),
        Features(np.array(pattern), np.array(told)),
        np.full(values.shape[-1], NOISE),
        patterns=2,
    )


@pytest.mark.parametrize("told", [[1.0], [np.nan]])
def test_a_pattern_that_no_simulated_oven_shows_leaves_the_other_its_voice(two, told):
    odd = _of_pattern(two[1].simulated.values, told, pattern=1)
    alone, beside = (np.diff(weighed(each, BREADTH).log_likelihood)[0] for each in (two[:1], [two[0], odd]))
    assert beside == pytest.approx(alone, rel=0.25)
    assert weighed([two[0], odd], BREADTH).unnamed > weighed([two[0], odd], BREADTH).log_likelihood.min()


def test_patterns_that_no_oven_shows_together_speak_each_by_itself(two):
    """Half of the ovens show the one pattern, half the other, and one of each was written down."""
    half = np.arange(DRAWS) % 2
    shown = np.broadcast_to(half, (2, DRAWS))
    each = [
        Compared(Features(shown, m.simulated.values), Features(np.array(n), m.told.values), m.noise, 2)
        for n, m in enumerate(two)
    ]
    apart = [np.diff(own([one]))[0] for one in each]
    assert np.diff(own(each))[0] == pytest.approx(sum(apart), abs=1e-6)


def test_the_error_of_few_draws_is_told_of_the_difference(two):
    """By the jackknife's own formula, and more ovens leave less of it."""
    few = [Compared(Features(e.simulated.pattern[:, :40], e.simulated.values[:, :40]), e.told, e.noise, 1) for e in two]
    errors = []
    for each in (few, two):
        apart = [float(np.diff(found.log_likelihood)[0]) for found in left_out(each, BREADTH)]
        groups = len(apart)
        expected = ((groups - 1) / groups * sum((a - np.mean(apart)) ** 2 for a in apart)) ** 0.5
        assert jackknife_error(apart) == pytest.approx(expected)
        errors.append(expected)
    assert errors[0] > errors[1] > 0

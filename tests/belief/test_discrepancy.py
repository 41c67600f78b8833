"""What simulated ovens show is stretched and shifted as one oven's measurements would be."""

import numpy as np
import pytest

from assistant.belief import discrepancy
from assistant.belief.discrepancy import DARK, FIRST_OUT, LIT, SAME_OVEN, WARMER, Discrepancy, drawn

MANY = 40_000


def test_factors_spread_as_far_as_is_said():
    found = drawn(MANY, seed=5, run="fan 180")
    sizes = (found.first_out, FIRST_OUT), (found.dark, DARK), (found.lit, LIT), (found.slower, FIRST_OUT)
    for factor, size in sizes:
        assert np.log(factor).mean() == pytest.approx(0.0, abs=4 * size / MANY**0.5)
        assert np.log(factor).std() == pytest.approx(size, rel=0.02)
    assert found.warmer.std() == pytest.approx(WARMER, rel=0.02)


def test_one_oven_differs_alike_at_two_measurements_but_not_wholly():
    one, other = drawn(MANY, seed=5, run="fan 100"), drawn(MANY, seed=5, run="fan 180")
    for first, second in ((one.first_out, other.first_out), (one.dark, other.dark), (one.lit, other.lit)):
        assert np.corrcoef(np.log(first), np.log(second))[0, 1] == pytest.approx(SAME_OVEN, abs=0.02)


def test_the_lamp_and_the_thermometer_of_one_oven_differ_alike_but_not_wholly():
    found = drawn(MANY, seed=5, run="fan 180")
    assert np.corrcoef(np.log(found.first_out), np.log(found.slower))[0, 1] == pytest.approx(SAME_OVEN, abs=0.02)


def test_each_way_of_running_the_oven_has_draws_of_its_own(knowledge):
    runs = {(q.run.way, q.run.setting.value, q.run.longest.value) for q in knowledge.questions.values() if q.run}
    assert len(runs) > 2
    firsts = {drawn(4, seed=1, run=" ".join(map(str, run))).first_out[0] for run in runs}
    assert len(firsts) == len(runs)


def test_the_same_measurement_is_drawn_the_same_again():
    one, again = drawn(64, seed=1, run="fan 180"), drawn(64, seed=1, run="fan 180")
    np.testing.assert_array_equal(one.first_out, again.first_out)


TWICE = Discrepancy(*(np.array([factor]) for factor in (2.0, 3.0, 0.5, 2.0, 1.1)))


def test_times_dark_and_lit_are_stretched_each_by_its_own():
    """Out at 100 s, on at 160 s, out at 200 s: 100 s until then, 60 s dark and 40 s lit."""
    turns = np.array([[[100.0, 160.0, 200.0, np.nan]]], dtype=np.float32)
    found = TWICE.of_turns(np.array([[True]]), turns)
    np.testing.assert_allclose(found[0, 0], [200.0, 380.0, 400.0, np.nan])


def test_a_lamp_that_is_dark_at_first_is_stretched_by_the_same_names():
    turns = np.array([[[100.0, 160.0, 200.0]]], dtype=np.float32)
    found = TWICE.of_turns(np.array([[False]]), turns)
    np.testing.assert_allclose(found[0, 0], [200.0, 230.0, 350.0])


def test_readings_come_later_and_stand_farther_from_the_kitchen():
    times = np.array([0.0, 100.0, 200.0])
    shown = np.array([[[20.0, 120.0, 160.0]]], dtype=np.float32)
    found = TWICE.of_readings(times, shown)
    np.testing.assert_allclose(found[0, 0], [20.0, 20 + 1.1 * 50, 20 + 1.1 * 100], rtol=1e-6)


def test_the_ovens_that_are_simulated_hang_on_the_discrepancy():
    from assistant.belief.physical import MODEL_MODULES

    assert discrepancy in MODEL_MODULES

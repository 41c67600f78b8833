"""Scores, against published figures and by hand."""

from math import log

import numpy as np
import pytest

from assistant.belief.scores import (
    brier_score,
    brier_score_of_categories,
    log_score,
    log_score_of_categories,
    reliability_bands,
    wilson_interval,
)

CAME = np.array([0.0, 1.0, 1.0, 0.0])
SAID = np.array([0.1, 0.9, 0.8, 0.3])
ROWS = np.array([[0.7, 0.2, 0.1], [0.1, 0.3, 0.6], [0.2, 0.5, 0.3]])
CATEGORY = np.array([0, 2, 1])


def test_the_scores_of_the_textbook_forecasts():
    """0.0375: the example of brier_score_loss in scikit-learn's documentation; 0.1976349: its log_loss of the same."""
    assert brier_score(SAID, CAME) == pytest.approx(0.0375)
    assert log_score(SAID, CAME) == pytest.approx(0.1976349, abs=5e-8)


def test_the_scores_of_three_categories():
    """By hand: (0.14 + 0.26 + 0.38) / 3, and -(ln 0.7 + ln 0.6 + ln 0.5) / 3."""
    assert brier_score_of_categories(ROWS, CATEGORY) == pytest.approx(0.26)
    assert log_score_of_categories(ROWS, CATEGORY) == pytest.approx(0.5202159, abs=5e-8)


def test_what_was_called_impossible_and_came_is_scored_badly_but_not_endlessly():
    assert log_score(np.array([0.0]), np.array([1.0])) == pytest.approx(52 * log(2))
    assert log_score_of_categories(np.array([[0.0, 1.0]]), np.array([0])) == pytest.approx(52 * log(2))


def test_a_wilson_interval_is_the_published_one():
    """81 of 263 and 15 of 148: R. G. Newcombe, Statistics in Medicine 17 (1998), table I, method 3."""
    assert wilson_interval(81, 263) == pytest.approx((0.2553, 0.3662), abs=5e-5)
    assert wilson_interval(15, 148) == pytest.approx((0.0624, 0.1605), abs=5e-5)
    assert wilson_interval(0, 20) == pytest.approx((0.0000, 0.1611), abs=5e-5)
    assert wilson_interval(1, 29) == pytest.approx((0.0061, 0.1718), abs=5e-5)


def test_each_forecast_falls_into_one_band():
    said = np.array([0.0, 0.05, 0.1, 0.3, 0.7, 0.95, 1.0, 0.6])
    came = np.array([0.0, 1.0, 0.0, 1.0, 1.0, 1.0, 1.0, 0.0])
    bands = reliability_bands(said, came)
    assert [(band.low, band.high, band.count) for band in bands] == [
        (0.0, 0.1, 2),
        (0.1, 0.2, 1),
        (0.3, 0.4, 1),
        (0.6, 0.7, 1),
        (0.7, 0.8, 1),
        (0.9, 1.0, 2),
    ]
    assert [band.observed for band in bands] == [0.5, 0.0, 1.0, 0.0, 1.0, 1.0]
    assert [band.predicted for band in bands] == pytest.approx([0.025, 0.1, 0.3, 0.6, 0.7, 0.975])
    assert bands[0].observed_low == wilson_interval(1, 2)[0]


def test_simulated_forecasts_that_are_right_lie_within_their_intervals():
    draw = np.random.default_rng(5)
    said = draw.random(20_000)
    came = (draw.random(20_000) < said).astype(float)
    bands = reliability_bands(said, came)
    assert sum(band.count for band in bands) == 20_000
    assert sum(band.observed_low <= band.predicted <= band.observed_high for band in bands) >= 9
    wrong = reliability_bands(said, 1 - came)
    assert sum(band.observed_low <= band.predicted <= band.observed_high for band in wrong) <= 2

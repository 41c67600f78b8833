"""How good probabilities were, once it is known what came: scores, and what was observed where so much was predicted.

Arrays of probabilities and of what came, nothing of this project: N forecasts of one event each, or of K categories.
"""

from dataclasses import dataclass
from math import sqrt

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Numbers = npt.NDArray[np.int64]

SMALLEST = float(np.finfo(np.float64).eps)
"""What was called impossible and came is scored as this probability, so that one such case isn't endless."""
NORMAL_95 = 1.959964
BANDS = 10


@dataclass(frozen=True)
class Band:
    """Forecasts from `low` up to `high`: how many, what they said on average, and how often it came.

    `observed_low` and `observed_high`: the 95 % interval of what was observed.
    """

    low: float
    high: float
    count: int
    predicted: float
    observed: float
    observed_low: float
    observed_high: float


def brier_score(probabilities: Floats, came: Floats) -> float:
    """The mean of (p - y)^2 over N events, y being 1 for what came, else 0: 0 is perfect.

    Source: G. W. Brier, Verification of Forecasts Expressed in Terms of Probability (1950), halved.
    """
    return float(np.mean((probabilities - came) ** 2))


def log_score(probabilities: Floats, came: Floats) -> float:
    """The mean of -ln of the probability given to what came, in nats: 0 is perfect. Source: I. J. Good (1952)."""
    return float(-np.mean(np.log(_never_nothing(np.where(came > 0, probabilities, 1 - probabilities)))))


def brier_score_of_categories(rows: Floats, came: Numbers) -> float:
    """The mean over N of the sum over K categories of (p - y)^2: 0 is perfect, 2 the worst. Source: Brier (1950)."""
    happened = np.zeros_like(rows)
    happened[np.arange(len(rows)), came] = 1
    return float(np.mean(((rows - happened) ** 2).sum(axis=1)))


def log_score_of_categories(rows: Floats, came: Numbers) -> float:
    """The mean of -ln of the probability given to the category that came, in nats. Source: Good (1952)."""
    return float(-np.mean(np.log(_never_nothing(rows[np.arange(len(rows)), came]))))


def _never_nothing(probabilities: Floats) -> Floats:
    clipped: Floats = np.clip(probabilities, SMALLEST, 1)
    return clipped


def reliability_bands(probabilities: Floats, came: Floats) -> tuple[Band, ...]:
    """Ten bands of equal width, those left out that no forecast falls into. 1 belongs to the highest."""
    of_band = np.minimum((probabilities * BANDS).astype(int), BANDS - 1)
    bands = []
    for number in range(BANDS):
        inside = of_band == number
        count = int(inside.sum())
        if count:
            found = int(came[inside].sum())
            low, high = wilson_interval(found, count)
            predicted = float(probabilities[inside].mean())
            bands.append(Band(number / BANDS, (number + 1) / BANDS, count, predicted, found / count, low, high))
    return tuple(bands)


def wilson_interval(found: int, of: int) -> tuple[float, float]:
    """The 95 % score interval of a share. Source: E. B. Wilson (1927)."""
    share, spread = found / of, NORMAL_95**2 / of
    middle = (share + spread / 2) / (1 + spread)
    half = NORMAL_95 * sqrt(share * (1 - share) / of + spread / (4 * of)) / (1 + spread)
    return max(0.0, middle - half), min(1.0, middle + half)

"""How likely what was seen at one oven is under each way an oven can behave, from simulated ovens of each.

A synthetic likelihood (Wood, Nature 466, 2010): of each behaviour's simulated ovens the features are taken as they
would have been seen, and the ones that were seen are weighed by a normal distribution with their mean and covariance,
which is shrunk towards its diagonal. What kind of pattern it was is counted. Several measurements of one oven are
weighed as one, for the simulated ovens are the same in all of them: what two of them tell alike isn't counted twice. As
every oven model is wrong somewhere, and some things are written down wrongly, any of the measurements may for all
behaviours alike be of a broad part that expects anything; and whatever was measured, it speaks no louder than
MOST_DECIBANS.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats
from assistant.belief.posterior import DECIBANS_PER_NAT

MODEL_WRONG = 0.1
"""The broad part's share, of each measurement: assumed."""
BROADER = 9.0
"""The broad part's variances against those of all behaviours together."""
SHRUNK = 0.3
"""How much of each covariance is given up for its diagonal."""
MOST_DECIBANS = 25.0
FEWEST_DRAWS = 12
"""With fewer ovens of a pattern, all behaviours' ovens of that pattern stand in."""
GROUPS = 8
"""Of draws, by which the error of having drawn so few is told."""
T = TypeVar("T")
Patterns = npt.NDArray[np.int_]


@dataclass(frozen=True)
class Features:
    """`pattern`: (K, D), or () of what was seen. `values`: (K, D, F), or (F,); NaN where the pattern has none."""

    pattern: Patterns
    values: Floats


@dataclass(frozen=True)
class Compared:
    """One measurement beside what simulated ovens would have shown.

    `noise`: (F,) the variances of how it was seen and written down. `patterns`: how many there might be.
    """

    simulated: Features
    told: Features
    noise: Floats
    patterns: int


@dataclass(frozen=True)
class Measured:
    """`log_likelihood`: (K,) natural logarithms. `unnamed`: that of the broad part alone, for something else."""

    log_likelihood: Floats
    unnamed: float


def weighed(measurements: Sequence[Compared]) -> Measured:
    """All measurements of one oven together, one at least; the simulated ovens are the same in all of them."""
    return combined([own(some) for some in subsets(measurements)], [broad(each) for each in measurements])


def subsets(measurements: Sequence[T]) -> tuple[tuple[T, ...], ...]:
    """Those that may be of the oven as it is simulated while the others aren't: from none to all."""
    return tuple(some for size in range(len(measurements) + 1) for some in combinations(measurements, size))


def combined(own_of: Sequence[Floats], broad_of: Sequence[float]) -> Measured:
    """`own_of`: of each of the subsets, in their order. `broad_of`: of each measurement."""
    parts = []
    for which, right in zip(subsets(range(len(broad_of))), own_of, strict=True):
        wrong = [broad_of[number] for number in range(len(broad_of)) if number not in which]
        shares = len(which) * np.log1p(-MODEL_WRONG) + len(wrong) * np.log(MODEL_WRONG)
        parts.append(right + sum(wrong) + shares)
    mixed = np.logaddexp.reduce(np.broadcast_arrays(*parts))
    least = float(mixed.max()) - MOST_DECIBANS / DECIBANS_PER_NAT
    return Measured(np.maximum(mixed, least), max(sum(broad_of), least))


def own(measurements: Sequence[Compared], but_group: int | None = None) -> Floats:
    """(K,): the log density of what was seen where all of it is of an oven as it is simulated; 0 of nothing.

    `but_group`: the draws that are left out.
    """
    if not measurements:
        return np.zeros(())
    told = np.concatenate([each.told.values for each in measurements])
    present = np.isfinite(told)
    same = np.logical_and.reduce([each.simulated.pattern == each.told.pattern for each in measurements])
    rows = np.concatenate([each.simulated.values for each in measurements], axis=-1)[..., present]
    sums = _Sums.of(same, same & np.isfinite(rows).all(axis=-1), rows)
    if but_group is not None:
        sums = sums.without(but_group)
    noise = np.concatenate([each.noise for each in measurements])[present]
    patterns = float(np.prod([each.patterns for each in measurements]))
    counted = np.log((sums.same.sum(axis=0) + 0.5) / (sums.drawn.sum() + 0.5 * patterns))
    found: Floats = counted + _densities(sums, noise, told[present])
    return found


def broad(measurement: Compared) -> float:
    """The log density of what was seen where anything may be."""
    present = np.isfinite(measurement.told.values)
    rows = measurement.simulated.values[..., present]
    same = measurement.simulated.pattern == measurement.told.pattern
    sums = _Sums.of(same, same & np.isfinite(rows).all(axis=-1), rows)
    wide = _pooled(sums, measurement.noise[present], measurement.told.values[present], BROADER)
    return wide - float(np.log(measurement.patterns))


def error_decibans(measurements: Sequence[Compared]) -> Floats:
    """(K,): the standard error of their log-likelihoods from having drawn so few ovens.

    By leaving out a group of draws at a time: the jackknife (Efron and Tibshirani, An Introduction to the Bootstrap,
    1993, chapter 11).
    """
    wide = [broad(each) for each in measurements]
    some = subsets(measurements)
    left_out = np.array([combined([own(e, group) for e in some], wide).log_likelihood for group in range(GROUPS)])
    error = np.sqrt((GROUPS - 1) / GROUPS * ((left_out - left_out.mean(axis=0)) ** 2).sum(axis=0))
    found: Floats = error * DECIBANS_PER_NAT
    return found


@dataclass(frozen=True)
class _Sums:
    """Of the draws in G groups: `drawn` (G,) and `same` (G, K) of the pattern that was seen; of those whose features
    are all there `number` (G, K), `first` (G, K, F) and `second` (G, K, F, F) moments about `about` (F,).
    """

    drawn: Floats
    same: Floats
    number: Floats
    first: Floats
    second: Floats
    about: Floats

    @classmethod
    def of(cls, same: npt.NDArray[np.bool_], usable: npt.NDArray[np.bool_], rows: Floats) -> "_Sums":
        about = rows[usable].mean(axis=0) if usable.any() else np.zeros(rows.shape[-1])
        apart = np.where(usable[..., None], rows - about, 0.0)
        groups = [np.arange(same.shape[1]) % GROUPS == group for group in range(GROUPS)]
        return cls(
            drawn=np.array([float(group.sum()) for group in groups]),
            same=np.array([same[:, group].sum(axis=1) for group in groups], dtype=np.float64),
            number=np.array([usable[:, group].sum(axis=1) for group in groups], dtype=np.float64),
            first=np.array([apart[:, group].sum(axis=1) for group in groups]),
            second=np.array([np.swapaxes(apart[:, group], 1, 2) @ apart[:, group] for group in groups]),
            about=about,
        )

    def without(self, group: int) -> "_Sums":
        kept = np.arange(len(self.drawn)) != group
        return _Sums(
            self.drawn[kept], self.same[kept], self.number[kept], self.first[kept], self.second[kept], self.about
        )


def _densities(sums: _Sums, noise: Floats, values: Floats) -> Floats:
    """(K,): of a normal distribution for each behaviour; of all of them together where there are too few draws."""
    if not len(values):
        return np.zeros(sums.same.shape[1])
    number = sums.number.sum(axis=0)
    enough = number >= FEWEST_DRAWS
    safe = np.maximum(number, 2.0)[:, None]
    mean = sums.first.sum(axis=0) / safe
    spread = sums.second.sum(axis=0) - safe[..., None] * mean[:, :, None] * mean[:, None, :]
    own = _normal(mean + sums.about, spread / (safe[..., None] - 1), noise, values)
    found: Floats = np.where(enough, own, _pooled(sums, noise, values))
    return found


def _pooled(sums: _Sums, noise: Floats, values: Floats, wider: float = 1.0) -> float:
    """The log density of the features about as far as all behaviours go, or as variances that are `wider`."""
    number = sums.number.sum()
    if not len(values) or number < 2:
        return 0.0
    mean = sums.first.sum(axis=(0, 1)) / number
    spread = sums.second.sum(axis=(0, 1)) - number * np.outer(mean, mean)
    return float(_normal((mean + sums.about)[None], wider * (spread / (number - 1))[None], noise, values)[0])


def _normal(mean: Floats, covariance: Floats, noise: Floats, values: Floats) -> Floats:
    """(K,): the log densities under means (K, F) and covariances (K, F, F), these shrunk, with the noise of seeing."""
    diagonal = np.einsum("kff->kf", covariance)
    shrunk = (1 - SHRUNK) * covariance
    np.einsum("kff->kf", shrunk)[:] += SHRUNK * np.maximum(diagonal, 0.0) + noise + 1e-9
    apart = values - mean
    _, log_determinant = np.linalg.slogdet(shrunk)
    distance = np.einsum("kf,kf->k", apart, np.linalg.solve(shrunk, apart[..., None])[..., 0])
    found: Floats = -0.5 * (distance + log_determinant + len(values) * np.log(2 * np.pi))
    return found

"""How likely what was seen at one oven is under each way an oven can behave, from simulated ovens of each.

A synthetic likelihood (Wood, Nature 466, 2010): of each behaviour's simulated ovens the features are taken as they
would have been seen, and the ones that were seen are weighed by a normal distribution with their mean and covariance,
which is shrunk towards its diagonal. What kind of pattern it was is counted. Several measurements of one oven are
weighed as one, for the simulated ovens are the same in all of them: what two of them tell alike is for the most part
counted once. As every oven model is wrong somewhere, and some things are written down wrongly, any of the measurements
may for all behaviours alike be of a broad part that expects anything; and whatever was measured, it speaks no louder
than MOST_DECIBANS.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
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
UNSEEN = 0.1
"""The density of a feature that no simulated oven shows: of one that may be anywhere on ten of its units. Assumed."""
GROUPS = 8
"""Of draws, by which the error of having drawn so few is told."""
T = TypeVar("T")
Patterns = npt.NDArray[np.int_]


@dataclass(frozen=True)
class Features:
    """`pattern`: (K, D), or () of what was seen. `values`: (K, D, F), or (F,); NaN where the pattern has none."""

    pattern: Patterns
    values: Floats


@dataclass(frozen=True, eq=False)
class Compared:
    """One measurement beside what simulated ovens would have shown.

    `noise`: (F,) the variances of how it was seen and written down. `patterns`: how many there might be.
    """

    simulated: Features
    told: Features
    noise: Floats
    patterns: int

    @cached_property
    def alone(self) -> "_Together":
        """It beside the draws, without any other measurement."""
        return _Together.of([self])

    @cached_property
    def by_itself(self) -> Floats:
        """(K,): the density of its features without any other measurement."""
        return _by_itself(self, self.alone)


@dataclass(frozen=True)
class Measured:
    """`log_likelihood`: (K,) natural logarithms. `unnamed`: that of something else."""

    log_likelihood: Floats
    unnamed: float


def subsets(measurements: Sequence[T]) -> tuple[tuple[T, ...], ...]:
    """Those that may be of the oven as it is simulated while the others aren't: from none to all."""
    return tuple(some for size in range(len(measurements) + 1) for some in combinations(measurements, size))


def combined(own_of: Sequence[Floats], broad_of: Sequence[float], breadth: float) -> Measured:
    """`own_of`: of each of the subsets, in their order. `broad_of`: of each measurement.

    Something else shows what some behaviour shows, or, in `breadth` of all cases, anything.
    """
    parts = []
    for which, right in zip(subsets(range(len(broad_of))), own_of, strict=True):
        wrong = [broad_of[number] for number in range(len(broad_of)) if number not in which]
        shares = len(which) * np.log1p(-MODEL_WRONG) + len(wrong) * np.log(MODEL_WRONG)
        parts.append(right + sum(wrong) + shares)
    mixed = np.logaddexp.reduce(np.broadcast_arrays(*parts))
    as_some = float(np.logaddexp.reduce(mixed)) - np.log(len(mixed))
    unnamed = float(np.logaddexp(np.log1p(-breadth) + as_some, np.log(breadth) + sum(broad_of)))
    most = max(float(mixed.max()), unnamed)
    least = most - MOST_DECIBANS / DECIBANS_PER_NAT
    return Measured(np.maximum(mixed, least), max(unnamed, least))


def own(measurements: Sequence[Compared], but_group: int | None = None) -> Floats:
    """(K,): the log density of what was seen where all of it is of an oven as it is simulated; 0 of nothing.

    Where too few of a behaviour's ovens showed all of the patterns, each measurement speaks by itself. `but_group`: the
    draws that are left out.
    """
    if not measurements:
        return np.zeros(())
    alone = [each.alone if but_group is None else each.alone.without(but_group) for each in measurements]
    together = alone[0] if len(alone) == 1 else _Together.of(measurements)
    if but_group is not None and len(alone) > 1:
        together = together.without(but_group)
    patterns = float(np.prod([each.patterns for each in measurements]))
    counted = np.log((together.sums.same.sum(axis=0) + 0.5) / (together.sums.drawn.sum() + 0.5 * patterns))
    apart = [
        each.by_itself if but_group is None else _by_itself(each, one)
        for each, one in zip(measurements, alone, strict=True)
    ]
    enough = together.sums.number.sum(axis=0) >= FEWEST_DRAWS
    joint = apart[0] if len(apart) == 1 else np.where(enough, together.densities(), sum(apart))
    found: Floats = counted + joint
    return found


def broad(measurement: Compared) -> float:
    """The log density of what was seen where anything may be."""
    return _pooled(measurement, measurement.alone, BROADER) - float(np.log(measurement.patterns))


def left_out(measurements: Sequence[Compared], breadth: float) -> tuple[Measured, ...]:
    """The same with each group of draws left out in turn."""
    wide = [broad(each) for each in measurements]
    some = subsets(measurements)
    return tuple(combined([own(each, group) for each in some], wide, breadth) for group in range(GROUPS))


def jackknife_error(without: Sequence[float]) -> float:
    """The standard error of a figure, from the figures with each group of draws left out: the jackknife (Efron and
    Tibshirani, An Introduction to the Bootstrap, 1993, chapter 11).
    """
    groups = len(without)
    return float(np.sqrt((groups - 1) * np.var(without)))


@dataclass(frozen=True)
class _Together:
    """Measurements (of F features that are there, in all) beside the draws of every behaviour."""

    sums: "_Sums"
    noise: Floats
    values: Floats

    @classmethod
    def of(cls, measurements: Sequence[Compared], *, whatever_pattern: bool = False) -> "_Together":
        told = np.concatenate([each.told.values for each in measurements])
        present = np.isfinite(told)
        same = np.logical_and.reduce([each.simulated.pattern == each.told.pattern for each in measurements])
        rows = np.concatenate([each.simulated.values for each in measurements], axis=-1)[..., present]
        usable = (same | whatever_pattern) & np.isfinite(rows).all(axis=-1)
        noise = np.concatenate([each.noise for each in measurements])[present]
        return cls(_Sums.of(same, usable, rows), noise, told[present])

    def without(self, group: int) -> "_Together":
        return replace(self, sums=self.sums.without(group))

    def densities(self) -> Floats:
        """(K,): of a normal distribution for each behaviour; of those with few draws it tells nothing."""
        if not len(self.values):
            return np.zeros(self.sums.same.shape[1])
        number = self.sums.number.sum(axis=0)
        safe = np.maximum(number, 2.0)[:, None]
        mean = self.sums.first.sum(axis=0) / safe
        spread = self.sums.second.sum(axis=0) - safe[..., None] * mean[:, :, None] * mean[:, None, :]
        return _normal(mean + self.sums.about, spread / (safe[..., None] - 1), self.noise, self.values)

    def pooled(self, wider: float) -> float | None:
        """Of all behaviours' draws as one, with variances that are `wider`; None where there are next to none."""
        number = self.sums.number.sum()
        if number < FEWEST_DRAWS:
            return None
        mean = self.sums.first.sum(axis=(0, 1)) / number
        spread = self.sums.second.sum(axis=(0, 1)) - number * np.outer(mean, mean)
        covariance = wider * (spread / (number - 1))[None]
        return float(_normal((mean + self.sums.about)[None], covariance, self.noise, self.values)[0])


def _by_itself(measurement: Compared, alone: _Together) -> Floats:
    """(K,): the density of one measurement's features; of all behaviours together where there are too few draws."""
    enough = alone.sums.number.sum(axis=0) >= FEWEST_DRAWS
    found: Floats = np.where(enough, alone.densities(), _pooled(measurement, alone, 1.0))
    return found


def _pooled(measurement: Compared, alone: _Together, wider: float) -> float:
    """The log density of its features by all behaviours' ovens of its pattern; of any pattern where there are too few,
    and by nothing but UNSEEN where no oven shows such features at all.
    """
    present = int(np.isfinite(measurement.told.values).sum())
    if not present:
        return 0.0
    found = alone.pooled(wider)
    if found is None:
        found = _Together.of([measurement], whatever_pattern=True).pooled(wider)
    return found if found is not None else present * float(np.log(UNSEEN))


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

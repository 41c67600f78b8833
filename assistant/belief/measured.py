"""What was measured -> how likely it is under each way an oven can behave.

A synthetic likelihood (Wood, Nature 466, 2010): of each behaviour's simulated ovens the features are taken as they
would have been seen, and the measured ones are weighed by a normal distribution with their mean and covariance, which
is shrunk towards its diagonal. What kind of lamp pattern it was is counted. As every oven model is wrong somewhere, all
behaviours share a broad part that expects anything; and no measurement speaks louder than MOST_DECIBANS.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats
from assistant.belief.physical import Seen
from assistant.belief.posterior import DECIBANS_PER_NAT
from assistant.knowledge.readings import BrownedBread, LampLog, TemperatureLog

MODEL_WRONG = 0.1
"""The broad part's share: assumed."""
BROADER = 9.0
"""The broad part's variances against those of all behaviours together."""
SHRUNK = 0.3
"""How much of each covariance is given up for its diagonal."""
MOST_DECIBANS = 25.0
FEWEST_DRAWS = 12
"""With fewer ovens of a pattern, all behaviours' ovens of that pattern stand in."""
GROUPS = 8
"""Of draws, by which the error of having drawn so few is told."""

OVENS_DIFFER = (0.08, 0.25, 0.4)
"""How far real ovens' times until the lamp goes out, its periods (both logarithms) and its share lit (log odds) differ
from those simulated, beyond what is drawn: assumed."""
PRESSED_S = 15.0
"""How far a change of the lamp is written down beside the truth: assumed."""
READ_K = 4.0
"""How far a thermometer is misread through the glass: assumed. Its own bias is in the ovens that are drawn."""
AFTER_OPENING_K = 15.0
AFTER_OPENING_S = 300.0
"""For so long after the door was opened a reading is worth less by so much: assumed."""
SHADES_OFF = 0.5
"""How far a slice's shade is misjudged: assumed."""
UNEVEN = 0.12
"""How far a shelf's sides differ in a sound oven, and between slices, as a share: assumed."""
DARKEST = 5.0
BROWNED, STAYED_WHITE = 0, 1
LEAST_BROWN = 0.8
HARDLY_ANY_HEAT = 0.2
"""Of what browns bread in the median sound oven: with less it stays white, assumed."""

Patterns = npt.NDArray[np.int_]
NEVER_LIT, NEVER_OUT, CYCLES, OUT_AND_NEVER_ON, DARK_AND_THEN_LIT, OUT_AND_ON_ONCE = range(6)
"""A lamp cycles from the second time on that it goes out: only then has it a period."""
PATTERNS = 6


@dataclass(frozen=True)
class Features:
    """`pattern`: (K, D), or () of what was seen. `values`: (K, D, F), or (F,); NaN where the pattern has none."""

    pattern: Patterns
    values: Floats


@dataclass(frozen=True)
class Measured:
    """`log_likelihood`: (K,) natural logarithms. `unnamed`: that of the broad part alone, for something else.

    `error_decibans`: (K,) the standard error from having drawn so few ovens.
    """

    log_likelihood: Floats
    unnamed: float
    error_decibans: Floats


def of_lamp(seen: Seen, log: LampLog) -> Measured:
    """The lamp watched from cold until the log ends."""
    simulated = lamp_features(seen.lit_first, seen.turns_s.astype(np.float64), log.ended_s)
    turns = np.full((1, 1, max(len(log.changes_s), 1)), np.nan)
    turns[0, 0, : len(log.changes_s)] = log.changes_s
    watched = lamp_features(np.array([[log.lit_first]]), turns, log.ended_s)
    first_out, period = float(watched.values[0, 0, 0]), float(watched.values[0, 0, 1])
    pressed = np.array([PRESSED_S / np.exp(first_out), PRESSED_S / np.exp(period), 0.2])
    noise = np.nan_to_num(pressed, nan=0.0) ** 2 + np.array(OVENS_DIFFER) ** 2
    return _weighed(simulated, Features(watched.pattern[0, 0], watched.values[0, 0]), noise)


def lamp_features(lit_first: npt.NDArray[np.bool_], turns_s: Floats, ended_s: float) -> Features:
    """Of lamps (K, D) that changed at turns_s (K, D, M), watched from cold to `ended_s`.

    The pattern; and the logarithm of the time until it first went out, of the mean time from one going out to the
    next, and the log odds of the share lit from the first going out on.
    """
    turns = np.where(turns_s <= ended_s, turns_s, np.nan)
    happened = ~np.isnan(turns)
    later = np.arange(turns.shape[-1]) % 2 == 1
    out = happened & (lit_first[..., None] ^ later)
    on = happened & ~(lit_first[..., None] ^ later)
    first_out = np.where(out, turns, np.inf).min(axis=-1)
    last_out = np.where(out, turns, -np.inf).max(axis=-1)
    gaps = out.sum(axis=-1) - 1
    with np.errstate(divide="ignore", invalid="ignore"):
        period = np.where(gaps > 0, (last_out - first_out) / np.maximum(gaps, 1), np.nan)
        share = _share_lit(lit_first, turns, np.minimum(first_out, ended_s), ended_s)
        values = np.stack(
            (
                np.log(np.where(np.isfinite(first_out), np.maximum(first_out, 1.0), np.nan)),
                np.log(period),
                np.where(gaps > 0, np.log((share + 0.02) / (1.02 - share)), np.nan),
            ),
            axis=-1,
        )
    on_again = (on & (np.where(happened, turns, 0.0) > first_out[..., None])).any(axis=-1)
    pattern = np.select(
        [gaps > 0, on_again, np.isfinite(first_out), on.any(axis=-1), lit_first],
        [CYCLES, OUT_AND_ON_ONCE, OUT_AND_NEVER_ON, DARK_AND_THEN_LIT, NEVER_OUT],
        NEVER_LIT,
    )
    return Features(pattern, values)


def _share_lit(lit_first: npt.NDArray[np.bool_], turns: Floats, since: Floats, until: float) -> Floats:
    """(K, D): of the time from `since` on."""
    shape = (*lit_first.shape, 1)
    clipped = np.clip(np.nan_to_num(turns, nan=until), since[..., None], until)
    ends = np.broadcast_to(until, shape)
    bounds = np.concatenate((since[..., None], clipped, ends), axis=-1)
    later = np.arange(bounds.shape[-1] - 1) % 2 == 1
    lit = (np.diff(bounds, axis=-1) * (lit_first[..., None] ^ later)).sum(axis=-1)
    found: Floats = lit / np.maximum(until - since, 1e-9)
    return found


def of_temperatures(seen: Seen, log: TemperatureLog) -> Measured:
    """Readings of a household's thermometer; their order says nothing."""
    times = np.array(log.times_s)
    at = np.clip(np.searchsorted(seen.times_s, times) - 1, 0, len(seen.times_s) - 2)
    share = np.clip((times - seen.times_s[at]) / (seen.times_s[at + 1] - seen.times_s[at]), 0.0, 1.0)
    values = seen.shown_c[..., at] * (1 - share) + seen.shown_c[..., at + 1] * share
    opened = np.array(log.opened_s)
    since = times[:, None] - opened[None, :]
    disturbed = ((since >= 0) & (since < AFTER_OPENING_S)).any(axis=1)
    noise = READ_K**2 + np.where(disturbed, AFTER_OPENING_K**2, 0.0)
    pattern = np.zeros(seen.lit_first.shape, dtype=np.int_)
    return _weighed(Features(pattern, values), Features(np.array(0), np.array(log.readings_c)), noise)


def of_bread(seen: Seen, bread: BrownedBread) -> Measured:
    """Slices on the wire shelf, stopped at mid-brown: what one side became tells what the other should have become."""
    top, under = np.array(bread.top).reshape(3, 3), np.array(bread.underside).reshape(3, 3)
    mean_top, mean_under = (float(np.clip(np.nanmean(side), 0.2, 4.8)) for side in (top, under))
    browner, other_first = max(mean_top, mean_under), mean_top >= mean_under
    ratio = seen.below / np.maximum(seen.above, 1e-9) if other_first else seen.above / np.maximum(seen.below, 1e-9)
    other = DARKEST * (1 - (1 - browner / DARKEST) ** np.clip(ratio, 0.0, 20.0))
    up_less_down = browner - other if other_first else other - browner
    slope = (DARKEST - browner) * -np.log(1 - browner / DARKEST)
    values = np.stack((up_less_down, seen.to_back * slope, seen.to_right * slope), axis=-1)
    both = (top + under) / 2
    told = np.array(
        (
            mean_top - mean_under,
            np.nanmean(both[0]) - np.nanmean(both[2]) if _lies(both[0]) and _lies(both[2]) else np.nan,
            np.nanmean(both[:, 2]) - np.nanmean(both[:, 0]) if _lies(both[:, 2]) and _lies(both[:, 0]) else np.nan,
        )
    )
    noise = np.array((SHADES_OFF**2, SHADES_OFF**2, SHADES_OFF**2)) + (UNEVEN * slope) ** 2
    browned = np.where(stays_white(seen), STAYED_WHITE, BROWNED)
    seen_so = STAYED_WHITE if max(np.nanmean(top), np.nanmean(under)) < LEAST_BROWN else BROWNED
    return _weighed(Features(browned, values), Features(np.array(seen_so), told), noise)


def stays_white(seen: Seen) -> npt.NDArray[np.bool_]:
    """(K, D): where next to none of the heat reaches the bread that a sound oven gives it."""
    most = np.maximum(seen.above, seen.below)
    white: npt.NDArray[np.bool_] = most < HARDLY_ANY_HEAT * np.median(most[0])
    return white


def _lies(slices: Floats) -> bool:
    return bool(np.isfinite(slices).any())


def _weighed(simulated: Features, told: Features, noise: Floats) -> Measured:
    """Mixed with the broad part, capped; with the error of the draws, by leaving out a group of them at a time: the
    jackknife (Efron and Tibshirani, An Introduction to the Bootstrap, 1993, chapter 11).
    """
    present = np.isfinite(told.values)
    noise = np.broadcast_to(noise, told.values.shape)[present]
    values = told.values[present]
    same = simulated.pattern == told.pattern
    rows = simulated.values[..., present]
    usable = same & np.isfinite(rows).all(axis=-1)
    sums = _Sums.of(same, usable, rows)
    broad = -np.log(PATTERNS) + _pooled(sums, noise, values)
    whole = _mixed(sums, noise, values, broad)
    left_out = np.array([_mixed(sums.without(group), noise, values, broad) for group in range(GROUPS)])
    error = np.sqrt((GROUPS - 1) / GROUPS * ((left_out - left_out.mean(axis=0)) ** 2).sum(axis=0))
    least = float(whole.max()) - MOST_DECIBANS / DECIBANS_PER_NAT
    return Measured(whole, max(broad, least), error * DECIBANS_PER_NAT)


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


def _mixed(sums: _Sums, noise: Floats, values: Floats, broad: float) -> Floats:
    """(K,): the log probability of the pattern and density of its features, mixed with the broad part and capped."""
    counted = np.log((sums.same.sum(axis=0) + 0.5) / (sums.drawn.sum() + 0.5 * PATTERNS))
    own = counted + _densities(sums, noise, values)
    mixed = np.logaddexp(np.log1p(-MODEL_WRONG) + own, np.log(MODEL_WRONG) + broad)
    found: Floats = np.maximum(mixed, mixed.max() - MOST_DECIBANS / DECIBANS_PER_NAT)
    return found


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


def _pooled(sums: _Sums, noise: Floats, values: Floats) -> float:
    """The log density of the features about as far as all behaviours go, and farther."""
    number = sums.number.sum()
    if not len(values) or number < 2:
        return 0.0
    mean = sums.first.sum(axis=(0, 1)) / number
    spread = sums.second.sum(axis=(0, 1)) - number * np.outer(mean, mean)
    return float(_normal((mean + sums.about)[None], BROADER * (spread / (number - 1))[None], noise, values)[0])


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

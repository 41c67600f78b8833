"""What was measured beside what simulated ovens would have shown, in features that can be weighed."""

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats
from assistant.belief.physical import Seen
from assistant.belief.synthetic import Compared, Features
from assistant.knowledge.readings import BrownedBread, LampLog, TemperatureLog

PRESSED_S = 15.0
"""How far a change of the lamp is written down beside the truth: assumed."""
READ_K = 4.0
"""How far a thermometer is misread through the glass: assumed. Its own bias is in the ovens that are drawn."""
MOST_READINGS = 16
"""More of them are taken together, neighbours in time as their mean: beside so many an oven tells nothing new."""
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

NEVER_LIT, NEVER_OUT, CYCLES, OUT_AND_NEVER_ON, DARK_AND_THEN_LIT, OUT_AND_ON_ONCE = range(6)
"""A lamp cycles from the second time on that it goes out: only then has it a period."""
PATTERNS = 6


def of_lamp(seen: Seen, log: LampLog) -> Compared:
    """The lamp watched from cold until the log ends."""
    simulated = lamp_features(seen.lit_first, seen.turns_s, log.ended_s)
    turns = np.full((1, 1, max(len(log.changes_s), 1)), np.nan)
    turns[0, 0, : len(log.changes_s)] = log.changes_s
    watched = lamp_features(np.array([[log.lit_first]]), turns, log.ended_s)
    first_out, period = float(watched.values[0, 0, 0]), float(watched.values[0, 0, 1])
    pressed = np.array([PRESSED_S / np.exp(first_out), PRESSED_S / np.exp(period), 0.2])
    return Compared(
        simulated,
        Features(watched.pattern[0, 0], watched.values[0, 0]),
        noise=np.nan_to_num(pressed, nan=0.0) ** 2,
        patterns=PATTERNS,
    )


def lamp_features(lit_first: npt.NDArray[np.bool_], turns_s: npt.NDArray[np.floating], ended_s: float) -> Features:
    """Of lamps (K, D) that changed at turns_s (K, D, M), watched from cold to `ended_s`.

    The pattern; and the logarithm of the time until it first went out, of the mean time from one going out to the
    next, and the log odds of the share lit from the first going out on.
    """
    watched = turns_s[..., : max(int((turns_s <= ended_s).any(axis=(0, 1)).sum()), 1)]
    turns = np.where(watched <= ended_s, watched, np.nan).astype(np.float64)
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


def of_temperatures(seen: Seen, log: TemperatureLog) -> Compared:
    """Readings of a household's thermometer; their order says nothing."""
    times = np.array(log.times_s)
    at = np.clip(np.searchsorted(seen.times_s, times) - 1, 0, len(seen.times_s) - 2)
    share = np.clip((times - seen.times_s[at]) / (seen.times_s[at + 1] - seen.times_s[at]), 0.0, 1.0)
    values = seen.shown_c[..., at] * (1 - share) + seen.shown_c[..., at + 1] * share
    opened = np.array(log.opened_s)
    since = times[:, None] - opened[None, :]
    disturbed = ((since >= 0) & (since < AFTER_OPENING_S)).any(axis=1)
    noise = READ_K**2 + np.where(disturbed, AFTER_OPENING_K**2, 0.0)
    some = np.array_split(np.argsort(times, kind="stable"), min(len(times), MOST_READINGS))
    pattern = np.zeros(seen.lit_first.shape, dtype=np.int_)
    return Compared(
        Features(pattern, np.stack([values[..., each].mean(axis=-1) for each in some], axis=-1)),
        Features(np.array(0), np.array([np.array(log.readings_c)[each].mean() for each in some])),
        noise=np.array([noise[each].sum() / len(each) ** 2 for each in some]),
        patterns=1,
    )


def of_bread(seen: Seen, bread: BrownedBread) -> Compared:
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
    browned = np.where(stays_white(seen), STAYED_WHITE, BROWNED)
    seen_so = STAYED_WHITE if max(np.nanmean(top), np.nanmean(under)) < LEAST_BROWN else BROWNED
    return Compared(
        Features(browned, values),
        Features(np.array(seen_so), told),
        noise=np.full(3, SHADES_OFF**2 + (UNEVEN * slope) ** 2),
        patterns=2,
    )


def stays_white(seen: Seen) -> npt.NDArray[np.bool_]:
    """(K, D): where next to none of the heat reaches the bread that a sound oven gives it."""
    most = np.maximum(seen.above, seen.below)
    white: npt.NDArray[np.bool_] = most < HARDLY_ANY_HEAT * np.median(most[0])
    return white


def _lies(slices: Floats) -> bool:
    return bool(np.isfinite(slices).any())

"""What a person who watches the heating lamp sees of a run, for D ovens at once."""

from dataclasses import dataclass
from enum import IntEnum

import numpy as np
import numpy.typing as npt

from assistant.physics.heating import Run, Switched
from assistant.physics.oven import Floats, Truths


class Pattern(IntEnum):
    """What the lamp did while it was watched."""

    NEVER_LIT = 0
    NEVER_OUT = 1
    CYCLES = 2
    OUT_AND_NEVER_ON = 3


@dataclass(frozen=True)
class LampTimes:
    """(D,) each, of the time watched only; times in s, NaN where there is none.

    `pattern`: of `Pattern`. `first_out`, `first_on`: from the start of the run till the lamp first goes out, or on.
    `period`: the mean from one going out to the next, or, where it went out but once, from one coming on to the next.
    `share_lit`: of the time watched.
    """

    pattern: npt.NDArray[np.int_]
    first_out: Floats
    first_on: Floats
    period: Floats
    share_lit: Floats


def lamp_times(run: Run, watched_from_s: float, watched_to_s: float) -> LampTimes:
    """The lamp is lit while the control calls for heat, so it stays as it is when the cut-out trips.

    Raises ValueError where the watch doesn't lie within the run.
    """
    if not 0 <= watched_from_s < watched_to_s <= run.times_s[-1]:
        raise ValueError(
            f"A watch from {watched_from_s} s to {watched_to_s} s doesn't lie within 0 s to {run.times_s[-1]} s."
        )
    lit_first = run.control.closed_first
    times = run.control.times
    later = np.arange(times.shape[0])[:, None] % 2 == 1
    watched = (times > watched_from_s) & (times <= watched_to_s)
    goes_out = watched & (lit_first ^ later)
    comes_on = watched & ~(lit_first ^ later)
    share = _share_closed(run.control, watched_from_s, watched_to_s)
    return LampTimes(
        pattern=_pattern(goes_out.any(axis=0), comes_on.any(axis=0), share),
        first_out=_first(times, goes_out),
        first_on=_first(times, comes_on),
        period=_period(times, goes_out, comes_on),
        share_lit=share,
    )


def _pattern(goes_out: Truths, comes_on: Truths, share_lit: Floats) -> npt.NDArray[np.int_]:
    still = np.where(share_lit > 0.5, Pattern.NEVER_OUT, Pattern.NEVER_LIT)
    return np.where(comes_on, Pattern.CYCLES, np.where(goes_out, Pattern.OUT_AND_NEVER_ON, still))


def _first(times: Floats, which: Truths) -> Floats:
    first = np.where(which, times, np.inf).min(axis=0, initial=np.inf)
    return np.where(np.isfinite(first), first, np.nan)


def _period(times: Floats, goes_out: Truths, comes_on: Truths) -> Floats:
    outs = _mean_gap(times, goes_out)
    return np.where(np.isnan(outs), _mean_gap(times, comes_on), outs)


def _mean_gap(times: Floats, which: Truths) -> Floats:
    """(D,): between the turnings chosen, NaN where they are fewer than two."""
    gaps = which.sum(axis=0) - 1
    first = _first(times, which)
    last = np.where(which, times, -np.inf).max(axis=0, initial=-np.inf)
    some = gaps > 0
    return np.where(some, np.where(some, last - first, np.nan) / np.maximum(gaps, 1), np.nan)


def _share_closed(switched: Switched, since: float, until: float) -> Floats:
    """(D,): the share of the time from `since` to `until` for which the switch was closed."""
    draws = switched.closed_first.shape[0]
    turns = np.clip(np.nan_to_num(switched.times, nan=until), since, until)
    bounds = np.concatenate([np.full((1, draws), since), turns, np.full((1, draws), until)])
    later = np.arange(bounds.shape[0] - 1)[:, None] % 2 == 1
    lasting: Floats = (np.diff(bounds, axis=0) * (switched.closed_first ^ later)).sum(axis=0)
    return lasting / (until - since)

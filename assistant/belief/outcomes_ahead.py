"""What a measurement may come to: simulated ovens sorted into a few outcomes, so that it can be weighed beforehand."""

from collections.abc import Mapping, Sequence
from hashlib import sha256

import numpy as np
import numpy.typing as npt

from assistant.belief import measured
from assistant.belief.combination import Floats
from assistant.belief.hypotheses import Hypothesis
from assistant.belief.measured import lamp_features
from assistant.belief.physical import UNKNOWN, Behaviours, Seen, model_mark
from assistant.knowledge.foreseen import Foreseen
from assistant.knowledge.model import HotRun, Kind

NOTHING_CHANGED = "none"
SMOOTHED = 0.5
"""Of an oven, added to the count of each outcome: what didn't happen in a few draws may happen all the same."""
USUAL = (0.05, 0.95)
"""Between these shares of the sound ovens a time is as usual."""
FAR_K, BESIDE_K = 60.0, 25.0
MUCH_PALER, PALER = 1.5, 0.75

OUTCOMES: Mapping[Kind, tuple[str, ...]] = {
    "lamp_log": ("never_lit", "never_out", "out_early", "out_as_usual", "out_late", "dark_and_then_lit"),
    "temperature_log": ("far_below", "below", "near", "above", "far_above"),
    "browning": ("top_paler", "alike", "underside_paler", "underside_much_paler"),
}


def foreseen_of(kind: Kind, hot_run: HotRun, seen: Seen, names: Sequence[str], mark: str) -> Foreseen:
    """The shares of the outcomes for each way to behave, in whole percent or tenths."""
    sorted_into = _SORTED[kind](hot_run, seen)
    of_outcomes = [(sorted_into == number).sum(axis=1) for number in range(len(OUTCOMES[kind]))]
    counts = np.stack(of_outcomes, axis=1) + SMOOTHED
    shares = (100 * counts / counts.sum(axis=1, keepdims=True)).round(1)
    return Foreseen(
        drawn_from=mark,
        outcomes=OUTCOMES[kind],
        ways={name: tuple(map(float, row)) for name, row in zip(names, shares, strict=True)},
    )


def _lamp(hot_run: HotRun, seen: Seen) -> npt.NDArray[np.int_]:
    watched = lamp_features(seen.lit_first, seen.turns_s.astype(np.float64), hot_run.longest.value * 60)
    first_out = np.nan_to_num(watched.values[..., 0], nan=np.inf)
    sound = first_out[0][np.isfinite(first_out[0])]
    early, late = np.quantile(sound, USUAL) if len(sound) else (0.0, np.inf)
    went_out = 2 + (first_out >= early).astype(int) + (first_out > late)
    return np.select(
        [watched.pattern == number for number in (measured.NEVER_LIT, measured.NEVER_OUT, measured.DARK_AND_THEN_LIT)],
        [0, 1, 5],
        went_out,
    )


def _temperatures(hot_run: HotRun, seen: Seen) -> npt.NDArray[np.int_]:
    """By the mean of the last third of the run against the setting."""
    last = seen.shown_c[..., -len(seen.times_s) // 3 :].mean(axis=-1) - hot_run.setting.value
    return np.digitize(last, (-FAR_K, -BESIDE_K, BESIDE_K, FAR_K))


def _bread(hot_run: HotRun, seen: Seen) -> npt.NDArray[np.int_]:
    """By the shades that the underside stays behind a top at mid-brown."""
    under = measured.DARKEST * (1 - 0.4 ** np.clip(seen.below / np.maximum(seen.above, 1e-9), 0.0, 20.0))
    return np.digitize(3.0 - under, (-PALER, PALER, MUCH_PALER))


_SORTED = {"lamp_log": _lamp, "temperature_log": _temperatures, "browning": _bread}


def names_of(ways: Behaviours, hypotheses: Sequence[Hypothesis]) -> tuple[str, ...]:
    """Of each way to behave: the first set of causes that does so."""
    named = ["+".join(hypothesis) or NOTHING_CHANGED for hypothesis in hypotheses]
    numbers = ways.of_hypothesis.tolist()
    return tuple(named[numbers.index(number)] for number in range(len(ways.distinct)))


def mark_of(ways: Behaviours, hot_run: HotRun) -> str:
    """What the shares hang on: the oven model, the changes and how the oven is run."""
    run = (hot_run.way, hot_run.setting.value, hot_run.longest.value)
    return sha256(repr((model_mark(), run, ways.distinct)).encode()).hexdigest()[:16]


def table(foreseen: Foreseen, ways: Behaviours, names: Sequence[str]) -> Floats | None:
    """(outcomes, H): P(outcome | hypothesis); None where a way to behave isn't foreseen."""
    if not set(names) <= set(foreseen.ways):
        return None
    rows = np.array([foreseen.ways[name] for name in names]) + 0.1
    rows /= rows.sum(axis=1, keepdims=True)
    whole = np.concatenate((rows, rows.mean(axis=0, keepdims=True)))
    return np.ascontiguousarray(whole[np.where(ways.of_hypothesis == UNKNOWN, len(rows), ways.of_hypothesis)].T)

"""What a measurement may come to: simulated ovens sorted into a few outcomes, so that it can be weighed beforehand."""

from collections.abc import Mapping, Sequence
from hashlib import sha256

import numpy as np
import numpy.typing as npt

from assistant.belief import measured
from assistant.belief.combination import Floats
from assistant.belief.hypotheses import SOMETHING_ELSE, Hypothesis
from assistant.belief.measured import lamp_features
from assistant.belief.physical import Behaviour, Seen, behaviour_of, model_mark, simulate
from assistant.belief.synthetic import MODEL_WRONG
from assistant.knowledge.foreseen import Foreseen
from assistant.knowledge.model import HotRun, Kind, Knowledge

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
    "browning": ("top_paler", "alike", "underside_paler", "underside_much_paler", "all_white"),
}


def foresee(knowledge: Knowledge, kind: Kind, hot_run: HotRun) -> Foreseen:
    """The shares of the outcomes for each way to behave, in percent. Simulated."""
    ways = named_ways(knowledge)
    sorted_into = _SORTED[kind](hot_run, simulate(list(ways.values()), hot_run))
    of_outcomes = [(sorted_into == number).sum(axis=1) for number in range(len(OUTCOMES[kind]))]
    counts = np.stack(of_outcomes, axis=1) + SMOOTHED
    shares = (100 * counts / counts.sum(axis=1, keepdims=True)).round(1)
    return Foreseen(
        drawn_from=mark_of(knowledge, hot_run),
        outcomes=OUTCOMES[kind],
        ways={name: tuple(map(float, row)) for name, row in zip(ways, shares, strict=True)},
    )


def _lamp(hot_run: HotRun, seen: Seen) -> npt.NDArray[np.int_]:
    watched = lamp_features(seen.lit_first, seen.turns_s, hot_run.longest.value * 60)
    first_out = np.nan_to_num(watched.values[..., 0], nan=np.inf)
    sound = first_out[0][np.isfinite(first_out[0])]
    early, late = np.quantile(sound, USUAL) if len(sound) else (0.0, np.inf)
    went_out = 2 + (first_out >= early).astype(int) + (first_out > late)
    still = [watched.pattern == each for each in (measured.NEVER_LIT, measured.NEVER_OUT, measured.DARK_AND_THEN_LIT)]
    found: npt.NDArray[np.int_] = np.select(still, [0, 1, 5], went_out)
    return found


def _temperatures(hot_run: HotRun, seen: Seen) -> npt.NDArray[np.int_]:
    """By the mean of the last third of the run against the setting."""
    last = seen.shown_c[..., -len(seen.times_s) // 3 :].mean(axis=-1) - hot_run.setting.value
    found: npt.NDArray[np.int_] = np.digitize(last, (-FAR_K, -BESIDE_K, BESIDE_K, FAR_K))
    return found


def _bread(hot_run: HotRun, seen: Seen) -> npt.NDArray[np.int_]:
    """By the shades that the underside stays behind a top at mid-brown."""
    under = measured.DARKEST * (1 - 0.4 ** np.clip(seen.below / np.maximum(seen.above, 1e-9), 0.0, 20.0))
    sides = np.digitize(3.0 - under, (-PALER, PALER, MUCH_PALER))
    found: npt.NDArray[np.int_] = np.where(measured.stays_white(seen), 4, sides)
    return found


_SORTED = {"lamp_log": _lamp, "temperature_log": _temperatures, "browning": _bread}


def named_ways(knowledge: Knowledge) -> dict[str, Behaviour]:
    """The sound oven's way to behave and those of single causes, each by the first cause that behaves so."""
    found = {NOTHING_CHANGED: behaviour_of(knowledge, ())}
    for cause_id in knowledge.causes:
        behaviour = behaviour_of(knowledge, (cause_id,))
        if behaviour not in found.values():
            found[cause_id] = behaviour
    return found


def mark_of(knowledge: Knowledge, hot_run: HotRun) -> str:
    """What the shares hang on: the oven model, the changes and how the oven is run."""
    run = (hot_run.way, hot_run.setting.value, hot_run.longest.value)
    return sha256(repr((model_mark(), run, named_ways(knowledge))).encode()).hexdigest()[:16]


def table(foreseen: Foreseen, knowledge: Knowledge, hypotheses: Sequence[Hypothesis]) -> Floats | None:
    """(outcomes, H): P(outcome | hypothesis); None where a way to behave isn't foreseen.

    Two causes that both change the oven are taken as half of each: good enough to weigh the question. A part of
    MODEL_WRONG is as of any oven.
    """
    ways = named_ways(knowledge)
    if not ways.keys() <= foreseen.ways.keys():
        return None
    names = {behaviour: name for name, behaviour in ways.items()}
    rows = {name: np.array(foreseen.ways[name]) for name in ways}
    any_oven = np.mean(list(rows.values()), axis=0)
    alone = {cause_id: names[behaviour_of(knowledge, (cause_id,))] for cause_id in knowledge.causes}
    place: dict[tuple[str, ...], int] = {}
    own = []
    of_hypothesis = []
    for hypothesis in hypotheses:
        changing = tuple(alone.get(c, c) for c in hypothesis if alone.get(c) != NOTHING_CHANGED)
        if changing not in place:
            place[changing] = len(place)
            own.append(_own(changing, rows, any_oven))
        of_hypothesis.append(place[changing])
    whole = ((1 - MODEL_WRONG) * np.array(own) + MODEL_WRONG * any_oven)[of_hypothesis].T
    found: Floats = whole / whole.sum(axis=0)
    return found


def _own(changing: Sequence[str], rows: Mapping[str, Floats], any_oven: Floats) -> Floats:
    """(outcomes,): of an oven that is changed in these ways."""
    if tuple(changing) == (SOMETHING_ELSE,):
        return any_oven
    if not changing:
        return rows[NOTHING_CHANGED]
    mean: Floats = np.mean([rows[name] for name in changing], axis=0)
    return mean

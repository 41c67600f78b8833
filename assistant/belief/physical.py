"""Causes -> how their ovens behave: what the rules say of a cause's physics, carried through the oven model.

The only module of belief that knows the physics. Causes that change the oven in the same way behave in the same way;
so do those that change nothing, and nothing wrong. Simulated, never measured.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from hashlib import sha256
from pathlib import Path

import numpy as np
import numpy.typing as npt

from assistant.belief import discrepancy
from assistant.belief.combination import Floats
from assistant.belief.discrepancy import LONGER, Discrepancy
from assistant.belief.hypotheses import SOMETHING_ELSE, Hypothesis
from assistant.knowledge.model import HotRun, Knowledge, Physical, PhysicalChange
from assistant.knowledge.report_checks import LAMP_STAYS
from assistant.physics import browning, changes, heating, network, oven, population, switching
from assistant.physics.changes import Change
from assistant.physics.heating import Programme, Run
from assistant.physics.oven import NAMES, Lump, Ovens

DRAWS = 128
SEED = 1
LANES_AT_ONCE = 4000
MOST_TURNS = 24
GRID_S = 30.0
UNKNOWN = -1
MODEL_MODULES = (discrepancy, browning, changes, heating, network, oven, population, switching)
"""All that a simulated oven hangs on."""

Behaviour = tuple[tuple[tuple[str, PhysicalChange], ...], ...]
"""The changes of one cause or of two, one after the other."""


@dataclass(frozen=True)
class Behaviours:
    """`distinct`: K ways to behave, the sound one first. `of_hypothesis`: (H,) numbers of them, UNKNOWN for something
    else.
    """

    distinct: tuple[Behaviour, ...]
    of_hypothesis: npt.NDArray[np.intp]


def behaviours(knowledge: Knowledge, hypotheses: Sequence[Hypothesis]) -> Behaviours:
    """What each set of causes changes, each distinct way once."""
    changes_of = {cause_id: _canonical(cause.physical) for cause_id, cause in knowledge.causes.items()}
    order = {cause_id: repr(change) for cause_id, change in changes_of.items()}
    changing = {cause_id for cause_id, change in changes_of.items() if change}
    place: dict[Behaviour, int] = {(): 0}
    numbers = []
    for hypothesis in hypotheses:
        if hypothesis == (SOMETHING_ELSE,):
            numbers.append(UNKNOWN)
            continue
        in_order = sorted((cause_id for cause_id in hypothesis if cause_id in changing), key=order.__getitem__)
        behaviour = tuple(changes_of[cause_id] for cause_id in in_order)
        numbers.append(place.setdefault(behaviour, len(place)))
    return Behaviours(tuple(place), np.array(numbers, dtype=np.intp))


def behaviour_of(knowledge: Knowledge, causes: Hypothesis) -> Behaviour:
    """What these causes change together, in an order that doesn't hang on that of the rules."""
    return behaves(knowledge.causes[cause_id].physical for cause_id in causes)


def behaves(changing: Iterable[Physical]) -> Behaviour:
    """How an oven behaves in which all of this is changed."""
    return tuple(sorted((_canonical(physical) for physical in changing if physical), key=repr))


def _canonical(physical: Physical) -> tuple[tuple[str, PhysicalChange], ...]:
    """In the order of the names, without the sources: who says so changes nothing."""
    return tuple((name, physical[name].model_copy(update={"source": ""})) for name in sorted(physical))


@dataclass(frozen=True)
class Seen:
    """What could be seen of K behaviours in D ovens each, while they heat from cold. Simulated.

    `lit_first`: (K, D). `turns_s`: (K, D, M) when the lamp changed, NaN after the last. `times_s`: (T,); `shown_c`:
    (K, D, T) the household's thermometer. `above`, `below`: (K, D) the browning of bread at the end of the run;
    `to_back`, `to_right`: (K, D) how much more it browns at the back than in front, and right than left, as shares.
    """

    lit_first: npt.NDArray[np.bool_]
    turns_s: npt.NDArray[np.float32]
    times_s: Floats
    shown_c: npt.NDArray[np.float32]
    above: npt.NDArray[np.float32]
    below: npt.NDArray[np.float32]
    to_back: npt.NDArray[np.float32]
    to_right: npt.NDArray[np.float32]

    @property
    def draws(self) -> int:
        return int(self.lit_first.shape[1])


@cache
def model_mark() -> str:
    """A digest of the oven model's own text: what was simulated with another isn't used."""
    texts = [Path(str(module.__file__)).read_bytes() for module in MODEL_MODULES]
    return sha256(b"\n".join(texts)).hexdigest()[:16]


def simulate(distinct: Sequence[Behaviour], hot_run: HotRun, draws: int = DRAWS, seed: int = SEED) -> Seen:
    """The same ovens, drawn once, half of them with a thermostat and half with a sensor, behave in each of the ways:
    differences are due to the behaviour alone.
    """
    longest_s = hot_run.longest.value * 60
    random = np.random.default_rng(seed)
    half = draws // 2
    sound = _beside([population.typical_ovens(kind, half, random) for kind in population.KINDS])
    differing = discrepancy.drawn(sound.draws, seed, f"{hot_run.way} {hot_run.setting.value:g} {longest_s:g}")
    at_once = max(LANES_AT_ONCE // sound.draws, 1)
    some = [distinct[n : n + at_once] for n in range(0, len(distinct), at_once)]
    parts = [_seen(each, sound, hot_run, seed, differing) for each in some]
    whole = {
        name: np.concatenate([getattr(part, name) for part in parts])
        for name in ("lit_first", "turns_s", "shown_c", "above", "below", "to_back", "to_right")
    }
    return Seen(times_s=parts[0].times_s, **whole)


def _seen(some: Sequence[Behaviour], sound: Ovens, hot_run: HotRun, seed: int, differing: Discrepancy) -> Seen:
    longest_s = hot_run.longest.value * 60
    ovens = _beside([_behaving(behaviour, sound, seed) for behaviour in some])
    found = heating.run(ovens, Programme(hot_run.way, hot_run.setting.value, LONGER * longest_s))
    shape = (len(some), sound.draws)
    lit_first, turns_s = _lamp(found, [_lamp_stays(behaviour) for behaviour in some], shape)
    turns_s = differing.of_turns(lit_first, turns_s)
    every = round(GRID_S / float(found.times_s[1]))
    times_s = found.times_s[::every]
    shown_c = np.moveaxis(found.of(Lump.THERMOMETER)[::every].reshape(-1, *shape), 0, -1).astype(np.float32)
    kept = times_s <= longest_s
    bread, out = browning.browning(found), int(np.searchsorted(found.times_s, longest_s))
    back, front, left, right = (side[out] for side in (bread.back, bread.front, bread.left, bread.right))
    half = (back + front) / 2
    return Seen(
        lit_first=lit_first,
        turns_s=np.where(turns_s <= longest_s, turns_s, np.float32(np.nan)),
        times_s=times_s[kept],
        shown_c=differing.of_readings(times_s, shown_c)[..., kept],
        above=bread.above_so_far[out].reshape(shape).astype(np.float32),
        below=bread.below_so_far[out].reshape(shape).astype(np.float32),
        to_back=_share(back - front, half).reshape(shape),
        to_right=_share(right - left, half).reshape(shape),
    )


def _share(difference: Floats, whole: Floats) -> npt.NDArray[np.float32]:
    return (difference / np.maximum(whole, 1e-9)).astype(np.float32)


def _behaving(behaviour: Behaviour, sound: Ovens, seed: int) -> Ovens:
    random = np.random.default_rng([seed, 1])
    for of_cause in behaviour:
        made = {name: _change(change) for name, change in of_cause if name != LAMP_STAYS}
        sound = changes.changed(sound, made, random)
    return sound


def _change(change: PhysicalChange) -> Change:
    if change.times is not None:
        return Change("factor", change.times, change.spread)
    if change.by is not None:
        return Change("shift", change.by, change.spread)
    return Change("value", float(change.to or 0.0), change.spread)


def _beside(each: Sequence[Ovens]) -> Ovens:
    if len(each) == 1:
        return each[0]
    return replace(each[0], **{name: np.concatenate([getattr(ovens, name) for ovens in each]) for name in NAMES})


def _lamp_stays(behaviour: Behaviour) -> float | None:
    return next((change.to for of_cause in behaviour for name, change in of_cause if name == LAMP_STAYS), None)


def _lamp(
    found: Run, stays: Sequence[float | None], shape: tuple[int, int]
) -> tuple[npt.NDArray[np.bool_], npt.NDArray[np.float32]]:
    """(K, D) and (K, D, M): the lamp hangs on the control, unless it shows nothing."""
    turns = np.full((*shape, MOST_TURNS), np.nan, dtype=np.float32)
    first = found.control.times[:MOST_TURNS]
    turns[..., : len(first)] = np.moveaxis(first.reshape(-1, *shape), 0, -1)
    lit = found.control.closed_first.reshape(shape).copy()
    for number, stay in enumerate(stays):
        if stay is not None:
            lit[number], turns[number] = stay > 0, np.nan
    return lit, turns

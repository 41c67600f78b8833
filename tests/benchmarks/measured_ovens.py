"""What householders write down at simulated ovens: of the second model, or of the own one with other draws."""

from collections.abc import Callable, Mapping, Sequence
from typing import Literal

import numpy as np

from assistant.belief.physical import Seen, behaviour_of, simulate
from assistant.knowledge.model import Knowledge
from tests.second_oven.bread import DARKEST, TO_BACK, TO_RIGHT
from tests.second_oven.diary import MID_BROWN, Witnessed, bread_lines, lamp_lines, thermometer_lines, witnessed
from tests.second_oven.faults import FAULTS, with_cause
from tests.second_oven.heat import course
from tests.second_oven.traits import Traits, sound_ovens

NONE = "none"
MEASURES = ("lamp_watch", "lamp_watch_low", "lamp_watch_fan", "thermometer_log", "bread_tray")
JUDGED_UNEQUALLY = 0.4
"""Shades by which one householder's mid-brown is another's."""

Model = Literal["second", "first"]
Written = dict[str, tuple[str, ...]]
"""Measuring question -> the lines."""


def written_at(model: Model, knowledge: Knowledge, causes: Sequence[str], seed: int, first: int = 0) -> list[Written]:
    """Of ovens with these causes, one after the other; they are numbered from `first`."""
    each = [np.random.default_rng([seed, first + number, 7]) for number in range(len(causes))]
    stops_at = [float(chance.normal(MID_BROWN, JUDGED_UNEQUALLY)) for chance in each]
    found: list[Written] = [{} for _ in causes]
    for question_id in MEASURES:
        at_the_ovens = _SEEN[model](knowledge, causes, question_id, stops_at, seed, first)
        for written, seen, chance in zip(found, at_the_ovens, each, strict=True):
            written[question_id] = tuple(_lines(knowledge, question_id, seen, chance))
    return found


def _lines(knowledge: Knowledge, question_id: str, seen: Witnessed, chance: np.random.Generator) -> list[str]:
    setting_c, longest_s = _run(knowledge, question_id)[1:]
    if knowledge.questions[question_id].kind == "lamp_log":
        return lamp_lines(seen, longest_s, chance)
    if knowledge.questions[question_id].kind == "temperature_log":
        return thermometer_lines(seen, setting_c, longest_s, chance)
    return bread_lines(seen, chance)


def _run(knowledge: Knowledge, question_id: str) -> tuple[str, float, float]:
    """The way of heating, °C, s."""
    run = knowledge.questions[question_id].run
    assert run is not None
    return run.way, run.setting.value, run.longest.value * 60


def _of_second(
    knowledge: Knowledge, causes: Sequence[str], question_id: str, stops_at: Sequence[float], seed: int, first: int
) -> list[Witnessed]:
    """Each oven hangs on the seed and its number alone, and is the same at every measurement."""
    way, setting_c, longest_s = _run(knowledge, question_id)
    ovens = _together([_second_oven(cause, way, seed, first + number) for number, cause in enumerate(causes)])
    found = course(ovens, way, setting_c, round(longest_s))
    return [witnessed(found, number, longest_s, stops) for number, stops in enumerate(stops_at)]


def _second_oven(cause: str, way: str, seed: int, number: int) -> Traits:
    sound = sound_ovens(1, np.random.default_rng([seed, number, 1]))
    return with_cause(sound, cause, way, np.random.default_rng([seed, number, 2]))


def _together(ovens: Sequence[Traits]) -> Traits:
    return {name: np.concatenate([each[name] for each in ovens]) for name in ovens[0]}


def _of_first(
    knowledge: Knowledge, causes: Sequence[str], question_id: str, stops_at: Sequence[float], seed: int, first: int
) -> list[Witnessed]:
    """Drawn by the project's own model, with seeds far from the one that belief draws by."""
    run = knowledge.questions[question_id].run
    assert run is not None
    found: dict[int, Witnessed] = {}
    for cause in dict.fromkeys(causes):
        those = [number for number, each in enumerate(causes) if each == cause]
        behaviour = behaviour_of(knowledge, () if cause == NONE else (cause,))
        even = len(those) + len(those) % 2  # half of the draws have a thermostat, half a sensor
        seen = simulate([behaviour], run, even, seed=1000 + 7919 * seed + first)
        found |= {number: _witnessed(seen, at, stops_at[number]) for at, number in enumerate(those)}
    return [found[number] for number in range(len(causes))]


def _witnessed(seen: Seen, at: int, stops_at: float) -> Witnessed:
    turns = seen.turns_s[0, at]
    above, below = float(seen.above[0, at]), float(seen.below[0, at])
    leans = 1 + TO_BACK[:, 0] * float(seen.to_back[0, at]) / 2 + TO_RIGHT[:, 0] * float(seen.to_right[0, at]) / 2
    until_brown = -np.log(1 - np.clip(stops_at, 1, 4.5) / DARKEST) / max(above, 0.3 * below, 1e-3)
    tops, undersides = (DARKEST * (1 - np.exp(-until_brown * side * leans)) for side in (above, below))
    return Witnessed(
        lit_first=bool(seen.lit_first[0, at]),
        turns_s=[float(turn) for turn in turns if np.isfinite(turn)],
        times_s=seen.times_s,
        shown_c=seen.shown_c[0, at].astype(np.float64),
        tops=tops,
        undersides=undersides,
    )


Witnesses = Callable[[Knowledge, Sequence[str], str, Sequence[float], int, int], list[Witnessed]]
_SEEN: Mapping[Model, Witnesses] = {"second": _of_second, "first": _of_first}

KNOWN_CAUSES = tuple(cause for cause in FAULTS if cause != NONE)

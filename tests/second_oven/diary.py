"""What a person writes down of an oven, in the lines that the program reads: late, rounded, and not everything."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tests.second_oven.bread import DARKEST
from tests.second_oven.heat import EVERY_S, Course
from tests.second_oven.traits import Floats

MISSED = 0.1
"""The share of a lamp's changes that nobody saw."""
LATE_S, UNSTEADY_S = 2.0, 4.0
TOO_SHORT_S = 3.0
"""A flash that is shorter isn't written down."""
STOPS_EARLY = 0.15
ENOUGH_OUTS = 3
MISREAD_K, DIAL_STEP = 3.0, 5
DIAL_ENDS = (0.0, 315.0)
FRIGHTENED_ABOVE_K = 80.0
"""Who reads so much above the setting switches off."""
MID_BROWN = 3.0
SIDE_MISJUDGED, SLICE_MISJUDGED = 0.25, 0.4


@dataclass(frozen=True)
class Witnessed:
    """What one oven did, as it was: whether the lamp was lit at first and when it changed, s; what the thermometer
    showed at `times_s`, °C; and the true shades of nine tops and nine undersides when the bread was taken out.
    """

    lit_first: bool
    turns_s: Sequence[float]
    times_s: Floats
    shown_c: Floats
    tops: Floats
    undersides: Floats


def witnessed(found: Course, oven: int, bread_until_s: float, stops_at: float) -> Witnessed:
    """One oven of a course. Bread is taken out when its tops are `stops_at`, or at the end."""
    lit = found.lit[:, oven]
    times: Floats = np.arange(len(found.shades), dtype=np.float64) * EVERY_S
    shades = found.shades[times <= bread_until_s, :, oven]
    browned = np.flatnonzero(shades[:, :9].mean(axis=1) >= stops_at)
    out = shades[browned[0] if len(browned) else -1].astype(np.float64)
    return Witnessed(
        lit_first=bool(lit[0]),
        turns_s=(np.flatnonzero(lit[1:] != lit[:-1]) + 1.0).tolist(),
        times_s=times,
        shown_c=found.thermometer_c[:, oven].astype(np.float64),
        tops=out[:9],
        undersides=out[9:],
    )


def lamp_lines(seen: Witnessed, longest_s: float, chance: np.random.Generator) -> list[str]:
    """Lines of a lamp that was watched from cold, until it was seen to go out three times, or had gone on too long."""
    patience = chance.uniform(0.6, 1.0) if chance.random() < STOPS_EARLY else 1.0
    ended = longest_s * patience
    noted = seen.lit_first
    lines: list[tuple[float, str]] = [(0.0, _lamp(noted))]
    outs = 0
    for number, turned in enumerate(seen.turns_s):
        lit = seen.lit_first ^ (number % 2 == 0)
        pressed = turned + max(0.0, chance.normal(LATE_S, UNSTEADY_S))
        following = seen.turns_s[number + 1] if number + 1 < len(seen.turns_s) else np.inf
        missed = chance.random() < MISSED or following - turned < TOO_SHORT_S
        if lit == noted or missed or pressed - lines[-1][0] < TOO_SHORT_S or pressed >= ended:
            continue
        lines.append((pressed, _lamp(lit)))
        noted, outs = lit, outs + (not lit)
        if outs == ENOUGH_OUTS:
            ended = min(ended, pressed + chance.uniform(5, 60))
            break
    return [*(f"{_clock(at)} {what}" for at, what in lines), f"{_clock(ended)} end"]


def thermometer_lines(seen: Witnessed, setting_c: float, longest_s: float, chance: np.random.Generator) -> list[str]:
    """Readings every three to five minutes, to the next five degrees; none after one that frightens."""
    lines = []
    at = float(chance.uniform(120, 300))
    while at <= longest_s:
        true = float(np.interp(at, seen.times_s, seen.shown_c)) + chance.normal(0, MISREAD_K)
        read = DIAL_STEP * round(float(np.clip(true, *DIAL_ENDS)) / DIAL_STEP)
        lines.append(f"{_clock(at)} {read} C")
        if read > setting_c + FRIGHTENED_ABOVE_K and len(lines) > 1:
            break
        at += float(chance.uniform(180, 300))
    return lines


def bread_lines(seen: Witnessed, chance: np.random.Generator) -> list[str]:
    """Both sides as they are judged by eye."""
    return [f"top {_judged(seen.tops, chance)}", f"underside {_judged(seen.undersides, chance)}"]


def _judged(shades: Floats, chance: np.random.Generator) -> str:
    told = shades + chance.normal(0, SIDE_MISJUDGED) + chance.normal(0, SLICE_MISJUDGED, 9)
    told = np.where(shades < 0.3, shades, told)  # what is white is plainly white
    digits = "".join(str(int(each)) for each in np.clip(told.round(), 0, DARKEST))
    return f"{digits[:3]} {digits[3:6]} {digits[6:]}"


def _lamp(lit: bool) -> str:
    return "lit" if lit else "out"


def _clock(seconds: float) -> str:
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"

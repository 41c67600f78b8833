"""What somebody wrote down at the oven: a lamp's times, a thermometer's readings, how brown bread became.

Each is a list of short lines as it is kept: `7:40 out`, `12:00 143 C`, `top 333 332 221`. Times are minutes and seconds
since the cold oven was switched on. A line that can't be is refused by what is wrong with it.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from assistant.errors import Refused
from assistant.knowledge.kinds import VERY_HOT
from assistant.knowledge.model import Kind, Question

MOST_LINES = 200
LONGEST_S = 3 * 3600
CLOSEST_S = 2.0
"""Two changes of a lamp that are closer are a slip of the finger; a thermostat needs longer to move."""
LEAST_WATCHED_S = 120.0
COLDEST_C, HOTTEST_C = -5.0, 550.0
"""Beyond it lies no kitchen; a runaway oven, and a thermometer at its end, lie within."""
FAR_ABOVE_K = 70.0
"""A reading so far above the setting is no swing of the control: it runs away."""
LIT_FROM_THE_START_S = 60.0
"""A light first noted as lit by then was lit from the start: a relay, and a person, take some seconds."""
LONG_ENOUGH = 0.8
"""Of the longest time of a watch: only then is a light that stayed lit said never to have gone out."""
FEWEST_READINGS = 2
SHADES = range(6)

Scale = Literal["C", "F"]
UNSAID = "?"
"""In place of a scale, while lines are noted: which one it is wasn't said."""

_LINE = re.compile(r"(\d{1,3}):([0-5]\d) (.+)")
_DEGREES = re.compile(r"(-?\d{1,4}(?:\.\d{1,2})?) (C|F)")
_TRAY = re.compile(r"(top|underside) ([0-5-]{3}) ([0-5-]{3}) ([0-5-]{3})")


@dataclass(frozen=True)
class LampLog:
    """`changes_s`: when the lamp changed, in turn; `lit_first`: whether it was lit before the first change."""

    lit_first: bool
    changes_s: tuple[float, ...]
    ended_s: float

    def until(self, time_s: float) -> "LampLog":
        """As if nobody had watched any longer."""
        kept = tuple(at for at in self.changes_s if at <= time_s)
        return LampLog(self.lit_first, kept, min(self.ended_s, time_s))


@dataclass(frozen=True)
class TemperatureLog:
    """Readings of the household's own thermometer, and when the door was opened."""

    times_s: tuple[float, ...]
    readings_c: tuple[float, ...]
    opened_s: tuple[float, ...]

    def until(self, time_s: float) -> "TemperatureLog":
        """As if nobody had read it any longer; the first reading stays in any case."""
        kept = [pair for pair in zip(self.times_s, self.readings_c, strict=True) if pair[0] <= time_s]
        kept = kept or [(self.times_s[0], self.readings_c[0])]
        return TemperatureLog(tuple(at for at, _ in kept), tuple(c for _, c in kept), self.opened_s)


@dataclass(frozen=True)
class BrownedBread:
    """Shades from 0 (white) to 5 (burnt) of nine slices, row by row from the back left; NaN where none lay."""

    top: tuple[float, ...]
    underside: tuple[float, ...]


def lamp_log(lines: Sequence[str]) -> LampLog:
    """Of lines `M:SS lit`, `M:SS out`, and `M:SS end` as the last one. Raises Refused."""
    told = _in_time(lines)
    *changes, (ended_s, last) = told
    if last != "end" or any(what not in ("lit", "out") for _, what in changes):
        raise Refused("lamp_line_unknown", {"found": next((w for _, w in changes if w not in ("lit", "out")), last)})
    if not changes:
        raise Refused("lamp_first_unknown")
    for (first, was), (second, what) in pairwise(changes):
        if was == what:
            times = {"since": minutes_and_seconds(first), "at": minutes_and_seconds(second)}
            raise Refused("lamp_change_missed", {**times, "light": what})
    if any(second - first < CLOSEST_S for (first, _), (second, _) in pairwise(changes)):
        raise Refused("lamp_changes_too_close")
    if ended_s < LEAST_WATCHED_S:
        raise Refused("watched_too_short", {"least": LEAST_WATCHED_S / 60})
    at_once = changes[0][0] == 0.0 or (changes[0][1] == "lit" and changes[0][0] <= LIT_FROM_THE_START_S)
    return LampLog(
        lit_first=(changes[0][1] == "lit") == at_once,
        changes_s=tuple(at for at, _ in changes[at_once:]),
        ended_s=ended_s,
    )


def temperature_log(lines: Sequence[str]) -> TemperatureLog:
    """Of lines `M:SS 143 C`, `M:SS 290 F` and `M:SS opened`. Raises Refused."""
    told = _in_time(lines)
    readings = [(at, _celsius(what)) for at, what in told if what != "opened"]
    if len(readings) < FEWEST_READINGS:
        raise Refused("too_few_readings", {"least": FEWEST_READINGS})
    if any(first == second for (first, _), (second, _) in pairwise(readings)):
        raise Refused("two_readings_at_once")
    return TemperatureLog(
        times_s=tuple(at for at, _ in readings),
        readings_c=tuple(value for _, value in readings),
        opened_s=tuple(at for at, what in told if what == "opened"),
    )


def browned_bread(lines: Sequence[str]) -> BrownedBread:
    """Of the lines `top 333 332 221` and `underside 000 100 000`: three rows from the back; `-` is no slice."""
    sides: dict[str, tuple[float, ...]] = {}
    for line in lines:
        found = _TRAY.fullmatch(line)
        if found is None:
            raise Refused("tray_line_unknown", {"found": line[:60]})
        if found[1] in sides:
            raise Refused("tray_side_twice", {"side": found[1]})
        sides[found[1]] = tuple(float("nan") if shade == "-" else float(shade) for shade in "".join(found.groups()[1:]))
    if set(sides) != {"top", "underside"}:
        raise Refused("tray_side_missing")
    if any((a == a) != (b == b) for a, b in zip(sides["top"], sides["underside"], strict=True)):
        raise Refused("tray_sides_differ")
    if all(shade != shade for shade in sides["top"]):
        raise Refused("tray_empty")
    return BrownedBread(sides["top"], sides["underside"])


def minutes_and_seconds(duration_s: float) -> str:
    """`460.0` -> `7:40`."""
    whole = round(duration_s)
    return f"{whole // 60}:{whole % 60:02d}"


READ: Mapping[Kind, Callable[[Sequence[str]], LampLog | TemperatureLog | BrownedBread]] = {
    "lamp_log": lamp_log,
    "temperature_log": temperature_log,
    "browning": browned_bread,
}


def summary(question: Question, lines: Sequence[str], low_k: float = 0.0) -> str | None:
    """The one word of MEASURED_CODES by which rules read a measurement; None where the lines can't be.

    `low_k`: K by which the thermometer is known to read too low.
    """
    try:
        read = READ[question.kind](lines)
    except Refused:
        return None
    assert question.run is not None
    if isinstance(read, LampLog):
        return _lamp_pattern(read, question.run.longest.value * 60)
    if isinstance(read, TemperatureLog):
        return VERY_HOT if far_too_hot(question, read.readings_c, low_k) else "read"
    return "looked_at"


def far_too_hot(question: Question, readings_c: Sequence[float], low_k: float = 0.0) -> bool:
    """Whether one of them is far above the setting: as it was read or, of a thermometer that reads `low_k` too low, as
    it is in truth. One that reads too high is believed.
    """
    return question.run is not None and max(readings_c) + max(low_k, 0.0) > question.run.setting.value + FAR_ABOVE_K


def in_order(lines: Sequence[str]) -> tuple[str, ...]:
    """By their times, so that a change that was missed can be noted later; those without a time as they came."""
    return tuple(sorted(lines, key=lambda line: _seconds(line) or 0.0))


def _seconds(line: str) -> float | None:
    found = _LINE.fullmatch(line)
    return int(found[1]) * 60.0 + int(found[2]) if found else None


def latest_s(lines: Sequence[str]) -> float:
    """The last time in the lines, 0 without one."""
    return max((at for line in lines if (at := _seconds(line)) is not None), default=0.0)


_NOT_ENOUGH_YET = frozenset({"watched_too_short", "too_few_readings", "lamp_first_unknown", "tray_side_missing"})


def check_so_far(kind: Kind, lines: Sequence[str]) -> None:
    """Raises Refused where no line to come could make it right, nor a scale that is told later."""
    whole = tuple(_in_a_scale_that_can_be(line) for line in lines)
    if kind == "lamp_log":
        whole = (*lines, f"{lines[-1].split(' ')[0]} end")
    try:
        READ[kind](whole)
    except Refused as refused:
        if refused.code not in _NOT_ENOUGH_YET:
            raise


def _in_a_scale_that_can_be(line: str) -> str:
    (celsius,) = in_scale([line], "C")
    try:
        reading_c(celsius)
    except Refused:
        return in_scale([line], "F")[0]
    return celsius


def _lamp_pattern(log: LampLog, longest_s: float) -> str:
    if not log.changes_s and log.lit_first:
        return "never_out" if log.ended_s >= LONG_ENOUGH * longest_s else "lit_so_far"
    if not log.changes_s:
        return "never_lit"
    if not log.lit_first:
        return "dark_and_then_lit" if len(log.changes_s) == 1 else "cycles"
    return "out_and_never_on" if len(log.changes_s) == 1 else "cycles"


def _in_time(lines: Sequence[str]) -> list[tuple[float, str]]:
    """(seconds, what) of each line, in the order of time."""
    if not lines:
        raise Refused("nothing_written_down")
    if len(lines) > MOST_LINES:
        raise Refused("too_many_lines", {"most": MOST_LINES})
    told = []
    for line in lines:
        found = _LINE.fullmatch(line)
        if found is None:
            raise Refused("time_unreadable", {"found": line[:60]})
        told.append((int(found[1]) * 60.0 + int(found[2]), found[3]))
    for (first, _), (second, _) in pairwise(told):
        if second < first:
            raise Refused("time_goes_back", {"first": minutes_and_seconds(first), "then": minutes_and_seconds(second)})
    if told[-1][0] > LONGEST_S:
        raise Refused("watched_too_long", {"most": LONGEST_S / 3600})
    return told


def reading_c(line: str) -> float | None:
    """The reading in a line, None where there is none."""
    found = _LINE.fullmatch(line)
    return _celsius(found[3]) if found and _DEGREES.fullmatch(found[3]) else None


def put_right(lines: Sequence[str], bias_k: float) -> tuple[str, ...]:
    """The lines with each reading less what the thermometer reads too high, in °C; lines that can't be read stay."""
    return tuple(_put_right(line, bias_k) for line in lines)


def _put_right(line: str, bias_k: float) -> str:
    try:
        celsius = reading_c(line)
    except Refused:
        return line
    if celsius is None:
        return line
    right_c = min(max(celsius - bias_k, COLDEST_C), HOTTEST_C)
    return f"{line.split(' ', 1)[0]} {right_c:.2f} C"


def in_scale(lines: Sequence[str], scale: Scale) -> tuple[str, ...]:
    """The lines, with those readings whose scale wasn't said (`12:00 143 ?`) taken to be in that scale."""
    return tuple(line.removesuffix(UNSAID) + scale if line.endswith(f" {UNSAID}") else line for line in lines)


def _celsius(what: str) -> float:
    found = _DEGREES.fullmatch(what)
    if found is None:
        raise Refused("degrees_unreadable", {"found": what[:60]})
    value = float(found[1])
    celsius = (value - 32) * 5 / 9 if found[2] == "F" else value
    if not COLDEST_C <= celsius <= HOTTEST_C:
        raise Refused("reading_impossible", {"found": what, "least": COLDEST_C, "most": HOTTEST_C})
    return celsius

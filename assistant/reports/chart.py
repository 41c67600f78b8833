"""What is to be drawn of a hot run: what was expected, what was measured, and the words that stand beside it."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import count, pairwise
from math import isfinite
from typing import Literal

from assistant.knowledge.readings import LampLog, TemperatureLog

Lamp = LampLog
Readings = TemperatureLog

LEAST_RANGE_C = 40.0
"""Less is never stretched over the whole height: it would make a mountain of a thermometer's last digit."""
MINUTE_STEPS = (1, 2, 5, 10, 15, 20, 30, 60, 120)

Place = Literal["reading", "below", "above"]
"""`reading` is one within what was expected, or one of which nothing was."""


@dataclass(frozen=True)
class Expected:
    """Of one moment."""

    low_c: float
    middle_c: float
    high_c: float


@dataclass(frozen=True)
class Band:
    """What the thermometer was expected to show, straight between the times. Raises ValueError."""

    times_s: tuple[float, ...]
    low_c: tuple[float, ...]
    middle_c: tuple[float, ...]
    high_c: tuple[float, ...]

    def __post_init__(self) -> None:
        _check_rising("times of the band", self.times_s)
        sides = (self.low_c, self.middle_c, self.high_c)
        if not self.times_s or any(len(side) != len(self.times_s) for side in sides):
            raise ValueError("a band has a low, a middle and a high temperature for each of its times")
        if not all(low <= middle <= high for low, middle, high in zip(*sides, strict=True)):
            raise ValueError("low, middle and high of a band rise in this order")
        _check_finite("temperatures of the band", (*self.low_c, *self.high_c))

    def at(self, time_s: float) -> Expected | None:
        """None before its first time and after its last."""
        if not self.times_s[0] <= time_s <= self.times_s[-1]:
            return None
        after = bisect_left(self.times_s, time_s)
        before = max(after - 1, 0)
        apart = self.times_s[after] - self.times_s[before]
        share = (time_s - self.times_s[before]) / apart if apart else 0.0
        low, middle, high = (
            side[before] + share * (side[after] - side[before]) for side in (self.low_c, self.middle_c, self.high_c)
        )
        return Expected(low, middle, high)

    def within(self, until_s: float) -> tuple[tuple[float, Expected], ...]:
        """(seconds, what was expected) at each of its times up to `until_s`, and there itself if it goes on."""
        times = [time for time in self.times_s if time < until_s] + [until_s]
        found = ((time, self.at(time)) for time in times)
        return tuple((time, expected) for time, expected in found if expected)


@dataclass(frozen=True)
class Chart:
    """`longest_s`: how long the axis of time is, at least; what was measured later makes it longer.

    `set_c` is the oven's setting. Raises ValueError for times that go back and for what isn't a number.
    """

    longest_s: float
    set_c: float
    band: Band | None = None
    lamp: Lamp | None = None
    readings: Readings | None = None

    def __post_init__(self) -> None:
        _check_finite("setting", (self.set_c,))
        if not (isfinite(self.longest_s) and self.longest_s > 0):
            raise ValueError("a chart is longer than nothing")
        if self.lamp:
            _check_rising("changes of the lamp", self.lamp.changes_s)
            _check_finite("end of watching", (self.lamp.ended_s,))
            if self.lamp.ended_s <= 0 or self.lamp.ended_s < max(self.lamp.changes_s, default=0.0):
                raise ValueError("a lamp is watched until after its last change")
        if self.readings:
            _check_rising("times of the readings", self.readings.times_s)
            _check_finite("readings", self.readings.readings_c)
            _check_rising("openings of the door", sorted(set(self.readings.opened_s)))
            if len(self.readings.times_s) != len(self.readings.readings_c):
                raise ValueError("every reading has its time")

    @property
    def until_s(self) -> float:
        """Where the axis of time ends."""
        ends = [self.longest_s]
        if self.lamp:
            ends.append(self.lamp.ended_s)
        if self.readings:
            ends += [*self.readings.times_s, *self.readings.opened_s]
        return max(ends)

    @property
    def tells_temperatures(self) -> bool:
        """Without, only the lamp is drawn."""
        return self.band is not None or self.readings is not None

    @property
    def range_c(self) -> tuple[float, float]:
        """(coldest, hottest) of all that is drawn."""
        band = [side for _, each in self.shown_band for side in (each.low_c, each.high_c)]
        read = self.readings.readings_c if self.readings else ()
        coldest, hottest = min((self.set_c, *band, *read)), max((self.set_c, *band, *read))
        missing = max(LEAST_RANGE_C - (hottest - coldest), 0.0)
        return coldest - missing / 2, hottest + missing / 2

    @property
    def shown_band(self) -> tuple[tuple[float, Expected], ...]:
        return self.band.within(self.until_s) if self.band else ()

    @property
    def placed_readings(self) -> tuple[tuple[float, float, Place], ...]:
        """(seconds, degrees, where it lies)."""
        if self.readings is None:
            return ()
        pairs = zip(self.readings.times_s, self.readings.readings_c, strict=True)
        return tuple((time, reading, self._place(time, reading)) for time, reading in pairs)

    def _place(self, time_s: float, reading_c: float) -> Place:
        expected = self.band.at(time_s) if self.band else None
        if expected is None or expected.low_c <= reading_c <= expected.high_c:
            return "reading"
        return "below" if reading_c < expected.low_c else "above"


@dataclass(frozen=True)
class Words:
    """What stands in a chart, in the reader's language; a legend holds only the words for what occurs.

    `description` says in sentences what the chart shows: pictures carry it. `degrees` and `minutes` are the names of
    the axes, `both` a lamp that changes faster than can be drawn.
    """

    title: str
    description: str
    degrees: str
    minutes: str
    expected: str
    middle: str
    setting: str
    reading: str
    below: str
    above: str
    opened: str
    lamp: str
    lit: str
    out: str
    both: str


@dataclass(frozen=True)
class Spell:
    """A time during which the lamp stayed as it was."""

    lit: bool
    start_s: float
    end_s: float


def spells(lamp: Lamp) -> tuple[Spell, ...]:
    """From switching on to the end of watching, in turn."""
    edges = pairwise((0.0, *lamp.changes_s, lamp.ended_s))
    turns = (Spell(lamp.lit_first == (number % 2 == 0), start, end) for number, (start, end) in enumerate(edges))
    return tuple(spell for spell in turns if spell.start_s < spell.end_s)


def degree_steps() -> Iterator[int]:
    """Distances between two marks of the axis, from small to as large as it takes; degrees Celsius."""
    yield 5
    for power in count():
        yield from (step * 10**power for step in (10, 20, 25, 40, 50))


def minute_marks(until_s: float, most: int) -> range:
    """The minutes that are written at the axis: `most` at the most, from 0, evenly."""
    last = int(until_s // 60)
    longer = (60 * 2**power for power in count(2))
    fitting = (step for steps in (MINUTE_STEPS, longer) for step in steps if last // step + 1 <= most)
    return range(0, last + 1, next(fitting))


def _check_rising(what: str, times_s: Sequence[float]) -> None:
    _check_finite(what, times_s)
    if any(first >= second for first, second in pairwise(times_s)) or any(time < 0 for time in times_s[:1]):
        raise ValueError(f"the {what} don't go on from 0")


def _check_finite(what: str, numbers: Sequence[float]) -> None:
    if not all(isfinite(number) for number in numbers):
        raise ValueError(f"the {what} aren't all numbers")

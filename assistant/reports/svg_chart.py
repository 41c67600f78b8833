"""A chart as SVG, black on white, to be printed: patterns, dashes and shapes carry it, no colour."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor
from xml.etree import ElementTree as Xml

from assistant.reports.chart import Chart, Lamp, Words, degree_steps, minute_marks, spells
from assistant.reports.lettering import cells, shown, wrapped
from assistant.reports.svg import FAINT, GRID, INK, add, line, picture, text, written
from assistant.reports.svg_marks import (
    Sign,
    define_shade,
    draw_door,
    draw_lamp_spell,
    draw_reading,
    draw_sign,
    draw_stroke,
    points,
    shade_of,
    width_of,
)

WIDTH = 720.0
LEFT, RIGHT, EDGE = 64.0, 56.0, 24.0
PLOT_WIDE, PLOT_TALL, STRIP_TALL = WIDTH - LEFT - RIGHT, 264.0, 18.0
MOST_STEPS = 11
"""Of the axis of degrees."""
MOST_MINUTES = 13
TITLE_SIZE, SIZE = 17, 12
TITLE_LINE, LINE = 23.0, 17.0
EM_SHARE = 0.66
"""How wide a cell is taken for, in parts of the size of the letters; most letters of most fonts are narrower."""
SIGN_GAP, ENTRY_GAP = 8.0, 20.0


@dataclass(frozen=True)
class _Entry:
    """Of the legend; `top` counts from the legend's own top."""

    sign: Sign
    lines: Sequence[str]
    left: float
    top: float


@dataclass(frozen=True)
class _Sheet:
    """Where things stand, in pixels from the top, and how degrees and seconds become pixels."""

    title: Sequence[str]
    degrees: Sequence[str]
    minutes: Sequence[str]
    lamp: Sequence[str]
    entries: Sequence[_Entry]
    until_s: float
    coldest_c: int
    hottest_c: int
    step_c: int
    plot_tall: float
    strip_tall: float

    @property
    def plot_top(self) -> float:
        return EDGE + TITLE_LINE * len(self.title) + LINE * len(self.degrees) + 10

    @property
    def floor(self) -> float:
        return self.plot_top + self.plot_tall

    @property
    def strip_top(self) -> float:
        return self.floor + LINE * len(self.lamp) + (10 if self.strip_tall else 0)

    @property
    def axis(self) -> float:
        """The lower edge, from which the marks of the minutes hang."""
        return self.strip_top + self.strip_tall

    @property
    def legend_top(self) -> float:
        return self.axis + 26 + LINE * len(self.minutes) + 14

    @property
    def height(self) -> float:
        return self.legend_top + max((each.top + LINE * len(each.lines) for each in self.entries), default=0.0) + 10

    def x(self, time_s: float) -> float:
        return LEFT + PLOT_WIDE * time_s / self.until_s

    def y(self, degrees_c: float) -> float:
        return self.floor - self.plot_tall * (degrees_c - self.coldest_c) / (self.hottest_c - self.coldest_c)


def svg_chart(chart: Chart, words: Words, *, name: str = "") -> str:
    """The whole file. `name` stands before the ids within, so that several charts can stand on one page."""
    sheet = _sheet(chart, words)
    root = picture(WIDTH, ceil(sheet.height), shown(words.title), shown(words.description), name=name)
    define_shade(root, name)
    _write(root, EDGE, EDGE + TITLE_SIZE, sheet.title, size=TITLE_SIZE)
    _draw_minutes(root, sheet)
    if chart.tells_temperatures:
        _draw_degrees(root, sheet)
        _draw_band(root, chart, sheet, name)
        _draw_measured(root, chart, sheet)
    if chart.lamp:
        _draw_lamp(root, chart.lamp, sheet)
    for entry in sheet.entries:
        middle = sheet.legend_top + entry.top + LINE / 2
        draw_sign(root, entry.sign, entry.left, middle, name)
        _write(root, entry.left + width_of(entry.sign) + SIGN_GAP, middle + 4, entry.lines)
    return written(root)


def _sheet(chart: Chart, words: Words) -> _Sheet:
    coldest_c, hottest_c, step_c = _scale(chart.range_c)
    room = WIDTH - 2 * EDGE
    return _Sheet(
        title=wrapped(words.title, _cells_in(room, TITLE_SIZE)),
        degrees=wrapped(words.degrees, _cells_in(room, SIZE)) if chart.tells_temperatures else (),
        minutes=wrapped(words.minutes, _cells_in(PLOT_WIDE, SIZE)),
        lamp=wrapped(words.lamp, _cells_in(PLOT_WIDE, SIZE)) if chart.lamp else (),
        entries=_entries(chart, words),
        until_s=chart.until_s,
        coldest_c=coldest_c,
        hottest_c=hottest_c,
        step_c=step_c,
        plot_tall=PLOT_TALL if chart.tells_temperatures else 0.0,
        strip_tall=STRIP_TALL if chart.lamp else 0.0,
    )


def _scale(range_c: tuple[float, float]) -> tuple[int, int, int]:
    """(coldest, hottest, step) of the axis, in whole steps."""
    for step in degree_steps():
        first, last = floor(range_c[0] / step), ceil(range_c[1] / step)
        if last - first <= MOST_STEPS:
            return first * step, last * step, step
    raise AssertionError("steps grow without end")


def _cells_in(room: float, size: int) -> int:
    return int(room / (size * EM_SHARE))


def _occurring(chart: Chart, words: Words) -> list[tuple[Sign, str]]:
    """The signs that the chart needs, with their words."""
    places = {place for _, _, place in chart.placed_readings}
    states = {spell.lit for spell in spells(chart.lamp)} if chart.lamp else set()
    signs: tuple[tuple[bool, Sign, str], ...] = (
        (bool(chart.shown_band), "expected", words.expected),
        (bool(chart.shown_band), "middle", words.middle),
        (chart.tells_temperatures, "setting", words.setting),
        ("reading" in places, "reading", words.reading),
        ("below" in places, "below", words.below),
        ("above" in places, "above", words.above),
        (bool(chart.readings and chart.readings.opened_s), "opened", words.opened),
        (True in states, "lit", words.lit),
        (False in states, "out", words.out),
    )
    return [(sign, word) for occurs, sign, word in signs if occurs]


def _entries(chart: Chart, words: Words) -> list[_Entry]:
    """Beside each other as long as there is room."""
    placed: list[_Entry] = []
    left, top, lines_of_row = EDGE, 0.0, 1
    for sign, word in _occurring(chart, words):
        signed = width_of(sign) + SIGN_GAP
        lines = wrapped(word, _cells_in(WIDTH - 2 * EDGE - signed, SIZE))
        wide = signed + SIZE * EM_SHARE * max(map(cells, lines), default=0)
        if left > EDGE and left + wide > WIDTH - EDGE:
            left, top, lines_of_row = EDGE, top + LINE * lines_of_row + 4, 1
        placed.append(_Entry(sign, lines, left, top))
        left += wide + ENTRY_GAP
        lines_of_row = max(len(lines), lines_of_row)
    return placed


def _write(
    root: Xml.Element, x: float, y: float, lines: Sequence[str], *, size: int = SIZE, anchor: str = "start"
) -> None:
    """`y` is where the first line stands."""
    for number, words in enumerate(lines):
        weight, tall = ("600", TITLE_LINE) if size == TITLE_SIZE else ("400", LINE)
        text(root, x, y + tall * number, words, size=size, weight=weight, anchor=anchor)


def _draw_minutes(root: Xml.Element, sheet: _Sheet) -> None:
    for minute in minute_marks(sheet.until_s, MOST_MINUTES):
        x = sheet.x(60.0 * minute)
        line(root, (x, sheet.plot_top), (x, sheet.floor), GRID)
        line(root, (x, sheet.axis), (x, sheet.axis + 5), INK)
        text(root, x, sheet.axis + 19, str(minute), size=SIZE, anchor="middle")
    line(root, (LEFT, sheet.axis), (LEFT + PLOT_WIDE, sheet.axis), INK)
    _write(root, LEFT + PLOT_WIDE / 2, sheet.axis + 26 + SIZE, sheet.minutes, anchor="middle")


def _draw_degrees(root: Xml.Element, sheet: _Sheet) -> None:
    _write(root, EDGE, sheet.plot_top - 10 - LINE * len(sheet.degrees) + SIZE, sheet.degrees)
    for degrees in range(sheet.coldest_c, sheet.hottest_c + 1, sheet.step_c):
        y = sheet.y(degrees)
        line(root, (LEFT, y), (LEFT + PLOT_WIDE, y), GRID)
        line(root, (LEFT - 5, y), (LEFT, y), INK)
        text(root, LEFT - 9, y + 4, str(degrees), size=SIZE, anchor="end")
    line(root, (LEFT, sheet.plot_top), (LEFT, sheet.floor), INK)
    line(root, (LEFT, sheet.floor), (LEFT + PLOT_WIDE, sheet.floor), INK)


def _draw_band(root: Xml.Element, chart: Chart, sheet: _Sheet, name: str) -> None:
    band = chart.shown_band
    if not band:
        return
    above = tuple((sheet.x(time), sheet.y(expected.high_c)) for time, expected in band)
    below = tuple((sheet.x(time), sheet.y(expected.low_c)) for time, expected in reversed(band))
    add(root, "polygon", points=points((*above, *below)), **shade_of(name))
    middle = tuple((sheet.x(time), sheet.y(expected.middle_c)) for time, expected in band)
    add(root, "polyline", points=points(middle), fill="none", stroke=FAINT)


def _draw_measured(root: Xml.Element, chart: Chart, sheet: _Sheet) -> None:
    """Over the band: the setting with its figure, the door, the readings."""
    y = sheet.y(chart.set_c)
    draw_stroke(root, "setting", (LEFT, y), (LEFT + PLOT_WIDE, y))
    text(root, LEFT + PLOT_WIDE + 7, y + 4, str(round(chart.set_c)), size=SIZE, weight="600")
    for opened_s in chart.readings.opened_s if chart.readings else ():
        draw_door(root, sheet.x(opened_s), sheet.plot_top, sheet.floor)
    for time_s, reading_c, place in chart.placed_readings:
        draw_reading(root, place, sheet.x(time_s), sheet.y(reading_c))


def _draw_lamp(root: Xml.Element, lamp: Lamp, sheet: _Sheet) -> None:
    _write(root, LEFT, sheet.strip_top - 5 - LINE * (len(sheet.lamp) - 1), sheet.lamp)
    for spell in spells(lamp):
        left, right = sheet.x(spell.start_s), sheet.x(spell.end_s)
        draw_lamp_spell(root, left, sheet.strip_top, right - left, sheet.strip_tall, lit=spell.lit)
    wide = sheet.x(lamp.ended_s) - LEFT
    add(root, "rect", x=LEFT, y=sheet.strip_top, width=wide, height=sheet.strip_tall, fill="none", stroke=INK)

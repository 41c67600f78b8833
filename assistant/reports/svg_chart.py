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

PLOT_TALL, STRIP_TALL = 264.0, 18.0
MOST_STEPS = 11
"""Of the axis of degrees."""
TITLE_LINE, LINE = 23.0, 17.0
EM_SHARE = 0.66
"""How wide a cell is taken for, in parts of the size of the letters; most letters of most fonts are narrower."""
SIGN_GAP, ENTRY_GAP = 8.0, 20.0


@dataclass(frozen=True)
class Format:
    """How wide a chart is and what stands beside its plot, in pixels, and the sizes of its letters. `most_minutes`:
    marks of the axis of time.
    """

    width: float
    left: float
    right: float
    edge: float
    most_minutes: int
    title_size: int
    size: int

    @property
    def plot_wide(self) -> float:
        return self.width - self.left - self.right


WIDE = Format(720.0, 64.0, 56.0, 24.0, 13, 17, 12)
NARROW = Format(340.0, 52.0, 38.0, 8.0, 5, 16, 13)
"""For a phone held upright."""


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

    form: Format
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
        return self.form.edge + TITLE_LINE * len(self.title) + LINE * len(self.degrees) + 10

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

    @property
    def left(self) -> float:
        return self.form.left

    @property
    def right(self) -> float:
        """Where the plot ends."""
        return self.form.left + self.form.plot_wide

    def x(self, time_s: float) -> float:
        return self.left + self.form.plot_wide * time_s / self.until_s

    def y(self, degrees_c: float) -> float:
        return self.floor - self.plot_tall * (degrees_c - self.coldest_c) / (self.hottest_c - self.coldest_c)


def svg_chart(chart: Chart, words: Words, *, name: str = "", form: Format = WIDE) -> str:
    """The whole file. `name` stands before the ids within, so that several charts can stand on one page."""
    sheet = _sheet(chart, words, form)
    root = picture(form.width, ceil(sheet.height), shown(words.title), shown(words.description), name=name)
    define_shade(root, name)
    _write_title(root, sheet)
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
        _write(root, entry.left + width_of(entry.sign) + SIGN_GAP, middle + 4, entry.lines, form.size)
    return written(root)


def _sheet(chart: Chart, words: Words, form: Format) -> _Sheet:
    coldest_c, hottest_c, step_c = _scale(chart.range_c)
    room = form.width - 2 * form.edge
    return _Sheet(
        form=form,
        title=wrapped(words.title, _cells_in(room, form.title_size)),
        degrees=wrapped(words.degrees, _cells_in(room, form.size)) if chart.tells_temperatures else (),
        minutes=wrapped(words.minutes, _cells_in(form.plot_wide, form.size)),
        lamp=wrapped(words.lamp, _cells_in(form.plot_wide, form.size)) if chart.lamp else (),
        entries=_entries(chart, words, form),
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


def _entries(chart: Chart, words: Words, form: Format) -> list[_Entry]:
    """Beside each other as long as there is room."""
    placed: list[_Entry] = []
    left, top, lines_of_row = form.edge, 0.0, 1
    for sign, word in _occurring(chart, words):
        signed = width_of(sign) + SIGN_GAP
        lines = wrapped(word, _cells_in(form.width - 2 * form.edge - signed, form.size))
        wide = signed + form.size * EM_SHARE * max(map(cells, lines), default=0)
        if left > form.edge and left + wide > form.width - form.edge:
            left, top, lines_of_row = form.edge, top + LINE * lines_of_row + 4, 1
        placed.append(_Entry(sign, lines, left, top))
        left += wide + ENTRY_GAP
        lines_of_row = max(len(lines), lines_of_row)
    return placed


def _write(root: Xml.Element, x: float, y: float, lines: Sequence[str], size: int, *, anchor: str = "start") -> None:
    """`y` is where the first line stands."""
    for number, words in enumerate(lines):
        text(root, x, y + LINE * number, words, size=size, anchor=anchor)


def _write_title(root: Xml.Element, sheet: _Sheet) -> None:
    form = sheet.form
    for number, words in enumerate(sheet.title):
        y = form.edge + form.title_size + TITLE_LINE * number
        text(root, form.edge, y, words, size=form.title_size, weight="600")


def _draw_minutes(root: Xml.Element, sheet: _Sheet) -> None:
    size = sheet.form.size
    for minute in minute_marks(sheet.until_s, sheet.form.most_minutes):
        x = sheet.x(60.0 * minute)
        line(root, (x, sheet.plot_top), (x, sheet.floor), GRID)
        line(root, (x, sheet.axis), (x, sheet.axis + 5), INK)
        text(root, x, sheet.axis + 19, str(minute), size=size, anchor="middle")
    line(root, (sheet.left, sheet.axis), (sheet.right, sheet.axis), INK)
    _write(root, (sheet.left + sheet.right) / 2, sheet.axis + 26 + size, sheet.minutes, size, anchor="middle")


def _draw_degrees(root: Xml.Element, sheet: _Sheet) -> None:
    left, size = sheet.left, sheet.form.size
    _write(root, sheet.form.edge, sheet.plot_top - 10 - LINE * len(sheet.degrees) + size, sheet.degrees, size)
    for degrees in range(sheet.coldest_c, sheet.hottest_c + 1, sheet.step_c):
        y = sheet.y(degrees)
        line(root, (left, y), (sheet.right, y), GRID)
        line(root, (left - 5, y), (left, y), INK)
        text(root, left - 9, y + 4, str(degrees), size=size, anchor="end")
    line(root, (left, sheet.plot_top), (left, sheet.floor), INK)
    line(root, (left, sheet.floor), (sheet.right, sheet.floor), INK)


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
    draw_stroke(root, "setting", (sheet.left, y), (sheet.right, y))
    text(root, sheet.right + 7, y + 4, str(round(chart.set_c)), size=sheet.form.size, weight="600")
    for opened_s in chart.readings.opened_s if chart.readings else ():
        draw_door(root, sheet.x(opened_s), sheet.plot_top, sheet.floor)
    for time_s, reading_c, place in chart.placed_readings:
        draw_reading(root, place, sheet.x(time_s), sheet.y(reading_c))


def _draw_lamp(root: Xml.Element, lamp: Lamp, sheet: _Sheet) -> None:
    _write(root, sheet.left, sheet.strip_top - 5 - LINE * (len(sheet.lamp) - 1), sheet.lamp, sheet.form.size)
    for spell in spells(lamp):
        left, right = sheet.x(spell.start_s), sheet.x(spell.end_s)
        draw_lamp_spell(root, left, sheet.strip_top, right - left, sheet.strip_tall, lit=spell.lit)
    wide = sheet.x(lamp.ended_s) - sheet.left
    add(root, "rect", x=sheet.left, y=sheet.strip_top, width=wide, height=sheet.strip_tall, fill="none", stroke=INK)

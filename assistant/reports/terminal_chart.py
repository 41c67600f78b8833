"""A chart as lines of text, for terminals of 40 columns or more: shape alone tells things apart, never colour."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, floor

from assistant.reports.chart import Chart, Expected, Lamp, Words, degree_steps, minute_marks, spells
from assistant.reports.lettering import cells, shown, to_the_right, wrapped

NARROWEST = 40
MOST_ROWS = 10
"""Of the temperatures. The legend and words of more than a line come on top."""
FEW_ROWS = 5
"""Of so many every one is labelled, of more every second."""
RIGHT = 5
"""Columns right of the axis of time, for the setting's figure."""
LABEL_EVERY = 6
"""Columns between two labels of the axis of time, at least."""
SHORT_SHARE = 5
"""Words that take less than this part of the width stand beside the axis, longer ones on lines of their own."""
GAP = "   "


@dataclass(frozen=True)
class Marks:
    """One cell each."""

    expected: str
    setting: str
    opened: str
    reading: str
    below: str
    above: str
    lit: str
    out: str
    both: str
    side: str
    label: str
    corner: str
    floor: str
    minute: str


BLOCKS = Marks("░", "─", "╎", "●", "▼", "▲", "█", "▁", "▄", "│", "┤", "└", "─", "┴")
PLAIN = Marks(":", "-", "!", "o", "v", "^", "#", ".", "=", "|", "+", "+", "-", "+")


@dataclass(frozen=True)
class _Frame:
    """Where things stand: `margin` columns for labels, one for the axis, then `columns` for the time."""

    width: int
    margin: int
    until_s: float

    @property
    def columns(self) -> int:
        return self.width - self.margin - 2 - RIGHT

    def column(self, time_s: float) -> int:
        """The one that a moment falls into; the end of the axis falls into the last."""
        return min(floor(time_s / self.until_s * self.columns), self.columns - 1)

    def edge(self, time_s: float) -> int:
        """The edge between two columns that is nearest; 0 is the axis."""
        return floor(time_s / self.until_s * self.columns + 0.5)

    def middle_s(self, column: int) -> float:
        return (column + 0.5) / self.columns * self.until_s

    def has_room_for(self, label: str) -> bool:
        return cells(shown(label)) <= self.margin

    def labelled(self, label: str, body: str) -> list[str]:
        """One line, or the label on its own before it where it is too long to stand beside it."""
        if self.has_room_for(label):
            return [f"{to_the_right(shown(label), self.margin)} {body}".rstrip()]
        return [*wrapped(label, self.width), f"{' ' * (self.margin + 1)}{body}".rstrip()]


@dataclass(frozen=True)
class _Rows:
    """A row stands for the degrees within half a step of its own; row 0 is the lowest."""

    step: int
    lowest: int
    count: int

    def row(self, degrees_c: float) -> int:
        return _nearest(degrees_c / self.step) - self.lowest

    def shaded(self, expected: Expected) -> range:
        """The rows whose own degrees were expected, or the one nearest to the middle."""
        low, high = ceil(expected.low_c / self.step), floor(expected.high_c / self.step)
        nearest = self.row(expected.middle_c)
        return range(low - self.lowest, high - self.lowest + 1) or range(nearest, nearest + 1)

    def degrees(self, row: int) -> int:
        return (row + self.lowest) * self.step


def terminal_chart(chart: Chart, words: Words, *, width: int = 72, plain: bool = False) -> tuple[str, ...]:
    """Lines of at most `width` cells. Raises ValueError below NARROWEST.

    `plain`: the marks are all ASCII; words stay as they are. The middle of what was expected is left to pictures.
    A lamp alone stands on the axis; below temperatures it stands under theirs.
    """
    if width < NARROWEST:
        raise ValueError(f"a chart takes {NARROWEST} columns or more")
    marks = PLAIN if plain else BLOCKS
    frame = _frame(chart, words, width)
    lines = wrapped(words.title, width)
    lines += _temperature_lines(chart, words, frame, marks) if chart.tells_temperatures else []
    lamp = _lamp_row(chart.lamp, frame, marks) if chart.lamp else ""
    if chart.lamp and not chart.tells_temperatures:
        lines += frame.labelled(words.lamp, marks.side + lamp)
    lines += _time_lines(chart, words, frame, marks)
    if chart.lamp and chart.tells_temperatures:
        lines += frame.labelled(words.lamp, f" {lamp}")
    return (*lines, *_legend(chart, words, frame, marks))


def _frame(chart: Chart, words: Words, width: int) -> _Frame:
    names = [words.minutes]
    if chart.lamp:
        names.append(words.lamp)
    if chart.tells_temperatures:
        names += [words.degrees, *(str(round(each)) for each in chart.range_c)]
    beside = [cells(shown(name)) for name in names]
    return _Frame(width, max((each for each in beside if each * SHORT_SHARE < width), default=0), chart.until_s)


def _rows(range_c: tuple[float, float]) -> _Rows:
    for step in degree_steps():
        lowest, highest = (_nearest(each / step) for each in range_c)
        if highest - lowest < MOST_ROWS:
            return _Rows(step, lowest, highest - lowest + 1)
    raise AssertionError("steps grow without end")


def _nearest(number: float) -> int:
    """Halves go up, so that what is drawn doesn't hang on odd and even."""
    return floor(number + 0.5)


def _temperature_lines(chart: Chart, words: Words, frame: _Frame, marks: Marks) -> list[str]:
    rows = _rows(chart.range_c)
    drawn = _drawn(chart, frame, rows, marks)
    lines = [] if frame.has_room_for(words.degrees) else wrapped(words.degrees, frame.width)
    for row in reversed(range(rows.count)):
        degrees = rows.degrees(row)
        is_labelled = rows.count <= FEW_ROWS or degrees // rows.step % 2 == 0
        label, axis = (str(degrees), marks.label) if is_labelled else ("", marks.side)
        setting = f" {round(chart.set_c)}" if row == rows.row(chart.set_c) else ""
        lines += frame.labelled(label, f"{axis}{''.join(drawn[row])}{setting}")
    return lines


def _drawn(chart: Chart, frame: _Frame, rows: _Rows, marks: Marks) -> list[list[str]]:
    """Cells by row, the lowest first. What was measured covers what was set, and that what was expected."""
    drawn = [[" "] * frame.columns for _ in range(rows.count)]
    for column in range(frame.columns):
        expected = chart.band.at(frame.middle_s(column)) if chart.band else None
        if expected:
            for row in rows.shaded(expected):
                drawn[row][column] = marks.expected
    for column in range(0, frame.columns, 2):
        drawn[rows.row(chart.set_c)][column] = marks.setting
    for opened_s in chart.readings.opened_s if chart.readings else ():
        for cells_of_row in drawn:
            cells_of_row[frame.column(opened_s)] = marks.opened
    for time_s, reading_c, place in sorted(chart.placed_readings, key=lambda each: each[2] != "reading"):
        drawn[rows.row(reading_c)][frame.column(time_s)] = getattr(marks, place)
    return drawn


def _time_lines(chart: Chart, words: Words, frame: _Frame, marks: Marks) -> list[str]:
    """The axis, beside it what the degrees above are, and below it the minutes, each in the middle below its mark."""
    floor_line = [marks.floor] * frame.columns
    numbers = ""
    for minute in minute_marks(frame.until_s, frame.columns // LABEL_EVERY):
        column = frame.column(60.0 * minute)
        floor_line[column] = marks.minute
        number = str(minute)
        numbers = numbers.ljust(max(column - (len(number) - 1) // 2, 0)) + number
    axis = f"{marks.corner}{''.join(floor_line)}"
    degrees = words.degrees if chart.tells_temperatures and frame.has_room_for(words.degrees) else ""
    return [*frame.labelled(degrees, axis), *frame.labelled(words.minutes, " " + numbers)]


def _lamp_row(lamp: Lamp, frame: _Frame, marks: Marks) -> str:
    """Spells end at the nearest edge; one without room for itself marks the column that its middle falls into."""
    row = [" "] * frame.columns
    too_short = []
    for spell in spells(lamp):
        start, end = frame.edge(spell.start_s), frame.edge(spell.end_s)
        row[start:end] = (marks.lit if spell.lit else marks.out) * (end - start)
        if start == end:
            too_short.append((spell.start_s + spell.end_s) / 2)
    for middle_s in too_short:
        row[frame.column(middle_s)] = marks.both
    return "".join(row)


def _legend(chart: Chart, words: Words, frame: _Frame, marks: Marks) -> list[str]:
    """Only what occurs, each sign with its word."""
    places = {place for _, _, place in chart.placed_readings}
    row = _lamp_row(chart.lamp, frame, marks) if chart.lamp else ""
    entries = (
        (bool(chart.shown_band), marks.expected * 3, words.expected),
        (chart.tells_temperatures, f"{marks.setting} {marks.setting}", words.setting),
        ("reading" in places, marks.reading, words.reading),
        ("below" in places, marks.below, words.below),
        ("above" in places, marks.above, words.above),
        (bool(chart.readings and chart.readings.opened_s), marks.opened, words.opened),
        (marks.lit in row, marks.lit, words.lit),
        (marks.out in row, marks.out, words.out),
        (marks.both in row, marks.both, words.both),
    )
    return _flowing([f"{sign} {shown(word)}" for occurs, sign, word in entries if occurs], frame.width)


def _flowing(entries: Iterable[str], width: int) -> list[str]:
    """Entries beside each other as long as there is room, each in one piece where that can be."""
    lines: list[str] = []
    for entry in entries:
        if lines and cells(lines[-1]) + len(GAP) + cells(entry) <= width:
            lines[-1] += GAP + entry
        else:
            lines += wrapped(entry, width)
    return lines

"""What interviews make of each cause as SVG, to be printed. Shapes and words carry it, colour only helps."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil
from xml.etree import ElementTree as Xml

from assistant.authoring.coverage import Covered
from assistant.reports.svg import ACCENT, FAINT, GRID, INK, add, line, picture, text, written

ROW = 19.0
BAR_TALL = 12.0
LEFT, RIGHT, TOP, BOTTOM = 28, 46, 156, 36
NAMES, FIRST, SHARES, SERVED, STOPPED, QUESTIONS = 326, 60, 290, 80, 80, 220
WIDTH = LEFT + NAMES + FIRST + SHARES + SERVED + STOPPED + QUESTIONS + RIGHT
FIRST_AT = LEFT + NAMES + FIRST - 10
SHARES_AT = LEFT + NAMES + FIRST
SERVED_AT = SHARES_AT + SHARES + SERVED / 2 + 6
STOPPED_AT = SERVED_AT + (SERVED + STOPPED) / 2
QUESTIONS_AT = SHARES_AT + SHARES + SERVED + STOPPED + 16
EVERY = 5
"""Rows: after so many a thin line, so that the eye keeps to its row."""
LONGEST_NAME = 50
"""Characters; for a longer one the cause's id stands, so that two that begin alike stay apart."""
STRIPES = "stripes"
STEP = 10
"""Questions between two marks of the axis."""


@dataclass(frozen=True)
class Labels:
    """What stands in the picture; `description` says all of it in words. `causes`: cause -> what it is called."""

    title: str
    description: str
    note: str
    first: str
    shares: str
    questions: str
    served: str
    stopped: str
    keys: Mapping[str, str]
    causes: Mapping[str, str]


def coverage_picture(causes: Sequence[Covered], labels: Labels) -> str:
    """The whole file: a row for each cause, in their order."""
    height = TOP + ROW * len(causes) + BOTTOM
    root = picture(WIDTH, height, labels.title, labels.description)
    _define_stripes(root)
    text(root, LEFT, 36, labels.title, size=18, weight="600")
    text(root, LEFT, 56, labels.note, fill=FAINT)
    _draw_key(root, labels)
    most = max((each.questions_most for each in causes), default=1)
    longest = STEP * ceil(most / STEP)
    scale = QUESTIONS / longest
    _draw_axes(root, labels, len(causes), longest)
    for number, each in enumerate(causes):
        _draw_row(root, TOP + ROW * number, each, labels.causes[each.cause], scale)
    return written(root)


def _define_stripes(root: Xml.Element) -> None:
    """A pattern that stays apart from solid and empty in black and white."""
    pattern = add(
        add(root, "defs"),
        "pattern",
        id=STRIPES,
        width=5,
        height=5,
        patternUnits="userSpaceOnUse",
        patternTransform="rotate(45)",
    )
    add(pattern, "rect", width=5, height=5, fill="#ffffff")
    add(pattern, "rect", width=2, height=5, fill=ACCENT)


def _draw_key(root: Xml.Element, labels: Labels) -> None:
    y = 82.0
    x = float(SHARES_AT)
    for key, fill in (("leads", ACCENT), ("three", f"url(#{STRIPES})"), ("neither", "#ffffff")):
        add(root, "rect", x=x, y=y - 10, width=18, height=BAR_TALL, fill=fill, stroke=ACCENT)
        text(root, x + 24, y, labels.keys[key])
        x += 24 + 6.6 * len(labels.keys[key]) + 16
    x = float(SHARES_AT)
    y = 102.0
    add(root, "circle", cx=x + 9, cy=y - 4, r=4, fill=INK)
    text(root, x + 24, y, labels.keys["median"])
    x += 24 + 6.6 * len(labels.keys["median"]) + 16
    _mark_most(root, x + 9, y - 4)
    text(root, x + 24, y, labels.keys["most"])


def _mark_most(group: Xml.Element, x: float, y: float) -> None:
    line(group, (x, y - 5), (x, y + 5), INK, width=2)


def _draw_axes(root: Xml.Element, labels: Labels, rows: int, longest: int) -> None:
    floor = TOP + ROW * rows
    for percent in range(0, 101, 20):
        at = SHARES_AT + SHARES * percent / 100
        line(root, (at, TOP - 4), (at, floor), GRID)
        _mark_axis(root, at, floor, f"{percent} %")
    for questions in range(0, longest + 1, STEP):
        at = QUESTIONS_AT + QUESTIONS * questions / longest
        line(root, (at, TOP - 4), (at, floor), GRID)
        _mark_axis(root, at, floor, str(questions))
    for row in range(EVERY, rows, EVERY):
        line(root, (LEFT, TOP + ROW * row), (WIDTH - RIGHT, TOP + ROW * row), GRID)
    text(root, FIRST_AT, TOP - 28, labels.first, weight="600", anchor="end")
    text(root, SHARES_AT, TOP - 28, labels.shares, weight="600")
    text(root, SERVED_AT, TOP - 28, labels.served, weight="600", anchor="middle")
    text(root, STOPPED_AT, TOP - 28, labels.stopped, weight="600", anchor="middle")
    text(root, QUESTIONS_AT, TOP - 28, labels.questions, weight="600")


def _mark_axis(root: Xml.Element, at: float, floor: float, words: str) -> None:
    """Above and below, for a page that is longer than an arm."""
    for y in (TOP - 9, floor + 16):
        text(root, at, y, words, size=11, anchor="middle", fill=FAINT)


def _draw_row(root: Xml.Element, top: float, each: Covered, name: str, scale: float) -> None:
    middle = top + ROW / 2
    text(root, LEFT + NAMES, middle + 4, name if len(name) <= LONGEST_NAME else each.cause, anchor="end")
    text(root, FIRST_AT, middle + 4, f"{100 * each.leads / each.ovens:.0f} %", anchor="end")
    leads, three = SHARES * each.leads / each.ovens, SHARES * each.in_three / each.ovens
    box = {"y": middle - BAR_TALL / 2, "height": BAR_TALL}
    add(root, "rect", x=SHARES_AT, width=SHARES, fill="#ffffff", stroke=ACCENT, **box)
    if three > leads:
        add(root, "rect", x=SHARES_AT + leads, width=three - leads, fill=f"url(#{STRIPES})", stroke=ACCENT, **box)
    if leads > 0:
        add(root, "rect", x=SHARES_AT, width=leads, fill=ACCENT, stroke=ACCENT, **box)
    text(root, SERVED_AT, middle + 4, f"{100 * each.served / each.ovens:.0f} %", anchor="middle")
    text(root, STOPPED_AT, middle + 4, f"{100 * each.stopped / each.ovens:.0f} %", anchor="middle")
    median, most = QUESTIONS_AT + scale * each.questions_median, QUESTIONS_AT + scale * each.questions_most
    line(root, (median, middle), (most, middle), INK)
    add(root, "circle", cx=median, cy=middle, r=4, fill=INK)
    _mark_most(root, most, middle)

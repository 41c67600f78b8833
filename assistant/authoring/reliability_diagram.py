"""The reliability diagram as SVG: what was said, what came, and how often. Shapes and words carry it, not colour."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal
from xml.etree import ElementTree as Xml

from assistant.belief.scores import Band
from assistant.reports.svg import ACCENT, BAR, FAINT, GRID, INK, add, line, picture, text, written

SIDE = 340
LEFT, TOP, BETWEEN, RIGHT = 72, 88, 96, 28
COUNTS_TOP, COUNTS_HEIGHT, BOTTOM = 64, 56, 64
WIDTH = LEFT + 2 * SIDE + BETWEEN + RIGHT
HEIGHT = TOP + SIDE + COUNTS_TOP + COUNTS_HEIGHT + BOTTOM

MARK = 5.0

Shape = Literal["circle", "square"]


@dataclass(frozen=True)
class Panel:
    heading: str
    shape: Shape
    bands: Sequence[Band]


@dataclass(frozen=True)
class Labels:
    """What stands in the picture; `description` says all of it in words."""

    title: str
    description: str
    predicted: str
    observed: str
    counts: str
    legend: str


def reliability_diagram(panels: tuple[Panel, Panel], labels: Labels) -> str:
    """The whole file."""
    root = picture(WIDTH, HEIGHT, labels.title, labels.description)
    text(root, LEFT, 36, labels.title, size=18, weight="600")
    for index, panel in enumerate(panels):
        group = add(root, "g", transform=f"translate({LEFT + index * (SIDE + BETWEEN)} {TOP})")
        _draw_axes(group, panel.heading, labels)
        for band in panel.bands:
            _draw_band(group, band, panel.shape)
        _draw_counts(group, panel.bands, labels.counts)
    text(root, LEFT, HEIGHT - 14, labels.legend, fill=FAINT)
    return written(root)


def _draw_axes(group: Xml.Element, heading: str, labels: Labels) -> None:
    text(group, 0, -14, heading, size=14, weight="600")
    for percent in range(0, 101, 20):
        at = SIDE * percent / 100
        line(group, (at, 0), (at, SIDE), GRID)
        line(group, (0, at), (SIDE, at), GRID)
        text(group, at, SIDE + 18, f"{percent} %", anchor="middle", fill=FAINT)
        text(group, -8, SIDE - at + 4, f"{percent} %", anchor="end", fill=FAINT)
    line(group, (0, SIDE), (SIDE, 0), FAINT, dashes="6 5")
    add(group, "rect", width=SIDE, height=SIDE, fill="none", stroke=INK)
    text(group, SIDE / 2, SIDE + 40, labels.predicted, size=13, anchor="middle")
    text(group, 0, 0, labels.observed, size=13, anchor="middle", transform=f"translate(-50 {SIDE / 2}) rotate(-90)")


def _draw_band(group: Xml.Element, band: Band, shape: Shape) -> None:
    """The interval with its ends, then the mark on top."""
    x, y = SIDE * band.predicted, SIDE * (1 - band.observed)
    low, high = SIDE * (1 - band.observed_low), SIDE * (1 - band.observed_high)
    line(group, (x, low), (x, high), ACCENT, width=1.5)
    for end in (low, high):
        line(group, (x - 4, end), (x + 4, end), ACCENT, width=1.5)
    if shape == "circle":
        add(group, "circle", cx=x, cy=y, r=MARK, fill=ACCENT, stroke="#ffffff")
    else:
        add(group, "rect", x=x - MARK, y=y - MARK, width=2 * MARK, height=2 * MARK, fill=ACCENT, stroke="#ffffff")


def _draw_counts(group: Xml.Element, bands: Sequence[Band], label: str) -> None:
    """Below each band a bar with the number of its forecasts."""
    floor = SIDE + COUNTS_TOP + COUNTS_HEIGHT
    most = max((band.count for band in bands), default=1)
    for band in bands:
        left, width = SIDE * band.low, SIDE * (band.high - band.low)
        tall = max(1.0, (COUNTS_HEIGHT - 16) * band.count / most)
        add(group, "rect", x=left + 3, y=floor - tall, width=width - 6, height=tall, fill=BAR)
        text(group, left + width / 2, floor - tall - 4, str(band.count), size=11, anchor="middle")
    line(group, (0, floor), (SIDE, floor), INK)
    text(group, SIDE / 2, floor + 22, label, size=13, anchor="middle")

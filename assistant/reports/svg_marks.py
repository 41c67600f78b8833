"""The signs of a chart in SVG: the same in the plot and in the legend, and apart from each other without colour."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal
from xml.etree import ElementTree as Xml

from assistant.reports.chart import Place
from assistant.reports.svg import FAINT, INK, add, line

Sign = Literal["expected", "middle", "setting", "reading", "below", "above", "opened", "lit", "out"]

WHITE = "#ffffff"
RADIUS = 5.0
HALF_DOOR = 3.5
TALL, AREA_WIDE, POINT_WIDE = 12.0, 32.0, 13.0
"""Of signs in the legend."""


@dataclass(frozen=True)
class Stroke:
    colour: str
    width: float
    dashes: str


STROKES: Mapping[Literal["middle", "setting", "opened"], Stroke] = {
    "middle": Stroke(FAINT, 1, "none"),
    "setting": Stroke(INK, 1.8, "9 5"),
    "opened": Stroke(INK, 1.4, "1.5 3"),
}


def define_shade(root: Xml.Element, name: str) -> None:
    """Dots that stay apart from white and from lines on any printer."""
    pattern = add(add(root, "defs"), "pattern", id=f"{name}shade", width=6, height=6, patternUnits="userSpaceOnUse")
    add(pattern, "rect", width=6, height=6, fill=WHITE)
    for at in (1.5, 4.5):
        add(pattern, "circle", cx=at, cy=at, r=0.8, fill="#6e6e6e")


def shade_of(name: str) -> dict[str, str | float]:
    return {"fill": f"url(#{name}shade)", "stroke": FAINT, "stroke-width": 0.8}


def draw_stroke(
    group: Xml.Element,
    sign: Literal["middle", "setting", "opened"],
    start: tuple[float, float],
    end: tuple[float, float],
) -> None:
    stroke = STROKES[sign]
    line(group, start, end, stroke.colour, width=stroke.width, dashes=stroke.dashes)


def draw_door(group: Xml.Element, x: float, top: float, floor: float) -> None:
    """A dotted line with an empty square on top."""
    draw_stroke(group, "opened", (x, top), (x, floor))
    add(
        group,
        "rect",
        x=x - HALF_DOOR,
        y=top - HALF_DOOR,
        width=2 * HALF_DOOR,
        height=2 * HALF_DOOR,
        fill=WHITE,
        stroke=INK,
    )


def draw_reading(group: Xml.Element, place: Place, x: float, y: float) -> None:
    """A disc, or a triangle that points to where the reading lies; its middle stands at the reading."""
    form: dict[str, str | float] = {"fill": INK, "stroke": WHITE, "stroke-width": 1.2}
    if place == "reading":
        add(group, "circle", cx=x, cy=y, r=RADIUS, **form)
        return
    tip = RADIUS + 2 if place == "below" else -RADIUS - 2
    corners = ((x - RADIUS - 1, y - tip / 2), (x + RADIUS + 1, y - tip / 2), (x, y + tip))
    add(group, "polygon", points=points(corners), **form)


def draw_lamp_spell(group: Xml.Element, left: float, top: float, wide: float, tall: float, *, lit: bool) -> None:
    add(group, "rect", x=left, y=top, width=wide, height=tall, fill=INK if lit else WHITE)


def draw_sign(group: Xml.Element, sign: Sign, left: float, middle: float, name: str) -> None:
    """In the legend: `width_of(sign)` wide and TALL at the most; `middle` is its height from the top."""
    wide, top = width_of(sign), middle - TALL / 2
    match sign:
        case "expected":
            add(group, "rect", x=left, y=top, width=wide, height=TALL, **shade_of(name))
        case "lit" | "out":
            draw_lamp_spell(group, left, top, wide, TALL, lit=sign == "lit")
            add(group, "rect", x=left, y=top, width=wide, height=TALL, fill="none", stroke=INK)
        case "opened":
            draw_door(group, left + wide / 2, top + HALF_DOOR, top + TALL + HALF_DOOR)
        case "middle" | "setting":
            draw_stroke(group, sign, (left, middle), (left + wide, middle))
        case "reading" | "below" | "above":
            draw_reading(group, sign, left + wide / 2, middle)


def width_of(sign: Sign) -> float:
    """In the legend, in pixels."""
    return POINT_WIDE if sign in ("reading", "below", "above", "opened") else AREA_WIDE


def points(corners: tuple[tuple[float, float], ...]) -> str:
    return " ".join(f"{x:.6g},{y:.6g}" for x, y in corners)

"""On a dark screen no drawing keeps an ink that was made for white paper."""

import re
from xml.etree import ElementTree as Xml

from assistant.reports.summary.html_style import STYLE
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Drawing
from assistant.reports.svg import FAINT, GRID, INK
from assistant.reports.svg_chart import NARROW, WIDE
from tests.reports.summary.samples import CHART
from tests.reports.summary.sessions import both

TWIN = re.compile(r'svg \[(fill|stroke)="([^"]+)"\] \{ \1: (#[0-9a-f]{6}); \}')
WITHOUT_COLOUR = ("none", "url(")


def inks_of(svg: str) -> set[tuple[str, str]]:
    """Each ink, with whether it fills or strokes."""
    elements = Xml.fromstring(svg).iter()  # noqa: S314 - drawn by this project
    inks = {(name, element.get(name, "none")) for element in elements for name in ("fill", "stroke")}
    return {(name, ink) for name, ink in inks if not ink.startswith(WITHOUT_COLOUR)}


def test_letters_of_a_drawing_are_large_enough_on_a_phone_of_320_pixels() -> None:
    """The wide form is shown from where its letters are as large."""
    side, least = 16, 11
    assert NARROW.size * (320 - 2 * side) / NARROW.width >= least
    (changes_at,) = re.findall(r"max-width: (\d+)rem\) {\n  figure .wide", STYLE)
    assert WIDE.size * (16 * int(changes_at) - 2 * side) / WIDE.width >= least


def test_every_ink_of_a_drawing_has_a_dark_twin(tolds: tuple[Told, ...]) -> None:
    blocks = [
        block
        for told in tolds
        for summary in both(told)
        for page in summary.pages
        for section in page.sections
        for block in section.blocks
    ]
    told_of = [block for block in blocks if isinstance(block, Drawing)]
    drawings = [CHART, *(block.svg for block in told_of), *(block.narrow for block in told_of if block.narrow)]
    assert len(drawings) > 2
    inks = set().union(*map(inks_of, drawings))
    assert {ink for _, ink in inks} >= {INK, FAINT, GRID}
    dark = STYLE[STYLE.index("prefers-color-scheme: dark") :]
    twins = {(name, light): twin for name, light, twin in TWIN.findall(dark)}
    assert inks - set(twins) == set()
    assert [light for (_, light), twin in twins.items() if light == twin] == []

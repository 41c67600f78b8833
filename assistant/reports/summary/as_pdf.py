"""A summary as a PDF for A4: text that can be selected and is told in its order, with a title and a language."""

from collections.abc import Mapping

from assistant.reports.summary.footing import Footing
from assistant.reports.summary.pdf.layout import Layout
from assistant.reports.summary.pdf.pen import TALL, WIDE, draw
from assistant.reports.summary.pdf.sheets import height_of, sheets_of
from assistant.reports.summary.pdf.units import Node, Unit
from assistant.reports.summary.value import Reader, Summary

SIZES: Mapping[Reader, tuple[float, float]] = {"engineer": (7.5, 9.5), "household": (9.0, 11.0)}
"""Of the letters, in points: the least, and the usual one. Between them page one is made to hold on one sheet."""
STEP = 0.25
TALLEST_PICTURE = 0.45
"""In parts of a sheet."""


def as_pdf(summary: Summary, footing: Footing) -> bytes:
    """The whole file, the same for the same value. What page one can't hold goes on to another sheet."""
    size = _size_of(summary)
    tree = Node("Document")
    pages = _pages(summary, size, tree)
    return draw(sheets_of(pages, TALL), tree, summary, footing)


def _size_of(summary: Summary) -> float:
    """The largest at which page one is one sheet; where none is, one between."""
    least, usual = SIZES[summary.reader]
    size = usual
    while size >= least:
        if height_of(_first(summary, size, Node("Document"))) <= TALL:
            return size
        size -= STEP
    return (least + usual) / 2


def _pages(summary: Summary, size: float, tree: Node) -> list[list[Unit]]:
    others = summary.pages[1:]
    return [_first(summary, size, tree), *(list(_layout(size).page(page, tree)) for page in others)]


def _first(summary: Summary, size: float, tree: Node) -> list[Unit]:
    layout = _layout(size)
    units = list(layout.title(summary, tree))
    for page in summary.pages[:1]:
        units += layout.page(page, tree)
    return units


def _layout(size: float) -> Layout:
    return Layout(size, WIDE, TALLEST_PICTURE * TALL)

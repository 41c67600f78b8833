"""A summary as a PDF for A4: text that can be selected and is told in its order, with a title and a language."""

from collections.abc import Mapping

from assistant.reports.summary.footing import Footing
from assistant.reports.summary.pdf.layout import Layout
from assistant.reports.summary.pdf.pen import TALL, WIDE, draw
from assistant.reports.summary.pdf.sheets import height_of, sheets_of
from assistant.reports.summary.pdf.units import Node, Unit
from assistant.reports.summary.value import Reader, Summary

SIZES: Mapping[Reader, tuple[float, float]] = {"engineer": (7.5, 9.5), "household": (9.0, 13.0)}
"""Of the letters, in points: the least, and the usual one. Between them each page is made to hold on one sheet."""
STEP = 0.25
TALLEST_PICTURE = 0.45
"""In parts of a sheet."""


def as_pdf(summary: Summary, footing: Footing) -> bytes:
    """The whole file, the same for the same value. What a page can't hold goes on to another sheet."""
    tree = Node("Document")
    pages = [_units(summary, number, size_of(summary, number), tree) for number in range(len(summary.pages))]
    return draw(sheets_of(pages, TALL), tree, summary, footing)


def size_of(summary: Summary, number: int) -> float:
    """In points: the largest at which that page is one sheet; where there is none, one between."""
    least, usual = SIZES[summary.reader]
    size = usual
    while size >= least:
        if height_of(_units(summary, number, size, Node("Document"))) <= TALL:
            return size
        size -= STEP
    return (least + usual) / 2


def _units(summary: Summary, number: int, size: float, tree: Node) -> list[Unit]:
    """Of one page; the title stands above the first."""
    layout = Layout(size, WIDE, TALLEST_PICTURE * TALL, side_by_side=summary.reader == "engineer")
    title = [] if number else list(layout.title(summary, tree))
    return [*title, *layout.page(summary.pages[number], tree)]

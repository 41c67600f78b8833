"""Sheets -> the file: each line where it was placed, marked with what it is (ISO 32000-1, 14.6 to 14.8)."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC
from io import BytesIO

from reportlab.pdfgen.canvas import Canvas

from assistant.reports.summary.footing import Footing
from assistant.reports.summary.pdf.letters import face, fitted, lines_of, width_of
from assistant.reports.summary.pdf.picture import draw_picture
from assistant.reports.summary.pdf.tree import hang_tree, internals
from assistant.reports.summary.pdf.units import Column, Node, Placed
from assistant.reports.summary.value import Summary

A4 = (595.276, 841.89)
SIDE, TOP, BOTTOM = 42.0, 36.0, 44.0
WIDE, TALL = A4[0] - 2 * SIDE, A4[1] - TOP - BOTTOM
FOOT, FOOT_SIZE = 24.0, 7.5
INK, QUIET, ALARM, HAIR = (0.1, 0.1, 0.1), (0.3, 0.3, 0.3), (0.55, 0.11, 0.07), (0.72, 0.72, 0.72)
ASCENT = 0.93
"""From a line's top to where its letters stand, in parts of their size."""


def draw(sheets: Sequence[Sequence[Placed]], tree: Node, summary: Summary, footing: Footing) -> bytes:
    """The same file for the same value: its date is that of the session's latest event."""
    file = BytesIO()
    canvas = Canvas(file, pagesize=A4, pageCompression=1, invariant=1, lang=summary.lang)
    canvas.setTitle(fitted(summary.title))
    canvas.setSubject(fitted(footing.session))
    canvas.setAuthor("Ovenside")
    canvas.setCreator("Ovenside")
    canvas.setDateFormatter(lambda *_: f"D:{summary.written_at.astimezone(UTC):%Y%m%d%H%M%S}Z")
    for number, sheet in enumerate(sheets):
        pen = _Pen(canvas, number)
        for placed in sheet:
            pen.unit(placed)
        pen.foot(fitted(footing.session), fitted(footing.page_of(number + 1, len(sheets))))
        canvas.showPage()
    hang_tree(canvas, tree, len(sheets))
    canvas.save()
    return file.getvalue()


class _Pen:
    """Draws on one sheet; y counts downwards from the upper margin."""

    def __init__(self, canvas: Canvas, sheet: int) -> None:
        self._canvas = canvas
        self._sheet = sheet
        self._marked = 0

    def unit(self, placed: Placed) -> None:
        unit = placed.unit
        top = placed.top + unit.above
        bottom = placed.top + unit.height(placed.last - placed.first)
        if unit.picture is not None:
            with self._as(unit.picture.node):
                draw_picture(self._canvas, unit.picture, SIDE, A4[1] - TOP - top)
            return
        self._frame(placed, top, bottom)
        for column in unit.columns:
            with self._as(None if placed.again else column.node):
                self._lines(column, placed, top + unit.padding)

    def _lines(self, column: Column, placed: Placed, top: float) -> None:
        size = placed.unit.size
        ink = ALARM if placed.unit.danger else QUIET if column.quiet else INK
        self._canvas.setFillColorRGB(*ink)
        self._canvas.setFont(face(bold=column.bold), size)
        if column.bullet and placed.first == 0:
            self._canvas.circle(
                SIDE + column.left - 0.75 * size, self._y(top) - (ASCENT - 0.32) * size, 0.16 * size, stroke=0, fill=1
            )
        for number, line in enumerate(column.lines[placed.first : placed.last]):
            self._canvas.drawString(
                SIDE + column.left, self._y(top + number * placed.unit.leading) - ASCENT * size, line
            )

    def _frame(self, placed: Placed, top: float, bottom: float) -> None:
        """Lines and boxes, which mean nothing to who listens."""
        unit, canvas = placed.unit, self._canvas
        if not (unit.danger or unit.underlined or unit.ruled):
            return
        with self._as(None):
            if unit.danger:
                canvas.setStrokeColorRGB(*ALARM)
                canvas.setFillColorRGB(*ALARM)
                canvas.setLineWidth(0.9)
                canvas.rect(SIDE, self._y(bottom), WIDE, bottom - top)
                canvas.rect(SIDE, self._y(bottom), 0.8 * unit.size, bottom - top, stroke=0, fill=1)
                return
            y = self._y(bottom if unit.underlined else top)
            canvas.setStrokeColorRGB(*(INK if unit.underlined else HAIR))
            canvas.setLineWidth(0.6 if unit.underlined else 0.4)
            canvas.line(SIDE, y, SIDE + WIDE, y)

    def foot(self, session: str, page: str) -> None:
        with self._as(None):
            self._canvas.setFillColorRGB(*QUIET)
            self._canvas.setFont(face(bold=False), FOOT_SIZE)
            room = WIDE - width_of(page, FOOT_SIZE) - 2 * FOOT_SIZE
            self._canvas.drawString(SIDE, FOOT, lines_of(session, room, FOOT_SIZE)[0])
            self._canvas.drawRightString(SIDE + WIDE, FOOT, page)

    def _y(self, top: float) -> float:
        return A4[1] - TOP - top

    @contextmanager
    def _as(self, node: Node | None) -> Iterator[None]:
        """Marked as the node's content; without a node, as none of the document's."""
        code: list[str] = internals(self._canvas)._code
        if node is None:
            code.append("/Artifact BMC")
        else:
            code.append(f"/{node.role} <</MCID {self._marked}>> BDC")
            node.places.append((self._sheet, self._marked))
            self._marked += 1
        yield
        code.append("EMC")

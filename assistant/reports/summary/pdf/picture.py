"""A drawing of a summary in a PDF: the few kinds of shapes that the drawings are made of."""

from collections.abc import Mapping
from xml.etree import ElementTree as Xml

from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from assistant.reports.summary.pdf.letters import face, fitted, width_of
from assistant.reports.summary.pdf.units import Picture

SHAPES = frozenset({"rect", "line", "polyline", "polygon", "circle"})
NOT_DRAWN = frozenset({"svg", "title", "desc", "defs", "pattern"})
_ROUND = 1
_ANCHORS: Mapping[str, float] = {"start": 0.0, "middle": 0.5, "end": 1.0}


def draw_picture(canvas: Canvas, picture: Picture, left: float, top: float) -> None:
    """`top`: of the page, in points from below. Within, y counts downwards as in the drawing."""
    scale = picture.wide / float(picture.element.get("width", 1))
    patterns = {f"url(#{each.get('id')})": each for each in picture.element.iter("pattern")}
    canvas.saveState()
    canvas.translate(left, top)
    canvas.scale(scale, -scale)
    for element in picture.element:
        if element.tag == "text":
            _letter(canvas, element)
        elif element.tag in SHAPES:
            _shape(canvas, element, patterns)
    canvas.restoreState()


def _number(element: Xml.Element, name: str, default: float = 0.0) -> float:
    return float(element.get(name, default))


def _letter(canvas: Canvas, element: Xml.Element) -> None:
    words, size = fitted(element.text or ""), _number(element, "font-size", 12)
    bold = element.get("font-weight") == "600"
    canvas.saveState()
    canvas.translate(_number(element, "x"), _number(element, "y"))
    canvas.scale(1, -1)
    canvas.setFillColorRGB(*_colour(element.get("fill", "#000000")))
    canvas.setFont(face(bold=bold), size)
    canvas.drawString(-_ANCHORS[element.get("text-anchor", "start")] * width_of(words, size, bold=bold), 0, words)
    canvas.restoreState()


def _shape(canvas: Canvas, element: Xml.Element, patterns: Mapping[str, Xml.Element]) -> None:
    fill, stroke = element.get("fill", "#000000"), element.get("stroke", "none")
    if element.tag == "line":
        fill = "none"
    if fill in patterns:
        _tile(canvas, element, patterns[fill])
        fill = "none"
    if fill != "none":
        canvas.setFillColorRGB(*_colour(fill))
    if stroke != "none":
        canvas.setStrokeColorRGB(*_colour(stroke))
        canvas.setLineWidth(_number(element, "stroke-width", 1))
    dashes = element.get("stroke-dasharray", "none")
    canvas.setDash([] if dashes == "none" else [float(each) for each in dashes.split()])
    canvas.drawPath(_outline(canvas, element), stroke=int(stroke != "none"), fill=int(fill != "none"))
    canvas.setDash([])


def _outline(canvas: Canvas, element: Xml.Element) -> PDFPathObject:
    path = canvas.beginPath()
    match element.tag:
        case "rect":
            path.rect(*(_number(element, name) for name in ("x", "y", "width", "height")))
        case "circle":
            path.circle(*(_number(element, name) for name in ("cx", "cy", "r")))
        case _:
            corners = _corners(element)
            path.moveTo(*corners[0])
            for corner in corners[1:]:
                path.lineTo(*corner)
            if element.tag == "polygon":
                path.close()
    return path


def _corners(element: Xml.Element) -> list[tuple[float, float]]:
    if element.tag == "line":
        return [(_number(element, f"x{end}"), _number(element, f"y{end}")) for end in (1, 2)]
    pairs = (point.split(",") for point in element.get("points", "0,0").split())
    return [(float(x), float(y)) for x, y in pairs]


def _tile(canvas: Canvas, element: Xml.Element, pattern: Xml.Element) -> None:
    """A pattern of dots: each row of them is one line whose dashes have no length and round ends."""
    left, top, right, bottom = _bounds(element)
    wide, tall = _number(pattern, "width", 1), _number(pattern, "height", 1)
    canvas.saveState()
    canvas.clipPath(_outline(canvas, element), stroke=0, fill=0)
    canvas.setLineCap(_ROUND)
    for dot in pattern.iter("circle"):
        canvas.setStrokeColorRGB(*_colour(dot.get("fill", "#000000")))
        canvas.setLineWidth(2 * _number(dot, "r"))
        canvas.setDash([0, wide])
        x = (left // wide) * wide + _number(dot, "cx") - wide
        y = (top // tall) * tall + _number(dot, "cy") - tall
        while y < bottom + tall:
            canvas.line(x, y, right + wide, y)
            y += tall
    canvas.restoreState()


def _bounds(element: Xml.Element) -> tuple[float, float, float, float]:
    if element.tag == "rect":
        x, y = _number(element, "x"), _number(element, "y")
        return x, y, x + _number(element, "width"), y + _number(element, "height")
    xs, ys = zip(*_corners(element), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _colour(code: str) -> tuple[float, float, float]:
    """Of '#rrggbb'."""
    red, green, blue = (int(code[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return red, green, blue

"""The drawing of a summary as elements, with nothing in it that could run or fetch."""

from xml.etree import ElementTree as Xml

from assistant.reports.svg import SVG

_ELEMENTS = frozenset(
    {"svg", "title", "desc", "defs", "pattern", "g", "rect", "line", "polyline", "polygon", "circle", "path", "text"}
)
_ATTRIBUTES = frozenset(
    {
        "id",
        "viewBox",
        "role",
        "aria-labelledby",
        "width",
        "height",
        "x",
        "y",
        "x1",
        "y1",
        "x2",
        "y2",
        "cx",
        "cy",
        "r",
        "d",
        "points",
        "fill",
        "stroke",
        "stroke-width",
        "stroke-dasharray",
        "font-size",
        "font-weight",
        "font-family",
        "text-anchor",
        "transform",
        "patternUnits",
    }
)


def picture_of(svg: str, prefix: str) -> Xml.Element:
    """Names without a namespace, as HTML has them, and each id behind the prefix, so that none is there twice.

    Elements and attributes that drawings of this project don't have are left out. Raises xml.etree's ParseError.
    """
    root = Xml.fromstring(svg)  # noqa: S314 - drawn by this project, and expat refuses entities that grow
    picture = _kept(root, prefix)
    if picture is None or picture.tag != "svg":
        raise Xml.ParseError("not an SVG")
    return picture


def _kept(element: Xml.Element, prefix: str) -> Xml.Element | None:
    name = element.tag.removeprefix(f"{{{SVG}}}")
    if name not in _ELEMENTS:
        return None
    kept = Xml.Element(name)
    for key, value in element.items():
        if key in _ATTRIBUTES and "url(" not in value.replace("url(#", ""):
            kept.set(key, _renamed(key, value, prefix))
    kept.text = (element.text or "").strip() or None
    kept.extend(child for child in (_kept(each, prefix) for each in element) if child is not None)
    return kept


def _renamed(key: str, value: str, prefix: str) -> str:
    if key == "id":
        return prefix + value
    if key == "aria-labelledby":
        return " ".join(prefix + each for each in value.split())
    return value.replace("url(#", f"url(#{prefix}") if key in ("fill", "stroke") else value

"""The pieces that the pictures are made of: SVG with a title and a description that say in words what it shows."""

from xml.etree import ElementTree as Xml

SVG = "http://www.w3.org/2000/svg"

INK, FAINT, GRID, ACCENT, BAR = "#1b1b1b", "#595959", "#e3e3e3", "#0a4f94", "#9fb8d1"
FONT = "system-ui, 'Segoe UI', 'DejaVu Sans', Arial, sans-serif"


def picture(width: float, height: float, title: str, description: str, *, name: str = "") -> Xml.Element:
    """A white sheet. Readers of screens read the title and the description.

    `name` stands before both ids, so that several pictures can stand on one page.
    """
    Xml.register_namespace("", SVG)
    root = Xml.Element(
        f"{{{SVG}}}svg",
        {
            "viewBox": f"0 0 {width:g} {height:g}",
            "width": f"{width:g}",
            "height": f"{height:g}",
            "role": "img",
            "aria-labelledby": f"{name}title {name}description",
            "font-family": FONT,
        },
    )
    add(root, "title", id=f"{name}title").text = title
    add(root, "desc", id=f"{name}description").text = description
    add(root, "rect", width=width, height=height, fill="#ffffff")
    return root


def written(root: Xml.Element) -> str:
    """The whole file."""
    Xml.indent(root)
    return Xml.tostring(root, encoding="unicode", xml_declaration=False) + "\n"


def line(
    group: Xml.Element,
    start: tuple[float, float],
    end: tuple[float, float],
    colour: str,
    *,
    width: float = 1,
    dashes: str = "none",
) -> None:
    form: dict[str, str | float] = {"stroke": colour, "stroke-width": width, "stroke-dasharray": dashes}
    add(group, "line", x1=start[0], y1=start[1], x2=end[0], y2=end[1], **form)


def text(
    group: Xml.Element,
    x: float,
    y: float,
    words: str,
    *,
    size: int = 12,
    weight: str = "400",
    anchor: str = "start",
    fill: str = INK,
    transform: str = "",
) -> None:
    form: dict[str, str | float] = {"font-size": size, "font-weight": weight, "text-anchor": anchor, "fill": fill}
    if transform:
        form["transform"] = transform
    add(group, "text", x=x, y=y, **form).text = words


def add(parent: Xml.Element, name: str, **attributes: str | float) -> Xml.Element:
    """A new element within the parent; numbers are written to six digits."""
    shown = {key: value if isinstance(value, str) else f"{value:.6g}" for key, value in attributes.items()}
    return Xml.SubElement(parent, f"{{{SVG}}}{name}", shown)

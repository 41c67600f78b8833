"""A summary as one page of HTML: for screens of any width, dark or light, and for A4. It fetches and runs nothing."""

from base64 import b64encode
from hashlib import sha256
from xml.etree import ElementTree as Xml

from assistant.reports.summary.footing import Footing
from assistant.reports.summary.html_style import STYLE
from assistant.reports.summary.picture import picture_of
from assistant.reports.summary.said import says_something
from assistant.reports.summary.value import Block, Drawing, Items, Page, Pairs, Paragraph, Section, Summary, Table

LONGEST_WHOLE = 24
"""A longer word may be broken wherever a line ends."""
LONGEST_HALF = 60
"""A longer pair isn't printed on half the sheet."""


def as_html(summary: Summary, footing: Footing) -> str:
    """The whole file. What people typed is text in it and nothing else: the tree is escaped as it is written."""
    root = Xml.Element("html", lang=summary.lang)
    _head(root, summary)
    body = Xml.SubElement(root, "body", {"class": summary.reader})
    header = Xml.SubElement(body, "header")
    _add(header, "h1", summary.title)
    _add(header, "p", summary.about, "about")
    main = Xml.SubElement(body, "main")
    drawings = 0
    for number, page in enumerate(summary.pages, start=1):
        drawings = _page(main, page, number, drawings)
    _add(Xml.SubElement(body, "footer"), "p", footing.session)
    return "<!DOCTYPE html>\n" + Xml.tostring(root, encoding="unicode", method="html") + "\n"


def _head(root: Xml.Element, summary: Summary) -> None:
    head = Xml.SubElement(root, "head")
    Xml.SubElement(head, "meta", charset="utf-8")
    Xml.SubElement(head, "meta", {"http-equiv": "Content-Security-Policy", "content": policy()})
    Xml.SubElement(head, "meta", name="viewport", content="width=device-width, initial-scale=1")
    Xml.SubElement(head, "meta", name="color-scheme", content="light dark")
    Xml.SubElement(head, "meta", name="referrer", content="no-referrer")
    _add(head, "title", f"{summary.title} – {summary.session}")
    Xml.SubElement(head, "style").text = STYLE


def policy() -> str:
    """Nothing is fetched, run or sent; the one style is known by its digest."""
    digest = b64encode(sha256(STYLE.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"


def _add(parent: Xml.Element, name: str, words: str, kind: str = "", **attributes: str) -> Xml.Element:
    element = Xml.SubElement(parent, name, {"class": kind} if kind else {}, **attributes)
    element.text = words
    return element


def _page(main: Xml.Element, page: Page, number: int, drawings: int) -> int:
    """How many drawings there are by now."""
    sheet = Xml.SubElement(main, "div", {"class": "sheet"})
    for place, section in enumerate(page.sections, start=1):
        drawings = _section(sheet, section, f"s{number}-{place}", drawings)
    return drawings


def _section(sheet: Xml.Element, section: Section, id_: str, drawings: int) -> int:
    parent = Xml.SubElement(sheet, "section", {"aria-labelledby": id_})
    _add(parent, "h2", section.heading, id=id_)
    for block in filter(says_something, section.blocks):
        if isinstance(block, Drawing):
            drawings += 1
            _drawing(parent, block, drawings)
        else:
            _block(parent, block)
    return drawings


def _block(parent: Xml.Element, block: Block) -> None:
    match block:
        case Paragraph(words=words, style=style):
            _add(parent, "p", words, "" if style == "plain" else style)
        case Items(items=items, numbered=numbered):
            listed = Xml.SubElement(parent, "ol" if numbered else "ul")
            for item in items:
                _add(listed, "li", item)
        case Pairs(rows=rows):
            listed = Xml.SubElement(parent, "dl")
            for label, value in rows:
                wide = len(label) + len(value) > LONGEST_HALF
                pair = Xml.SubElement(listed, "div", {"class": "wide"} if wide else {})
                _add(pair, "dt", label)
                _add(pair, "dd", value)
        case Table():
            _table(parent, block)


def _table(parent: Xml.Element, table: Table) -> None:
    """On a phone each row of one that isn't compact stands as a list, with the name of its column before each cell."""
    element = Xml.SubElement(parent, "table", {"class": "compact"} if table.compact else {})
    head = Xml.SubElement(element, "thead")
    heads = Xml.SubElement(head, "tr")
    for column in table.columns:
        _add(heads, "th", column, "long" if _is_long(column) else "", scope="col")
    body = Xml.SubElement(element, "tbody")
    for row in table.rows:
        cells = Xml.SubElement(body, "tr")
        for number, (column, cell) in enumerate(zip(table.columns, row, strict=True)):
            element = _add(cells, "td" if number else "th", cell, "long" if _is_long(cell) else "")
            if not table.compact:
                element.set("data-label", column)
            if number == 0:
                element.set("scope", "row")


def _is_long(words: str) -> bool:
    """Whether a word might have to be broken; the others keep their columns wide enough."""
    return any(len(word) > LONGEST_WHOLE for word in words.split())


def _drawing(parent: Xml.Element, drawing: Drawing, number: int) -> None:
    """Of the wide and the narrow form, the style shows one."""
    figure = Xml.SubElement(parent, "figure")
    _picture(figure, drawing.svg, f"d{number}-", "wide" if drawing.narrow else "")
    if drawing.narrow:
        _picture(figure, drawing.narrow, f"n{number}-", "narrow")
    _add(figure, "figcaption", drawing.described)


def _picture(figure: Xml.Element, svg: str, prefix: str, kind: str) -> None:
    """The caption says what the drawing's own description says, so that isn't read twice."""
    picture = picture_of(svg, prefix)
    for description in picture.findall("desc"):
        picture.remove(description)
    if picture.find("title") is not None:
        picture.set("aria-labelledby", f"{prefix}title")
    if kind:
        picture.set("class", kind)
    figure.append(picture)

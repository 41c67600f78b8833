"""A summary as Markdown (CommonMark 0.31 with pipe tables). What people typed can't become mark-up."""

import re
from collections.abc import Iterator

from assistant.reports.summary.footing import Footing
from assistant.reports.summary.value import Block, Drawing, Items, Pairs, Paragraph, Section, Summary, Table

_MARKS = re.compile(r"([\\`*_{}\[\]()<>#+\-.!|~&:@=^$/\"'])")
"""Every ASCII punctuation character may be escaped (CommonMark 0.31, section 2.4)."""


def as_markdown(summary: Summary, footing: Footing) -> str:
    """The whole file; its last line says which session it is of, and as of when."""
    lines = [f"# {escaped(summary.title)}", "", f"**{escaped(summary.about)}**", ""]
    for number, page in enumerate(summary.pages, start=1):
        if number > 1:
            lines += ["---", ""]
        for section in page.sections:
            lines += _section(section)
    return "\n".join((*lines, escaped(footing.session))) + "\n"


def escaped(words: str) -> str:
    """One line in which no character marks anything up."""
    return _MARKS.sub(r"\\\1", " ".join(words.split()))


def _section(section: Section) -> Iterator[str]:
    yield f"## {escaped(section.heading)}"
    yield ""
    for block in section.blocks:
        yield from _block(block)
        yield ""


def _block(block: Block) -> Iterator[str]:
    match block:
        case Paragraph(words=words, style=style):
            yield f"**{escaped(words)}**" if style in ("strong", "danger") else escaped(words)
        case Items(items=items, numbered=numbered):
            for number, item in enumerate(items, start=1):
                yield f"{number}. {escaped(item)}" if numbered else f"- {escaped(item)}"
        case Pairs(rows=rows):
            yield from (f"- **{escaped(label)}:** {escaped(value)}" for label, value in rows)
        case Table(columns=columns, rows=rows):
            yield _row(columns)
            yield _row(["---"] * len(columns), plain=True)
            yield from map(_row, rows)
        case Drawing(described=described):
            yield escaped(described)


def _row(cells: tuple[str, ...] | list[str], *, plain: bool = False) -> str:
    return "| " + " | ".join(cells if plain else map(escaped, cells)) + " |"

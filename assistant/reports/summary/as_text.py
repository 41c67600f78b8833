"""A summary as plain text, for terminals, mail and readers of screens."""

import textwrap
from collections.abc import Iterator

from prompt_toolkit.utils import get_cwidth

from assistant.reports.summary.value import Block, Drawing, Items, Pairs, Paragraph, Section, Summary, Table

WIDTH = 80
INDENT = "  "
GAP = "  "


def as_text(summary: Summary, width: int = WIDTH) -> str:
    """Lines of at most `width` characters, but for words that are longer."""
    lines = [*_wrapped(summary.title, width), *_wrapped(summary.about, width), ""]
    for number, page in enumerate(summary.pages, start=1):
        if number > 1:
            lines += ["=" * min(width, WIDTH), ""]
        for section in page.sections:
            lines += [*_section(section, width), ""]
    return "\n".join(lines).rstrip("\n") + "\n"


def _section(section: Section, width: int) -> Iterator[str]:
    yield from _wrapped(section.heading, width)
    yield "-" * min(len(section.heading), width)
    for block in section.blocks:
        yield from _block(block, width)


def _block(block: Block, width: int) -> Iterator[str]:
    match block:
        case Paragraph(words=words):
            yield from _wrapped(words, width)
        case Items(items=items, numbered=numbered):
            for number, item in enumerate(items, start=1):
                mark = f"{number:>2}. " if numbered else "  - "
                yield from _wrapped(item, width, first=mark)
        case Pairs(rows=rows):
            for label, value in rows:
                yield from _wrapped(f"{label}: {value}", width, first=INDENT)
        case Table():
            yield from _in_columns(block, width) or _one_below_the_other(block, width)
        case Drawing(described=described):
            yield from _wrapped(described, width)


def _in_columns(table: Table, width: int) -> list[str]:
    """The table as it is, if it is narrow enough; else nothing."""
    lines = [table.columns, *table.rows]
    widths = [max(map(get_cwidth, column)) for column in zip(*lines, strict=True)]
    if len(INDENT) + sum(widths) + len(GAP) * (len(widths) - 1) > width:
        return []
    padded = [
        [cell + " " * (wide - get_cwidth(cell)) for cell, wide in zip(line, widths, strict=True)] for line in lines
    ]
    return [(INDENT + GAP.join(cells)).rstrip() for cells in padded]


def _one_below_the_other(table: Table, width: int) -> list[str]:
    """Each row's cells one below the other, each after its column's name."""
    found = []
    for row in table.rows:
        first, *others = [f"{column}: {cell}" for column, cell in zip(table.columns, row, strict=True) if cell]
        found += _wrapped(first, width, first=INDENT)
        for other in others:
            found += _wrapped(other, width, first=INDENT * 2)
    return found


def _wrapped(words: str, width: int, first: str = "") -> list[str]:
    return textwrap.wrap(words, width, initial_indent=first, subsequent_indent=" " * len(first), break_on_hyphens=False)

"""A summary as plain text, for terminals, mail and readers of screens."""

from collections.abc import Iterator

from assistant.reports.lettering import cells, wrapped
from assistant.reports.summary.footing import Footing
from assistant.reports.summary.value import Block, Drawing, Items, Pairs, Paragraph, Section, Summary, Table

WIDTH = 80
INDENT = "  "
GAP = "  "


def as_text(summary: Summary, footing: Footing, width: int = WIDTH) -> str:
    """Lines of at most `width` cells of a terminal (ten or more); the last says which session, and as of when."""
    lines = [*_wrapped(summary.title, width), *_wrapped(summary.about, width), ""]
    for number, page in enumerate(summary.pages, start=1):
        if number > 1:
            lines += ["=" * min(width, WIDTH), ""]
        for section in page.sections:
            lines += [*_section(section, width), ""]
    return "\n".join((*lines, *_wrapped(footing.session, width))) + "\n"


def _section(section: Section, width: int) -> Iterator[str]:
    yield from _wrapped(section.heading, width)
    yield "-" * min(cells(section.heading), width)
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
    widths = [max(map(cells, column)) for column in zip(*lines, strict=True)]
    if len(INDENT) + sum(widths) + len(GAP) * (len(widths) - 1) > width:
        return []
    padded = [[cell + " " * (wide - cells(cell)) for cell, wide in zip(line, widths, strict=True)] for line in lines]
    return [(INDENT + GAP.join(line)).rstrip() for line in padded]


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
    """`first` stands before the first line, and as much room before the others."""
    lines = wrapped(words, width - cells(first))
    return [(" " * cells(first) if number else first) + line for number, line in enumerate(lines)]

"""A summary as plain text, for terminals, mail and readers of screens."""

import textwrap
from collections.abc import Iterator

from assistant.reports.summary.value import Block, Drawing, Items, Pairs, Paragraph, Section, Summary, Table

WIDTH = 80
INDENT = "  "


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
        case Table(columns=columns, rows=rows):
            for row in rows:
                first, *others = [f"{column}: {cell}" for column, cell in zip(columns, row, strict=True) if cell]
                yield from _wrapped(first, width, first=INDENT)
                for other in others:
                    yield from _wrapped(other, width, first=INDENT * 2)
        case Drawing(described=described):
            yield from _wrapped(described, width)


def _wrapped(words: str, width: int, first: str = "") -> list[str]:
    return textwrap.wrap(words, width, initial_indent=first, subsequent_indent=" " * len(first), break_on_hyphens=False)

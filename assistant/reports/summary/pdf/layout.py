"""The blocks of a summary as units of a given size of letters, as wide as a sheet."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from xml.etree import ElementTree as Xml

from assistant.reports.summary.pdf.columns import column_widths
from assistant.reports.summary.pdf.letters import fitted, lines_of, width_of
from assistant.reports.summary.pdf.units import Column, Node, Picture, Unit
from assistant.reports.summary.picture import picture_of
from assistant.reports.summary.said import says_something
from assistant.reports.summary.value import Block, Drawing, Items, Page, Pairs, Paragraph, Section, Summary, Table

LEADING = 1.26
"""From line to line, in parts of the size of the letters."""
LABEL_SHARES = (0.3, 0.55)
"""Between which parts of the room what is known under a name begins."""
NARROW_SHARE = 0.25
"""The same where two stand side by side."""


@lru_cache(maxsize=8)
def _picture_of(svg: str) -> Xml.Element:
    """Read once, however many sizes of letters are tried."""
    return picture_of(svg, "")


@dataclass(frozen=True)
class Layout:
    """`room`: between the margins, points. `tallest`: no picture may be taller.
    `side_by_side`: whether two short pairs may share a line.
    """

    size: float
    room: float
    tallest: float
    side_by_side: bool

    def title(self, summary: Summary, tree: Node) -> Iterator[Unit]:
        yield self._lines(summary.title, tree.add("H1"), scale=1.5, bold=True, hangs=True)
        yield self._lines(summary.about, tree.add("P"), scale=1.12, bold=True)

    def page(self, page: Page, tree: Node) -> Iterator[Unit]:
        for section in page.sections:
            yield from self._section(section, tree.add("Sect"))

    def _section(self, section: Section, tree: Node) -> Iterator[Unit]:
        yield self._lines(
            section.heading, tree.add("H2"), scale=1.12, bold=True, above=0.75, hangs=True, underlined=True
        )
        for block in filter(says_something, section.blocks):
            yield from self._block(block, tree)

    def _block(self, block: Block, tree: Node) -> Iterator[Unit]:
        match block:
            case Paragraph(words=words, style=style):
                yield (
                    self._danger(words, tree)
                    if style == "danger"
                    else self._lines(words, tree.add("P"), bold=style == "strong", quiet=style == "quiet", above=0.2)
                )
            case Items():
                yield from self._items(block, tree.add("L"))
            case Pairs():
                yield from self._pairs(block, tree.add("Table"))
            case Table():
                yield from self._table(block, tree.add("Table"))
            case Drawing():
                yield self._picture(block, tree)
                yield self._lines(block.described, tree.add("P"), quiet=True, above=0.3)

    def _lines(
        self,
        words: str,
        node: Node,
        *,
        scale: float = 1.0,
        bold: bool = False,
        quiet: bool = False,
        above: float = 0.0,
        hangs: bool = False,
        underlined: bool = False,
    ) -> Unit:
        """`above`: in parts of the size of the letters."""
        size = self.size * scale
        column = Column(lines_of(words, self.room, size, bold=bold), 0, node, bold, quiet)
        return self._unit((column,), size=size, above=above * self.size, hangs=hangs, underlined=underlined)

    def _unit(
        self,
        columns: tuple[Column, ...],
        *,
        size: float = 0,
        above: float = 0.0,
        hangs: bool = False,
        underlined: bool = False,
        ruled: bool = False,
        head: Unit | None = None,
    ) -> Unit:
        size = size or self.size
        return Unit(
            columns,
            size,
            size * LEADING,
            above,
            padding=0.14 * size if ruled or underlined else 0.0,
            hangs=hangs,
            underlined=underlined,
            ruled=ruled,
            head=head,
        )

    def _danger(self, words: str, tree: Node) -> Unit:
        """In a frame with a bar, so that it is plain without colour."""
        left, padding = 1.6 * self.size, 0.35 * self.size
        lines = lines_of(words, self.room - left - padding, self.size, bold=True)
        return Unit(
            (Column(lines, left, tree.add("P"), bold=True),),
            self.size,
            self.size * LEADING,
            above=0.3 * self.size,
            padding=padding,
            danger=True,
        )

    def _items(self, block: Items, tree: Node) -> Iterator[Unit]:
        labels = [f"{number}." for number in range(1, len(block.items) + 1)] if block.numbered else []
        left = max([1.3 * self.size, *(width_of(label, self.size) + 0.5 * self.size for label in labels)])
        for number, item in enumerate(block.items):
            entry = tree.add("LI")
            label = (Column((labels[number],), 0, entry.add("Lbl")),) if labels else ()
            lines = lines_of(item, self.room - left, self.size)
            body = Column(lines, left, entry.add("LBody"), bullet=not block.numbered)
            yield self._unit((*label, body), above=0.12 * self.size)

    def _pairs(self, block: Pairs, tree: Node) -> Iterator[Unit]:
        """A row each; for who is in a hurry two short ones side by side."""
        left = self._left_of_values(block)
        rows = list(block.rows)
        while rows:
            beside = 2 if self.side_by_side and len(rows) > 1 and all(map(self._is_short, rows[:2])) else 1
            columns: list[Column] = []
            for number, row in enumerate(rows[:beside]):
                columns += self._pair(row, number * self.room / 2, left if beside == 1 else self._narrow, tree)
            yield self._unit(tuple(columns), above=0.06 * self.size)
            del rows[:beside]

    def _pair(self, row: tuple[str, str], start: float, left: float, tree: Node) -> tuple[Column, Column]:
        label, value = row
        if self.side_by_side and width_of(fitted(label), self.size) <= self._narrow - self.size:
            left = self._narrow
        node = tree.add("TR")
        labels = lines_of(label, left - self.size, self.size)
        values = lines_of(value, self.room - start - left, self.size)
        return (
            Column(labels, start, node.add("TH", scope="Row"), quiet=True),
            Column(values, start + left, node.add("TD")),
        )

    @property
    def _narrow(self) -> float:
        return NARROW_SHARE * self.room

    def _is_short(self, row: tuple[str, str]) -> bool:
        """Whether it has room on one line of half the sheet."""
        label, value = (width_of(fitted(words), self.size) + self.size for words in row)
        return label <= self._narrow and value <= self.room / 2 - self._narrow

    def _left_of_values(self, block: Pairs) -> float:
        if self.side_by_side:
            return self.room / 2
        least, most = (share * self.room for share in LABEL_SHARES)
        return max(least, min(most, column_widths(block.rows, self.room, self.size, self.size)[0]))

    def _table(self, block: Table, tree: Node) -> Iterator[Unit]:
        gap = 0.9 * self.size
        widths = column_widths((block.columns, *block.rows), self.room + gap, self.size, gap)
        lefts = [sum(widths[:number]) for number in range(len(widths))]

        def cells(words: tuple[str, ...], *, heading: bool) -> tuple[Column, ...]:
            row = tree.add("TR")
            return tuple(
                Column(
                    lines_of(cell, width - gap, self.size),
                    left,
                    row.add("TH", scope="Column")
                    if heading
                    else row.add("TH", scope="Row")
                    if not left
                    else row.add("TD"),
                    quiet=heading,
                )
                for cell, width, left in zip(words, widths, lefts, strict=True)
            )

        head = self._unit(cells(block.columns, heading=True), above=0.12 * self.size, hangs=True)
        yield head
        for words in block.rows:
            yield self._unit(cells(words, heading=False), ruled=True, head=head)

    def _picture(self, block: Drawing, tree: Node) -> Unit:
        element = _picture_of(block.svg)
        wide, tall = (float(element.get(name, 0)) for name in ("width", "height"))
        scale = min(self.room / wide, self.tallest / tall)
        node = tree.add("Figure", described=fitted(block.described))
        return Unit(above=0.5 * self.size, picture=Picture(element, node, wide * scale, tall * scale), hangs=True)

"""Summaries that were made up: one with every kind of block, one with the same words in every place."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime

from assistant.reports.summary.footing import Footing
from assistant.reports.summary.value import (
    Drawing,
    Facts,
    Items,
    Page,
    Pairs,
    Paragraph,
    Section,
    Summary,
    Table,
    ToldSign,
)
from assistant.reports.svg_chart import svg_chart
from tests.reports.runs import WHOLE, WORDS

NOON = datetime(2026, 3, 4, 12, 0, tzinfo=UTC)
FOOTING = Footing("Before the visit, session a3f9a3f9", lambda page, pages: f"{page} of {pages}")
CHART = svg_chart(WHOLE, WORDS)
FACTS = Facts(
    "ab12",
    "book_visit",
    off_confirmed=True,
    signs=(ToldSign("sparks", "stands", NOON),),
    causes=(("base_element", 0.75),),
    tests=("test_base",),
    kit=("base_element",),
    kit_chance=0.5,
)


def with_words(words: str, *, reader: str = "engineer") -> Summary:
    """The same words in every place that takes any."""
    blocks = (
        *(Paragraph(words, style) for style in ("plain", "strong", "danger", "quiet")),
        Items((words, words)),
        Items((words, words), numbered=True),
        Pairs(((words, words), (words, words))),
        Table((words, words, words), ((words, words, words), (words, words, words))),
        Drawing(CHART, words),
    )
    pages = tuple(Page((Section(f"first_{number}", words, blocks),)) for number in (1, 2))
    return Summary(reader, "en-GB", words, words, "a3f9a3f9", NOON, pages, FACTS)  # type: ignore[arg-type]


PLAIN = replace(
    with_words("The oven stays pale below"),
    title="Before the visit",
    about="Book a visit: an appliance engineer.",
)


def words_in(summary: Summary, *, with_labels: bool = False) -> Iterator[str]:
    """In the order in which they are read. `with_labels`: the numbers of numbered lists too."""
    yield from (summary.title, summary.about)
    for section in (section for page in summary.pages for section in page.sections):
        yield section.heading
        for block in section.blocks:
            match block:
                case Paragraph(words=words):
                    yield words
                case Items(items=items, numbered=numbered):
                    for number, item in enumerate(items, start=1):
                        yield f"{number}. {item}" if numbered and with_labels else item
                case Pairs(rows=rows):
                    yield from (cell for row in rows for cell in row)
                case Table(columns=columns, rows=rows):
                    yield from columns if rows else ()
                    yield from (cell for row in rows for cell in row)
                case Drawing(described=described):
                    yield described

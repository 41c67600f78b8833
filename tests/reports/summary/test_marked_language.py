"""In the made-up language every word of a summary is marked: nothing is written into the code."""

import re
from collections.abc import Iterator

import pytest

from assistant.interview.script import Script
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.household import household_summary
from assistant.reports.summary.value import Drawing, Items, Pairs, Paragraph, Summary, Table
from assistant.wording.languages import Languages
from assistant.wording.pseudo import CLOSING, OPENING, PSEUDO_LANG
from tests.reports.summary.test_engineer import BASE_DEAD, WATCHED
from tests.reports.summary.test_household import ENDINGS
from tests.reports.summary.told_cases import told_case, told_with

FIGURES = re.compile(r"[\d\s.,:;/%–?-]*")


def words_of(summary: Summary) -> Iterator[str]:
    yield from (summary.title, summary.about)
    for section in (section for page in summary.pages for section in page.sections):
        yield section.heading
        for block in section.blocks:
            match block:
                case Paragraph(words=words) | Drawing(described=words):
                    yield words
                case Items(items=items):
                    yield from items
                case Pairs(rows=rows):
                    yield from (cell for row in rows for cell in row)
                case Table(columns=columns, rows=rows):
                    yield from (cell for row in (columns, *rows) for cell in row)


def unmarked(words: str) -> str:
    """What stands outside of every pair of marks."""
    depth, found = 0, []
    for character in words:
        depth += (character == OPENING) - (character == CLOSING)
        if depth == 0 and character != CLOSING:
            found.append(character)
    return "".join(found)


@pytest.mark.parametrize("case", ENDINGS)
def test_no_plain_english_is_left_in_either_summary(script: Script, languages: Languages, case: str) -> None:
    told = told_case(script, languages.sentences(PSEUDO_LANG, "great_britain"), case)
    for summary in (engineer_summary(told), household_summary(told)):
        assert [words for words in words_of(summary) if not FIGURES.fullmatch(unmarked(words))] == []


def test_no_plain_english_is_left_where_something_was_measured(script: Script, languages: Languages) -> None:
    answers = {**BASE_DEAD, **WATCHED}
    answers.pop("complaint_in_own_words")
    told = told_with(script, languages.sentences(PSEUDO_LANG, "great_britain"), answers)
    left = [words for words in words_of(engineer_summary(told)) if not FIGURES.fullmatch(unmarked(words))]
    assert left == []

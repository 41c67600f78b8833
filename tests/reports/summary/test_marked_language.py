"""In the made-up language every word of a summary is marked: nothing is written into the code."""

import re
from collections.abc import Iterator

import pytest

from assistant.interview.script import Script
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.household import household_summary
from assistant.reports.summary.value import Drawing, Items, Pairs, Paragraph, Summary, Table
from assistant.wording.languages import Languages
from assistant.wording.pseudo import PSEUDO_LANG
from tests.reports.summary.test_engineer import BASE_DEAD, WATCHED
from tests.reports.summary.test_household import ENDINGS, MEASURED
from tests.reports.summary.told_cases import told_case, told_with

PLAIN_VOWEL = re.compile(r"[aeiouAEIOU]")
"""The made-up language accents each."""
TYPED = ("complaint_in_own_words", "make_and_model", "serial_number")


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


def plain_words(summary: Summary) -> list[str]:
    return [words for words in words_of(summary) if PLAIN_VOWEL.search(words)]


@pytest.mark.parametrize("case", ENDINGS)
def test_no_plain_english_is_left_in_either_summary(script: Script, languages: Languages, case: str) -> None:
    told = told_case(script, languages.sentences(PSEUDO_LANG, "great_britain"), case)
    for summary in (engineer_summary(told), household_summary(told)):
        assert plain_words(summary) == []


def test_no_plain_english_is_left_where_something_was_measured(script: Script, languages: Languages) -> None:
    answers = {**BASE_DEAD, **WATCHED}
    answers.pop("complaint_in_own_words")
    told = told_with(script, languages.sentences(PSEUDO_LANG, "great_britain"), answers)
    assert plain_words(engineer_summary(told)) == []
    assert plain_words(household_summary(told)) == []


def test_no_plain_english_is_left_in_what_a_household_measured_or_does_after_a_stop(
    script: Script, languages: Languages
) -> None:
    marked = languages.sentences(PSEUDO_LANG, "great_britain")
    measured = {name: value for name, value in MEASURED.items() if name not in TYPED}
    for answers in (measured, {"danger_now": ["shock"]}, {"danger_now": ["shock"], "oven_is_off": "off_at_switch"}):
        summary = household_summary(told_with(script, marked, answers))
        assert {each.name for each in summary.pages[0].sections} & {"own_measurements", "steps"}
        assert plain_words(summary) == []

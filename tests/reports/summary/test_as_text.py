"""Plain text: all of the value, in lines that no terminal has to break."""

from dataclasses import replace

import pytest

from assistant.reports.lettering import cells
from assistant.reports.summary.as_text import WIDTH, as_text
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Items, Page, Pairs, Section, Table
from tests.reports.summary.samples import FOOTING, PLAIN, with_words
from tests.reports.summary.sessions import both

WORDS = {
    "narrow": "The oven stays pale below " * 9,
    "wide": "オーブンの下火が弱い" * 9,
    "wide words": "オーブンの 下火が 弱い " * 9,
    "accents": "e\u0301te\u0301 " * 40,
}


@pytest.mark.parametrize("width", [10, 40, WIDTH])
@pytest.mark.parametrize("name", list(WORDS))
def test_no_line_takes_more_cells_than_asked_and_no_letter_is_lost(name: str, width: int) -> None:
    words = WORDS[name]
    written = as_text(with_words(words), replace(FOOTING, session=words), width)
    assert max(map(cells, written.splitlines())) <= width
    assert written.replace(" ", "").count(words[0]) >= 20 * words.count(words[0])


def test_a_heading_is_underlined_as_wide_as_it_is() -> None:
    page = Page((Section("off", "オーブン", ()),))
    lines = as_text(replace(PLAIN, pages=(page,)), FOOTING).splitlines()
    assert lines[lines.index("オーブン") + 1] == "-" * 8


def test_lines_after_the_first_stand_beneath_its_words() -> None:
    blocks = (Items(("one two three",), numbered=True), Items(("one two three",)), Pairs((("one", "two three"),)))
    lines = as_text(replace(PLAIN, pages=(Page((Section("off", "Off", blocks),)),)), FOOTING, 12).splitlines()
    start = lines.index("---") + 1
    assert lines[start : start + 6] == [" 1. one two", "    three", "  - one two", "    three", "  one: two", "  three"]


def test_columns_stand_one_below_the_other_also_after_wide_letters() -> None:
    table = Table(("Cause", "%"), (("オーブン", "7"), ("e\u0301te\u0301", "3")))
    lines = as_text(replace(PLAIN, pages=(Page((Section("likely", "L", (table,)),)),)), FOOTING).splitlines()
    rows = lines[lines.index("-") + 1 :][:3]
    assert [cells(row[:-1]) for row in rows] == [12, 12, 12]


def test_the_last_line_says_which_session_it_is_and_as_of_when(measured: Told) -> None:
    for summary in (PLAIN, *both(measured)):
        lines = as_text(summary, FOOTING).splitlines()
        assert lines[-2:] == ["", FOOTING.session]
        assert lines.count(FOOTING.session) == 1

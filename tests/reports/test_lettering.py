from hypothesis import given
from hypothesis import strategies as some

from assistant.reports.lettering import cells, shown, wrapped


def test_wide_letters_take_two_cells_and_accents_none():
    assert [cells(words) for words in ("oven", "e\u0301te", "オーブン", "")] == [4, 3, 8, 0]


def test_lines_break_at_spaces_and_a_word_too_long_within_itself():
    assert wrapped("the oven is cold", 9) == ["the oven", "is cold"]
    assert wrapped("Backofentemperatur", 8) == ["Backofen", "temperat", "ur"]
    assert wrapped("  ", 8) == []


def test_what_moves_a_cursor_or_turns_the_writing_is_not_shown():
    assert shown("a\x1b[31mb\u202ec\n d\x00") == "a\N{REPLACEMENT CHARACTER}[31mbc d\N{REPLACEMENT CHARACTER}"


def test_what_can_not_be_seen_is_left_out_and_what_joins_letters_stays():
    assert shown("o\u200bf\u00adf\ufeff \u061con\U000e0041") == "off on"
    assert shown("\u0645\u06cc\u200c\u062e") == "\u0645\u06cc\u200c\u062e"


@given(words=some.text(), width=some.integers(2, 80))
def test_no_line_is_wider_than_asked_and_no_letter_is_lost(words, width):
    lines = wrapped(words, width)
    assert all(line and cells(line) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == shown(words).replace(" ", "")


def test_a_figure_stays_with_its_unit() -> None:
    assert shown("9\N{NO-BREAK SPACE}%  more") == "9\N{NO-BREAK SPACE}% more"
    assert wrapped("some 9\N{NO-BREAK SPACE}%", 7) == ["some", "9\N{NO-BREAK SPACE}%"]

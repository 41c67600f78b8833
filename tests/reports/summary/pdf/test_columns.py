"""Columns: never wider than the sheet, never narrower than their words need while that can be."""

from hypothesis import given
from hypothesis import strategies as some

from assistant.reports.summary.pdf.columns import column_widths
from assistant.reports.summary.pdf.letters import widest_word

GAP = 8.0
rows = some.integers(1, 5).flatmap(
    lambda columns: some.lists(
        some.lists(some.text("abcdef ", max_size=120), min_size=columns, max_size=columns), min_size=1, max_size=6
    )
)


@given(rows, some.floats(150, 600))
def test_they_hold_in_the_room(rows: list[list[str]], room: float) -> None:
    widths = column_widths(rows, room, 9, GAP)
    assert len(widths) == len(rows[0])
    assert sum(widths) <= room + 1e-6
    assert all(width >= min(GAP, room / len(widths)) - 1e-6 for width in widths)


@given(rows, some.floats(150, 600))
def test_no_word_is_broken_where_all_words_have_room(rows: list[list[str]], room: float) -> None:
    least = [GAP + max(widest_word(cell, 9) for cell in column) for column in zip(*rows, strict=True)]
    if sum(least) <= room:
        for width, needed in zip(column_widths(rows, room, 9, GAP), least, strict=True):
            assert width >= needed - 1e-6


def test_where_all_have_room_they_are_as_wide_as_their_words() -> None:
    narrow, wide = column_widths([["ab", "ab ab ab"]], 500, 9, GAP)
    assert narrow < wide < 100


def test_long_texts_get_more_than_short_ones() -> None:
    number, test, how = column_widths([["1", "word " * 10, "word " * 60]], 500, 9, GAP)
    assert number < 20 < test < how
    assert abs(number + test + how - 500) < 1e-6

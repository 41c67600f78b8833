"""Lines: as wide as there is room, nothing left out."""

from hypothesis import given
from hypothesis import strategies as some

from assistant.reports.summary.pdf.letters import fitted, lines_of, width_of

words = some.text(max_size=200)
sizes = some.floats(6, 16)


@given(words, some.floats(40, 600), sizes, some.booleans())
def test_no_line_is_wider_than_the_room_and_nothing_is_lost(words: str, room: float, size: float, bold: bool) -> None:
    lines = lines_of(words, room, size, bold=bold)
    assert lines
    assert all(width_of(line, size, bold=bold) <= room + 1e-6 for line in lines)
    assert "".join(lines).replace(" ", "") == fitted(words).replace(" ", "")


@given(some.lists(some.text("abcdefg", min_size=1, max_size=8), min_size=1), sizes)
def test_short_words_stay_whole(pieces: list[str], size: float) -> None:
    assert " ".join(lines_of(" ".join(pieces), 200, size)).split() == pieces


@given(words)
def test_what_is_fitted_needs_no_more_fitting(words: str) -> None:
    assert fitted(fitted(words)) == fitted(words)


def test_controls_are_shown_as_lacking() -> None:
    assert fitted("a\x1b[31mb\x07\u202ec\x9b") == "a�[31mb��c�"


def test_spaces_that_join_keep_words_on_one_line() -> None:
    lines = lines_of("7\u00a0% " * 30, 60, 9)
    assert len(lines) > 1
    assert not any(line.endswith("7") for line in lines)


@given(some.text("abcdefg", min_size=1, max_size=30), sizes)
def test_a_word_as_wide_as_the_room_is_whole(word: str, size: float) -> None:
    assert lines_of(word, (width_of(word, size) + 7.1) - 7.1, size) == (word,)

"""How wide words are, in cells of a terminal, and where their lines break. Any script, without a table of fonts."""

import unicodedata
from collections.abc import Iterable

_NO_CELL = {"Mn", "Me", "Cf"}
_UNSHOWABLE = {"Cc", "Cs", "Co", "Cn"}
_DIRECTION = frozenset("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


def shown(words: str) -> str:
    """Words on one line that can't move a cursor, turn the writing direction or break a file of XML."""
    kept = (letter for letter in " ".join(words.split()) if letter not in _DIRECTION)
    return "".join("\N{REPLACEMENT CHARACTER}" if _is_unshowable(letter) else letter for letter in kept)


def _is_unshowable(letter: str) -> bool:
    return unicodedata.category(letter) in _UNSHOWABLE


def cells(words: str) -> int:
    """Columns of a terminal: two for wide letters, none for marks that stand on the letter before."""
    return sum(_cells_of(letter) for letter in words)


def _cells_of(letter: str) -> int:
    if unicodedata.category(letter) in _NO_CELL:
        return 0
    return 2 if unicodedata.east_asian_width(letter) in "WF" else 1


def to_the_right(words: str, width: int) -> str:
    """With spaces before it, as wide as asked or, if it is wider itself, as it is."""
    return " " * (width - cells(words)) + words


def wrapped(words: str, width: int) -> list[str]:
    """Lines of at most `width` cells (two or more), broken at spaces where that can be; none for no words."""
    lines: list[str] = []
    for word in shown(words).split(" "):
        if lines and cells(lines[-1]) + 1 + cells(word) <= width:
            lines[-1] += f" {word}"
        else:
            lines.extend(_pieces(word, width))
    return lines


def _pieces(word: str, width: int) -> Iterable[str]:
    """One piece, unless the word alone is wider than a line."""
    piece = ""
    for letter in word:
        if cells(piece) + _cells_of(letter) > width:
            yield piece
            piece = ""
        piece += letter
    if piece:
        yield piece

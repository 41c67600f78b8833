"""How wide words are, in cells of a terminal, and where their lines break. Any script, without a table of fonts."""

import unicodedata
from collections.abc import Iterable
from functools import lru_cache

_NO_CELL = {"Mn", "Me", "Cf"}
_UNSHOWABLE = {"Cc", "Cs", "Co", "Cn"}
_UNSEEN = frozenset(
    chr(code)
    for first, last in (
        (0x00AD, 0x00AD),  # where a word may be hyphenated
        (0x061C, 0x061C),
        (0x180E, 0x180E),
        (0x200B, 0x200B),
        (0x200E, 0x200F),
        (0x202A, 0x202E),
        (0x2060, 0x206F),
        (0xFEFF, 0xFEFF),
        (0xFFF9, 0xFFFB),
        (0xE0000, 0xE0FFF),
    )
    for code in range(first, last + 1)
)
"""What turns the writing direction or can't be seen. The two joiners of letters stay: some scripts need them."""


NO_BREAK = "\N{NO-BREAK SPACE}"


def shown(words: str) -> str:
    """Words on one line that can't move a cursor, turn the writing direction, hide or break a file of XML. What keeps
    a figure with its unit stays.
    """
    one_line = NO_BREAK.join(" ".join(part.split()) for part in words.split(NO_BREAK))
    kept = (letter for letter in one_line if letter not in _UNSEEN)
    return "".join("\N{REPLACEMENT CHARACTER}" if _is_unshowable(letter) else letter for letter in kept)


def _is_unshowable(letter: str) -> bool:
    return unicodedata.category(letter) in _UNSHOWABLE


def cells(words: str) -> int:
    """Columns of a terminal: two for wide letters, none for marks that stand on the letter before."""
    return len(words) if words.isascii() else sum(map(_cells_of, words))


@lru_cache(maxsize=4096)
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
    used = 0
    for word in shown(words).split(" "):
        wide = cells(word)
        if lines and used + 1 + wide <= width:
            lines[-1] += f" {word}"
            used += 1 + wide
            continue
        lines.extend([word] if 0 < wide <= width else _pieces(word, width))
        used = cells(lines[-1]) if lines else 0
    return lines


def _pieces(word: str, width: int) -> Iterable[str]:
    """One piece, unless the word alone is wider than a line."""
    piece, used = "", 0
    for letter in word:
        wide = _cells_of(letter)
        if used + wide > width:
            yield piece
            piece, used = "", 0
        piece += letter
        used += wide
    if piece:
        yield piece

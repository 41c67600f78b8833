"""The letters of a PDF: two faces that it brings along, how wide words are in them, and where lines break."""

import re
import unicodedata
from collections.abc import Iterator
from functools import cache, lru_cache
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

FONTS = Path(__file__).parent.parent / "fonts"
REGULAR, BOLD = "DejaVuSansCondensed", "DejaVuSansCondensed-Bold"
LACKING = "\N{REPLACEMENT CHARACTER}"
_SPACES = re.compile(r"[ \t\n\r\f\v\u0085\u2028\u2029]+")
"""Where lines may break. A space that joins isn't among them."""
_ROUNDING = 1e-6
"""In points: a column as wide as its longest word has room for it."""


@cache
def _known() -> frozenset[int]:
    """The characters that both faces have. Makes them known to the library, once in a process."""
    fonts = [TTFont(name, str(FONTS / f"{name}.ttf")) for name in (REGULAR, BOLD)]
    for font in fonts:
        pdfmetrics.registerFont(font)
    first, second = (frozenset(font.face.charToGlyph) for font in fonts)
    return first & second


def face(*, bold: bool) -> str:
    _known()
    return BOLD if bold else REGULAR


@lru_cache(maxsize=1024)
def fitted(words: str) -> str:
    """On one line, composed (NFC), each character that the faces lack shown as '�'."""
    known = _known()
    composed = _SPACES.sub(" ", unicodedata.normalize("NFC", words)).strip()
    return "".join(letter if ord(letter) in known else LACKING for letter in composed)


@lru_cache(maxsize=8192)
def _width(words: str, bold: bool) -> float:
    """In parts of the size of the letters."""
    return pdfmetrics.stringWidth(words, face(bold=bold), 1)


def width_of(words: str, size: float, *, bold: bool = False) -> float:
    """In points, of fitted words."""
    return size * _width(words, bold)


def lines_of(words: str, room: float, size: float, *, bold: bool = False) -> tuple[str, ...]:
    """No line is wider than the room, in points. Words are whole, but for those that are wider than a line."""
    room += _ROUNDING
    lines: list[str] = []
    taken = 0.0
    space = width_of(" ", size, bold=bold)
    for word in fitted(words).split(" "):
        wide = width_of(word, size, bold=bold)
        if lines and taken + space + wide <= room:
            lines[-1] += f" {word}"
            taken += space + wide
            continue
        pieces = [word] if wide <= room else list(_pieces(word, room, size, bold=bold))
        lines += pieces
        taken = width_of(pieces[-1], size, bold=bold)
    return tuple(lines)


def _pieces(word: str, room: float, size: float, *, bold: bool) -> Iterator[str]:
    """As many letters as there is room for; at least one."""
    piece, taken = "", 0.0
    for letter in word:
        wide = width_of(letter, size, bold=bold)
        if piece and taken + wide > room:
            yield piece
            piece, taken = "", 0.0
        piece += letter
        taken += wide
    yield piece


def widest_word(words: str, size: float, *, bold: bool = False) -> float:
    return max((width_of(word, size, bold=bold) for word in fitted(words).split(" ")), default=0.0)

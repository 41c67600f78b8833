"""What is written, as styled lines cut to the width. Standard library only: the first screen waits for it."""

import os
import re
import shutil
import textwrap
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal, TextIO

Style = Literal["plain", "strong", "danger", "quiet"]

WIDEST = 76
NARROWEST = 24

_CODES: dict[str, str] = {"strong": "1", "danger": "1;31", "quiet": "2"}
_UNSHOWABLE = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")


@dataclass(frozen=True)
class Paragraph:
    """Text in one style. `label` stands before the first line; the rest is set in below it."""

    text: str
    style: Style = "plain"
    label: str = ""


BLANK = Paragraph("")


def without_controls(text: str) -> str:
    """Text that can't move the cursor, colour the screen or turn the writing direction."""
    return _UNSHOWABLE.sub("\N{REPLACEMENT CHARACTER}", text)


def laid_out(paragraphs: Iterable[Paragraph], width: int) -> list[tuple[Style, str]]:
    """Lines no wider than `width`."""
    lines: list[tuple[Style, str]] = []
    for paragraph in paragraphs:
        text = without_controls(paragraph.text)
        inset = " " * len(paragraph.label)
        wrapped = textwrap.wrap(text, max(width, NARROWEST), initial_indent=paragraph.label, subsequent_indent=inset)
        lines.extend((paragraph.style, line) for line in wrapped or [""])
    return lines


def width_of_screen() -> int:
    return max(NARROWEST, min(WIDEST, shutil.get_terminal_size().columns - 1))


def wants_colour(stream: TextIO, environment: "os._Environ[str] | dict[str, str]") -> bool:
    """Colour only on a terminal, and not where NO_COLOR or a dumb terminal asks for none."""
    return stream.isatty() and not environment.get("NO_COLOR") and environment.get("TERM") != "dumb"


def write(stream: TextIO, paragraphs: Iterable[Paragraph], *, colour: bool, width: int | None = None) -> None:
    for style, line in laid_out(paragraphs, width or width_of_screen()):
        code = _CODES.get(style) if colour and line else None
        stream.write(f"\x1b[{code}m{line}\x1b[0m\n" if code else line + "\n")
    stream.flush()


def numbered(labels: Sequence[str]) -> list[Paragraph]:
    """Choices with their numbers, to be typed."""
    widest = len(str(len(labels)))
    return [Paragraph(label, "plain", f"  {number:>{widest}}  ") for number, label in enumerate(labels, 1)]

"""How brown bread became, as it is typed -> the figures of each side, named or not. Nothing is guessed here."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.wording.locale import Wording
from assistant.wording.words import normalised, phrases

SLICES = 9
NO_SLICE = "-"
SIDES: Mapping[str, str] = {"tray_top": "top", "tray_underside": "underside"}

_PIECE = re.compile(r"(?P<name>[^\W\d_]+(?:[ ]+[^\W\d_]+)*)|(?P<group>[0-5-]+)|(?P<mark>[/;,\n])|(?P<space>[\s:=.]+)")
_SHADES = re.compile(r"[0-5-]")


@dataclass(frozen=True)
class TypedSide:
    """`name`: `top`, `underside`, or None where it wasn't said. `shades`: figures and dashes, from the back left."""

    name: str | None
    shades: str

    @property
    def whole(self) -> bool:
        return len(self.shades) == SLICES

    def line(self, name: str) -> str:
        """As it is kept: `top 333 332 221`."""
        return f"{name} {self.shades[:3]} {self.shades[3:6]} {self.shades[6:]}"


def typed_sides(typed: str, wording: Wording) -> tuple[TypedSide, ...] | None:
    """The sides in turn; None where anything is typed but figures, the names of sides, and marks between them.

    Eighteen figures without a name are two sides, if nothing that was typed speaks against it.
    """
    sides: list[tuple[str | None, list[str]]] = []
    for piece in _pieces(typed):
        if piece is None:
            return None
        if piece["name"]:
            name = _side(piece["name"], wording)
            if name is None:
                return None
            sides.append((name, []))
        elif not piece["space"]:
            if not sides:
                sides.append((None, []))
            sides[-1][1].append(piece[0])
    return tuple(side for name, written in sides for side in _parted(name, written)) or None


def no_shades(typed: str) -> tuple[str, ...]:
    """The figures in it that are no shade, each once."""
    return tuple(dict.fromkeys(figure for figure in typed if figure.isdecimal() and not _SHADES.fullmatch(figure)))


def _pieces(typed: str) -> Iterator[re.Match[str] | None]:
    """Piece by piece; None, as the last one, where something can't be read."""
    at = 0
    while at < len(typed):
        piece = _PIECE.match(typed, at)
        yield piece
        if piece is None:
            return
        at = piece.end()


def _side(said: str, wording: Wording) -> str | None:
    plain = normalised(said)
    return next((side for name, side in SIDES.items() if plain in phrases(wording.say(f"words-{name}"))), None)


def _parted(name: str | None, written: list[str]) -> Iterator[TypedSide]:
    """`written`: groups of figures, and the marks between them."""
    shades = _shades(written)
    if name is not None and len(shades) == SLICES + 1 and written[0] == NO_SLICE:  # “top - 333 …”
        yield TypedSide(name, shades[1:])
    elif name is None and _two_sides(written):
        yield from (TypedSide(None, shades[:SLICES]), TypedSide(None, shades[-SLICES:]))
    else:
        yield TypedSide(name, shades)


def _two_sides(written: list[str]) -> bool:
    """Whether groups without a name are two sides: no group lies across, and a single mark stands between them."""
    shades = _shades(written)
    if len(shades) == 2 * SLICES + 1:  # “333 333 333 - 222 …”
        return any(each == NO_SLICE and len(_shades(written[:place])) == SLICES for place, each in enumerate(written))
    if len(shades) != 2 * SLICES:
        return False
    ends = {len(_shades(written[: place + 1])) for place in range(len(written))}
    marks = [len(_shades(written[:place])) for place, each in enumerate(written) if not _SHADES.match(each)]
    return (SLICES in ends or len(written) == 1) and (len(marks) != 1 or marks == [SLICES])


def _shades(written: list[str]) -> str:
    return "".join(each for each in written if _SHADES.match(each))

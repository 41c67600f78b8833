"""What somebody types while measuring -> the short lines that are kept, such as `7:40 out`."""

import re
from collections.abc import Mapping

from assistant.knowledge.model import Kind
from assistant.knowledge.readings import UNSAID, Scale, minutes_and_seconds
from assistant.wording.locale import Wording
from assistant.wording.typed_tray import typed_sides
from assistant.wording.words import normalised, phrases

LAMP_WORDS: Mapping[str, str] = {"lamp_out": "out", "lamp_lit": "lit", "measuring_end": "end"}

_PARTS = re.compile(r"[;\n]+|(?<!\d),|,(?!\d)|\s+(?=\d{1,3}[:.]\d{2}\s)")
"""A comma between two digits belongs to a number."""
_TIMED = re.compile(
    r"(?:at\s+)?(?P<minutes>\d{1,3})(?:[:.](?P<seconds>[0-5]\d)|\s*(?:min(?:ute)?s?|m)\b\s*(?:(?P<after>\d{1,2})\s*(?:sec(?:ond)?s?|s)\b)?)?"
    r"\s+(?P<what>.+)",
    re.DOTALL,
)
_SO_FAR = re.compile(
    r"(?:(?:its|it is|at|after)\s+)?\d{1,3}(?:\s+[0-5]\d)?\s*(?:min(?:ute)?s?|m)?(?:\s+now)?\s+(?:and\s+)?"
)
_DEGREES = re.compile(r"(?P<number>-?\d{1,4}(?:[.,]\d{1,2})?)\s*(?P<unit>.*)", re.DOTALL)


def typed_lines(typed: str, kind: Kind, wording: Wording, now_s: float | None = None) -> tuple[str, ...] | None:
    """The lines, None where something isn't understood. One without a time is of `now_s`, while the clock runs.

    A reading without a unit ends with `?`: `8:20 143 ?`.
    """
    if kind == "browning":
        return _tray(typed, wording)
    found = [_line(part.strip(), kind, wording, now_s) for part in _PARTS.split(typed) if part.strip()]
    lines = tuple(line for line in found if line is not None)
    return lines if lines and len(lines) == len(found) else None


def typed_off(typed: str, wording: Wording) -> bool:
    """Whether some part of the line says that 'it is off', the light or the oven, perhaps with its time before."""
    parts = [part.strip() for part in _PARTS.split(typed) if part.strip()]
    said = [timed["what"] if (timed := _TIMED.fullmatch(part)) is not None else part for part in parts]
    return any(_one_of(each, {"light_or_oven": "off"}, wording) for each in said)


def typed_unchanged(typed: str, wording: Wording) -> str | None:
    """`lit` or `out` where a whole line says that the small light is so still, perhaps with the minutes before:
    'it's 9 minutes and still on'.
    """
    said = _SO_FAR.sub("", normalised(typed))
    return _one_of(said, {"lamp_still_lit": "lit", "lamp_still_out": "out"}, wording)


def _line(part: str, kind: Kind, wording: Wording, now_s: float | None) -> str | None:
    timed = _TIMED.fullmatch(part)
    if timed is not None and (what := _what(timed["what"], kind, wording)) is not None:
        seconds = int(timed["seconds"] or timed["after"] or 0)
        return f"{minutes_and_seconds(int(timed['minutes']) * 60 + seconds)} {what}"
    what = _what(part, kind, wording)
    return f"{minutes_and_seconds(now_s)} {what}" if what is not None and now_s is not None else None


def _what(said: str, kind: Kind, wording: Wording) -> str | None:
    if kind == "lamp_log":
        return _one_of(said, LAMP_WORDS, wording)
    if _one_of(said, {"door_opened": "opened"}, wording):
        return "opened"
    degrees = _DEGREES.fullmatch(said.strip())
    if degrees is None:
        return None
    said_alone = not degrees["unit"].strip() or _one_of(degrees["unit"], {"degrees_alone": UNSAID}, wording)
    unit = UNSAID if said_alone else _scale(degrees["unit"], wording)
    return f"{degrees['number'].replace(',', '.')} {unit}" if unit is not None else None


def typed_scale(typed: str, reading: str, wording: Wording) -> Scale | None:
    """The scale that was typed alone, or behind that reading; None for anything else."""
    return _scale(typed.strip().removeprefix(reading), wording)


def _scale(said: str, wording: Wording) -> Scale | None:
    name = said.strip().rstrip(".").casefold()
    if name and name in _listed("degrees_celsius", wording) and not _one_of(name, {"degrees_alone": UNSAID}, wording):
        return "C"
    return "F" if name and name in _listed("degrees_fahrenheit", wording) else None


def _listed(unit: str, wording: Wording) -> list[str]:
    return [each.strip().casefold() for each in wording.say(f"unit-{unit}", "also").split("|")]


def _one_of(said: str, words: Mapping[str, str], wording: Wording) -> str | None:
    plain = normalised(said)
    return next((kept for name, kept in words.items() if plain in phrases(wording.say(f"words-{name}"))), None)


def _tray(typed: str, wording: Wording) -> tuple[str, ...] | None:
    """`top 333 332 221, underside 110 100 000`; the figures may stand apart or together."""
    sides = typed_sides(typed, wording) or ()
    lines = tuple(side.line(side.name) for side in sides if side.name is not None and side.whole)
    return lines if lines and len(lines) == len(sides) else None

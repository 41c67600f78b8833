"""A file of outcomes: JSON Lines, by which outcomes go from one place to another."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TextIO

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from assistant.belief.outcomes import Outcome
from assistant.wording.locale import Wording

_CODES = {
    "json_invalid": "not_json",
    "model_type": "not_an_object",
    "missing": "field_missing",
    "extra_forbidden": "field_unknown",
    "causes_needed": "causes_needed",
    "no_causes_wanted": "no_causes_wanted",
}


@dataclass(frozen=True)
class BadLine:
    """A line that is no outcome: `code` is worded as `outcomes-line_CODE`."""

    number: int
    code: str
    field: str = ""


def read_outcomes(path: Path) -> tuple[tuple[Outcome, ...], tuple[BadLine, ...]]:
    """The outcomes in their order, and the lines that are none; empty lines are neither. Raises OSError."""
    outcomes: list[Outcome] = []
    bad: list[BadLine] = []
    with path.open("rb") as file:
        for number, line in _numbered_lines(file.read()):
            found = outcome_of_line(line, number)
            outcomes.append(found) if isinstance(found, Outcome) else bad.append(found)
    return tuple(outcomes), tuple(bad)


def _numbered_lines(content: bytes) -> Iterator[tuple[int, bytes]]:
    for number, line in enumerate(content.split(b"\n"), 1):
        if line.strip():
            yield number, line


def outcome_of_line(line: bytes, number: int) -> Outcome | BadLine:
    try:
        return Outcome.model_validate_json(line)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        return BadLine(number, _CODES.get(first["type"], "field_wrong"), _field(first))


def _field(found: ErrorDetails) -> str:
    return str(found["loc"][0]) if found["loc"] else ""


def say_bad_lines(bad: tuple[BadLine, ...], wording: Wording, out: TextIO) -> None:
    """Each by its number, with what isn't right about it."""
    for line in bad:
        reason = wording.say(f"outcomes-line_{line.code}", field=_printable(line.field))
        out.write(wording.say("outcomes-line_left_out", number=line.number, reason=reason) + "\n")


def _printable(text: str) -> str:
    return "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in text)[:60]


def lines_of(outcomes: Iterable[Outcome]) -> bytes:
    """The content of a file that holds them, one a line."""
    return b"".join(outcome.model_dump_json().encode() + b"\n" for outcome in outcomes)

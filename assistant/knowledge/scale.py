"""Thermometer readings whose scale wasn't said: which it must be, and when it has to be asked.

Many oven thermometers show degrees Fahrenheit. While lines are noted, a reading without a unit is kept as
`12:00 143 ?`. It counts as degrees Celsius, until it would be far too hot for them and might be Fahrenheit.

`low_k` is by how many K the thermometer is known to read too low: as much sooner a reading is far too hot.
"""

from collections.abc import Sequence

from assistant.errors import Refused
from assistant.knowledge.model import Question
from assistant.knowledge.readings import UNSAID, Scale, far_too_hot, in_scale, reading_c

COLDEST_KITCHEN_C = 5.0
"""What a thermometer at an oven reads at least: 5 °C are 41 °F, so 20 was no reading in Fahrenheit. Assumed."""
HOTTEST_SHOWN_C = 400.0
"""No household's thermometer for ovens shows more. Assumed."""


def known_scale(lines: Sequence[str]) -> Scale | None:
    """That of the latest reading with which it was said."""
    said = (line[-1] for line in reversed(lines) if line.endswith((" C", " F")))
    return next(("F" if letter == "F" else "C" for letter in said), None)


def with_known_scale(question: Question, lines: Sequence[str], low_k: float = 0.0) -> tuple[str, ...]:
    """A thermometer has one scale: where it is known, or can be nothing else, all readings are in it."""
    scale = known_scale(lines)
    if scale is None and any(_beyond_celsius(line) for line in lines if _unsaid(line)):
        scale = "F"
    if scale is None and far_too_hot_so_far(question, lines, low_k) and not _may_be_fahrenheit(question, lines, low_k):
        scale = "C"
    return in_one_scale(lines, scale) if scale is not None else tuple(lines)


def in_one_scale(lines: Sequence[str], scale: Scale) -> tuple[str, ...]:
    """All of them in that scale, but for those that are no reading of a kitchen in it."""
    return tuple(in_scale([line], scale if _warm_enough(line, scale) else "C")[0] for line in lines)


def reading_to_ask_about(question: Question, lines: Sequence[str], low_k: float = 0.0) -> str | None:
    """The hottest reading as it was written, if in one scale it is far too hot and in the other it isn't; else None.

    In Celsius it isn't either if no oven gets there: then it was a slip.
    """
    unsaid = [line for line in lines if _unsaid(line)]
    if not far_too_hot_so_far(question, unsaid, low_k) and not any(_slip_or_far_too_hot(line) for line in unsaid):
        return None
    hottest = max(unsaid, key=lambda line: _reading(line, "F") or 0.0)
    return hottest.split(" ")[1]


def far_too_hot_so_far(question: Question, lines: Sequence[str], low_k: float = 0.0) -> bool:
    """Whether one of the readings is, those without a scale taken to be in Celsius."""
    read = [celsius for line in lines if (celsius := _reading(line, "C")) is not None]
    return bool(read) and far_too_hot(question, read, low_k)


def runs_away(question: Question, lines: Sequence[str], low_k: float = 0.0) -> bool:
    """Whether a reading is far too hot, and not for being in Fahrenheit."""
    said = [line for line in lines if not _unsaid(line)]
    if far_too_hot_so_far(question, said, low_k):
        return True
    return far_too_hot_so_far(question, lines, low_k) and not _may_be_fahrenheit(question, lines, low_k)


def _may_be_fahrenheit(question: Question, lines: Sequence[str], low_k: float) -> bool:
    unsaid = [line for line in lines if _unsaid(line)]
    return all(_warm_enough(line, "F") for line in unsaid) and not far_too_hot_so_far(
        question, in_scale(unsaid, "F"), low_k
    )


def _beyond_celsius(line: str) -> bool:
    """Whether the reading can be nothing in Celsius, but something in Fahrenheit: a slip is neither."""
    fahrenheit = _reading(line, "F")
    return _reading(line, "C") is None and fahrenheit is not None and fahrenheit <= HOTTEST_SHOWN_C


def _slip_or_far_too_hot(line: str) -> bool:
    """Whether the reading is nothing in Celsius, and in Fahrenheit hotter than thermometers for ovens show."""
    fahrenheit = _reading(line, "F")
    return _reading(line, "C") is None and fahrenheit is not None and fahrenheit > HOTTEST_SHOWN_C


def _warm_enough(line: str, scale: Scale) -> bool:
    celsius = _reading(line, scale)
    return celsius is not None and celsius >= COLDEST_KITCHEN_C


def _unsaid(line: str) -> bool:
    return line.endswith(f" {UNSAID}")


def _reading(line: str, scale: Scale) -> float | None:
    """°C; None for no reading, and for one that can't be in that scale."""
    try:
        return reading_c(in_scale([line], scale)[0])
    except Refused:
        return None


def that_can_be(lines: Sequence[str]) -> tuple[str, ...]:
    """The lines without the readings that no oven comes to: in their scale, or in either where it wasn't said."""
    return tuple(line for line in lines if not _beyond_any_oven(line))


def _beyond_any_oven(line: str) -> bool:
    return all(_is_impossible(in_scale([line], scale)[0]) for scale in ("C", "F"))


def _is_impossible(line: str) -> bool:
    try:
        reading_c(line)
    except Refused:
        return True
    return False

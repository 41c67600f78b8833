"""What was reckoned, in words and as JSON. Beside each number stand its unit and its source."""

import json
from collections.abc import Iterator, Mapping
from decimal import Decimal
from math import isfinite
from typing import Any, TextIO

from assistant.authoring.reckoned import Number, Reckoned
from assistant.wording.locale import Wording

_FRACTIONS = {0.25: "¼", 0.5: "½"}
_DECIMALS = {"°C": 1, "°F": 1, "K": 2, "%": 1}
_DIGITS = {"platinum": 5, "b": 5}
_ROUGH_DIGITS = {"simulated": 2, "one_lump": 2, "balance": 2}
_USUAL_DIGITS = 4
_AS_GIVEN = 9
_DATA_DIGITS = 12


def report(found: Reckoned, wording: Wording, out: TextIO, *, as_json: bool = False) -> int:
    """Print it. Returns the exit status, 0."""
    if as_json:
        out.write(json.dumps(_as_data(found, wording), indent=1, ensure_ascii=False, allow_nan=False) + "\n")
        return 0
    for line in _lines(found, wording):
        out.write(line + "\n")
    return 0


def _lines(found: Reckoned, wording: Wording) -> Iterator[str]:
    yield wording.say(f"reckon-for_{found.readers}")
    if found.numbers:
        yield ""
    for number in found.numbers:
        told = {"name": _name(number, wording), "value": _value(number, wording), "source": _source(number, wording)}
        yield wording.say("reckon-line", **told)
    yield ""
    for note in found.notes:
        yield wording.say(f"reckon-note_{note}")


def _name(number: Number, wording: Wording) -> str:
    filled = {key: _filled(key, value) for key, value in number.of.items()}
    return wording.say(f"reckon-number_{number.name}", **filled)


def _filled(key: str, value: float | str) -> str:
    if isinstance(value, str):
        return value
    return written_mark(value) if key == "mark" else written(value, _AS_GIVEN)


def _source(number: Number, wording: Wording) -> str:
    return wording.say(f"reckon-source_{number.source}")


def _value(number: Number, wording: Wording) -> str:
    if number.unit == "gas mark":
        return wording.say("reckon-value_mark", mark=written_mark(number.values[0]))
    shown = [_shown(value, number) for value in number.values if isfinite(value)]
    if len(number.values) == 1 or (len(shown) == 2 and shown[0] == shown[1]):
        return wording.say("reckon-value", value=shown[0], unit=number.unit)
    if len(shown) == 1:
        return wording.say("reckon-value_up", low=shown[0], unit=number.unit)
    return wording.say(f"reckon-value_{number.joined}", low=shown[0], high=shown[1], unit=number.unit)


def _shown(value: float, number: Number) -> str:
    """Temperatures and shares to a tenth, kelvins to a hundredth, the rest to as many digits as it is good for."""
    if number.source in _ROUGH_DIGITS:
        return written(value, _ROUGH_DIGITS[number.source])
    if number.unit in _DECIMALS:
        return written(round(value, _DECIMALS[number.unit]), _AS_GIVEN)
    return written(value, _DIGITS.get(number.source, _USUAL_DIGITS))


def written(value: float, digits: int) -> str:
    """The number to so many digits that count, without an exponent."""
    return format(Decimal(f"{value + 0.0:.{digits}g}"), "f").replace("-", "−")


def written_mark(mark: float) -> str:
    """A gas mark as a dial has it."""
    return _FRACTIONS.get(mark) or written(mark, _AS_GIVEN)


def _as_data(found: Reckoned, wording: Wording) -> Mapping[str, Any]:
    return {
        "what": found.what,
        "for": found.readers,
        "heading": wording.say(f"reckon-for_{found.readers}"),
        "given": found.given,
        "numbers": [_number_data(number, wording) for number in found.numbers],
        "notes": [{"id": note, "text": wording.say(f"reckon-note_{note}")} for note in found.notes],
    }


def _number_data(number: Number, wording: Wording) -> Mapping[str, Any]:
    values: Mapping[str, Any]
    finite = [float(f"{value:.{_DATA_DIGITS}g}") if isfinite(value) else None for value in number.values]
    if len(finite) == 1:
        values = {"value": finite[0]}
    elif number.joined == "or":
        values = {"either": finite}
    else:
        values = {"low": finite[0], "high": finite[1]}
    told = {"name": _name(number, wording), "of": dict(number.of)}
    return {"id": number.name, **told, **values, "unit": number.unit, "source": _source(number, wording)}

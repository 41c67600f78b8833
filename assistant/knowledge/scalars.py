"""What a plain value of a rule file may be: a name, a text, a number, true or false.

Values arrive as the text that was written. What counts as a number is what YAML 1.2 and the editors that
follow it take for one, so that nobody is surprised by `1:30`, `1_000` or `on`.
"""

import re
from contextlib import suppress
from datetime import date
from math import isfinite
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, StringConstraints
from pydantic_core import PydanticCustomError

_NUMBER = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_WHOLE_NUMBER = re.compile(r"[-+]?[0-9]{1,12}")
_TRUE_OR_FALSE = {"true": True, "false": False}
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def number_written(text: str) -> float | None:
    """The number that the text writes (YAML 1.2, core schema, 10.3.2), None for anything else or an endless one."""
    number = float(text) if _NUMBER.fullmatch(text) else None
    return number if number is not None and isfinite(number) else None


def _number(value: Any) -> Any:
    number = number_written(value) if isinstance(value, str) else value
    if number is None:
        raise PydanticCustomError("not_a_number", "not a number")
    return number


def _whole_number(value: Any) -> Any:
    if isinstance(value, str) and not _WHOLE_NUMBER.fullmatch(value):
        raise PydanticCustomError("not_a_whole_number", "not a whole number")
    return value


def _true_or_false(value: Any) -> Any:
    if isinstance(value, str) and value not in _TRUE_OR_FALSE:
        raise PydanticCustomError("not_true_or_false", "neither true nor false")
    return _TRUE_OR_FALSE[value] if isinstance(value, str) else value


def _day(value: Any) -> Any:
    if isinstance(value, date):
        return value
    if isinstance(value, str) and _DAY.fullmatch(value):
        with suppress(ValueError):
            return date.fromisoformat(value)
    raise PydanticCustomError("not_a_day", "not a day")


Number = Annotated[float, Field(allow_inf_nan=False), BeforeValidator(_number)]
WholeNumber = Annotated[int, BeforeValidator(_whole_number)]
Flag = Annotated[bool, BeforeValidator(_true_or_false)]
Day = Annotated[date, BeforeValidator(_day)]

Id = Annotated[str, StringConstraints(pattern=r"^[a-z](_?[a-z0-9])*$", max_length=31)]
Note = Annotated[str, StringConstraints(min_length=1)]

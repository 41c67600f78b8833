"""What was given as an answer -> the happening it becomes, or a refusal that says what would do."""

import math
import unicodedata
from collections.abc import Mapping
from typing import Any

from assistant.errors import Refused
from assistant.interview.card_numbers import holds_card_number
from assistant.interview.events import Happening, QuestionAnswered, TextAnswered
from assistant.knowledge.danger_questions import NONE
from assistant.knowledge.model import Kind, NumberRange, Question
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.readings import READ, summary

MOST_CHARACTERS = 2000
FEWEST_OF_A_TELEPHONE_NUMBER, MOST_OF_A_TELEPHONE_NUMBER = 3, 15

# Factor and offset from the unit given to the question's own: own = given * factor + offset.
CONVERSIONS: Mapping[str, Mapping[str, tuple[float, float]]] = {
    "minutes": {"minutes": (1, 0), "seconds": (1 / 60, 0), "hours": (60, 0)},
    "years": {"years": (1, 0), "months": (1 / 12, 0)},
    "watts": {"watts": (1, 0), "kilowatts": (1000, 0)},
    "degrees_celsius": {"degrees_celsius": (1, 0), "degrees_fahrenheit": (5 / 9, -160 / 9)},
}


def happening_of(question_id: str, question: Question, value: Any, unit: str | None) -> Happening:
    """Raises Refused with what was expected."""
    if unit is not None and question.kind != "number":
        raise Refused("unit_without_number", {"unit": echoed(unit)})
    if question.kind == "choice":
        return QuestionAnswered(question_id=question_id, value=_choice(question, value))
    if question.kind == "choices":
        return QuestionAnswered(question_id=question_id, value=_choices(question, value))
    if question.number is not None:
        return _number(question_id, question.number, value, unit)
    if question.is_measurement:
        return QuestionAnswered(question_id=question_id, value=_written(question.kind, value))
    text = _text(value)
    if question.telephone_number:
        _refuse_no_telephone_number(str(value))
    elif not question.any_number and holds_card_number(str(value)):
        raise Refused("holds_card_number")
    return TextAnswered(question_id=question_id, text=text)


def _refuse_no_telephone_number(told: str) -> None:
    """One has 15 digits at most (Recommendation ITU-T E.164, 6.1); with fewer than three nobody is reached."""
    if holds_card_number(told, MOST_OF_A_TELEPHONE_NUMBER + 1):
        raise Refused("holds_card_number")
    if sum(c.isdecimal() for c in told) < FEWEST_OF_A_TELEPHONE_NUMBER:
        raise Refused("telephone_number_expected")


def _choice(question: Question, value: Any) -> str:
    if not isinstance(value, str):
        raise Refused("choice_expected")
    if value not in question.choices:
        near = nearest_name(value[:60], question.choices)
        raise Refused("unknown_choice", {"found": echoed(value), "nearest": near or ""})
    return value


def _choices(question: Question, value: Any) -> tuple[str, ...]:
    if not isinstance(value, list | tuple) or not value:
        raise Refused("choices_expected")
    chosen = {_choice(question, item) for item in value}
    if NONE in chosen and len(chosen) > 1:
        raise Refused("none_with_others")
    return tuple(choice for choice in question.choices if choice in chosen)


def _number(question_id: str, number: NumberRange, value: Any, unit: str | None) -> QuestionAnswered:
    not_a_number = isinstance(value, float) and math.isnan(value)
    if isinstance(value, bool) or not isinstance(value, int | float) or not_a_number:
        raise Refused("number_expected")
    conversions = CONVERSIONS.get(number.unit, {number.unit: (1, 0)})
    given_unit = unit or number.unit
    if given_unit not in conversions:
        raise Refused("unknown_unit", {"found": echoed(given_unit), "valid": ", ".join(conversions)})
    factor, offset = conversions[given_unit]
    own = round(float(value) * factor + offset, 3) if abs(value) < 1e12 else math.inf
    if not number.least <= own <= number.most:
        raise Refused("number_out_of_range", {"least": number.least, "most": number.most, "unit": number.unit})
    return QuestionAnswered(question_id=question_id, value=own, given=float(value), given_unit=given_unit)


def _written(kind: Kind, value: Any) -> tuple[str, ...]:
    """The lines as they are kept, if they can be what somebody wrote down at the oven."""
    if not isinstance(value, list | tuple) or not all(isinstance(line, str) for line in value):
        raise Refused("lines_expected")
    lines = tuple(" ".join(storable(line).split()) for line in value)
    READ[kind](lines)
    return lines


def _text(value: Any) -> str:
    if not isinstance(value, str) or not value.strip():
        raise Refused("text_expected")
    if len(value) > MOST_CHARACTERS:
        raise Refused("text_too_long", {"most": MOST_CHARACTERS})
    return storable(value.strip())


def storable(text: str) -> str:
    """Text as it can be stored: half characters and control characters other than line breaks become '�'."""
    if text.isprintable():
        return text
    whole = text.encode("utf-8", "replace").decode("utf-8")
    spaced = "".join(" " if unicodedata.category(c) == "Zs" else c for c in whole)
    return "".join(c if c in "\n\t" or c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in spaced)


def echoed(text: str) -> str:
    """Text of a client as it may be echoed: short and printable."""
    return storable(text if len(text) <= 60 else text[:57] + "...")


def still_fits(question: Question | None, value: str | tuple[str, ...] | float | None) -> bool:
    """Whether a stored value is one that the question takes today; the rules may have changed since."""
    if question is None:
        return False
    if value is None:
        return True
    if isinstance(value, int | float):
        return question.number is not None
    if question.is_measurement:
        return isinstance(value, tuple) and summary(question, value) is not None
    chosen = (value,) if isinstance(value, str) else value
    return (question.kind == "choices") == isinstance(value, tuple) and set(chosen) <= set(question.choices)


def value_of(question: Question, code: str) -> str | float:
    """An answer that would be reported by that code: the choice itself, or the lowest number of the band."""
    if question.number is None:
        return code
    lowest = question.number.least
    for name, band in question.number.bands.items():
        if name == code:
            break
        lowest = band.below if band.below is not None else lowest
    return lowest


def code_of(question: Question, value: str | tuple[str, ...] | float | None) -> str | None:
    """The code by which an answer is reported to belief: a choice, or the band of a number."""
    if isinstance(value, str):
        return value
    if isinstance(value, int | float) and question.number is not None:
        for code, band in question.number.bands.items():
            if band.below is None or value < band.below:
                return code
    return None

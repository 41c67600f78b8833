"""Whether the household's thermometer was held into water, what it should read there, and how far it is off."""

from collections.abc import Mapping
from typing import Literal

from assistant.interview.state import Answer
from assistant.knowledge.fixed_points import FixedPoint
from assistant.knowledge.model import Knowledge

READS_RIGHT_K = 0.5
"""Less is not worth a word; it is taken off all the same."""
USABLE_K = 10.0
"""A thermometer that is farther off in water is of no use; the rules say so too."""


def should_read_c(knowledge: Knowledge, question_id: str, answers: Mapping[str, Answer]) -> float | None:
    """°C of the water that the question speaks of; None for another question, or where the height isn't known."""
    point = knowledge.questions[question_id].fixed_point
    if point is None:
        return None
    told = answers.get(point.height_from or "")
    return point.should_read_c(told.value if told is not None and isinstance(told.value, str) else None)


def bias_k(knowledge: Knowledge, measurement_id: str, answers: Mapping[str, Answer]) -> float | None:
    """K that the thermometer of that measurement reads above the truth, by the latest check; None without one.

    A check of another thermometer than the one that is spoken of now is none.
    """
    checked = []
    told = {question_id: answer.value for question_id, answer in answers.items()}
    for question_id, question in knowledge.questions.items():
        answer = answers.get(question_id)
        if (
            answer is None
            or not isinstance(answer.value, float)
            or not _checks(question.fixed_point, measurement_id, told)
        ):
            continue
        expected = should_read_c(knowledge, question_id, answers)
        if expected is not None:
            checked.append((answer.sequence, answer.value - expected))
    return max(checked)[1] if checked else None


def how_far_off(bias_k: float) -> tuple[Literal["right", "high", "low"], float]:
    """Which way a thermometer is off, and by how many K, to a tenth."""
    kelvins = round(abs(bias_k), 1)
    return "right" if kelvins < READS_RIGHT_K else "high" if bias_k > 0 else "low", kelvins


def low_k(knowledge: Knowledge, measurement_id: str, answers: Mapping[str, Answer]) -> float:
    """K that the thermometer of that measurement is known to read too low; 0 where it isn't."""
    return max(-(bias_k(knowledge, measurement_id, answers) or 0.0), 0.0)


def _checks(point: FixedPoint | None, measurement_id: str, told: Mapping[str, object]) -> bool:
    return point is not None and point.checks == measurement_id and point.counts(told)


def likelier_in_fahrenheit(reading: float, should_read_c: float | None) -> bool:
    """Whether a reading without a unit is far from what the water is in °C, and near it in °F."""
    if should_read_c is None:
        return False
    in_c = (reading - 32) * 5 / 9
    return abs(reading - should_read_c) > USABLE_K >= abs(in_c - should_read_c)

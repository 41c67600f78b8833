"""Readings without a unit: in which scale they must be, and when that is asked. The oven is set to 180 °C = 356 °F."""

import pytest

from assistant.knowledge.model import Knowledge, Question
from assistant.knowledge.readings import in_scale
from assistant.knowledge.scale import in_one_scale, known_scale, reading_to_ask_about, with_known_scale


@pytest.fixture
def question(knowledge: Knowledge) -> Question:
    return knowledge.questions["thermometer_log"]


@pytest.mark.parametrize(
    ("lines", "asked"),
    [
        (["10:00 300 ?"], "300"),
        (["1:00 72 ?", "8:00 200 ?", "20:00 356 ?"], "356"),
        (["1:00 72 ?", "8:00 200 ?"], None),
        (["10:00 250 ?"], None),
        (["10:00 251 ?"], "251"),
        (["10:00 300 C"], None),
        (["10:00 opened"], None),
        (["10:00 752 ?"], None),
        (["10:00 800 ?"], "800"),
        (["10:00 800 F"], None),
        (["10:00 1100 ?"], None),
        ([], None),
    ],
)
def test_only_what_is_far_too_hot_in_one_scale_alone_is_asked_about(
    question: Question, lines: list[str], asked: str | None
) -> None:
    assert reading_to_ask_about(question, with_known_scale(question, lines)) == asked


@pytest.mark.parametrize(
    ("lines", "scale"),
    [
        (["0:00 20 ?", "10:00 300 ?"], "C"),  # 20 °F is no kitchen
        (["1:00 300 ?", "10:00 800 ?"], "C"),  # far too hot either way
        (["10:00 483 ?"], "C"),  # far too hot either way: 483 °F = 250.6 °C
        (["10:00 600 ?"], "F"),  # no thermometer gets there in °C
        (["1:00 80 C", "10:00 300 ?"], "C"),
        (["1:00 80 F", "10:00 300 ?"], "F"),
        (["1:00 80 ?", "10:00 300 F"], "F"),
    ],
)
def test_where_the_scale_is_known_all_readings_are_in_it(question: Question, lines: list[str], scale: str) -> None:
    settled = with_known_scale(question, lines)
    assert {line[-1] for line in settled} == {scale}
    assert reading_to_ask_about(question, settled) is None


def test_what_can_be_no_reading_of_a_kitchen_in_fahrenheit_stays_celsius() -> None:
    assert in_one_scale(["0:00 20 ?", "0:30 opened", "9:00 280 ?"], "F") == ("0:00 20 C", "0:30 opened", "9:00 280 F")


def test_the_latest_scale_that_was_said_is_known() -> None:
    assert known_scale(["1:00 80 C", "2:00 opened", "3:00 200 F", "4:00 210 ?"]) == "F"
    assert known_scale(["4:00 210 ?", "5:00 opened"]) is None


def test_a_said_scale_is_left_alone() -> None:
    assert in_scale(["1:00 80 F", "2:00 90 ?"], "C") == ("1:00 80 F", "2:00 90 C")

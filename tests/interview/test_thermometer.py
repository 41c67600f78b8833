"""A thermometer that was held into water: its readings are put right before they are weighed."""

from datetime import UTC, datetime

import pytest

from assistant.interview.assess import evidence_of
from assistant.interview.commands import BeginMeasuring, GiveAnswer, NoteLine
from assistant.interview.state import Answer
from assistant.interview.thermometer import bias_k, should_read_c
from assistant.knowledge.model import Knowledge
from tests.conftest import Begin
from tests.interview.fit import FIT

LOG = "thermometer_log"
READINGS = ("5:00 80 C", "20:00 150 C")
CHECKED_IN_ICE: dict[str, object] = {"thermometer_kind": "digital_with_cable", "thermometer_check": "with_ice"}


def _answers(**values: object) -> dict[str, Answer]:
    at = datetime(2026, 3, 1, tzinfo=UTC)
    return {q: Answer(q, "answered", value, number, at) for number, (q, value) in enumerate(values.items(), 1)}  # type: ignore[arg-type]


def _checked_as_read(answers: dict[str, object]) -> dict[str, object]:
    """With the answers that go before the last water, unless others are given."""
    boiled = "thermometer_in_boiling_water" in list(answers)[-1:]
    check = "boiling_water" if boiled else "with_ice"
    return {"thermometer_kind": "digital_with_cable", "thermometer_check": check, **answers}


@pytest.mark.parametrize(
    ("answers", "off_k"),
    [
        ({}, None),
        ({"thermometer_in_ice": 3.0}, 3.0),
        ({"thermometer_in_ice": -2.5}, -2.5),
        ({"height_above_sea": "high_land", "thermometer_in_boiling_water": 98.6}, 2.0),
        ({"thermometer_in_boiling_water": 98.6}, None),
        ({"thermometer_in_ice": 3.0, "height_above_sea": "high_land", "thermometer_in_boiling_water": 98.6}, 2.0),
        ({"height_above_sea": "high_land", "thermometer_in_boiling_water": 98.6, "thermometer_in_ice": 3.0}, 3.0),
        ({"thermometer_in_ice": 3.0, "thermometer_kind": "hanging_or_standing"}, None),
        ({"thermometer_in_ice": 3.0, "thermometer_check": "no_check"}, None),
    ],
)
def test_the_latest_check_tells_how_far_it_is_off(
    knowledge: Knowledge, answers: dict[str, object], off_k: float | None
) -> None:
    assert bias_k(knowledge, LOG, _answers(**_checked_as_read(answers))) == (
        None if off_k is None else pytest.approx(off_k, abs=0.06)
    )


def test_another_measurement_is_not_put_right(knowledge: Knowledge) -> None:
    assert bias_k(knowledge, "lamp_watch", _answers(**CHECKED_IN_ICE, thermometer_in_ice=3.0)) is None


def test_only_water_has_something_that_it_should_read(knowledge: Knowledge) -> None:
    assert should_read_c(knowledge, "age_of_oven", {}) is None
    assert should_read_c(knowledge, "thermometer_in_ice", {}) == 0.0


@pytest.mark.parametrize(
    ("told", "weighed"),
    [
        ({}, "5:00 80 C\n20:00 150 C"),
        ({**CHECKED_IN_ICE, "thermometer_in_ice": 4.0}, "5:00 76.00 C\n20:00 146.00 C"),
    ],
)
def test_what_is_weighed_is_put_right(knowledge: Knowledge, told: dict[str, object], weighed: str) -> None:
    assert evidence_of(_answers(**told, thermometer_log=READINGS), knowledge)[LOG] == weighed


@pytest.mark.parametrize(
    ("off_k", "line", "stops"),
    [
        (-9.0, "20:00 249 C", True),
        (-9.0, "20:00 241 C", False),
        (-9.0, "20:00 481 F", True),
        (-9.0, "20:00 465 F", False),
        (0.0, "20:00 249 C", False),
        (9.0, "20:00 251 C", True),
    ],
)
@pytest.mark.parametrize("at_once", [False, True])
def test_far_too_hot_is_the_hotter_of_what_was_read_and_what_it_is_when_put_right(
    begun: Begin, off_k: float, line: str, stops: bool, at_once: bool
) -> None:
    """70 degrees above the setting of 180 begin at 250."""
    conversation = begun(**FIT, **CHECKED_IN_ICE, thermometer_in_ice=off_k)
    if at_once:
        conversation.do(GiveAnswer(LOG, ["2:00 60 C", line]))
    else:
        conversation.do(BeginMeasuring(LOG), NoteLine(LOG, "2:00 60 C"), NoteLine(LOG, line))
    assert [stop.sign_id for stop in conversation.assessment.danger.stops] == ["too_hot"] * stops
    assert (LOG in conversation.state.measuring) == (not stops and not at_once)


def test_a_lone_reading_of_a_thermometer_known_to_read_low_is_heard(begun: Begin) -> None:
    conversation = begun(**FIT, **CHECKED_IN_ICE, thermometer_in_ice=-9.0)
    conversation.do(GiveAnswer(LOG, ["20:00 249 C"]))
    assert conversation.assessment.danger.open_questions == ("sign_too_hot",)


def test_a_check_told_after_the_measurement_makes_its_stop(begun: Begin) -> None:
    conversation = begun(**FIT, **CHECKED_IN_ICE, thermometer_log=["2:00 60 C", "20:00 249 C"])
    assert not conversation.assessment.danger.open
    conversation.do(GiveAnswer("thermometer_in_ice", -9.0))
    assert [stop.sign_id for stop in conversation.assessment.danger.stops] == ["too_hot"]


@pytest.mark.parametrize(
    "then", [{"thermometer_kind": "hanging_or_standing"}, {"thermometer_check": "no_check"}], ids=str
)
@pytest.mark.parametrize("read_c", [8.0, 15.0])
def test_another_thermometer_is_neither_put_right_nor_barred(
    begun: Begin, then: dict[str, object], read_c: float
) -> None:
    conversation = begun(**FIT, **CHECKED_IN_ICE, thermometer_in_ice=read_c)
    for question_id, value in then.items():
        conversation.do(GiveAnswer(question_id, value))
    conversation.do(BeginMeasuring(LOG))
    conversation.do(*(NoteLine(LOG, line) for line in READINGS), GiveAnswer(LOG, READINGS))
    assert conversation.assessment.state.answers[LOG].value == READINGS
    assert evidence_of(conversation.state.answers, conversation.script.knowledge)[LOG] == "\n".join(READINGS)


def test_belief_is_that_of_readings_which_were_right(begun: Begin) -> None:
    """An oven that reads 8 degrees less by a thermometer which reads 8 degrees less is believed as the sound one."""
    off = begun(
        **CHECKED_IN_ICE, thermometer_in_ice=-8.0, thermometer_log=["10:00 112 C", "20:00 160 C", "28:00 172 C"]
    )
    right = begun(
        **CHECKED_IN_ICE, thermometer_in_ice=0.0, thermometer_log=["10:00 120 C", "20:00 168 C", "28:00 180 C"]
    )
    unchecked = begun(**CHECKED_IN_ICE, thermometer_log=["10:00 112 C", "20:00 160 C", "28:00 172 C"])
    marginals = [each.assessment.posterior.marginals for each in (off, right, unchecked)]
    assert marginals[0] == pytest.approx(marginals[1], abs=1e-12)
    assert marginals[0] != pytest.approx(marginals[2], abs=1e-6)

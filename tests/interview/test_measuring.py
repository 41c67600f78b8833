"""A measurement outlasts neither danger nor its gate, and a reading far too hot ends it, whoever leads the session."""

import pytest

from assistant.errors import Refused
from assistant.interview.commands import (
    BeginMeasuring,
    GiveAnswer,
    HearDanger,
    NoteLine,
    SayNotSure,
    TakeBackLine,
    WithdrawAnswer,
)
from assistant.interview.conversation import Conversation
from tests.conftest import Begin
from tests.interview.fit import FIT, GATE

LOG = "thermometer_log"


@pytest.fixture
def fit(begun: Begin) -> Conversation:
    """All that a hot test needs holds."""
    return begun(**FIT, thermometer_kind="hanging_or_standing")


@pytest.fixture
def reading(fit: Conversation) -> Conversation:
    """A thermometer is being read."""
    fit.do(BeginMeasuring(LOG), NoteLine(LOG, "2:00 60 C"))
    return fit


def under_way(conversation: Conversation) -> bool:
    return LOG in conversation.state.measuring


def refused(conversation: Conversation, *commands: object) -> str:
    with pytest.raises(Refused) as refused:
        conversation.do(*commands)  # type: ignore[arg-type]
    return refused.value.code


def test_danger_heard_meanwhile_ends_it_and_it_can_not_be_begun_again(reading: Conversation) -> None:
    reading.do(HearDanger("smoke", clear=True))
    assert not under_way(reading)
    assert refused(reading, NoteLine(LOG, "5:00 90 C")) == "measuring_not_begun"
    assert refused(reading, BeginMeasuring(LOG)) == "not_fit_to_measure"


def test_it_does_not_go_on_by_itself_once_the_danger_is_denied(reading: Conversation) -> None:
    reading.do(HearDanger("buzzing", clear=True))
    clear = next(a for a, means in reading.script.knowledge.signs["buzzing"].answers.items() if means == "clear")
    reading.do(GiveAnswer("sign_buzzing", clear))
    assert not reading.assessment.danger.open
    assert not under_way(reading)


@pytest.mark.parametrize(
    "command",
    [
        WithdrawAnswer("hot_gate"),
        SayNotSure("hot_gate"),
        GiveAnswer("hot_gate", GATE[1:]),
        GiveAnswer("ever_tripped", "lately"),
        GiveAnswer("air_at_the_front", "no_longer"),
        WithdrawAnswer("may_look_cold"),
        GiveAnswer("danger_now", ["sparks"]),
    ],
    ids=str,
)
def test_an_answer_that_closes_the_gate_meanwhile_ends_it(reading: Conversation, command: object) -> None:
    reading.do(command)  # type: ignore[arg-type]
    assert not under_way(reading)
    assert refused(reading, BeginMeasuring(LOG)) == "not_fit_to_measure"


def test_an_answer_that_leaves_the_gate_open_ends_nothing(reading: Conversation) -> None:
    reading.do(GiveAnswer("since_when", "this_week"), NoteLine(LOG, "5:00 90 C"))
    assert reading.state.measuring[LOG].lines == ("2:00 60 C", "5:00 90 C")


def test_what_is_said_in_one_breath_with_the_beginning_counts(fit: Conversation) -> None:
    assert refused(fit, HearDanger("smoke", clear=True), BeginMeasuring(LOG)) == "not_fit_to_measure"
    assert refused(fit, WithdrawAnswer("hot_gate"), BeginMeasuring(LOG)) == "not_fit_to_measure"
    assert not under_way(fit)
    assert fit.state.heard == {}


def test_a_first_reading_far_too_hot_is_heard_as_danger(fit: Conversation) -> None:
    fit.do(BeginMeasuring(LOG), NoteLine(LOG, "5:00 300 C"))
    assert not under_way(fit)
    assert "sign_too_hot" in fit.assessment.danger.open_questions


@pytest.mark.parametrize("line", ["20:00 262 C", "20:00 520 F"])
def test_a_later_reading_far_too_hot_stops_at_once(reading: Conversation, line: str) -> None:
    reading.do(NoteLine(LOG, line))
    assert not under_way(reading)
    assert reading.state.answers[LOG].value == ("2:00 60 C", line)
    assert [stop.sign_id for stop in reading.assessment.danger.stops] == ["too_hot"]
    assert reading.state.standing_signs == {"too_hot"}


@pytest.mark.parametrize(
    ("first", "then", "stops"),
    [("1:00 20 C", "10:00 290 ?", True), ("1:00 20 ?", "10:00 290 ?", True), ("1:00 75 F", "10:00 290 ?", False)],
)
def test_a_reading_without_a_scale_is_in_that_of_those_before(
    fit: Conversation, first: str, then: str, stops: bool
) -> None:
    fit.do(BeginMeasuring(LOG), NoteLine(LOG, first), NoteLine(LOG, then))
    assert [stop.sign_id for stop in fit.assessment.danger.stops] == ["too_hot"] * stops
    assert under_way(fit) == (not stops)


def test_a_reading_far_too_hot_that_can_not_be_beside_the_others_is_heard_all_the_same(reading: Conversation) -> None:
    reading.do(NoteLine(LOG, "2:00 300 C"))
    assert not under_way(reading)
    assert LOG not in reading.state.answers
    assert "sign_too_hot" in reading.assessment.danger.open_questions


@pytest.mark.parametrize("line", ["20:00 250 C", "20:00 480 F"])
def test_a_reading_that_the_control_may_swing_to_ends_nothing(reading: Conversation, line: str) -> None:
    reading.do(NoteLine(LOG, line), TakeBackLine(LOG))
    assert reading.state.measuring[LOG].lines == ("2:00 60 C",)


@pytest.mark.parametrize("line", ["2:00 90 C", "seven", "5:00 900 C", "5:00 out"])
def test_a_line_that_can_not_be_is_refused_and_the_measurement_goes_on(reading: Conversation, line: str) -> None:
    assert refused(reading, NoteLine(LOG, line))
    assert reading.state.measuring[LOG].lines == ("2:00 60 C",)


@pytest.mark.parametrize(
    "lines",
    [
        ["10:00 300 C"],
        ["10:00 800 F"],
        ["1:00 20 C", "10:00 300 C", "10:00 310 C"],
        ["10:00  300 C", "nonsense"],
        ["10:00 300 C", 5],
        ["10:00 300 C", "5:00 60 C"],
    ],
    ids=str,
)
def test_a_reading_far_too_hot_in_an_answer_that_can_not_be_is_heard(fit: Conversation, lines: list[object]) -> None:
    fit.do(GiveAnswer(LOG, lines))
    assert LOG not in fit.state.answers
    assert "sign_too_hot" in fit.assessment.danger.open_questions


def test_a_reading_far_too_hot_in_an_answer_that_can_not_be_ends_what_is_measured(reading: Conversation) -> None:
    reading.do(GiveAnswer(LOG, ["10:00 300 C"]))
    assert not under_way(reading)
    assert "sign_too_hot" in reading.assessment.danger.open_questions


@pytest.mark.parametrize("lines", [["10:00 200 C"], ["10:00 900 C"], [], ["10:00 300 F"], [5], "10:00 300 C"], ids=str)
def test_an_answer_that_can_not_be_and_tells_of_no_danger_is_refused(fit: Conversation, lines: object) -> None:
    assert refused(fit, GiveAnswer(LOG, lines))
    assert not fit.assessment.danger.open


@pytest.mark.parametrize("first", ["functions", "readings"])
def test_a_reading_far_too_hot_stops_whatever_was_said_of_the_oven_s_parts(begun: Begin, first: str) -> None:
    """Without heat from above and below the log would be inert."""
    told = {"functions_on_oven": ["eco"], "thermometer_log": ["2:00 60 C", "20:00 305 C"]}
    order = list(told) if first == "functions" else list(told)[::-1]
    conversation = begun(danger_now=["none"], which_appliance="table_top", **{name: told[name] for name in order})
    assert "base_element" in conversation.assessment.not_fitted
    assert [stop.sign_id for stop in conversation.assessment.danger.stops] == ["too_hot"]
    mild = begun(danger_now=["none"], functions_on_oven=["eco"], thermometer_log=["2:00 60 C", "20:00 180 C"])
    assert "thermometer_log" not in mild.assessment.evidence

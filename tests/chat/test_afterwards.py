"""What is typed as a list when a measurement is over."""

import pytest

from assistant.interview.commands import GiveAnswer
from assistant.interview.conversation import Conversation
from assistant.wording.languages import Languages
from tests.chat.watched import Watch, flat, watched

BEFORE = ("5:00 60 C", "10:00 120 C")


def test_times_may_be_typed_afterwards(watch: Watch) -> None:
    fed = watch((0, "7:40 out, 9:10 on, 12:00 out, 15:00 end"))
    assert fed.answer("lamp_watch") == ("7:40 out", "9:10 lit", "12:00 out", "15:00 end")
    assert "Turn the oven off now" in fed.screen


@pytest.mark.parametrize(
    ("told", "danger", "answer"),
    [
        ("F", False, ("5:00 120 F", "10:00 300 F")),
        ("C", True, ("5:00 120 C", "10:00 300 C")),
        ("not sure", True, None),
        ("begin", True, BEFORE),
        (None, True, BEFORE),
    ],
)
def test_a_list_typed_afterwards_is_asked_about_before_it_counts(
    at_the_thermometer: Conversation, languages: Languages, told: str | None, danger: bool, answer: object
) -> None:
    at_the_thermometer.do(GiveAnswer("thermometer_log", BEFORE))
    told_then = [(10.0, told)] if told else []
    fed = watched(at_the_thermometer, languages, (0, "back"), (5, "5:00 120, 10:00 300"), *told_then)
    assert "Is that 300 °C or 300 °F?" in fed.screen
    assert fed.conversation.assessment.danger.open == danger
    assert fed.answer("thermometer_log") == answer


@pytest.mark.parametrize(
    "typed",
    [["10:00 300 C"], ["10:00 490"], ["10:00 290", "C"], ["1:00 20 C, 10:00 300 C, 10:00 310 C"]],
    ids=str,
)
def test_a_reading_far_too_hot_is_heard_in_a_list_that_is_no_answer(
    at_the_thermometer: Conversation, languages: Languages, typed: list[str]
) -> None:
    at_the_thermometer.do(GiveAnswer("thermometer_log", BEFORE))
    fed = watched(at_the_thermometer, languages, (0, "back"), *((5, each) for each in typed))
    assert "far more than the setting" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert fed.answer("thermometer_log") == BEFORE
    assert fed.conversation.assessment.danger.open_questions == ("sign_too_hot",)


@pytest.mark.parametrize(("told", "danger"), [("F", True), ("C", False), ("not sure", True)])
def test_so_is_one_that_is_typed_afterwards(
    at_the_thermometer: Conversation, languages: Languages, told: str, danger: bool
) -> None:
    at_the_thermometer.do(GiveAnswer("thermometer_log", BEFORE))
    fed = watched(at_the_thermometer, languages, (0, "back"), (5, "5:00 80, 10:00 800"), (9, told))
    assert "Is that 800 °C or 800 °F?" in fed.screen
    assert fed.conversation.assessment.danger.open == danger


@pytest.mark.parametrize("typed", ["yes", "ok then"])
def test_a_yes_before_the_start_is_told_how_to_begin(watch: Watch, typed: str) -> None:
    fed = watch((0, typed))
    assert "type “begin”" in " ".join(fed.screen.split()).rpartition(f"> {typed}")[2]
    assert fed.status("lamp_watch") == "not_asked"


def test_a_single_time_is_asked_until_when(watch: Watch) -> None:
    fed = watch((0, "7:40 out"), (60, "7:40 out, 20:00 end"))
    assert "Until when" in fed.screen
    assert fed.answer("lamp_watch") == ("7:40 out", "20:00 end")


def test_a_refused_list_keeps_the_question_open(watch: Watch) -> None:
    fed = watch((0, "9:10 out, 7:40 on"))
    assert fed.status("lamp_watch") == "not_asked"
    assert "put the times in order" in " ".join(fed.screen.split())


def test_still_on_before_the_watch_is_danger(watch: Watch) -> None:
    assert "heat_wont_go_off" in watch((0, "still on")).state.heard


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("9:10 out, 7:40 on", "put the times in order"),
        ("7:40 out, 9:10 out, 20:00 end", "At 7:40 and at 9:10 the light did the same"),
        ("0:30 out, 1:00 on", "Please watch a little longer"),
    ],
)
def test_a_list_that_can_not_be_is_told_so_before_anything_else(watch: Watch, typed: str, said: str) -> None:
    after = flat(watch((0, typed), (5, "stop"))).rpartition(f"> {typed}")[2].partition("> stop")[0]
    assert said in after
    assert "compared" not in after
    assert "oven off" not in after


def test_a_list_of_it_is_off_is_asked_back(watch: Watch) -> None:
    fed = watch((0, "7:40 out, 9:10 on, 20:00 it's off"))
    assert "Is the light off, or the oven? Type the list again" in flat(fed)
    assert fed.status("lamp_watch") == "not_asked"


@pytest.fixture
def read(at_the_lamp_watch: Conversation, languages: Languages) -> Watch:
    """Types to the thermometer's question, opened by hand."""
    at_the_lamp_watch.do(GiveAnswer("thermometer_kind", "hanging_or_standing"), GiveAnswer("thermometer_log", BEFORE))
    return lambda *lines: watched(at_the_lamp_watch, languages, (0, "back"), *lines)


@pytest.mark.parametrize(
    "slip", [[(5, "5:00 80, 10:00 1100, 15:00 150")], [(5, "5:00 80, 10:00 800, 15:00 150"), (6, "C")]], ids=str
)
@pytest.mark.parametrize(
    ("then", "answer"),
    [
        ("10:00 120", ("5:00 80 C", "10:00 120 C", "15:00 150 C")),
        ("5:00 81, 10:00 120, 15:00 151", ("5:00 81 C", "10:00 120 C", "15:00 151 C")),
        ("end", ("5:00 80 C", "15:00 150 C")),
    ],
)
def test_beside_a_reading_that_no_oven_comes_to_the_others_are_kept(
    read: Watch, slip: list[tuple[float, str]], then: str, answer: tuple[str, ...]
) -> None:
    fed = read(*slip, (9, then))
    assert "cannot be the heat in a kitchen's oven, so that one is left out. The other lines are kept." in flat(fed)
    assert fed.answer("thermometer_log") == answer
    assert not fed.conversation.assessment.danger.open


def test_a_reading_in_doubt_in_the_middle_of_a_list_loses_none_of_the_others(read: Watch) -> None:
    fed = read((5, "4:00 80, 4:30 310, 5:00 90"), (6, "F"))
    assert "Is that 310 °C or 310 °F?" in flat(fed)
    assert fed.answer("thermometer_log") == ("4:00 80 F", "4:30 310 F", "5:00 90 F")


def test_a_far_too_hot_reading_beside_one_that_can_not_be_is_danger(read: Watch) -> None:
    fed = read((5, "5:00 80 C, 10:00 1100, 15:00 300 C"))
    assert "Turn the oven off now" in flat(fed)
    assert fed.conversation.assessment.danger.open

"""A measurement in the chat: the clock, the lines, and every way out."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from functools import partial

import pytest

from assistant.authoring.cases import read_case
from assistant.chat.talk import Talk
from assistant.errors import Refused
from assistant.interview.commands import BeginMeasuring, GiveAnswer, HearDanger, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.interview.view import QuestionView
from assistant.wording.languages import Languages
from tests.chat.conftest import Fed
from tests.conftest import ROOT, Begin
from tests.record_readme import CODE, RecordingTerminal

BEGAN = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
GATE = ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"]


class Clock:
    """Stands still until it is moved on."""

    def __init__(self) -> None:
        self.now = BEGAN

    def __call__(self) -> datetime:
        return self.now


class TimedTerminal(RecordingTerminal):
    """Types lines at their times: (seconds since the beginning, what is typed)."""

    def __init__(self, lines: Sequence[tuple[float, str]], clock: Clock) -> None:
        super().__init__([typed for _, typed in lines])
        self._times = iter(lines)
        self._clock = clock

    def ask(self, completions: Sequence[str]) -> str:
        at_s, _ = next(self._times, (0.0, ""))
        self._clock.now = max(self._clock.now, BEGAN + timedelta(seconds=at_s))
        return super().ask(completions)


@pytest.fixture
def at_the_lamp_watch(begun: Begin) -> Conversation:
    """An oven that cooks paler from year to year, asked about until the lamp is to be watched."""
    case = read_case(ROOT / "tests/cases/everything_pale_over_the_years.yaml")
    answers = {**case["answers"], "hot_gate": GATE}
    conversation = begun()
    while isinstance(view := conversation.view(), QuestionView) and view.kind != "lamp_log":
        known = view.id in answers
        conversation.do(GiveAnswer(view.id, answers[view.id]) if known else SayNotSure(view.id))
    assert isinstance(view, QuestionView)
    return conversation


@pytest.fixture
def at_the_thermometer(at_the_lamp_watch: Conversation) -> Conversation:
    """The same, where the thermometer's question is opened by hand."""
    at_the_lamp_watch._clock = lambda: BEGAN
    at_the_lamp_watch.do(GiveAnswer("thermometer_kind", "hanging_or_standing"))
    at_the_lamp_watch.do(BeginMeasuring("thermometer_log"))
    return at_the_lamp_watch


Watch = Callable[..., Fed]


def _watched(conversation: Conversation, languages: Languages, *lines: tuple[float, str], resumed: bool = False) -> Fed:
    clock = Clock()
    conversation._clock = clock
    terminal = TimedTerminal(lines, clock)
    sentences, listener = languages.sentences("en-GB", "great_britain"), languages.listener("en-GB")
    Talk(conversation, sentences, listener, terminal, f"ovenside resume {CODE}", clock).run(resumed=resumed)
    return Fed(terminal.screen.getvalue(), conversation)


@pytest.fixture
def watch(at_the_lamp_watch: Conversation, languages: Languages) -> Watch:
    return partial(_watched, at_the_lamp_watch, languages)


def test_enter_alone_notes_that_the_light_changed(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (730, ""), (800, "end"))
    assert fed.answer("lamp_watch") == ("7:00 out", "9:20 lit", "12:10 out", "13:20 end")
    assert fed.state.measuring == {}
    assert "the light went out" in fed.screen
    assert "Turn the oven off now" in fed.screen


def test_what_was_measured_is_drawn_beside_what_simulated_ovens_do(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (730, ""), (800, "end"))
    assert "simulated sound ovens" in " ".join(fed.screen.split())
    assert "small light" in fed.screen


def test_times_may_be_typed_afterwards(watch: Watch) -> None:
    fed = watch((0, "7:40 out, 9:10 on, 12:00 out, 15:00 end"))
    assert fed.answer("lamp_watch") == ("7:40 out", "9:10 lit", "12:00 out", "15:00 end")
    assert "Turn the oven off now" in fed.screen


def test_a_slip_is_taken_back_and_a_missed_change_finds_its_place(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (430, "undo"), (700, "7:00 out"), (720, "on"), (900, "end"))
    assert fed.answer("lamp_watch") == ("7:00 out", "12:00 lit", "15:00 end")


def test_impossible_lines_are_said_to_be_so_and_the_clock_runs_on(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (421, ""), (422, "20:00 on"), (430, "purple"), (500, "end"))
    assert fed.answer("lamp_watch") == ("7:00 out", "8:20 end")
    assert "within two seconds" in fed.screen
    assert "has not come yet" in fed.screen
    assert "did not understand" in fed.screen


def test_after_its_longest_time_the_watch_ends_by_itself(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1850, ""))
    assert fed.answer("lamp_watch") == ("7:00 out", "30:00 end")
    assert "The time is up" in fed.screen


@pytest.mark.parametrize("way_out", ["not sure", "skip"])
def test_who_stops_measuring_is_told_to_turn_the_oven_off(watch: Watch, way_out: str) -> None:
    fed = watch((0, "begin"), (60, way_out))
    assert fed.answer("lamp_watch") is None
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


def test_whoever_leaves_in_the_middle_is_told_to_turn_the_oven_off(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""))
    assert fed.state.measuring["lamp_watch"].lines == ("7:00 out",)
    assert "please turn it off now" in " ".join(fed.screen.split())


def test_danger_typed_while_measuring_ends_it_and_opens_its_question(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, "there is smoke coming out"))
    assert "smoke" in fed.state.heard
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


@pytest.mark.parametrize(("said", "goes_on"), [("1", True), ("2", False), ("3", False), ("there are sparks", False)])
def test_a_resumed_measurement_first_asks_how_it_is_now(watch: Watch, said: str, goes_on: bool) -> None:
    watch((0, "begin"), (420, ""))
    fed = watch((600, said), resumed=True)
    assert "How is it now?" in fed.screen
    assert bool(fed.state.measuring) == goes_on
    assert bool(fed.state.heard) == (said in ("3", "there are sparks"))


def test_danger_typed_after_the_longest_time_is_heard_all_the_same(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1900, "there is smoke and flames"))
    assert fed.state.heard
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


def test_a_light_that_never_went_out_is_what_the_clock_says(watch: Watch) -> None:
    fed = watch((0, "begin"), (1600, "end"))
    assert fed.answer("lamp_watch") == ("0:00 lit", "26:40 end")


def test_long_after_the_time_nothing_is_claimed_of_what_nobody_saw(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (3000, "end"))
    assert fed.answer("lamp_watch") == ("7:00 out", "9:20 lit", "9:20 end")


@pytest.mark.parametrize("way", ["back", "change"])
def test_turning_to_an_earlier_answer_ends_the_test(watch: Watch, way: str) -> None:
    fed = watch((0, "begin"), (420, ""), (500, way), (510, "1"))
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


def test_off_alone_is_asked_back(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, "off"))
    assert fed.state.measuring["lamp_watch"].lines == ()
    assert "when you have switched the oven off" in " ".join(fed.screen.split())


def test_after_one_measurement_no_other_hot_test_is_offered(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (730, ""), (800, "end"))
    view = fed.conversation.view()
    assert not isinstance(view, QuestionView) or view.care in ("talk", "look_cold")


@pytest.mark.parametrize("typed", ["stop", None])
def test_whoever_leaves_at_the_pause_is_told_to_turn_the_oven_off(watch: Watch, typed: str | None) -> None:
    watch((0, "begin"), (420, ""))
    fed = watch(*([(600.0, typed)] if typed else []), resumed=True)
    assert "please turn it off now" in " ".join(fed.screen.split())
    assert "lamp_watch" in fed.state.measuring


def test_nothing_hot_is_begun_while_danger_is_open(at_the_lamp_watch: Conversation) -> None:
    at_the_lamp_watch.do(HearDanger("smoke", clear=True))
    with pytest.raises(Refused) as refused:
        at_the_lamp_watch.do(BeginMeasuring("lamp_watch"))
    assert refused.value.code == "not_fit_to_measure"


def test_nothing_hot_is_begun_without_its_gate(begun: Begin) -> None:
    with pytest.raises(Refused):
        begun(danger_now=["none"]).do(BeginMeasuring("lamp_watch"))


@pytest.mark.parametrize("readings", [[(60, "300")], [(60, "80"), (300, "262")]])
def test_a_thermometer_far_above_the_setting_ends_the_test_at_once(
    at_the_thermometer: Conversation, languages: Languages, readings: list[tuple[float, str]]
) -> None:
    fed = _watched(at_the_thermometer, languages, *readings)
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


@pytest.mark.parametrize("typed", ["1:00 300, 1:00 60", "1:00 60, 1:00 70, 2:00 300", "1:00 60, 2:00 300, 3:00 310"])
def test_a_list_in_which_one_reading_is_far_too_hot_ends_the_test_whatever_stands_beside_it(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, typed))
    assert "far more than the setting" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


def test_a_list_with_one_line_that_can_not_be_is_not_noted_at_all(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "1:00 60, 2:00 80, 2:00 90"))
    assert fed.state.measuring["thermometer_log"].lines == ()


def test_a_reading_that_no_oven_comes_to_is_asked_back(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "900"))
    assert fed.state.measuring["thermometer_log"].lines == ()


def test_danger_told_on_another_screen_ends_the_test_here_too(
    script: Script, at_the_thermometer: Conversation, languages: Languages
) -> None:
    other = Conversation.resume(script, at_the_thermometer._log, at_the_thermometer.record)
    other.do(HearDanger("smoke", clear=True))
    fed = _watched(at_the_thermometer, languages, (300, "140"))
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert "smoke" in fed.state.heard


@pytest.mark.parametrize("typed", ["yes", "ok then"])
def test_a_yes_before_the_start_is_told_how_to_begin(watch: Watch, typed: str) -> None:
    fed = watch((0, typed))
    assert "type “begin”" in " ".join(fed.screen.split()).rpartition(f"> {typed}")[2]
    assert fed.status("lamp_watch") == "not_asked"


def test_a_single_time_is_asked_until_when(watch: Watch) -> None:
    fed = watch((0, "7:40 out"), (60, "7:40 out, 20:00 end"))
    assert "Until when" in fed.screen
    assert fed.answer("lamp_watch") == ("7:40 out", "20:00 end")


def test_a_resumed_measurement_shows_what_was_noted(watch: Watch) -> None:
    watch((0, "begin"), (420, ""))
    fed = watch((600, "1"), resumed=True)
    assert "7:00  the light went out" in fed.screen.rpartition("How is it now?")[2]


def test_a_refused_list_keeps_the_question_open(watch: Watch) -> None:
    fed = watch((0, "9:10 out, 7:40 on"))
    assert fed.status("lamp_watch") == "not_asked"
    assert "put the times in order" in " ".join(fed.screen.split())

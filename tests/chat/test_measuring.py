"""A measurement in the chat: the clock, the lines, and every way out."""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import partial

import pytest

from assistant.authoring.cases import read_case
from assistant.chat.alarm import Alarm
from assistant.chat.talk import Talk
from assistant.chat.terminal import BELL
from assistant.errors import Refused
from assistant.interview.commands import BeginMeasuring, Command, GiveAnswer, HearDanger, NoteLine, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.interview.view import QuestionView
from assistant.interview.way import may_ask
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
    """Types lines at their times: (seconds since the beginning, what is typed). An alarm that is due before rings."""

    def __init__(self, lines: Sequence[tuple[float, str]], clock: Clock) -> None:
        super().__init__([typed for _, typed in lines])
        self._times = iter(lines)
        self._clock = clock

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        at_s, _ = next(self._times, (0.0, ""))
        self._clock.now = max(self._clock.now, BEGAN + timedelta(seconds=at_s))
        if alarm is not None and alarm.should_ring:
            alarm.rung = True
            self.screen.write(f"{BELL}\n")
            self.write(alarm.said)
        return super().ask(completions, alarm)


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


def _watched(
    conversation: Conversation,
    languages: Languages,
    *lines: tuple[float, str],
    resumed: bool = False,
    plain: bool = False,
) -> Fed:
    clock = Clock()
    conversation._clock = clock
    terminal = TimedTerminal(lines, clock)
    terminal.plain = plain
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


def test_the_own_time_is_told_beside_the_usual_ones(watch: Watch) -> None:
    fed = watch((0, "begin"), (1265, ""), (1500, "end"))
    told = re.search(r"goes out between (\d+):\d\d and (\d+):\d\d minutes; yours went out at 21:05", _flat(fed))
    assert told is not None
    assert 1 <= int(told[1]) < int(told[2]) <= 30


def test_a_light_that_never_went_out_is_told_beside_the_usual_times(watch: Watch) -> None:
    assert "yours did not go out in 26:40" in _flat(watch((0, "begin"), (1600, "end")))


def test_the_shaded_band_is_told_in_words(at_the_thermometer: Conversation, languages: Languages) -> None:
    typed = (60, "40"), (600, "143"), (1200, "end")
    assert "The shaded band is where the thermometer would have stood" in _flat(
        _watched(at_the_thermometer, languages, *typed)
    )


def _flat(fed: Fed) -> str:
    return " ".join(fed.screen.split())


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


def _rung(fed: Fed) -> list[str]:
    """What stood on the screen after each ring of the bell."""
    return [" ".join(after.split()) for after in fed.screen.split(BELL)[1:]]


def test_when_the_longest_time_is_over_the_bell_rings_though_nothing_is_typed(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1810, "why"), (1815, "how"))
    (after,) = _rung(fed)
    assert after.startswith("The time is up. Turn the oven off now")
    assert fed.state.measuring["lamp_watch"].lines == ("7:00 out",)


def test_before_the_longest_time_no_bell_rings(watch: Watch) -> None:
    assert _rung(watch((0, "begin"), (420, ""), (1790, "why"))) == []


def test_once_the_test_is_ended_no_bell_rings(watch: Watch) -> None:
    assert _rung(watch((0, "begin"), (420, ""), (800, "end"), (2000, "why"))) == []


def test_whoever_comes_back_after_the_longest_time_is_told_at_once(watch: Watch) -> None:
    watch((0, "begin"), (420, ""))
    fed = watch((1900, "2"), resumed=True)
    assert len(_rung(fed)) == 1


def test_a_second_measurement_rings_anew(at_the_thermometer: Conversation, languages: Languages) -> None:
    one = _watched(at_the_thermometer, languages, (1900, "not sure"))
    at_the_thermometer.do(BeginMeasuring("thermometer_log"))
    other = _watched(at_the_thermometer, languages, (1700, "why"), (3900, "why"))
    assert (len(_rung(one)), len(_rung(other))) == (1, 1)


@pytest.mark.parametrize(
    ("typed", "lines"),
    [
        ("29:30 on", ("7:00 out", "29:30 lit", "30:00 end")),
        ("on", ("7:00 out", "30:00 end")),
        ("30:04 on", ("7:00 out", "30:00 end")),
        ("6:00 out", ("7:00 out", "30:00 end")),
    ],
)
def test_a_change_before_the_longest_time_counts_though_it_is_typed_after_it(
    watch: Watch, typed: str, lines: tuple[str, ...]
) -> None:
    assert watch((0, "begin"), (420, ""), (1810, typed)).answer("lamp_watch") == lines


def test_a_reading_in_doubt_that_is_typed_after_the_longest_time_is_asked_about_once(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "75"), (1805, "29:00 350"), (1810, "F"))
    assert "Is that 350 °C or 350 °F?" in fed.screen
    assert fed.answer("thermometer_log") == ("1:00 75 F", "29:00 350 F")
    assert not fed.conversation.assessment.danger.open


def test_whoever_never_tells_the_scale_counts_as_in_danger(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "75"), (1805, "29:00 350"), (1810, "end"))
    assert fed.conversation.assessment.danger.stops


@pytest.mark.parametrize("typed", ["end", "purple", "40:00 90"])
def test_a_single_reading_in_doubt_is_asked_about_though_the_time_is_up(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (600, "290"), (1810, typed))
    assert "Turn the oven off now" in fed.screen.rpartition("The time is up")[2]
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open_questions == ("sign_too_hot",)


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


@pytest.mark.parametrize("now", ["gone", "of another kind", "barred", "as it was"])
@pytest.mark.parametrize("line", ["5:00 60 C", "5:00 300 ?"])
def test_a_measurement_that_the_rules_no_longer_know_is_left_by_whoever_comes_back(
    script: Script, at_the_thermometer: Conversation, languages: Languages, now: str, line: str
) -> None:
    at_the_thermometer.do(NoteLine("thermometer_log", line))
    questions = dict(script.knowledge.questions)
    log = questions.pop("thermometer_log")
    if now == "of another kind":
        questions["thermometer_log"] = log.model_copy(update={"kind": "text", "run": None})
    elif now == "barred":
        questions["thermometer_log"] = log.model_copy(update={"ask_when": ["low_setting_stays_lit"]})
    elif now == "as it was":
        questions["thermometer_log"] = log
    changed = replace(script, knowledge=script.knowledge.model_copy(update={"questions": questions}))
    resumed = Conversation.resume(changed, at_the_thermometer._log, at_the_thermometer.record)
    fed = _watched(resumed, languages, (600, "why"), resumed=True)
    unfit = now != "as it was"
    assert ("Turn the oven off now" in fed.screen) == unfit
    assert ("How is it now?" in fed.screen) != unfit
    assert bool(fed.state.measuring) != unfit


def test_danger_typed_after_the_longest_time_is_heard_all_the_same(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1900, "there is smoke and flames"))
    assert fed.state.heard
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


def test_a_light_that_never_went_out_is_what_the_clock_says(watch: Watch) -> None:
    fed = watch((0, "begin"), (1600, "end"))
    assert fed.answer("lamp_watch") == ("0:00 lit", "26:40 end")


@pytest.mark.parametrize(
    ("said", "until"), [("yes", "30:00"), ("no", "9:20"), ("not sure", "9:20"), ("29:00 out", "29:00")]
)
def test_long_after_the_time_it_is_asked_until_when_it_was_watched(watch: Watch, said: str, until: str) -> None:
    then = [(3020.0, "no")] if said == "29:00 out" else []
    fed = watch((0, "begin"), (420, ""), (560, ""), (3000, "end"), (3010, said), *then)
    asked = _flat(fed).partition("> end")[2]
    assert asked.strip().startswith("The time is up. Turn the oven off now")
    assert "Did you watch the light until the 30 minutes were over, and was it on all the time from 9:20" in asked
    answer = fed.answer("lamp_watch")
    assert isinstance(answer, tuple)
    assert answer[:2] == ("7:00 out", "9:20 lit")
    assert answer[-1] == f"{until} end"


def test_a_light_that_never_went_out_in_the_whole_time_is_not_thrown_away(watch: Watch) -> None:
    fed = watch((0, "begin"), (1990, ""), (2000, "yes"))
    assert fed.answer("lamp_watch") == ("0:00 lit", "30:00 end")


def test_nothing_is_claimed_while_it_is_not_said_until_when_it_was_watched(watch: Watch) -> None:
    fed = watch((0, "begin"), (1031, ""), (1990, "purple"), (2000, ""))
    assert fed.answer("lamp_watch") is None
    assert _flat(fed).count("was it out all the time from 17:11") == 2


def test_a_change_soon_after_the_time_shows_that_it_was_watched_and_is_said_not_to_count(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (2500, "31:00 on"))
    assert fed.answer("lamp_watch") == ("7:00 out", "30:00 end")
    assert "What came after the 30 minutes does not count" in _flat(fed)


def test_a_change_after_the_time_that_can_not_follow_the_last_one_proves_nothing(watch: Watch) -> None:
    fed = watch((0, "begin"), (1810, "31:00 on"))
    assert fed.answer("lamp_watch") is None
    assert "Did you watch the light until the 30 minutes were over" in _flat(fed)


@pytest.mark.parametrize("typed", ["120", "31:00 120", "31:00 115, 31:50 120"])
def test_a_reading_soon_after_the_time_is_of_the_longest_time(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "60"), (1810, typed))
    assert fed.answer("thermometer_log") == ("5:00 60 C", "30:00 120 C")
    assert "kept as the reading at 30 minutes" in _flat(fed)


def test_a_reading_long_after_the_time_does_not_count_and_that_is_said(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "60"), (900, "110"), (3000, "120"))
    assert fed.answer("thermometer_log") == ("5:00 60 C", "15:00 110 C")
    assert "What came after the 30 minutes does not count" in _flat(fed)


@pytest.mark.parametrize("way", ["back", "change"])
def test_turning_to_an_earlier_answer_ends_the_test(watch: Watch, way: str) -> None:
    fed = watch((0, "begin"), (420, ""), (500, way), (510, "1"))
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


@pytest.mark.parametrize("typed", ["off", "light off", "its out", "its gone out"])
def test_everyday_words_for_a_light_that_goes_out_and_comes_on(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (420, typed), (560, "it came back on"))
    assert fed.state.measuring["lamp_watch"].lines == ("7:00 out", "9:20 lit")


@pytest.mark.parametrize("typed", ["it is off", "its off", "it's off", "It’s off now", "6:50 its off"])
def test_it_is_off_is_asked_back(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (420, typed))
    assert fed.state.measuring["lamp_watch"].lines == ()
    assert "Is the light off, or the oven?" in _flat(fed)


@pytest.mark.parametrize("typed", ["i have to go out", "my toddler is in the kitchen", "everything went dark"])
def test_what_is_not_understood_while_it_is_hot_is_told_to_stay_or_to_turn_it_off(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (420, typed))
    assert "Somebody must stay with the oven" in _flat(fed)
    assert "turn it off now and type “end”" in _flat(fed)


def test_ok_its_on_begins(watch: Watch) -> None:
    assert "lamp_watch" in watch((0, "ok its on")).state.measuring


def test_why_it_is_asked_how_hot_it_gets_is_said(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "300"), (310, "not sure"))
    assert "What was read may be far too hot, so we ask about that first." in _flat(fed)


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


@pytest.mark.parametrize(
    "readings",
    [
        [(60, "300 C")],
        [(60, "80 C"), (300, "262")],
        [(10, "21"), (300, "262")],
        [(60, "40"), (300, "262")],
        [(60, "500")],
        [(60, "600")],
        [(60, "300"), (70, "C")],
        [(60, "300"), (70, "300 °C")],
        [(60, "80"), (300, "300"), (1900, "F, or is it")],
    ],
)
def test_a_thermometer_far_above_the_setting_ends_the_test_at_once(
    at_the_thermometer: Conversation, languages: Languages, readings: list[tuple[float, str]]
) -> None:
    fed = _watched(at_the_thermometer, languages, *readings)
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


def test_a_reading_that_may_be_fahrenheit_is_asked_about_and_danger_in_doubt_is_named(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "75"), (300, "300"), (310, "why"), (320, ""), (330, "end"))
    screen = " ".join(fed.screen.split())
    assert screen.count("Is that 300 °C or 300 °F?") == 3
    assert "If you cannot tell, turn the oven off now" in screen
    assert fed.state.measuring["thermometer_log"].lines == ("1:00 75 ?", "5:00 300 ?")
    assert not fed.conversation.assessment.danger.open


@pytest.mark.parametrize("told", ["F", "300 F", "fahrenheit"])
def test_once_told_to_be_fahrenheit_all_readings_are_and_those_to_come(
    at_the_thermometer: Conversation, languages: Languages, told: str
) -> None:
    typed = (60, "75"), (300, "300"), (310, told), (600, "340"), (1200, "350"), (1500, "end")
    fed = _watched(at_the_thermometer, languages, *typed)
    assert fed.answer("thermometer_log") == ("1:00 75 F", "5:00 300 F", "10:00 340 F", "20:00 350 F")
    assert not fed.conversation.assessment.danger.open


def test_a_reading_without_a_unit_counts_as_celsius_where_nothing_speaks_against_it(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "40"), (600, "143"), (1200, "end"))
    assert fed.answer("thermometer_log") == ("1:00 40 C", "10:00 143 C")
    assert "10:00  143\n" in fed.screen


def test_a_reading_in_doubt_may_be_a_slip(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "50"), (300, "300"), (310, "undo"), (320, "100"))
    assert fed.state.measuring["thermometer_log"].lines == ("1:00 50 ?", "5:20 100 ?")


@pytest.mark.parametrize("way_out", ["not sure", "skip", "back", "change"])
def test_whoever_leaves_a_reading_in_doubt_is_asked_how_hot_it_gets(
    at_the_thermometer: Conversation, languages: Languages, way_out: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "300"), (310, way_out))
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open_questions == ("sign_too_hot",)
    assert "How much too hot is it?" in fed.screen


def test_a_reading_in_doubt_is_asked_about_again_by_whoever_comes_back(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    left = _watched(at_the_thermometer, languages, (300, "300"))
    assert "please turn it off now" in " ".join(left.screen.split())
    fed = _watched(at_the_thermometer, languages, (600, "1"), (610, "C"), resumed=True)
    assert "Is that 300 °C or 300 °F?" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert "too_hot" in fed.state.heard


BEFORE = ("5:00 60 C", "10:00 120 C")


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
    fed = _watched(at_the_thermometer, languages, (0, "back"), (5, "5:00 120, 10:00 300"), *told_then)
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
    fed = _watched(at_the_thermometer, languages, (0, "back"), *((5, each) for each in typed))
    assert "far more than the setting" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert fed.answer("thermometer_log") == BEFORE
    assert fed.conversation.assessment.danger.open_questions == ("sign_too_hot",)


@pytest.mark.parametrize(
    "typed", ["1:00 300 C, 1:00 60", "1:00 60, 1:00 70 C, 2:00 300", "1:00 60, 2:00 300, 3:00 310 C"]
)
def test_a_list_in_which_one_reading_is_far_too_hot_ends_the_test_whatever_stands_beside_it(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, typed))
    assert "far more than the setting" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


@pytest.mark.parametrize("at_s", [300, 1810])
@pytest.mark.parametrize("typed", ["300 C", "40:00 300 C"])
def test_a_reading_far_too_hot_is_heard_whatever_its_time(
    at_the_thermometer: Conversation, languages: Languages, at_s: float, typed: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "80 C"), (at_s, typed))
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


@pytest.mark.parametrize("at_s", [300, 1810])
@pytest.mark.parametrize("typed", ["300", "40:00 300"])
def test_a_reading_in_doubt_is_asked_about_whatever_its_time(
    at_the_thermometer: Conversation, languages: Languages, at_s: float, typed: str
) -> None:
    fed = _watched(at_the_thermometer, languages, (at_s, typed))
    assert "Is that 300 °C or 300 °F?" in fed.screen


def test_a_list_with_one_line_that_can_not_be_is_not_noted_at_all(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "1:00 60, 2:00 80, 2:00 90"))
    assert fed.state.measuring["thermometer_log"].lines == ()


def test_a_reading_that_no_oven_comes_to_is_asked_back(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = _watched(at_the_thermometer, languages, (300, "1100"))
    assert fed.state.measuring["thermometer_log"].lines == ()


@pytest.mark.parametrize(
    ("then", "danger", "goes_on"),
    [("F", True, False), ("C", False, True), ("undo", False, True), ("not sure", True, False), (None, False, True)],
)
def test_a_reading_that_is_a_slip_or_far_too_hot_by_its_scale_is_asked_about(
    at_the_thermometer: Conversation, languages: Languages, then: str | None, danger: bool, goes_on: bool
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "80"), (300, "800"), *([(310, then)] if then else []))
    assert "Is that 800 °C or 800 °F?" in fed.screen
    assert fed.conversation.assessment.danger.open == danger
    assert bool(fed.state.measuring) == goes_on


@pytest.mark.parametrize(("told", "danger"), [("F", True), ("C", False), ("not sure", True)])
def test_so_is_one_that_is_typed_afterwards(
    at_the_thermometer: Conversation, languages: Languages, told: str, danger: bool
) -> None:
    at_the_thermometer.do(GiveAnswer("thermometer_log", BEFORE))
    fed = _watched(at_the_thermometer, languages, (0, "back"), (5, "5:00 80, 10:00 800"), (9, told))
    assert "Is that 800 °C or 800 °F?" in fed.screen
    assert fed.conversation.assessment.danger.open == danger


def test_a_slip_or_danger_that_nobody_told_apart_is_heard_when_the_time_is_up(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "80"), (300, "800"), (1810, "end"))
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


def test_a_scale_told_after_the_longest_time_ends_the_test_at_once(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = _watched(at_the_thermometer, languages, (60, "75"), (1500, "350"), (1810, "F"))
    assert "Turn the oven off now" in fed.screen.rpartition("> F")[2]
    assert fed.state.measuring == {}
    assert fed.answer("thermometer_log") == ("1:00 75 F", "25:00 350 F")


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


def _kind_told(conversation: Conversation, kind: str) -> QuestionView:
    conversation.do(GiveAnswer("thermometer_kind", kind))
    view = conversation.view()
    assert isinstance(view, QuestionView)
    return view


@pytest.mark.parametrize("kind", ["digital_with_cable", "waterproof_one"])
def test_a_thermometer_that_may_get_wet_may_be_checked_first(at_the_lamp_watch: Conversation, kind: str) -> None:
    assert _kind_told(at_the_lamp_watch, kind).id == "thermometer_check"


@pytest.mark.parametrize("kind", ["hanging_or_standing", "other_kind", "none_here"])
def test_one_that_may_not_get_wet_is_never_offered_a_check(at_the_lamp_watch: Conversation, kind: str) -> None:
    assert _kind_told(at_the_lamp_watch, kind).id != "thermometer_check"
    for question_id in ("thermometer_check", "thermometer_in_ice", "thermometer_in_boiling_water"):
        assert not may_ask(at_the_lamp_watch.script, at_the_lamp_watch.assessment, question_id)


def test_without_the_hot_gate_no_thermometer_is_put_into_boiling_water(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], thermometer_kind="digital_with_cable", thermometer_check="boiling_water")
    assert not may_ask(conversation.script, conversation.assessment, "thermometer_in_boiling_water")


@pytest.mark.parametrize(
    ("check", "water"), [("boiling_water", "thermometer_in_boiling_water"), ("with_ice", "thermometer_in_ice")]
)
@pytest.mark.parametrize(
    "then",
    [
        GiveAnswer("hot_gate", GATE[1:]),
        SayNotSure("hot_gate"),
        GiveAnswer("thermometer_kind", "hanging_or_standing"),
        SayNotSure("thermometer_kind"),
    ],
    ids=str,
)
def test_once_the_hot_gate_is_shut_no_water_is_asked_for_any_more(
    at_the_lamp_watch: Conversation, check: str, water: str, then: Command
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    at_the_lamp_watch.do(GiveAnswer("thermometer_check", check), GiveAnswer("height_above_sea", "hills"))
    assert may_ask(at_the_lamp_watch.script, at_the_lamp_watch.assessment, water)
    at_the_lamp_watch.do(then)
    for question_id in (water, "height_above_sea"):
        assert not may_ask(at_the_lamp_watch.script, at_the_lamp_watch.assessment, question_id)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("3", "reads 3 degrees too high. So much is taken off its readings."),
        ("28.4 F", "reads 2 degrees too low. So much is added to its readings."),
        ("0", "reads as it should"),
        ("12", "more than 10 degrees off, so it is no good for this"),
    ],
)
def test_what_it_reads_in_ice_is_told_at_once(
    at_the_lamp_watch: Conversation, languages: Languages, typed: str, said: str
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = _watched(at_the_lamp_watch, languages, (0, "ice"), (5, typed))
    screen = " ".join(fed.screen.split())
    assert "well stirred, it should read 0 °C" in screen
    assert said in screen
    usable = "thermometer_no_good" not in fed.conversation.assessment.trace.concluded
    assert may_ask(fed.conversation.script, fed.conversation.assessment, "thermometer_log") == usable == (typed != "12")


def test_32_without_a_unit_is_not_taken_for_celsius(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = _watched(at_the_lamp_watch, languages, (0, "ice"), (5, "32"), (9, "32 F"))
    assert "Is that 32 °C or 32 °F?" in fed.screen
    assert fed.answer("thermometer_in_ice") == 0.0


@pytest.mark.parametrize(
    ("height", "expected"), [("by the sea", 100), ("hills", 98), ("1000 m", 97), ("in the mountains", 95)]
)
def test_boiling_water_is_expected_as_it_boils_where_they_live(
    at_the_lamp_watch: Conversation, languages: Languages, height: str, expected: int
) -> None:
    _kind_told(at_the_lamp_watch, "waterproof_one")
    fed = _watched(at_the_lamp_watch, languages, (0, "no ice"), (5, height), (9, str(expected + 4)))
    screen = " ".join(fed.screen.split())
    assert f"it should read about {expected} °C where you live" in screen
    assert "Steam scalds: stand aside" in screen
    assert "degrees too high" in screen


def test_a_check_may_be_left_out(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = _watched(at_the_lamp_watch, languages, (0, "not sure"))
    assert may_ask(fed.conversation.script, fed.conversation.assessment, "thermometer_log")
    assert fed.answer("thermometer_in_ice") is None


def test_what_is_drawn_is_put_right(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    at_the_lamp_watch.do(GiveAnswer("thermometer_check", "with_ice"), GiveAnswer("thermometer_in_ice", 8.0))
    at_the_lamp_watch._clock = lambda: BEGAN
    at_the_lamp_watch.do(BeginMeasuring("thermometer_log"))
    fed = _watched(at_the_lamp_watch, languages, (60, "40"), (600, "151"), (1200, "end"), plain=True)
    after = " ".join(fed.screen.rpartition("> end")[2].split())
    assert "reads 8 degrees too high" in after
    assert "The last reading was 143 °C" in after
    assert fed.answer("thermometer_log") == ("1:00 40 C", "10:00 151 C")


def test_a_thermometer_known_to_read_low_is_believed_to_be_hotter(
    at_the_lamp_watch: Conversation, languages: Languages
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    at_the_lamp_watch.do(GiveAnswer("thermometer_check", "with_ice"), GiveAnswer("thermometer_in_ice", -9.0))
    at_the_lamp_watch._clock = lambda: BEGAN
    at_the_lamp_watch.do(BeginMeasuring("thermometer_log"))
    fed = _watched(at_the_lamp_watch, languages, (60, "80 C"), (600, "249"))
    assert "far more than the setting" in fed.screen
    assert fed.conversation.assessment.danger.stops


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("99", "9 is no shade. Shades go from 0 for white to 5 for burnt."),
        ("top 337 332 622, underside 110 100 000", "7, 6 are no shades."),
        ("top 333", "For the tops we count 3 figures. Each side needs nine"),
    ],
)
def test_figures_that_are_no_shade_are_named(
    at_the_lamp_watch: Conversation, languages: Languages, typed: str, said: str
) -> None:
    at_the_lamp_watch.do(GiveAnswer("bread_tray", ["top 333 332 222", "underside 110 100 000"]))
    fed = _watched(at_the_lamp_watch, languages, (0, "back"), (5, typed))
    assert said in _flat(fed)
    assert fed.answer("bread_tray") == ("top 333 332 222", "underside 110 100 000")


@pytest.mark.parametrize(
    "typed", ["light still on", "still on", "still lit", "the light is still on", "its 9 minutes and still on"]
)
def test_that_the_light_is_still_on_is_a_remark_and_no_danger(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (540, typed), (600, "out"))
    assert "Noted: nothing changed. So far the light is on. Type only changes." in _flat(fed)
    assert fed.state.measuring["lamp_watch"].lines == ("10:00 out",)
    assert not fed.state.heard


@pytest.mark.parametrize(
    "typed", ["the oven is still on though the knob is off", "oven still on", "still on even though its off"]
)
def test_an_oven_that_is_still_on_is_danger_while_the_light_is_watched(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (540, typed))
    assert "heat_wont_go_off" in fed.state.heard
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


def test_still_on_is_danger_where_no_light_is_watched(at_the_thermometer: Conversation, languages: Languages) -> None:
    assert "heat_wont_go_off" in _watched(at_the_thermometer, languages, (60, "still on")).state.heard


def test_still_on_before_the_watch_is_danger(watch: Watch) -> None:
    assert "heat_wont_go_off" in watch((0, "still on")).state.heard


def test_still_on_after_the_time_shows_that_it_was_watched(watch: Watch) -> None:
    fed = watch((0, "begin"), (1990, ""), (2000, "still on"))
    assert fed.answer("lamp_watch") == ("0:00 lit", "30:00 end")


IF_ON = "If the oven is on for this, turn it off now, and leave its door shut until it is cool."


@pytest.fixture
def bake(at_the_lamp_watch: Conversation, languages: Languages) -> Watch:
    """Types to the bread's question, opened by hand."""
    at_the_lamp_watch.do(GiveAnswer("bread_tray", ["top 333 332 222", "underside 110 100 000"]))
    return lambda *lines: _watched(at_the_lamp_watch, languages, (0, "back"), *lines)


@pytest.mark.parametrize("typed", ["not sure", "skip", "back", "change", "i smell burning"])
def test_whoever_leaves_the_bread_is_told_to_turn_the_oven_off_first(bake: Watch, typed: str) -> None:
    fed = bake((5, typed))
    after = _flat(fed).rpartition(f"> {typed}")[2].strip()
    assert after.startswith(IF_ON)
    assert bool(fed.state.heard) == ("burning" in typed)


def test_whoever_leaves_the_chat_at_a_hot_test_is_told_to_turn_the_oven_off(watch: Watch) -> None:
    assert "please turn it off now" in _flat(watch((0, "stop")))


def test_danger_typed_before_the_clock_runs_is_told_to_turn_the_oven_off_too(watch: Watch) -> None:
    assert IF_ON in _flat(watch((0, "i smell burning"))).rpartition("> i smell burning")[2]


def test_the_bread_has_no_clock_and_begin_says_so(bake: Watch) -> None:
    fed = bake((5, "begin"))
    assert "There is no clock here for this one. Set a kitchen timer for 25 minutes" in _flat(fed)
    assert fed.state.measuring == {}


@pytest.mark.parametrize("lines", [[(420, ""), (500, "back"), (510, "")], [(5, "end")]], ids=["back", "too early"])
def test_a_test_offered_again_wants_the_oven_cold_again(watch: Watch, lines: list[tuple[float, str]]) -> None:
    fed = watch((0, "begin"), *lines)
    assert "The oven must be cold again first." in _flat(fed)
    assert ("What you noted is not kept." in _flat(fed)) == (len(lines) > 1)
    assert fed.state.measuring == {}


def test_a_test_offered_for_the_first_time_says_nothing_of_cold_again(watch: Watch) -> None:
    assert "cold again first" not in _flat(watch((0, "why")))


def test_an_end_at_once_is_not_told_to_watch_on(watch: Watch) -> None:
    after = _flat(watch((0, "begin"), (5, "end"))).rpartition("> end")[2]
    assert after.strip().startswith("Turn the oven off now")
    assert "too short to tell anything, so this test is ended." in after
    assert "watch a little longer" not in after

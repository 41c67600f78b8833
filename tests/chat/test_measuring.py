"""A measurement in the chat: how it begins, and every way out."""

from dataclasses import replace

import pytest

from assistant.errors import Refused
from assistant.interview.commands import BeginMeasuring, HearDanger, NoteLine
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.interview.view import QuestionView
from assistant.wording.languages import Languages
from tests.chat.watched import IF_ON, Watch, flat, watched
from tests.conftest import Begin


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
    fed = watched(resumed, languages, (600, "why"), resumed=True)
    unfit = now != "as it was"
    assert ("Turn the oven off now" in fed.screen) == unfit
    assert ("How is it now?" in fed.screen) != unfit
    assert bool(fed.state.measuring) != unfit


@pytest.mark.parametrize("way", ["back", "change"])
def test_turning_to_an_earlier_answer_ends_the_test(watch: Watch, way: str) -> None:
    fed = watch((0, "begin"), (420, ""), (500, way), (510, "1"))
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


def test_why_it_is_asked_how_hot_it_gets_is_said(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = watched(at_the_thermometer, languages, (300, "300"), (310, "not sure"))
    assert "What was read may be far too hot, so we ask about that first." in flat(fed)


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


@pytest.mark.parametrize("way_out", ["not sure", "skip", "back", "change"])
def test_whoever_leaves_a_reading_in_doubt_is_asked_how_hot_it_gets(
    at_the_thermometer: Conversation, languages: Languages, way_out: str
) -> None:
    fed = watched(at_the_thermometer, languages, (300, "300"), (310, way_out))
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open_questions == ("sign_too_hot",)
    assert "How much too hot is it?" in fed.screen


def test_a_reading_in_doubt_is_asked_about_again_by_whoever_comes_back(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    left = watched(at_the_thermometer, languages, (300, "300"))
    assert "please turn it off now" in " ".join(left.screen.split())
    fed = watched(at_the_thermometer, languages, (600, "1"), (610, "C"), resumed=True)
    assert "Is that 300 °C or 300 °F?" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert "too_hot" in fed.state.heard


def test_danger_told_on_another_screen_ends_the_test_here_too(
    script: Script, at_the_thermometer: Conversation, languages: Languages
) -> None:
    other = Conversation.resume(script, at_the_thermometer._log, at_the_thermometer.record)
    other.do(HearDanger("smoke", clear=True))
    fed = watched(at_the_thermometer, languages, (300, "140"))
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert "smoke" in fed.state.heard


def test_whoever_leaves_the_chat_at_a_hot_test_is_told_to_turn_the_oven_off(watch: Watch) -> None:
    assert "please turn it off now" in flat(watch((0, "stop")))


def test_danger_typed_before_the_clock_runs_is_told_to_turn_the_oven_off_too(watch: Watch) -> None:
    assert IF_ON in flat(watch((0, "i smell burning"))).rpartition("> i smell burning")[2]


@pytest.mark.parametrize("lines", [[(420, ""), (500, "back"), (510, "")], [(5, "end")]], ids=["back", "too early"])
def test_a_test_offered_again_wants_the_oven_cold_again(watch: Watch, lines: list[tuple[float, str]]) -> None:
    fed = watch((0, "begin"), *lines)
    assert "The oven must be cold again first." in flat(fed)
    assert ("What you noted is not kept." in flat(fed)) == (len(lines) > 1)
    assert fed.state.measuring == {}


def test_a_test_offered_for_the_first_time_says_nothing_of_cold_again(watch: Watch) -> None:
    assert "cold again first" not in flat(watch((0, "why")))


def test_an_end_at_once_is_not_told_to_watch_on(watch: Watch) -> None:
    after = flat(watch((0, "begin"), (5, "end"))).rpartition("> end")[2]
    assert after.strip().startswith("Turn the oven off now")
    assert "too short to tell anything, so this test is ended." in after
    assert "watch a little longer" not in after


def test_a_number_that_is_not_in_the_list_is_asked_for_again(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (500, "change"), (510, "99"), (520, "what"), (530, "00000199"), (540, "1"))
    assert flat(fed).count("There is no such number in the list. Type a number from 1 to") == 3
    assert flat(fed).count("Your answers so far:") == 1
    assert "Is any of this happening now" in flat(fed).rpartition("> 1 ")[2]


def test_danger_told_in_the_list_of_answers_is_heard(watch: Watch) -> None:
    fed = watch((0, "change"), (5, "99"), (10, "there is smoke"))
    assert "smoke" in fed.state.heard


def test_a_watch_offered_again_after_harmless_danger_wants_the_oven_cold(
    watch: Watch, at_the_lamp_watch: Conversation
) -> None:
    means = at_the_lamp_watch.script.knowledge.signs["buzzing"].answers
    clear = 1 + [each == "clear" for each in means.values()].index(True)
    fed = watch((0, "begin"), (420, ""), (500, "there is a loud buzzing"), (510, str(clear)))
    assert "buzzing" in fed.state.heard
    assert not fed.conversation.assessment.danger.open
    assert "The oven must be cold again first." in flat(fed).rpartition(f"> {clear} ")[2]
    assert fed.state.measuring == {}


@pytest.mark.parametrize(("said", "cold"), [("2", True), ("1", False)])
def test_a_watch_offered_again_after_a_pause_wants_the_oven_cold(watch: Watch, said: str, cold: bool) -> None:
    watch((0, "begin"), (420, ""))
    fed = watch((600, said), (605, "why"), resumed=True)
    assert ("The oven must be cold again first." in flat(fed)) == cold

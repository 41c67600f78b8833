"""Lines that are typed while the clock runs."""

import pytest

from assistant.interview.conversation import Conversation
from assistant.wording.languages import Languages
from tests.chat.watched import Watch, flat, watched


def test_enter_alone_notes_that_the_light_changed(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (730, ""), (800, "end"))
    assert fed.answer("lamp_watch") == ("7:00 out", "9:20 lit", "12:10 out", "13:20 end")
    assert fed.state.measuring == {}
    assert "the light went out" in fed.screen
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


@pytest.mark.parametrize("typed", ["off", "light off", "its out", "its gone out"])
def test_everyday_words_for_a_light_that_goes_out_and_comes_on(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (420, typed), (560, "it came back on"))
    assert fed.state.measuring["lamp_watch"].lines == ("7:00 out", "9:20 lit")


@pytest.mark.parametrize("typed", ["it is off", "its off", "it's off", "It’s off now", "6:50 its off"])
def test_it_is_off_is_asked_back(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (420, typed))
    assert fed.state.measuring["lamp_watch"].lines == ()
    assert "Is the light off, or the oven?" in flat(fed)


@pytest.mark.parametrize("typed", ["i have to go out", "my toddler is in the kitchen", "everything went dark"])
def test_what_is_not_understood_while_it_is_hot_is_told_to_stay_or_to_turn_it_off(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (420, typed))
    assert "Somebody must stay with the oven" in flat(fed)
    assert "turn it off now and type “end”" in flat(fed)


def test_ok_its_on_begins(watch: Watch) -> None:
    assert "lamp_watch" in watch((0, "ok its on")).state.measuring


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
    fed = watched(at_the_thermometer, languages, *readings)
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


def test_a_reading_that_may_be_fahrenheit_is_asked_about_and_danger_in_doubt_is_named(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "75"), (300, "300"), (310, "why"), (320, ""), (330, "end"))
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
    fed = watched(at_the_thermometer, languages, *typed)
    assert fed.answer("thermometer_log") == ("1:00 75 F", "5:00 300 F", "10:00 340 F", "20:00 350 F")
    assert not fed.conversation.assessment.danger.open


def test_a_reading_without_a_unit_counts_as_celsius_where_nothing_speaks_against_it(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "40"), (600, "143"), (1200, "end"))
    assert fed.answer("thermometer_log") == ("1:00 40 C", "10:00 143 C")
    assert "10:00  143\n" in fed.screen


def test_a_reading_in_doubt_may_be_a_slip(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = watched(at_the_thermometer, languages, (60, "50"), (300, "300"), (310, "undo"), (320, "100"))
    assert fed.state.measuring["thermometer_log"].lines == ("1:00 50 ?", "5:20 100 ?")


@pytest.mark.parametrize(
    "typed", ["1:00 300 C, 1:00 60", "1:00 60, 1:00 70 C, 2:00 300", "1:00 60, 2:00 300, 3:00 310 C"]
)
def test_a_list_in_which_one_reading_is_far_too_hot_ends_the_test_whatever_stands_beside_it(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = watched(at_the_thermometer, languages, (300, typed))
    assert "far more than the setting" in fed.screen
    assert "Turn the oven off now" in fed.screen
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


@pytest.mark.parametrize("at_s", [300, 1810])
@pytest.mark.parametrize("typed", ["300 C", "40:00 300 C"])
def test_a_reading_far_too_hot_is_heard_whatever_its_time(
    at_the_thermometer: Conversation, languages: Languages, at_s: float, typed: str
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "80 C"), (at_s, typed))
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


@pytest.mark.parametrize("at_s", [300, 1810])
@pytest.mark.parametrize("typed", ["300", "40:00 300"])
def test_a_reading_in_doubt_is_asked_about_whatever_its_time(
    at_the_thermometer: Conversation, languages: Languages, at_s: float, typed: str
) -> None:
    fed = watched(at_the_thermometer, languages, (at_s, typed))
    assert "Is that 300 °C or 300 °F?" in fed.screen


def test_a_list_with_one_line_that_can_not_be_is_not_noted_at_all(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (300, "1:00 60, 2:00 80, 2:00 90"))
    assert fed.state.measuring["thermometer_log"].lines == ()


def test_a_reading_that_no_oven_comes_to_is_asked_back(at_the_thermometer: Conversation, languages: Languages) -> None:
    fed = watched(at_the_thermometer, languages, (300, "1100"))
    assert fed.state.measuring["thermometer_log"].lines == ()


@pytest.mark.parametrize(
    ("then", "danger", "goes_on"),
    [("F", True, False), ("C", False, True), ("undo", False, True), ("not sure", True, False), (None, False, True)],
)
def test_a_reading_that_is_a_slip_or_far_too_hot_by_its_scale_is_asked_about(
    at_the_thermometer: Conversation, languages: Languages, then: str | None, danger: bool, goes_on: bool
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "80"), (300, "800"), *([(310, then)] if then else []))
    assert "Is that 800 °C or 800 °F?" in fed.screen
    assert fed.conversation.assessment.danger.open == danger
    assert bool(fed.state.measuring) == goes_on


@pytest.mark.parametrize(
    "typed", ["light still on", "still on", "still lit", "the light is still on", "its 9 minutes and still on"]
)
def test_that_the_light_is_still_on_is_a_remark_and_no_danger(watch: Watch, typed: str) -> None:
    fed = watch((0, "begin"), (540, typed), (600, "out"))
    assert "Noted: nothing changed. So far the light is on. Type only changes." in flat(fed)
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
    assert "heat_wont_go_off" in watched(at_the_thermometer, languages, (60, "still on")).state.heard


def test_a_light_that_never_went_out_is_what_the_clock_says(watch: Watch) -> None:
    fed = watch((0, "begin"), (1600, "end"))
    assert fed.answer("lamp_watch") == ("0:00 lit", "26:40 end")


def test_a_reading_in_doubt_in_the_middle_of_a_list_is_asked_about_and_the_others_are_noted(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (300, "4:00 60, 4:30 310, 4:50 70"))
    assert "Is that 310 °C or 310 °F?" in flat(fed)
    assert fed.state.measuring["thermometer_log"].lines == ("4:00 60 ?", "4:30 310 ?", "4:50 70 ?")


@pytest.mark.parametrize(
    ("lines", "noted"),
    [
        ([(60, "30 C"), (300, "4:00 60, 4:30 800, 4:50 90")], ("1:00 30 C", "4:00 60 C", "4:50 90 C")),
        ([(60, "30"), (300, "4:00 60, 4:30 800, 4:50 90"), (310, "C")], ("1:00 30 C", "4:00 60 C", "4:50 90 C")),
        ([(60, "30"), (300, "4:00 60, 4:30 1100")], ("1:00 30 ?", "4:00 60 ?")),
        ([(300, "4:30 800, 4:50 90"), (310, "C"), (320, "4:30 80")], ("4:30 80 C", "4:50 90 C")),
    ],
    ids=str,
)
def test_a_reading_that_no_oven_comes_to_is_asked_for_anew_and_the_others_are_noted(
    at_the_thermometer: Conversation, languages: Languages, lines: list[tuple[float, str]], noted: tuple[str, ...]
) -> None:
    fed = watched(at_the_thermometer, languages, *lines)
    assert "cannot be the heat in a kitchen's oven, so that one is left out. The other lines are kept." in flat(fed)
    assert "type it with its time, such as 4:30 90" in flat(fed)
    assert fed.state.measuring["thermometer_log"].lines == noted
    assert not fed.conversation.assessment.danger.open


@pytest.mark.parametrize(
    ("then", "said", "lines"),
    [
        ("out", "“7:00 out” is noted, so the light did the same at 9:20, and that is not noted.", ("7:00 out",)),
        ("6:00 out", "“7:00 out” is noted, so the light did the same at 6:00, and that is not noted.", ("7:00 out",)),
        ("8:00 on, 8:30 on", "At 8:00 and at 8:30 the light did the same, so neither is noted.", ("7:00 out",)),
    ],
)
def test_of_two_lines_that_say_the_same_it_is_told_which_is_kept(
    watch: Watch, then: str, said: str, lines: tuple[str, ...]
) -> None:
    fed = watch((0, "begin"), (420, ""), (560, then))
    assert said in flat(fed)
    assert fed.state.measuring["lamp_watch"].lines == lines


def test_and_how_to_keep_the_other_one(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, "out"), (570, "undo"), (580, "9:20 out"))
    assert "If the noted one is wrong, type “undo”, and then 9:20 with what it did." in flat(fed)
    assert fed.state.measuring["lamp_watch"].lines == ("9:20 out",)


def test_one_that_undo_does_not_take_back_next_is_said_to_lie_deeper(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (570, "6:00 out"))
    assert "type “undo” until it is gone" in flat(fed)


@pytest.mark.parametrize("word", ["lines", "show", "list"])
def test_all_lines_are_shown_when_asked_for(at_the_thermometer: Conversation, languages: Languages, word: str) -> None:
    readings = [(60.0 * minute, str(20 + 8 * minute)) for minute in range(1, 8)]
    fed = watched(at_the_thermometer, languages, *readings, (500, word))
    before, _, after = fed.screen.rpartition(f"> {word}")
    assert "These are the last 4 of 7 lines. To see them all, type “lines”." in " ".join(before.split())
    assert [f"{minute}:00  {20 + 8 * minute}" in after for minute in range(1, 8)] == [True] * 7
    assert len(fed.state.measuring["thermometer_log"].lines) == 7

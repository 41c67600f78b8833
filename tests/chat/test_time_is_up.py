"""The longest time of a measurement: the bell, what is typed after it, and until when it was watched."""

import pytest

from assistant.chat.terminal import BELL
from assistant.interview.commands import BeginMeasuring
from assistant.interview.conversation import Conversation
from assistant.wording.languages import Languages
from tests.chat.fed import Fed
from tests.chat.watched import Watch, flat, watched


def _rung(fed: Fed) -> list[str]:
    """What stood on the screen after each ring of the bell."""
    return [" ".join(after.split()) for after in fed.screen.split(BELL)[1:]]


def test_after_its_longest_time_the_watch_ends_by_itself(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1850, ""))
    assert fed.answer("lamp_watch") == ("7:00 out", "30:00 end")
    assert "The time is up" in fed.screen


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
    one = watched(at_the_thermometer, languages, (1900, "not sure"))
    at_the_thermometer.do(BeginMeasuring("thermometer_log"))
    other = watched(at_the_thermometer, languages, (1700, "why"), (3900, "why"))
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
    fed = watched(at_the_thermometer, languages, (60, "75"), (1805, "29:00 350"), (1810, "F"))
    assert "Is that 350 °C or 350 °F?" in fed.screen
    assert fed.answer("thermometer_log") == ("1:00 75 F", "29:00 350 F")
    assert not fed.conversation.assessment.danger.open


def test_whoever_never_tells_the_scale_counts_as_in_danger(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "75"), (1805, "29:00 350"), (1810, "end"))
    assert fed.conversation.assessment.danger.stops


@pytest.mark.parametrize("typed", ["end", "purple", "40:00 90"])
def test_a_single_reading_in_doubt_is_asked_about_though_the_time_is_up(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = watched(at_the_thermometer, languages, (600, "290"), (1810, typed))
    assert "Turn the oven off now" in fed.screen.rpartition("The time is up")[2]
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open_questions == ("sign_too_hot",)


def test_danger_typed_after_the_longest_time_is_heard_all_the_same(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1900, "there is smoke and flames"))
    assert fed.state.heard
    assert fed.state.measuring == {}
    assert "Turn the oven off now" in fed.screen


@pytest.mark.parametrize(
    ("said", "until"), [("yes", "30:00"), ("no", "9:20"), ("not sure", "9:20"), ("29:00 out", "29:00")]
)
def test_long_after_the_time_it_is_asked_until_when_it_was_watched(watch: Watch, said: str, until: str) -> None:
    then = [(3020.0, "no")] if said == "29:00 out" else []
    fed = watch((0, "begin"), (420, ""), (560, ""), (3000, "end"), (3010, said), *then)
    asked = flat(fed).partition("> end")[2]
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
    assert flat(fed).count("was it out all the time from 17:11") == 2


def test_a_change_soon_after_the_time_shows_that_it_was_watched_and_is_said_not_to_count(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (2500, "31:00 on"))
    assert fed.answer("lamp_watch") == ("7:00 out", "30:00 end")
    assert "What came after the 30 minutes does not count" in flat(fed)


def test_a_change_after_the_time_that_can_not_follow_the_last_one_proves_nothing(watch: Watch) -> None:
    fed = watch((0, "begin"), (1810, "31:00 on"))
    assert fed.answer("lamp_watch") is None
    assert "Did you watch the light until the 30 minutes were over" in flat(fed)


@pytest.mark.parametrize("typed", ["120", "31:00 120", "31:00 115, 31:50 120"])
def test_a_reading_soon_after_the_time_is_of_the_longest_time(
    at_the_thermometer: Conversation, languages: Languages, typed: str
) -> None:
    fed = watched(at_the_thermometer, languages, (300, "60"), (1810, typed))
    assert fed.answer("thermometer_log") == ("5:00 60 C", "30:00 120 C")
    assert "kept as the reading at 30 minutes" in flat(fed)


def test_a_reading_long_after_the_time_does_not_count_and_that_is_said(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (300, "60"), (900, "110"), (3000, "120"))
    assert fed.answer("thermometer_log") == ("5:00 60 C", "15:00 110 C")
    assert "What came after the 30 minutes does not count" in flat(fed)


def test_a_slip_or_danger_that_nobody_told_apart_is_heard_when_the_time_is_up(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "80"), (300, "800"), (1810, "end"))
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


def test_a_scale_told_after_the_longest_time_ends_the_test_at_once(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "75"), (1500, "350"), (1810, "F"))
    assert "Turn the oven off now" in fed.screen.rpartition("> F")[2]
    assert fed.state.measuring == {}
    assert fed.answer("thermometer_log") == ("1:00 75 F", "25:00 350 F")


def test_still_on_after_the_time_shows_that_it_was_watched(watch: Watch) -> None:
    fed = watch((0, "begin"), (1990, ""), (2000, "still on"))
    assert fed.answer("lamp_watch") == ("0:00 lit", "30:00 end")


def test_undo_is_taken_by_the_question_until_when_it_was_watched(watch: Watch) -> None:
    typed = (420, ""), (560, ""), (3000, "end"), (3010, "undo"), (3020, "yes")
    fed = watch((0, "begin"), *typed)
    asked = flat(fed).partition("> undo")[2]
    assert "was it out all the time from 7:00 until then?" in asked
    assert fed.answer("lamp_watch") == ("7:00 out", "30:00 end")


def test_what_was_taken_back_then_may_be_typed_anew(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1810, "undo"), (1820, "8:00 out"), (1830, "yes"))
    assert fed.answer("lamp_watch") == ("8:00 out", "30:00 end")


def test_undo_with_nothing_to_take_back_asks_again(watch: Watch) -> None:
    fed = watch((0, "begin"), (2000, "undo"), (2010, "yes"))
    assert flat(fed).count("Did you watch the light until the 30 minutes were over") == 1
    assert fed.answer("lamp_watch") == ("0:00 lit", "30:00 end")


def test_a_reading_may_be_taken_back_after_the_time_and_typed_anew(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "40"), (900, "14"), (1810, "undo"), (1830, "15:00 140"))
    assert "Turn the oven off now" in flat(fed).partition("> undo")[2]
    assert fed.answer("thermometer_log") == ("1:00 40 C", "15:00 140 C")


def test_a_reading_in_doubt_is_not_taken_back_any_more_when_the_time_is_up(
    at_the_thermometer: Conversation, languages: Languages
) -> None:
    fed = watched(at_the_thermometer, languages, (60, "80"), (300, "800"), (1810, "undo"))
    assert fed.state.measuring == {}
    assert fed.conversation.assessment.danger.open


def test_lines_may_be_looked_at_when_the_time_is_up(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (1810, "lines"))
    assert "7:00 the light went out" in flat(fed).partition("> lines")[2]
    assert fed.state.measuring["lamp_watch"].lines == ("7:00 out",)

"""What is written down at the oven: read, or refused by what is wrong with it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import Refused
from assistant.knowledge.model import MEASURED_CODES, Knowledge
from assistant.knowledge.readings import (
    browned_bread,
    check_so_far,
    in_order,
    lamp_log,
    minutes_and_seconds,
    summary,
    temperature_log,
)
from tests.safety.codes import WRITTEN_DOWN


def test_a_lamp_is_lit_from_the_start_unless_it_is_said_to_be_dark() -> None:
    read = lamp_log(["7:40 out", "9:10 lit", "12:00 end"])
    assert (read.lit_first, read.changes_s, read.ended_s) == (True, (460.0, 550.0), 720.0)
    dark = lamp_log(["0:00 out", "2:00 lit", "12:00 end"])
    assert (dark.lit_first, dark.changes_s) == (False, (120.0,))
    assert lamp_log(["0:00 lit", "30:00 end"]).changes_s == ()


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        ([], "nothing_written_down"),
        (["9:10 out", "7:40 lit", "12:00 end"], "time_goes_back"),
        (["7:40 out", "9:10 out", "12:00 end"], "lamp_change_missed"),
        (["7:40 out", "7:41 lit", "12:00 end"], "lamp_changes_too_close"),
        (["12:00 end"], "lamp_first_unknown"),
        (["0:40 out", "1:00 end"], "watched_too_short"),
        (["7:40 blinked", "12:00 end"], "lamp_line_unknown"),
        (["7:40 out"], "lamp_line_unknown"),
        (["seven out", "12:00 end"], "time_unreadable"),
        (["7:75 out", "12:00 end"], "time_unreadable"),
        (["7:40 out", "300:00 end"], "watched_too_long"),
        (["0:00 lit", *["5:00 out"] * 300, "30:00 end"], "too_many_lines"),
    ],
)
def test_a_lamp_log_that_cannot_be_is_refused_by_what_is_wrong(lines: list[str], code: str) -> None:
    with pytest.raises(Refused) as refused:
        lamp_log(lines)
    assert refused.value.code == code


def test_degrees_are_read_in_either_scale() -> None:
    read = temperature_log(["5:00 212 F", "8:00 opened", "10:00 150.5 C"])
    assert read.readings_c == pytest.approx((100.0, 150.5))
    assert (read.times_s, read.opened_s) == ((300.0, 600.0), (480.0,))


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        (["5:00 900 C", "6:00 901 C"], "reading_impossible"),
        (["5:00 warm", "6:00 90 C"], "degrees_unreadable"),
        (["5:00 90 C"], "too_few_readings"),
        (["5:00 90 C", "5:00 95 C"], "two_readings_at_once"),
        (["6:00 90 C", "5:00 95 C"], "time_goes_back"),
    ],
)
def test_a_temperature_log_that_cannot_be_is_refused_by_what_is_wrong(lines: list[str], code: str) -> None:
    with pytest.raises(Refused) as refused:
        temperature_log(lines)
    assert refused.value.code == code


def test_bread_lies_in_three_rows_and_may_leave_gaps() -> None:
    read = browned_bread(["top 333 3-2 222", "underside 110 1-0 000"])
    assert read.top[:3] == (3.0, 3.0, 3.0)
    assert math.isnan(read.top[4])
    assert math.isnan(read.underside[4])


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        (["top 333 332 222"], "tray_side_missing"),
        (["top 333 332 222", "top 333 332 222"], "tray_side_twice"),
        (["top 333 332 226", "underside 000 000 000"], "tray_line_unknown"),
        (["top 33- 332 222", "underside 000 000 000"], "tray_sides_differ"),
        (["top --- --- ---", "underside --- --- ---"], "tray_empty"),
    ],
)
def test_bread_that_cannot_be_is_refused_by_what_is_wrong(lines: list[str], code: str) -> None:
    with pytest.raises(Refused) as refused:
        browned_bread(lines)
    assert refused.value.code == code


def test_each_word_that_rules_read_is_that_of_some_lines(knowledge: Knowledge) -> None:
    for question in (q for q in knowledge.questions.values() if q.run is not None):
        words = MEASURED_CODES[question.kind]
        told = {word: summary(question, lines) for word, lines in WRITTEN_DOWN[question.kind].items()}
        assert told == {word: word for word in words}


def test_lines_that_cannot_be_have_no_word(knowledge: Knowledge) -> None:
    assert summary(knowledge.questions["lamp_watch"], ["9:10 out", "7:40 lit", "12:00 end"]) is None


def test_a_light_is_said_never_to_go_out_only_after_most_of_the_time(knowledge: Knowledge) -> None:
    low = knowledge.questions["lamp_watch_low"]
    assert summary(low, ["0:00 lit", "2:00 end"]) == "lit_so_far"
    assert summary(low, ["0:00 lit", "15:00 end"]) == "never_out"


def test_a_light_noted_as_lit_after_some_seconds_was_lit_from_the_start(knowledge: Knowledge) -> None:
    assert summary(knowledge.questions["lamp_watch"], ["0:03 lit", "30:00 end"]) == "never_out"


@pytest.mark.parametrize(("hottest", "word"), [("240 C", "read"), ("262 C", "very_hot"), ("400 C", "very_hot")])
def test_far_above_the_setting_is_very_hot(knowledge: Knowledge, hottest: str, word: str) -> None:
    assert summary(knowledge.questions["thermometer_log"], ["2:00 60 C", f"20:00 {hottest}"]) == word


def test_a_line_noted_late_finds_its_place() -> None:
    assert in_order(["7:40 out", "12:00 out", "9:10 lit"]) == ("7:40 out", "9:10 lit", "12:00 out")


def test_what_may_still_become_whole_is_not_refused() -> None:
    check_so_far("lamp_log", ["0:20 out"])
    check_so_far("temperature_log", ["5:00 90 C"])
    check_so_far("browning", ["top 333 333 333"])
    with pytest.raises(Refused):
        check_so_far("lamp_log", ["7:40 out", "9:10 out"])


@given(st.floats(0, 10_000))
def test_seconds_are_said_to_the_second(duration_s: float) -> None:
    minutes, seconds = minutes_and_seconds(duration_s).split(":")
    assert abs(int(minutes) * 60 + int(seconds) - duration_s) <= 0.5

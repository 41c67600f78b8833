from dataclasses import replace

import pytest

from assistant.knowledge.readings import lamp_log, temperature_log
from assistant.reports.chart import Band, Chart, Expected, Lamp, Readings, Spell, minute_marks, spells
from tests.reports.runs import CYCLING, FLAT, READ, RISING, WHOLE


def test_logs_are_drawn_as_they_are_kept():
    lamp = lamp_log(["10:00 out", "15:00 lit", "20:00 end"])
    read = temperature_log(["5:00 60 C", "6:00 opened", "30:00 180 C"])
    chart = Chart(3600.0, 180.0, None, lamp, read)
    assert spells(lamp) == (Spell(True, 0.0, 600.0), Spell(False, 600.0, 900.0), Spell(True, 900.0, 1200.0))
    assert chart.placed_readings == ((300.0, 60.0, "reading"), (1800.0, 180.0, "reading"))


def test_a_band_is_straight_between_its_times_and_nothing_outside():
    assert RISING.at(300.0) == Expected(85.0, 90.0, 95.0)
    assert RISING.at(0.0) == Expected(20.0, 20.0, 20.0)
    assert RISING.at(3600.0) == Expected(160.0, 180.0, 195.0)
    assert RISING.at(3601.0) is None


def test_a_band_is_cut_where_the_chart_ends():
    assert RISING.within(300.0) == ((0.0, RISING.at(0.0)), (300.0, RISING.at(300.0)))
    assert RISING.within(600.0)[-1] == (600.0, RISING.at(600.0))
    assert [time for time, _ in RISING.within(9000.0)] == [0.0, 600.0, 3600.0]


@pytest.mark.parametrize(
    ("reading_c", "place"), [(149.9, "below"), (150.0, "reading"), (190.0, "reading"), (190.1, "above")]
)
def test_a_reading_lies_within_what_was_expected_or_below_or_above(reading_c, place):
    chart = Chart(3600.0, 180.0, FLAT, None, Readings((60.0,), (reading_c,), ()))
    assert chart.placed_readings == ((60.0, reading_c, place),)


def test_a_reading_of_which_nothing_was_expected_is_only_a_reading():
    chart = Chart(9000.0, 180.0, FLAT, None, Readings((8000.0,), (20.0,), ()))
    assert chart.placed_readings == ((8000.0, 20.0, "reading"),)


def test_the_axis_is_as_long_as_the_longest_thing_that_was_measured():
    assert WHOLE.until_s == 3600.0
    assert replace(WHOLE, lamp=replace(CYCLING, ended_s=4000.0)).until_s == 4000.0
    assert replace(WHOLE, readings=replace(READ, opened_s=(5000.0,))).until_s == 5000.0
    assert replace(WHOLE, longest_s=60.0, band=None).until_s == 3000.0


def test_a_small_range_is_widened_about_its_middle():
    assert Chart(60.0, 180.0, None, None, Readings((0.0,), (184.0,), ())).range_c == (162.0, 202.0)
    assert WHOLE.range_c == (20.0, 205.0)


@pytest.mark.parametrize(
    ("until_s", "most", "step", "last"),
    [(3600.0, 7, 10, 60), (3600.0, 6, 15, 60), (10800.0, 10, 20, 180), (59, 1, 1, 0)],
)
def test_minutes_are_written_evenly_and_not_too_many(until_s, most, step, last):
    assert minute_marks(until_s, most) == range(0, last + 1, step)


@pytest.mark.parametrize("most", [1, 2, 10])
def test_the_longest_axis_has_room_for_its_minutes(most):
    assert 1 <= len(minute_marks(1e7, most)) <= most


NAN, INFINITE = float("nan"), float("inf")


@pytest.mark.parametrize(
    "wrong",
    [
        {"longest_s": 0.0},
        {"longest_s": INFINITE},
        {"set_c": NAN},
        {"lamp": Lamp(True, (60.0, 60.0), 90.0)},
        {"lamp": Lamp(True, (60.0,), 59.0)},
        {"lamp": Lamp(True, (), 0.0)},
        {"lamp": Lamp(True, (), NAN)},
        {"readings": Readings((60.0, 30.0), (20.0, 30.0), ())},
        {"readings": Readings((-1.0,), (20.0,), ())},
        {"readings": Readings((1.0,), (NAN,), ())},
        {"readings": Readings((1.0,), (20.0, 30.0), ())},
        {"readings": Readings((1.0,), (20.0,), (-3.0,))},
    ],
    ids=str,
)
def test_what_cannot_have_been_measured_is_refused(wrong):
    with pytest.raises(ValueError, match=r"."):
        Chart(**{"longest_s": 60.0, "set_c": 180.0, **wrong})


@pytest.mark.parametrize(
    "sides",
    [
        ((), (), (), ()),
        ((0.0,), (20.0,), (10.0,), (30.0,)),
        ((0.0, 1.0), (20.0,), (20.0,), (20.0,)),
        ((1.0, 0.0), (20.0, 20.0), (20.0, 20.0), (20.0, 20.0)),
        ((0.0,), (NAN,), (NAN,), (NAN,)),
        ((0.0,), (20.0,), (30.0,), (INFINITE,)),
    ],
    ids=str,
)
def test_a_band_that_cannot_be_is_refused(sides):
    with pytest.raises(ValueError, match="band"):
        Band(*sides)

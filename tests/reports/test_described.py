from dataclasses import replace

import pytest
from hypothesis import given

from assistant.reports.chart import Chart, Lamp, Readings
from assistant.reports.described import FIGURES, described
from tests.reports.runs import CYCLING, FLAT, READ, WHOLE, charts


def told(chart):
    return {figure.what: dict(figure.values) for figure in described(chart)}


def of_lamp(lamp):
    return told(Chart(3600.0, 180.0, None, lamp, None))


def test_a_cycling_lamp_is_told_by_its_first_time_out_and_its_whole_cycles():
    found = of_lamp(CYCLING)
    assert found["lamp_first_out"] == {"at_s": 600.0}
    assert found["lamp_cycles"] == {"cycles": 2, "mean_s": 420.0, "share_lit": pytest.approx(240 / 840)}
    assert found["lamp_stayed_out"] == {"since_s": 1440.0, "ended_s": 3000.0}
    assert found["lamp_in_all"] == {"ended_s": 3000.0, "share_lit": pytest.approx(840 / 3000)}


def test_a_lamp_that_never_changes_is_told_as_that_and_nothing_else():
    assert of_lamp(Lamp(True, (), 900.0)) == {"setting": {"set_c": 180.0}, "lamp_never_out": {"ended_s": 900.0}}
    assert of_lamp(Lamp(False, (), 900.0)) == {"setting": {"set_c": 180.0}, "lamp_never_lit": {"ended_s": 900.0}}


def test_a_lamp_that_comes_on_late_and_stays_has_neither_cycles_nor_a_time_out():
    found = of_lamp(Lamp(False, (300.0,), 900.0))
    assert found["lamp_first_lit"] == {"at_s": 300.0}
    assert found["lamp_stayed_lit"] == {"since_s": 300.0, "ended_s": 900.0}
    assert not found.keys() & {"lamp_first_out", "lamp_cycles", "lamp_never_lit"}


def test_a_lamp_dark_at_first_goes_out_at_its_second_change():
    assert of_lamp(Lamp(False, (300.0, 500.0), 900.0))["lamp_first_out"] == {"at_s": 500.0}


def test_the_last_reading_is_told_beside_what_was_expected_then():
    found = told(Chart(3600.0, 180.0, FLAT, None, READ))
    assert found["last_reading"] == {"at_s": 3000.0, "reading_c": 205.0}
    assert found["last_expected"] == {"at_s": 3000.0, "low_c": 150.0, "middle_c": 170.0, "high_c": 190.0}
    assert found["readings_compared"] == {"readings": 3, "below": 1, "above": 1}
    assert found["opened"] == {"times": 1, "first_s": 1200.0, "last_s": 1200.0}


def test_only_readings_of_which_something_was_expected_are_compared():
    late = Readings((60.0, 8000.0), (170.0, 400.0), ())
    found = told(Chart(9000.0, 180.0, FLAT, None, late))
    assert found["readings_compared"] == {"readings": 1, "below": 0, "above": 0}
    assert "last_expected" not in found
    assert not told(replace(WHOLE, band=None)).keys() & {"readings_compared", "last_expected"}


def test_the_hottest_reading_need_not_be_the_last():
    found = told(Chart(3600.0, 180.0, None, None, Readings((1.0, 2.0, 3.0), (20.0, 90.0, 80.0), ())))
    assert found["hottest_reading"] == {"at_s": 2.0, "reading_c": 90.0}


@given(chart=charts)
def test_figures_have_the_names_that_are_listed_in_the_order_of_the_list(chart):
    found = described(chart)
    assert all(tuple(figure.values) == FIGURES[figure.what] for figure in found)
    assert [figure.what for figure in found] == [what for what in FIGURES if what in told(chart)]
    assert all(0 <= value <= 1.0000001 for each in found for key, value in each.values.items() if key == "share_lit")

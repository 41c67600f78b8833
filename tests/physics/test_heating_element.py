"""Elements against computed tables, the standard's tolerance and a published table of alloys."""

from dataclasses import fields
from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.heating_element import (
    Alloy,
    Basis,
    RatingPlate,
    WholeOven,
    cold_resistance_band,
    cold_resistance_ohm,
    current_a,
    hot_to_cold_factor,
    input_limits_w,
    parallel_ohm,
    typical_cold_band,
    what_the_plate_tells,
    working_resistance_limits_ohm,
    working_resistance_ohm,
)

# W; Ω at 230 V and at 240 V; A at 230 V; limits of input in W; Ω in use for these at 230 V.
# Python arithmetic with the tolerance of IEC 60335-1, 10.1, table 1.
ROWS = [
    (800, 66.125, 72.000, 3.478, (720, 840), (62.98, 73.47)),
    (1000, 52.900, 57.600, 4.348, (900, 1050), (50.38, 58.78)),
    (1200, 44.083, 48.000, 5.217, (1080, 1260), (41.98, 48.98)),
    (1500, 35.267, 38.400, 6.522, (1350, 1575), (33.59, 39.19)),
    (1800, 29.389, 32.000, 7.826, (1620, 1890), (27.99, 32.65)),
    (2000, 26.450, 28.800, 8.696, (1800, 2100), (25.19, 29.39)),
    (2200, 24.045, 26.182, 9.565, (1980, 2310), (22.90, 26.72)),
    (2500, 21.160, 23.040, 10.870, (2250, 2625), (20.15, 23.51)),
]
powers_w = some.floats(201, 5000)
voltages_v = some.floats(100, 260)


@pytest.mark.parametrize("row", ROWS)
def test_elements_have_the_computed_figures(row):
    power_w, at_230_ohm, at_240_ohm, expected_a, limits_w, limits_ohm = row
    assert working_resistance_ohm(power_w, 230) == pytest.approx(at_230_ohm, abs=6e-4)
    assert working_resistance_ohm(power_w, 240) == pytest.approx(at_240_ohm, abs=6e-4)
    assert current_a(power_w, 230) == pytest.approx(expected_a, abs=6e-4)
    assert input_limits_w(power_w) == pytest.approx(limits_w)
    assert working_resistance_limits_ohm(power_w, 230) == pytest.approx(limits_ohm, abs=6e-3)


# IEC 60335-1, 10.1, table 1, as adopted in GOST R MEK 335-1-94; Python arithmetic.
@pytest.mark.parametrize(
    ("rated_w", "limits_w"),
    [
        (20, (0, 24)),
        (25, (0, 30)),
        (26, (23.4, 28.6)),
        (200, (180, 220)),
        (200.5, (180.45, 220.5)),
        (300, (270, 320)),
        (400, (360, 420)),
    ],
)
def test_small_appliances_have_their_own_tolerance(rated_w, limits_w):
    assert input_limits_w(rated_w) == pytest.approx(limits_w)


def test_where_no_lower_input_is_set_the_resistance_is_endless():
    low_ohm, high_ohm = working_resistance_limits_ohm(25, 230)
    assert low_ohm == pytest.approx(230**2 / 30)
    assert high_ohm == inf


# A published table by alloy grade, in the names of GB/T 1234.
PRINTED_FACTORS = {
    Alloy.NI80CR20: [1.006, 1.012, 1.018, 1.025, 1.026, 1.018, 1.010, 1.008, 1.010, 1.014],
    Alloy.FECRAL_25_5: [1.002, 1.005, 1.008, 1.013, 1.021, 1.030, 1.038, 1.040, 1.042, 1.044],
}


@pytest.mark.parametrize("alloy", Alloy)
def test_factors_are_the_published_ones_and_lie_between_them(alloy):
    assert hot_to_cold_factor(alloy, 20) == 1
    for index, factor in enumerate(PRINTED_FACTORS[alloy]):
        assert hot_to_cold_factor(alloy, 100 * (index + 1)) == pytest.approx(factor)
    assert hot_to_cold_factor(alloy, 60) == pytest.approx((1 + PRINTED_FACTORS[alloy][0]) / 2)
    assert hot_to_cold_factor(alloy, 650) == pytest.approx(sum(PRINTED_FACTORS[alloy][5:7]) / 2)


@given(alloy=some.sampled_from(Alloy), temperature_c=some.floats(20, 1000))
def test_hot_and_cold_are_within_five_per_cent(alloy, temperature_c):
    assert 1 <= hot_to_cold_factor(alloy, temperature_c) <= 1.05


def test_an_element_has_less_resistance_cold_than_in_use():
    # 52.9 Ω / 1.040, Python arithmetic.
    assert cold_resistance_ohm(1000, 230, Alloy.FECRAL_25_5, 800) == pytest.approx(50.8654, abs=6e-5)


@given(
    power_w=powers_w,
    voltage_v=voltages_v,
    alloy=some.sampled_from(Alloy),
    working_c=some.floats(20, 1000),
    share=some.floats(0, 1),
)
def test_the_band_of_a_marking_holds_every_element_within_tolerance(power_w, voltage_v, alloy, working_c, share):
    least_w, most_w = input_limits_w(power_w)
    drawn_w = least_w + share * (most_w - least_w)
    band = cold_resistance_band(power_w, voltage_v)
    assert band.basis is Basis.MARKING
    rounding = 1e-12 * band.high_ohm
    cold_ohm = cold_resistance_ohm(drawn_w, voltage_v, alloy, working_c)
    assert band.low_ohm - rounding <= cold_ohm <= band.high_ohm + rounding


@given(supply_v=voltages_v, power_w=some.floats(600, 3600))
def test_the_typical_band_says_so_and_holds_the_band_of_any_usual_marking(supply_v, power_w):
    typical, marked = typical_cold_band(supply_v), cold_resistance_band(power_w, supply_v)
    assert typical.basis is Basis.TYPICAL
    assert typical.low_ohm <= marked.low_ohm < marked.high_ohm <= typical.high_ohm


def test_the_typical_band_is_from_3600_to_600_watts():
    # 230²/(3600·1.05)/1.044 and 230²/(600·0.9), Python arithmetic.
    band = typical_cold_band(230)
    assert (band.low_ohm, band.high_ohm) == pytest.approx((13.4049, 97.9630), abs=6e-5)


def test_two_elements_side_by_side_have_the_resistance_of_both_powers():
    # 1000 W beside 1500 W at 230 V, Python arithmetic.
    assert parallel_ohm([52.9, 230**2 / 1500]) == pytest.approx(21.160, abs=6e-4)


@given(powers=some.lists(powers_w, min_size=1, max_size=6), voltage_v=voltages_v)
def test_side_by_side_powers_add_up(powers, voltage_v):
    together_ohm = parallel_ohm([working_resistance_ohm(power_w, voltage_v) for power_w in powers])
    assert together_ohm == pytest.approx(working_resistance_ohm(sum(powers), voltage_v))


@given(power_w=powers_w, voltage_v=voltages_v, more=some.floats(1.01, 3))
def test_more_power_is_less_resistance_and_more_current(power_w, voltage_v, more):
    assert working_resistance_ohm(power_w * more, voltage_v) < working_resistance_ohm(power_w, voltage_v)
    assert current_a(power_w * more, voltage_v) > current_a(power_w, voltage_v)


def test_a_plate_tells_the_whole_current_and_the_limits_of_input():
    # 2800 W to 3300 W at 220 V to 240 V, Python arithmetic.
    told = what_the_plate_tells(RatingPlate(2800, 3300, 220, 240))
    assert told.low_current_a == pytest.approx(11.6667, abs=6e-5)
    assert told.high_current_a == pytest.approx(15.0)
    assert (told.least_input_w, told.most_input_w) == pytest.approx((2520, 3465))


def test_a_plate_with_one_voltage_tells_one_current():
    told = what_the_plate_tells(RatingPlate(3000, 3000, 230, 230))
    assert told.low_current_a == told.high_current_a == pytest.approx(13.0435, abs=6e-5)


def test_a_plate_tells_no_resistance():
    assert not [field.name for field in fields(WholeOven) if "ohm" in field.name]


@pytest.mark.parametrize("wrong", [0.0, -230.0, nan, inf])
def test_impossible_markings_are_refused_in_a_sentence(wrong):
    for call in (
        lambda: working_resistance_ohm(wrong, 230),
        lambda: working_resistance_ohm(1000, wrong),
        lambda: working_resistance_limits_ohm(wrong, 230),
        lambda: working_resistance_limits_ohm(1000, wrong),
        lambda: cold_resistance_band(1000, wrong),
        lambda: cold_resistance_ohm(wrong, 230, Alloy.NI80CR20, 700),
        lambda: typical_cold_band(wrong),
        lambda: input_limits_w(wrong),
        lambda: current_a(wrong, 230),
        lambda: current_a(1000, wrong),
        lambda: parallel_ohm([50.0, wrong]),
        lambda: RatingPlate(wrong, 3000, 220, 240),
        lambda: RatingPlate(3000, wrong, 220, 240),
        lambda: RatingPlate(3000, 3000, wrong, 240),
        lambda: RatingPlate(3000, 3000, 220, wrong),
    ):
        with pytest.raises(ValueError, match=r"must be (above zero|a finite number); it is .+\.$"):
            call()


def test_other_impossible_input_is_refused_in_a_sentence():
    for temperature_c in (19.9, 1000.1, nan):
        with pytest.raises(ValueError, match=r"^The temperature in °C of the wire must be .+\.$"):
            hot_to_cold_factor(Alloy.NI80CR20, temperature_c)
    with pytest.raises(ValueError, match=r"^At least one resistance is needed\.$"):
        parallel_ohm([])
    for figures in ((3300, 2800, 220, 240), (2800, 3300, 240, 220)):
        with pytest.raises(ValueError, match=r"^The plate's lower figures must not be above its higher ones\.$"):
            RatingPlate(*figures)

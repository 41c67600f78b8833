"""Thermistors against computed tables, a general equation solver, and their own inverses.

The tables test the formula of a constant B, not a sensor: real parts depart from it at oven heat.
"""

from math import exp, inf, log, nan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.thermistor import (
    SteinhartHart,
    constant_b_k,
    resistance_by_b_ohm,
    resistance_by_steinhart_hart_ohm,
    steinhart_hart_through,
    temperature_by_b_c,
    temperature_by_steinhart_hart_c,
)

# R = R25·exp(B·(1/T − 1/298.15)) by Python arithmetic, to five figures: R25 in Ω, B in K, {°C: Ω}.
TABLES = [
    (
        10e3,
        3950,
        {0: 33621, 25: 10000, 50: 3588.2, 85: 1086.7, 100: 697.52, 150: 199.68, 180: 107.63, 200: 74.461, 250: 33.528},
    ),
    (10e3, 3435, {0: 28704, 50: 4101.2, 85: 1451.3, 100: 987.04, 150: 332.61, 200: 141.05}),
    (
        100e3,
        3950,
        {0: 336210, 50: 35882, 100: 6975.2, 150: 1996.8, 180: 1076.3, 200: 744.61, 250: 335.28, 300: 173.52},
    ),
]
constants_b_k = some.floats(2500, 5000)
nominals_ohm = some.floats(1e3, 2e5)
oven_c = some.floats(-20, 320)


@pytest.mark.parametrize(("nominal_ohm", "b_k", "rows"), TABLES)
def test_resistances_by_b_are_the_computed_ones(nominal_ohm, b_k, rows):
    for temperature_c, expected_ohm in rows.items():
        assert resistance_by_b_ohm(temperature_c, b_k, nominal_ohm) == pytest.approx(expected_ohm, rel=5.1e-5)


# Python arithmetic.
@pytest.mark.parametrize(
    ("resistance_ohm", "nominal_ohm", "expected_c"),
    [(5000, 10e3, 41.4602), (1000, 10e3, 87.7197), (1000, 100e3, 183.8570), (500, 100e3, 223.7024)],
)
def test_temperatures_by_b_are_the_computed_ones(resistance_ohm, nominal_ohm, expected_c):
    assert temperature_by_b_c(resistance_ohm, 3950, nominal_ohm) == pytest.approx(expected_c, abs=6e-5)


def test_b25_85_is_the_logarithm_times_its_factor():
    # IEC 60539-1's definition; 1779.707 K by Python arithmetic.
    assert constant_b_k(exp(1), 1.0) == pytest.approx(1779.707, abs=6e-4)
    assert constant_b_k(10e3, 1086.7) == pytest.approx(3950, abs=0.2)


@given(b_k=constants_b_k, nominal_ohm=nominals_ohm, other_c=some.floats(30, 300))
def test_b_comes_back_from_any_second_point(b_k, nominal_ohm, other_c):
    other_ohm = resistance_by_b_ohm(other_c, b_k, nominal_ohm)
    assert constant_b_k(nominal_ohm, other_ohm, second_c=other_c) == pytest.approx(b_k, rel=1e-9)
    assert constant_b_k(other_ohm, nominal_ohm, other_c, 25) == pytest.approx(b_k, rel=1e-9)


@given(temperature_c=oven_c, b_k=constants_b_k, nominal_ohm=nominals_ohm, nominal_c=some.sampled_from([20.0, 25.0]))
def test_there_and_back_by_b_is_the_same_temperature(temperature_c, b_k, nominal_ohm, nominal_c):
    resistance_ohm = resistance_by_b_ohm(temperature_c, b_k, nominal_ohm, nominal_c)
    assert temperature_by_b_c(resistance_ohm, b_k, nominal_ohm, nominal_c) == pytest.approx(temperature_c, abs=1e-8)


@given(temperature_c=oven_c, step_k=some.floats(0.01, 5), b_k=constants_b_k, nominal_ohm=nominals_ohm)
def test_resistance_falls_as_the_temperature_rises(temperature_c, step_k, b_k, nominal_ohm):
    cooler_ohm = resistance_by_b_ohm(temperature_c, b_k, nominal_ohm)
    assert resistance_by_b_ohm(temperature_c + step_k, b_k, nominal_ohm) < cooler_ohm


# Three linear equations solved by numpy.
THREE_POINTS = [
    ([(5, 25e3), (25, 10e3), (45, 4e3)], (2.10850817e-3, 7.97920473e-5, 6.53507631e-7)),
    ([(0, 16330), (25, 5000), (50, 1801)], (1.28428599e-3, 2.36291221e-4, 9.25655409e-8)),
]


@pytest.mark.parametrize(("points", "coefficients"), THREE_POINTS)
def test_the_curve_through_three_points_is_the_computed_one(points, coefficients):
    curve = steinhart_hart_through(points)
    assert (curve.a, curve.b, curve.c) == pytest.approx(coefficients, rel=1e-8)


@pytest.mark.parametrize(("points", "_"), THREE_POINTS)
def test_the_curve_goes_through_its_points_in_any_order(points, _):
    curve = steinhart_hart_through(points[::-1])
    for temperature_c, resistance_ohm in points:
        assert temperature_by_steinhart_hart_c(resistance_ohm, curve) == pytest.approx(temperature_c, abs=1e-8)
        assert resistance_by_steinhart_hart_ohm(temperature_c, curve) == pytest.approx(resistance_ohm, rel=1e-8)


@given(
    logarithm=some.floats(0.5, 13),
    b=some.floats(1e-4, 3e-4),
    c=some.one_of(some.just(0.0), some.floats(1e-16, 1e-6), some.floats(-1e-7, -1e-16)),
)
def test_there_and_back_by_a_curve_is_the_same_resistance_whichever_way_it_bends(logarithm, b, c):
    curve = SteinhartHart(1e-3, b, c)
    assert logarithm < curve.largest_log
    temperature_c = temperature_by_steinhart_hart_c(exp(logarithm), curve)
    assert log(resistance_by_steinhart_hart_ohm(temperature_c, curve)) == pytest.approx(logarithm, abs=1e-6)


@given(temperature_c=some.floats(-20, 300), b=some.floats(5e-5, 4e-4), c=some.floats(1e-9, 1e-6))
def test_the_closed_form_is_the_one_real_root_that_numpy_finds(temperature_c, b, c):
    logarithm = log(resistance_by_steinhart_hart_ohm(temperature_c, SteinhartHart(1e-3, b, c)))
    roots = np.roots([c, 0, b, 1e-3 - 1 / (temperature_c + 273.15)])
    real = min(roots, key=lambda root: abs(root.imag))
    assert logarithm == pytest.approx(real.real, rel=1e-6, abs=1e-9)


@given(b_k=constants_b_k, nominal_ohm=nominals_ohm, temperature_c=some.floats(0, 200))
def test_a_curve_through_points_of_a_constant_b_is_that_of_the_constant(b_k, nominal_ohm, temperature_c):
    curve = steinhart_hart_through([(c, resistance_by_b_ohm(c, b_k, nominal_ohm)) for c in (0.0, 100.0, 200.0)])
    expected_ohm = resistance_by_b_ohm(temperature_c, b_k, nominal_ohm)
    assert resistance_by_steinhart_hart_ohm(temperature_c, curve) == pytest.approx(expected_ohm, rel=1e-6)
    assert temperature_by_steinhart_hart_c(expected_ohm, curve) == pytest.approx(temperature_c, abs=1e-6)


def test_a_curve_without_a_bend_is_that_of_a_constant_b():
    curve = SteinhartHart(1 / 298.15 - log(10e3) / 3950, 1 / 3950, 0.0)
    for temperature_c in (0, 25, 100, 250):
        expected_ohm = resistance_by_b_ohm(temperature_c, 3950, 10e3)
        assert resistance_by_steinhart_hart_ohm(temperature_c, curve) == pytest.approx(expected_ohm, rel=1e-10)


@pytest.mark.parametrize("wrong", [0.0, -1.0, nan, inf])
def test_what_no_thermistor_has_is_refused_in_a_sentence(wrong):
    curve = SteinhartHart(1.3e-3, 2.4e-4, 9e-8)
    for call in (
        lambda: resistance_by_b_ohm(20, wrong, 10e3),
        lambda: resistance_by_b_ohm(20, 3950, wrong),
        lambda: temperature_by_b_c(wrong, 3950, 10e3),
        lambda: temperature_by_b_c(5e3, wrong, 10e3),
        lambda: temperature_by_b_c(5e3, 3950, wrong),
        lambda: constant_b_k(wrong, 1e3),
        lambda: constant_b_k(10e3, wrong),
        lambda: temperature_by_steinhart_hart_c(wrong, curve),
        lambda: SteinhartHart(1e-3, wrong, 0.0),
        lambda: steinhart_hart_through([(0, 16330), (25, wrong), (50, 1801)]),
    ):
        with pytest.raises(ValueError, match=r"must be (above zero|a finite number); it is .+\.$"):
            call()


@pytest.mark.parametrize("temperature_c", [-273.15, -300.0])
def test_absolute_zero_is_refused_in_a_sentence(temperature_c):
    with pytest.raises(ValueError, match=r"must be above absolute zero, .+\.$"):
        resistance_by_b_ohm(temperature_c, 3950, 10e3)
    with pytest.raises(ValueError, match=r"must be above absolute zero, .+\.$"):
        resistance_by_steinhart_hart_ohm(temperature_c, SteinhartHart(1.3e-3, 2.4e-4, 9e-8))


def test_points_that_make_no_falling_curve_are_refused_in_a_sentence():
    with pytest.raises(ValueError, match=r"^Three points are needed for a curve; there are 2\.$"):
        steinhart_hart_through([(0, 16330), (25, 5000)])
    for points in ([(0, 100), (25, 200), (50, 300)], [(0, 300), (0, 200), (50, 100)], [(0, 300), (25, 300), (50, 100)]):
        with pytest.raises(ValueError, match=r"^The three points must differ, and the resistance must fall .+\.$"):
            steinhart_hart_through(points)
    with pytest.raises(ValueError, match=r"^Two different temperatures are needed; both are 25 °C\.$"):
        constant_b_k(10e3, 9e3, 25, 25)
    with pytest.raises(ValueError, match=r"^The resistance must fall as the temperature rises; .+\.$"):
        constant_b_k(10e3, 11e3)


def test_what_a_curve_does_not_reach_is_refused_in_a_sentence():
    bent_back = SteinhartHart(1e-3, 2.4e-4, -1e-6)
    with pytest.raises(ValueError, match=r"^The falling part of the curve doesn't reach -40 °C\.$"):
        resistance_by_steinhart_hart_ohm(-40, bent_back)
    with pytest.raises(ValueError, match=r"^The curve doesn't fall any more at 100000 Ω, .+\.$"):
        temperature_by_steinhart_hart_c(100e3, bent_back)
    with pytest.raises(ValueError, match=r"^No temperature belongs to this resistance: .+\.$"):
        temperature_by_b_c(1e-4, 3950, 10e3)
    with pytest.raises(ValueError, match=r"^The resistance at this temperature is too large or too small .+\.$"):
        resistance_by_b_ohm(-272, 3950, 10e3)

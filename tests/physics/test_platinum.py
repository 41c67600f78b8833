"""Platinum sensors against the standard's equation, printed tables, and their own inverse."""

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.platinum import (
    ToleranceClass,
    platinum_limits_ohm,
    platinum_resistance_ohm,
    platinum_temperature_c,
    platinum_tolerance_k,
)

# °C; Pt100, Pt500 and Pt1000 in Ω; classes AA, A, B and C in K. IEC 60751:2008's equations, by Python arithmetic.
ROWS = [
    (0, 100.0000, 500.0000, 1000.0000, 0.100, 0.150, 0.300, 0.600),
    (25, 109.7347, 548.6733, 1097.3466, 0.143, 0.200, 0.425, 0.850),
    (50, 119.3971, 596.9856, 1193.9713, 0.185, 0.250, 0.550, 1.100),
    (100, 138.5055, 692.5275, 1385.0550, 0.270, 0.350, 0.800, 1.600),
    (150, 157.3251, 786.6256, 1573.2513, 0.355, 0.450, 1.050, 2.100),
    (180, 168.4783, 842.3915, 1684.7830, 0.406, 0.510, 1.200, 2.400),
    (200, 175.8560, 879.2800, 1758.5600, 0.440, 0.550, 1.300, 2.600),
    (250, 194.0981, 970.4906, 1940.9813, 0.525, 0.650, 1.550, 3.100),
    (300, 212.0515, 1060.2575, 2120.5150, 0.610, 0.750, 1.800, 3.600),
]
temperatures_c = some.floats(-200, 850)
nominals_ohm = some.sampled_from([100.0, 500.0, 1000.0])


@pytest.mark.parametrize("row", ROWS)
def test_resistances_are_those_of_the_standard(row):
    for nominal_ohm, expected_ohm in zip((100, 500, 1000), row[1:4], strict=True):
        assert platinum_resistance_ohm(row[0], nominal_ohm) == pytest.approx(expected_ohm, abs=6e-5)


@pytest.mark.parametrize("row", ROWS)
def test_tolerances_are_those_of_the_standard(row):
    for tolerance_class, expected_k in zip(ToleranceClass, row[4:], strict=True):
        assert platinum_tolerance_k(row[0], tolerance_class) == pytest.approx(expected_k, abs=5.1e-4)
        assert platinum_tolerance_k(-row[0] / 2, tolerance_class) == platinum_tolerance_k(row[0] / 2, tolerance_class)


# Printed Pt100 tables to IEC 60751, to 0.01 Ω.
@pytest.mark.parametrize(
    ("temperature_c", "printed_ohm"),
    [
        (-200, 18.52),
        (-190, 22.83),
        (-150, 39.72),
        (-100, 60.26),
        (-50, 80.31),
        (-10, 96.09),
        (50, 119.40),
        (100, 138.51),
        (150, 157.33),
        (180, 168.48),
        (200, 175.86),
        (250, 194.10),
        (300, 212.05),
        (400, 247.09),
        (500, 280.98),
        (600, 313.71),
    ],
)
def test_printed_tables_agree(temperature_c, printed_ohm):
    assert platinum_resistance_ohm(temperature_c) == pytest.approx(printed_ohm, abs=0.0051)


# The same equation solved by Python arithmetic.
@pytest.mark.parametrize(
    ("resistance_ohm", "expected_c"),
    [
        (107.79, 19.9910),
        (110.00, 25.6840),
        (119.40, 50.0075),
        (138.51, 100.0119),
        (150.00, 130.4473),
        (168.48, 180.0046),
        (194.10, 250.0052),
        (200.00, 266.3482),
    ],
)
def test_temperatures_are_those_of_the_equation(resistance_ohm, expected_c):
    assert platinum_temperature_c(resistance_ohm) == pytest.approx(expected_c, abs=6e-5)


def test_the_mean_coefficient_from_0_to_100_degrees_is_the_printed_one():
    # IEC 60751:2008 prints 3.851e-3; 3.85055e-3 is Python arithmetic.
    alpha_per_k = (platinum_resistance_ohm(100) - platinum_resistance_ohm(0)) / (100 * platinum_resistance_ohm(0))
    assert alpha_per_k == pytest.approx(3.85055e-3, abs=1e-9)
    assert round(alpha_per_k, 6) == 3.851e-3


@given(temperature_c=temperatures_c, nominal_ohm=nominals_ohm)
def test_there_and_back_is_the_same_temperature(temperature_c, nominal_ohm):
    resistance_ohm = platinum_resistance_ohm(temperature_c, nominal_ohm)
    assert platinum_temperature_c(resistance_ohm, nominal_ohm) == pytest.approx(temperature_c, abs=1e-8)


@pytest.mark.parametrize("temperature_c", [-200.0, -1e-9, 0.0, 1e-9, 850.0])
def test_ends_and_zero_come_back_too(temperature_c):
    assert platinum_temperature_c(platinum_resistance_ohm(temperature_c)) == pytest.approx(temperature_c, abs=1e-8)


@given(temperature_c=some.floats(-200, 849), step_k=some.floats(0.001, 1))
def test_resistance_rises_with_temperature(temperature_c, step_k):
    assert platinum_resistance_ohm(temperature_c + step_k) > platinum_resistance_ohm(temperature_c)


@given(temperature_c=temperatures_c)
def test_a_wider_class_allows_more(temperature_c):
    allowed_k = [platinum_tolerance_k(temperature_c, tolerance_class) for tolerance_class in ToleranceClass]
    assert allowed_k == sorted(set(allowed_k))


@given(temperature_c=some.floats(-190, 840), nominal_ohm=nominals_ohm)
def test_the_limits_are_the_tolerance_away_from_the_temperature(temperature_c, nominal_ohm):
    low_ohm, high_ohm = platinum_limits_ohm(temperature_c, ToleranceClass.B, nominal_ohm)
    tolerance_k = platinum_tolerance_k(temperature_c, ToleranceClass.B)
    assert low_ohm < platinum_resistance_ohm(temperature_c, nominal_ohm) < high_ohm
    assert platinum_temperature_c(low_ohm, nominal_ohm) == pytest.approx(temperature_c - tolerance_k, abs=1e-7)
    assert platinum_temperature_c(high_ohm, nominal_ohm) == pytest.approx(temperature_c + tolerance_k, abs=1e-7)


def test_the_limits_reach_the_ends_of_the_range():
    low_ohm, _ = platinum_limits_ohm(-200, ToleranceClass.B)
    _, high_ohm = platinum_limits_ohm(850, ToleranceClass.B)
    assert low_ohm < platinum_resistance_ohm(-200)
    assert high_ohm > platinum_resistance_ohm(850)


@pytest.mark.parametrize("temperature_c", [-200.1, 850.1, nan, inf])
def test_temperatures_beyond_the_standard_are_refused_in_a_sentence(temperature_c):
    with pytest.raises(ValueError, match=r"The temperature in °C of a platinum sensor must .+\.$"):
        platinum_resistance_ohm(temperature_c)
    with pytest.raises(ValueError, match=r"The temperature in °C of a platinum sensor must .+\.$"):
        platinum_tolerance_k(temperature_c, ToleranceClass.A)


@pytest.mark.parametrize("resistance_ohm", [0.0, 18.5, 391.0, 1000.0, -5.0])
def test_resistances_of_no_sensor_are_refused_in_a_sentence(resistance_ohm):
    with pytest.raises(ValueError, match=r"A platinum sensor of 100 Ω at 0 °C has from .+ Ω\.$"):
        platinum_temperature_c(resistance_ohm)


@pytest.mark.parametrize("nominal_ohm", [0.0, -100.0, nan, inf])
def test_a_sensor_without_resistance_is_refused_in_a_sentence(nominal_ohm):
    for refused in (platinum_resistance_ohm, platinum_temperature_c):
        with pytest.raises(ValueError, match=r"The resistance in ohms at 0 °C must be .+\.$"):
            refused(20.0, nominal_ohm)

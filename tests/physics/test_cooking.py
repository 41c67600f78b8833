"""Cookery's temperatures against cookery tables and plain arithmetic."""

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.cooking import (
    DIAL_F,
    PRINTED_C,
    celsius_of_fahrenheit_c,
    celsius_of_gas_mark_c,
    conventional_of_fan_c,
    dial_of_gas_mark_f,
    fahrenheit_of_celsius_f,
    fan_of_conventional_c,
    nearest_gas_mark,
    printed_of_gas_mark_c,
)

# Mark; °F from cookery tables; exact °C by pint; rounded °C from British cookery tables, which print either of two
# figures at ½ and at 3: both are accepted.
ROWS = [
    (0.25, 225, 107.2, (110,)),
    (0.5, 250, 121.1, (120, 130)),
    (1, 275, 135.0, (140,)),
    (2, 300, 148.9, (150,)),
    (3, 325, 162.8, (165, 170)),
    (4, 350, 176.7, (180,)),
    (5, 375, 190.6, (190,)),
    (6, 400, 204.4, (200,)),
    (7, 425, 218.3, (220,)),
    (8, 450, 232.2, (230,)),
    (9, 475, 246.1, (240,)),
]
temperatures_c = some.floats(-100, 1000)


@pytest.mark.parametrize(("mark", "dial_f", "exact_c", "printed_c"), ROWS)
def test_gas_marks_are_those_of_cookery_tables(mark, dial_f, exact_c, printed_c):
    assert dial_of_gas_mark_f(mark) == dial_f
    assert celsius_of_gas_mark_c(mark) == pytest.approx(exact_c, abs=0.051)
    assert printed_of_gas_mark_c(mark) == printed_c


@pytest.mark.parametrize(("mark", "dial_f", "exact_c", "printed_c"), ROWS)
def test_every_printed_and_exact_temperature_has_its_mark(mark, dial_f, exact_c, printed_c):
    for temperature_c in printed_c:
        assert nearest_gas_mark(temperature_c) == mark
    assert nearest_gas_mark(celsius_of_fahrenheit_c(dial_f)) == mark
    assert nearest_gas_mark(exact_c) == mark


def test_no_mark_is_left_out():
    assert list(DIAL_F) == list(PRINTED_C) == [row[0] for row in ROWS]


@given(temperature_c=some.floats(95, 255), warmer_k=some.floats(0, 160))
def test_warmer_is_never_a_lower_mark(temperature_c, warmer_k):
    assert nearest_gas_mark(min(temperature_c + warmer_k, 255)) >= nearest_gas_mark(temperature_c)


# Exact by definition of the degree Fahrenheit; Python arithmetic.
@pytest.mark.parametrize(("celsius", "fahrenheit"), [(-40, -40), (0, 32), (100, 212), (180, 356), (220, 428)])
def test_fixed_points_are_the_same_either_way(celsius, fahrenheit):
    assert fahrenheit_of_celsius_f(celsius) == pytest.approx(fahrenheit)
    assert celsius_of_fahrenheit_c(fahrenheit) == pytest.approx(celsius)


@given(temperature_c=temperatures_c, warmer_k=some.floats(0.01, 50))
def test_there_and_back_is_the_same_temperature_and_warmer_is_warmer(temperature_c, warmer_k):
    assert celsius_of_fahrenheit_c(fahrenheit_of_celsius_f(temperature_c)) == pytest.approx(temperature_c, abs=1e-9)
    assert fahrenheit_of_celsius_f(temperature_c + warmer_k) > fahrenheit_of_celsius_f(temperature_c)


# Cookery guidance: 20 °C less for a fan oven.
@pytest.mark.parametrize(("conventional_c", "fan_c"), [(180, 160), (200, 180), (220, 200)])
def test_a_fan_recipe_is_twenty_degrees_lower(conventional_c, fan_c):
    assert fan_of_conventional_c(conventional_c) == fan_c
    assert conventional_of_fan_c(fan_c) == conventional_c


@given(conventional_c=some.floats(50, 320))
def test_there_and_back_is_the_same_recipe(conventional_c):
    assert conventional_of_fan_c(fan_of_conventional_c(conventional_c)) == pytest.approx(conventional_c)


@pytest.mark.parametrize("mark", [0.0, 1.5, 10.0, -1.0, nan, inf])
def test_marks_that_no_dial_has_are_refused_in_a_sentence(mark):
    for refused in (dial_of_gas_mark_f, celsius_of_gas_mark_c, printed_of_gas_mark_c):
        with pytest.raises(ValueError, match=r"^There is no gas mark .+; there are ¼, ½ and 1 to 9\.$"):
            refused(mark)


@pytest.mark.parametrize("temperature_c", [94.9, 255.1, nan, inf])
def test_temperatures_far_from_any_mark_are_refused_in_a_sentence(temperature_c):
    with pytest.raises(ValueError, match=r"^A temperature in °C that has a gas mark must be .+\.$"):
        nearest_gas_mark(temperature_c)


@pytest.mark.parametrize("temperature_c", [-300.0, -273.15])
def test_absolute_zero_is_refused_in_a_sentence(temperature_c):
    with pytest.raises(ValueError, match=r"^The temperature must be above absolute zero, .+ °C\.$"):
        fahrenheit_of_celsius_f(temperature_c)
    with pytest.raises(ValueError, match=r"^The temperature must be above absolute zero, .+ °C\.$"):
        celsius_of_fahrenheit_c(temperature_c * 1.8 + 31.9)


def test_recipes_that_no_oven_takes_are_refused_in_a_sentence():
    for conventional_c in (49.9, 320.1, nan):
        with pytest.raises(ValueError, match=r"^A recipe's temperature in °C must be .+\.$"):
            fan_of_conventional_c(conventional_c)
    for fan_c in (29.9, 300.1, nan):
        with pytest.raises(ValueError, match=r"^A recipe's fan temperature in °C must be .+\.$"):
            conventional_of_fan_c(fan_c)

"""Boiling water by height against the standard atmosphere, the formulation's own verification, and inverses."""

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.boiling import (
    CRITICAL_PA,
    LEAST_SATURATION_PA,
    SEA_LEVEL_PA,
    boiling_point_c,
    geopotential_height_m,
    saturation_pressure_pa,
    saturation_temperature_c,
    standard_pressure_pa,
)

# Geopotential height in m; Pa by the formula of ISO 2533, Python arithmetic; °C by IAPWS-IF97 (library iapws 1.5.5).
ROWS = [
    (0, 101325.0, 99.974),
    (250, 98357.5, 99.144),
    (500, 95460.8, 98.313),
    (1000, 89874.6, 96.649),
    (1500, 84556.0, 94.983),
    (2000, 79495.2, 93.315),
]
heights_m = some.floats(-400, 5000)


@pytest.mark.parametrize(("height_m", "expected_pa", "expected_c"), ROWS)
def test_water_boils_by_height_as_computed(height_m, expected_pa, expected_c):
    assert standard_pressure_pa(height_m) == pytest.approx(expected_pa, abs=0.06)
    assert boiling_point_c(height_m) == pytest.approx(expected_c, abs=0.002)


# IAPWS-IF97 (library iapws 1.5.5): weather at sea level.
@pytest.mark.parametrize(("pressure_pa", "expected_c"), [(97.0e3, 98.757), (100.0e3, 99.606), (103.0e3, 100.434)])
def test_weather_moves_the_boiling_point_as_computed(pressure_pa, expected_c):
    assert saturation_temperature_c(pressure_pa) == pytest.approx(expected_c, abs=0.002)


# IAPWS-IF97 verification table of the backward equation, in MPa and K.
@pytest.mark.parametrize(("megapascals", "kelvins"), [(0.1, 372.755919), (1, 453.035632), (10, 584.149488)])
def test_saturation_temperatures_are_those_of_the_verification_table(megapascals, kelvins):
    assert saturation_temperature_c(megapascals * 1e6) + 273.15 == pytest.approx(kelvins, abs=6e-7)


# IAPWS-IF97 verification table of the basic equation, in K and MPa.
@pytest.mark.parametrize(("kelvins", "megapascals"), [(300, 0.353658941e-2), (500, 2.63889776), (600, 12.3443146)])
def test_saturation_pressures_are_those_of_the_verification_table(kelvins, megapascals):
    assert saturation_pressure_pa(kelvins - 273.15) / 1e6 == pytest.approx(megapascals, rel=2e-9)


@given(pressure_pa=some.floats(700, 22e6))
def test_there_and_back_is_the_same_pressure(pressure_pa):
    assert saturation_pressure_pa(saturation_temperature_c(pressure_pa)) == pytest.approx(pressure_pa, rel=1e-8)


def test_the_ends_of_the_saturation_line_are_taken():
    assert saturation_temperature_c(LEAST_SATURATION_PA) == pytest.approx(0, abs=1e-5)
    assert saturation_temperature_c(CRITICAL_PA) == pytest.approx(373.946, abs=1e-3)
    assert saturation_pressure_pa(0) == pytest.approx(LEAST_SATURATION_PA, rel=1e-6)


@given(height_m=heights_m, higher_m=some.floats(0.1, 500))
def test_water_boils_cooler_higher_up(height_m, higher_m):
    assert standard_pressure_pa(height_m + higher_m) < standard_pressure_pa(height_m)
    assert boiling_point_c(height_m + higher_m) < boiling_point_c(height_m)


def test_the_pressure_at_sea_level_is_the_standard_s():
    # ISO 2533:1975.
    assert standard_pressure_pa(0) == SEA_LEVEL_PA


def test_the_standard_s_layer_ends_at_its_printed_pressure():
    # ISO 2533:1975 and the ICAO standard atmosphere: 226.32 hPa at 11 km.
    assert standard_pressure_pa(11_000) == pytest.approx(22632, abs=0.6)


@given(altitude_m=some.floats(-400, 5000))
def test_a_map_s_altitude_hardly_changes_the_boiling_point(altitude_m):
    height_m = geopotential_height_m(altitude_m)
    assert height_m <= altitude_m
    assert boiling_point_c(height_m) - boiling_point_c(altitude_m) == pytest.approx(0, abs=0.015)


def test_two_kilometres_up_the_geopotential_height_is_less_by_60_centimetres():
    # 2000²/(6356766 + 2000), Python arithmetic.
    assert 2000 - geopotential_height_m(2000) == pytest.approx(0.6291, abs=6e-5)


@pytest.mark.parametrize("height_m", [-2000.1, 11_000.1, nan, inf])
def test_heights_outside_the_layer_are_refused_in_a_sentence(height_m):
    with pytest.raises(ValueError, match=r"^The height in metres must be .+\.$"):
        boiling_point_c(height_m)
    with pytest.raises(ValueError, match=r"^The altitude in metres must be .+\.$"):
        geopotential_height_m(height_m)


@pytest.mark.parametrize("pressure_pa", [0.0, -1.0, 611.0, 22.1e6, nan, inf])
def test_pressures_at_which_nothing_boils_are_refused_in_a_sentence(pressure_pa):
    with pytest.raises(ValueError, match=r"^The pressure in pascals must be .+\.$"):
        saturation_temperature_c(pressure_pa)


@pytest.mark.parametrize("temperature_c", [-0.1, 374.0])
def test_temperatures_at_which_nothing_boils_are_refused_in_a_sentence(temperature_c):
    with pytest.raises(ValueError, match=r"^Water boils only from 0 °C to 373\.946 °C, .+\.$"):
        saturation_pressure_pa(temperature_c)

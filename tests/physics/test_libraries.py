"""The same numbers from libraries that others wrote, each over a whole range."""

import numpy as np
import pint
import pytest
from CoolProp.CoolProp import PropsSI
from iapws import iapws97

from assistant.physics.boiling import saturation_pressure_pa, saturation_temperature_c
from assistant.physics.cooking import celsius_of_fahrenheit_c, celsius_of_gas_mark_c, fahrenheit_of_celsius_f

HOUSEHOLD_PA = np.linspace(50e3, 110e3, 61)
EVERY_PA = np.geomspace(650, 22e6, 61)


def test_iapws_has_the_same_saturation_line():
    for pressure_pa in EVERY_PA:
        expected_k = iapws97._TSat_P(pressure_pa / 1e6)
        assert saturation_temperature_c(pressure_pa) + 273.15 == pytest.approx(expected_k, abs=1e-8)
    for temperature_c in np.linspace(0.01, 373, 61):
        expected_pa = iapws97._PSat_T(temperature_c + 273.15) * 1e6
        assert saturation_pressure_pa(temperature_c) == pytest.approx(expected_pa, rel=1e-10)


def test_coolprop_has_the_same_boiling_points_by_the_same_formulation():
    for pressure_pa in HOUSEHOLD_PA:
        expected_k = PropsSI("T", "P", pressure_pa, "Q", 0, "IF97::Water")
        assert saturation_temperature_c(pressure_pa) + 273.15 == pytest.approx(expected_k, abs=1e-6)


def test_coolprop_has_the_same_boiling_points_by_the_scientific_formulation():
    # IAPWS-95, which the industrial formulation approximates.
    for pressure_pa in HOUSEHOLD_PA:
        expected_k = PropsSI("T", "P", pressure_pa, "Q", 0, "HEOS::Water")
        assert saturation_temperature_c(pressure_pa) + 273.15 == pytest.approx(expected_k, abs=0.002)


def test_pint_has_the_same_degrees():
    quantity = pint.UnitRegistry().Quantity
    for temperature_c in np.linspace(-40, 400, 45):
        expected_f = quantity(temperature_c, "degC").to("degF").magnitude
        assert fahrenheit_of_celsius_f(temperature_c) == pytest.approx(expected_f, abs=1e-9)
        assert celsius_of_fahrenheit_c(expected_f) == pytest.approx(temperature_c, abs=1e-9)
    assert celsius_of_gas_mark_c(4) == pytest.approx(quantity(350, "degF").to("degC").magnitude)

"""The temperature of boiling water, by height: a fixed point against which a household thermometer can be held.

The pressure is that of the standard atmosphere. Weather moves it: at sea level, 97 kPa to 103 kPa are 98.8 °C to
100.4 °C.
"""

from math import sqrt

from assistant.physics.possible import ABSOLUTE_ZERO_C, kelvin, require_within

SEA_LEVEL_PA = 101325.0
_SEA_LEVEL_K = 288.15
_LAPSE_K_PER_M = 0.0065
_GRAVITY_M_PER_S2 = 9.80665
_AIR_CONSTANT_J_PER_KG_K = 287.05287
_EARTH_RADIUS_M = 6_356_766.0
_LOWEST_M = -2000.0
_HIGHEST_M = 11_000.0

LEAST_SATURATION_PA = 611.213
CRITICAL_PA = 22.064e6
_LEAST_SATURATION_K = 273.15
_CRITICAL_K = 647.096
_MEGAPASCAL_PA = 1e6
# n1 to n10 of region 4, with a place 0 so that they are called as the release calls them.
_N = (
    0.0,
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
)


def geopotential_height_m(altitude_m: float) -> float:
    """The geopotential height in m of a geometric altitude in m above sea level, 0.6 m less at 2000 m.

    Source: ISO 2533:1975, with its radius of the earth. Raises ValueError outside −2000 m to 11 000 m.
    """
    require_within("The altitude in metres", altitude_m, _LOWEST_M, _HIGHEST_M)
    return altitude_m / (1 + altitude_m / _EARTH_RADIUS_M)


def standard_pressure_pa(height_m: float) -> float:
    """Pa of the standard atmosphere at a geopotential height in m.

    Source: ISO 2533:1975, the layer that cools by 6.5 K a kilometre. Raises ValueError outside −2000 m to 11 000 m.
    """
    require_within("The height in metres", height_m, _LOWEST_M, _HIGHEST_M)
    exponent = _GRAVITY_M_PER_S2 / (_AIR_CONSTANT_J_PER_KG_K * _LAPSE_K_PER_M)
    return float(SEA_LEVEL_PA * (1 - _LAPSE_K_PER_M * height_m / _SEA_LEVEL_K) ** exponent)


def saturation_temperature_c(pressure_pa: float) -> float:
    """°C at which water boils under a pressure in Pa.

    Source: IAPWS-IF97, region 4, the backward equation (31). Raises ValueError outside 611.213 Pa to 22.064 MPa,
    below which there is ice and above which nothing boils.
    """
    require_within("The pressure in pascals", pressure_pa, LEAST_SATURATION_PA, CRITICAL_PA)
    beta: float = (pressure_pa / _MEGAPASCAL_PA) ** 0.25
    e = beta**2 + _N[3] * beta + _N[6]
    f = _N[1] * beta**2 + _N[4] * beta + _N[7]
    g = _N[2] * beta**2 + _N[5] * beta + _N[8]
    d = 2 * g / (-f - sqrt(f**2 - 4 * e * g))
    return (_N[10] + d - sqrt((_N[10] + d) ** 2 - 4 * (_N[9] + _N[10] * d))) / 2 + ABSOLUTE_ZERO_C


def saturation_pressure_pa(temperature_c: float) -> float:
    """Pa under which water boils at a temperature in °C; the inverse of `saturation_temperature_c`.

    Source: IAPWS-IF97, region 4, the basic equation (30). Raises ValueError outside 0 °C to 373.946 °C.
    """
    temperature_k = kelvin(temperature_c)
    if not _LEAST_SATURATION_K <= temperature_k <= _CRITICAL_K:
        raise ValueError(f"Water boils only from 0 °C to 373.946 °C, under some pressure; not at {temperature_c:g} °C.")
    theta = temperature_k + _N[9] / (temperature_k - _N[10])
    a = theta**2 + _N[1] * theta + _N[2]
    b = _N[3] * theta**2 + _N[4] * theta + _N[5]
    c = _N[6] * theta**2 + _N[7] * theta + _N[8]
    return float(_MEGAPASCAL_PA * (2 * c / (-b + sqrt(b**2 - 4 * a * c))) ** 4)


def boiling_point_c(height_m: float) -> float:
    """°C at which water boils at a geopotential height in m, in the standard atmosphere.

    Sources: ISO 2533:1975 and IAPWS-IF97. A map's altitude in place of the geopotential height changes less than
    0.015 K up to 5000 m. Raises ValueError outside −2000 m to 11 000 m.
    """
    return saturation_temperature_c(standard_pressure_pa(height_m))

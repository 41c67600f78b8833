"""Industrial platinum resistance sensors: resistance, temperature and tolerance by IEC 60751:2008.

The curve holds from −200 °C to 850 °C: W = 1 + At + Bt² + C(t − 100)t³ is the resistance as a multiple of that at
0 °C, where C only counts below 0 °C.
"""

from enum import StrEnum
from math import sqrt

from assistant.physics.possible import require_above_zero, require_finite, require_within

A_PER_K = 3.9083e-3
B_PER_K2 = -5.775e-7
C_PER_K4 = -4.183e-12
LOWEST_C = -200.0
HIGHEST_C = 850.0

_STEPS = 60
_CLOSE_K = 1e-10
_ROUNDING = 1e-12


class ToleranceClass(StrEnum):
    """The classes of IEC 60751:2008, from the narrowest to the widest."""

    AA = "AA"
    A = "A"
    B = "B"
    C = "C"


TOLERANCE_K: dict[ToleranceClass, tuple[float, float]] = {
    ToleranceClass.AA: (0.1, 0.0017),
    ToleranceClass.A: (0.15, 0.002),
    ToleranceClass.B: (0.3, 0.005),
    ToleranceClass.C: (0.6, 0.01),
}
"""K at 0 °C, and K more for each °C away from it. IEC 60751:2008, table of tolerance classes."""


def platinum_resistance_ohm(temperature_c: float, nominal_ohm: float = 100.0) -> float:
    """Ω of a sensor at a temperature in °C; `nominal_ohm` is its resistance at 0 °C, 100 for a Pt100.

    Source: IEC 60751:2008. Raises ValueError outside −200 °C to 850 °C, or for a resistance that isn't above zero.
    """
    require_within("The temperature in °C of a platinum sensor", temperature_c, LOWEST_C, HIGHEST_C)
    require_above_zero("The resistance in ohms at 0 °C", nominal_ohm)
    return nominal_ohm * _multiple(temperature_c)


def platinum_temperature_c(resistance_ohm: float, nominal_ohm: float = 100.0) -> float:
    """°C of a sensor that has this resistance in Ω; the inverse of `platinum_resistance_ohm`.

    Source: IEC 60751:2008; from 0 °C up in closed form, below it by Newton's method to better than 1e-9 K.
    Raises ValueError for a resistance that no sensor has from −200 °C to 850 °C.
    """
    require_above_zero("The resistance in ohms at 0 °C", nominal_ohm)
    require_finite("The resistance in ohms", resistance_ohm)
    multiple = resistance_ohm / nominal_ohm
    lowest, highest = _multiple(LOWEST_C), _multiple(HIGHEST_C)
    if not lowest * (1 - _ROUNDING) <= multiple <= highest * (1 + _ROUNDING):
        raise ValueError(
            f"A platinum sensor of {nominal_ohm:g} Ω at 0 °C has from {lowest * nominal_ohm:g} Ω to"
            f" {highest * nominal_ohm:g} Ω between −200 °C and 850 °C, not {resistance_ohm:g} Ω."
        )
    found_c = _upper_branch_c(multiple) if multiple >= 1 else _lower_branch_c(multiple)
    return min(max(found_c, LOWEST_C), HIGHEST_C)


def platinum_tolerance_k(temperature_c: float, tolerance_class: ToleranceClass) -> float:
    """How many K a good sensor of the class may be off, either way, at a temperature in °C.

    Source: IEC 60751:2008. The standard lets each class stand for a part of the range only, which depends on how
    the sensor is built; that isn't looked at here. Raises ValueError outside −200 °C to 850 °C.
    """
    require_within("The temperature in °C of a platinum sensor", temperature_c, LOWEST_C, HIGHEST_C)
    at_zero, per_degree = TOLERANCE_K[ToleranceClass(tolerance_class)]
    return at_zero + per_degree * abs(temperature_c)


def platinum_limits_ohm(
    temperature_c: float, tolerance_class: ToleranceClass, nominal_ohm: float = 100.0
) -> tuple[float, float]:
    """The least and the most Ω that a good sensor of the class has at a temperature in °C.

    They are the resistances of the curve at the temperature less and plus the tolerance, since IEC 60751:2008
    gives tolerances in K. Raises ValueError where `platinum_resistance_ohm` does.
    """
    require_above_zero("The resistance in ohms at 0 °C", nominal_ohm)
    tolerance_k = platinum_tolerance_k(temperature_c, tolerance_class)
    return nominal_ohm * _multiple(temperature_c - tolerance_k), nominal_ohm * _multiple(temperature_c + tolerance_k)


def _multiple(temperature_c: float) -> float:
    t = temperature_c
    below_zero = C_PER_K4 * (t - 100) * t**3 if t < 0 else 0.0
    return 1 + A_PER_K * t + B_PER_K2 * t**2 + below_zero


def _slope_per_k(temperature_c: float) -> float:
    t = temperature_c
    return A_PER_K + 2 * B_PER_K2 * t + C_PER_K4 * (4 * t**3 - 300 * t**2)


def _upper_branch_c(multiple: float) -> float:
    # The root in the form that loses no digits near 0 °C.
    return 2 * (multiple - 1) / (A_PER_K + sqrt(A_PER_K**2 + 4 * B_PER_K2 * (multiple - 1)))


def _lower_branch_c(multiple: float) -> float:
    guess_c = _upper_branch_c(multiple)
    for _ in range(_STEPS):
        step_k = (_multiple(guess_c) - multiple) / _slope_per_k(guess_c)
        guess_c -= step_k
        if abs(step_k) < _CLOSE_K:
            break
    return guess_c

"""Thermistors whose resistance falls as they warm (NTC): by the constant B, and by Steinhart and Hart's equation.

A constant B is two points joined by a line in 1/T: a real part departs from it by some K at oven heat.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import asin, asinh, exp, log, sin, sinh, sqrt

import numpy as np

from assistant.physics.possible import (
    ABSOLUTE_ZERO_C,
    kelvin,
    require_above_zero,
    require_finite,
)

NOMINAL_C = 25.0
UPPER_C = 85.0
_LARGEST_LOG = 700.0


@dataclass(frozen=True)
class SteinhartHart:
    """1/T = a + b·ln R + c·(ln R)³, T in K and R in Ω. `a`, `b` and `c` are in 1/K.

    Source: J. S. Steinhart and S. R. Hart, Calibration curves for thermistors, Deep-Sea Research 15 (1968).
    Raises ValueError unless all are finite and `b` is above zero, without which no such curve falls throughout.
    """

    a: float
    b: float
    c: float

    def __post_init__(self) -> None:
        require_finite("The coefficient a", self.a)
        require_above_zero("The coefficient b", self.b)
        require_finite("The coefficient c", self.c)

    @property
    def largest_log(self) -> float:
        """Up to where, either way from 0, ln R gives a falling curve: endless unless `c` is below zero."""
        return sqrt(self.b / (-3 * self.c)) if self.c < 0 else float("inf")


def constant_b_k(first_ohm: float, second_ohm: float, first_c: float = NOMINAL_C, second_c: float = UPPER_C) -> float:
    """B in K of a thermistor from its resistance in Ω at two temperatures in °C: B25/85 as they stand.

    B = T1·T2 / (T2 − T1) · ln(R1/R2). Source: IEC 60539-1. Raises ValueError for resistances that aren't above
    zero, equal temperatures, or a resistance that doesn't fall with temperature.
    """
    require_above_zero("The first resistance in ohms", first_ohm)
    require_above_zero("The second resistance in ohms", second_ohm)
    first_k, second_k = kelvin(first_c), kelvin(second_c)
    if first_k == second_k:
        raise ValueError(f"Two different temperatures are needed; both are {first_c:g} °C.")
    found_k = first_k * second_k / (second_k - first_k) * log(first_ohm / second_ohm)
    if found_k <= 0:
        raise ValueError("The resistance must fall as the temperature rises; between these two points it doesn't.")
    return found_k


def resistance_by_b_ohm(temperature_c: float, b_k: float, nominal_ohm: float, nominal_c: float = NOMINAL_C) -> float:
    """Ω at a temperature in °C of a thermistor of constant B in K that has `nominal_ohm` at `nominal_c`.

    R = Rn·exp(B·(1/T − 1/Tn)), from the definition of B in IEC 60539-1. Raises ValueError at absolute zero and
    below, for B or a resistance that isn't above zero, and where the resistance is too large or small to be told.
    """
    require_above_zero("The constant B in kelvins", b_k)
    require_above_zero("The nominal resistance in ohms", nominal_ohm)
    exponent = b_k * (1 / kelvin(temperature_c) - 1 / kelvin(nominal_c))
    return _exponential_ohm(log(nominal_ohm) + exponent)


def temperature_by_b_c(resistance_ohm: float, b_k: float, nominal_ohm: float, nominal_c: float = NOMINAL_C) -> float:
    """°C of a thermistor of constant B in K that has this resistance in Ω; inverse of `resistance_by_b_ohm`.

    Raises ValueError for B or a resistance that isn't above zero, and for a resistance so small that no
    temperature belongs to it.
    """
    require_above_zero("The resistance in ohms", resistance_ohm)
    require_above_zero("The constant B in kelvins", b_k)
    require_above_zero("The nominal resistance in ohms", nominal_ohm)
    return _celsius_of_inverse(1 / kelvin(nominal_c) + log(resistance_ohm / nominal_ohm) / b_k)


def temperature_by_steinhart_hart_c(resistance_ohm: float, curve: SteinhartHart) -> float:
    """°C of a thermistor of this curve that has this resistance in Ω.

    Source: Steinhart and Hart (1968). Raises ValueError for a resistance that isn't above zero, or beyond the part
    of the curve that falls.
    """
    require_above_zero("The resistance in ohms", resistance_ohm)
    logarithm = log(resistance_ohm)
    if abs(logarithm) > curve.largest_log:
        raise ValueError(
            f"The curve doesn't fall any more at {resistance_ohm:g} Ω, so no one temperature belongs to it."
        )
    return _celsius_of_inverse(curve.a + curve.b * logarithm + curve.c * logarithm**3)


def resistance_by_steinhart_hart_ohm(temperature_c: float, curve: SteinhartHart) -> float:
    """Ω at a temperature in °C of a thermistor of this curve; inverse of `temperature_by_steinhart_hart_c`.

    The cubic is solved in closed form. Raises ValueError at absolute zero and below, and for a temperature that
    the falling part of the curve doesn't reach.
    """
    linear = (1 / kelvin(temperature_c) - curve.a) / curve.b
    bend = curve.c / curve.b
    if bend == 0:
        return _exponential_ohm(linear)
    scale = 1 / sqrt(3 * abs(bend))
    if bend > 0:
        return _exponential_ohm(2 * scale * sinh(asinh(1.5 * linear / scale) / 3))
    if abs(1.5 * linear / scale) > 1:
        raise ValueError(f"The falling part of the curve doesn't reach {temperature_c:g} °C.")
    return _exponential_ohm(2 * scale * sin(asin(1.5 * linear / scale) / 3))


def steinhart_hart_through(points: Sequence[tuple[float, float]]) -> SteinhartHart:
    """The curve through three points, each a temperature in °C and the resistance in Ω there.

    Source: Steinhart and Hart (1968); three linear equations. Raises ValueError unless there are three points at
    different temperatures whose resistance falls as the temperature rises.
    """
    if len(points) != 3:
        raise ValueError(f"Three points are needed for a curve; there are {len(points)}.")
    ordered = sorted(points)
    for _, resistance_ohm in ordered:
        require_above_zero("The resistance in ohms", resistance_ohm)
    (low_c, low_ohm), (middle_c, middle_ohm), (high_c, high_ohm) = ordered
    if not (low_c < middle_c < high_c and low_ohm > middle_ohm > high_ohm):
        raise ValueError("The three points must differ, and the resistance must fall as the temperature rises.")
    logarithms = np.log(np.array([low_ohm, middle_ohm, high_ohm]))
    inverses = np.array([1 / kelvin(low_c), 1 / kelvin(middle_c), 1 / kelvin(high_c)])
    rows = np.stack([np.ones(3), logarithms, logarithms**3], axis=1)
    a, b, c = np.linalg.solve(rows, inverses)
    return SteinhartHart(float(a), float(b), float(c))


def _celsius_of_inverse(inverse_per_k: float) -> float:
    if inverse_per_k <= 0:
        raise ValueError("No temperature belongs to this resistance: it is too small for this curve.")
    return 1 / inverse_per_k + ABSOLUTE_ZERO_C


def _exponential_ohm(logarithm: float) -> float:
    if abs(logarithm) > _LARGEST_LOG:
        raise ValueError("The resistance at this temperature is too large or too small to be told.")
    return exp(logarithm)

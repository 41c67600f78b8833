"""What a number must be before anything is computed from it; the refusals are plain sentences."""

from math import isfinite

ABSOLUTE_ZERO_C = -273.15
"""0 K in °C, exact by the definition of the degree Celsius (SI Brochure, 9th edition, 2.3.1)."""


def require_finite(what: str, value: float) -> None:
    """Raises ValueError unless the value is a finite number. `what` begins the sentence: 'The power in watts'."""
    if not isfinite(value):
        raise ValueError(f"{what} must be a finite number; it is {value}.")


def require_above_zero(what: str, value: float) -> None:
    """Raises ValueError unless the value is finite and above zero."""
    require_finite(what, value)
    if value <= 0:
        raise ValueError(f"{what} must be above zero; it is {value:g}.")


def require_zero_or_more(what: str, value: float) -> None:
    """Raises ValueError unless the value is finite and not negative."""
    require_finite(what, value)
    if value < 0:
        raise ValueError(f"{what} must not be below zero; it is {value:g}.")


def require_within(what: str, value: float, low: float, high: float) -> None:
    """Raises ValueError unless the value is finite and from `low` to `high`, both included."""
    require_finite(what, value)
    if not low <= value <= high:
        raise ValueError(f"{what} must be from {low:g} to {high:g}; it is {value:g}.")


def kelvin(temperature_c: float) -> float:
    """The temperature in K of one in °C. Raises ValueError at absolute zero and below."""
    require_finite("The temperature in °C", temperature_c)
    if temperature_c <= ABSOLUTE_ZERO_C:
        raise ValueError(f"The temperature must be above absolute zero, −273.15 °C; it is {temperature_c:g} °C.")
    return temperature_c - ABSOLUTE_ZERO_C

"""Cookery's temperatures: °C, °F, gas marks, and what a recipe means by a fan oven.

Dials and recipes, not ovens: nothing here says how warm an oven gets.
"""

from assistant.physics.possible import kelvin, require_within

FAN_LESS_K = 20.0
LEAST_RECIPE_C = 50.0
HIGHEST_RECIPE_C = 320.0
FARTHEST_FROM_MARK_K = 15.0

DIAL_F: dict[float, float] = {
    0.25: 225,
    0.5: 250,
    1: 275,
    2: 300,
    3: 325,
    4: 350,
    5: 375,
    6: 400,
    7: 425,
    8: 450,
    9: 475,
}
"""°F of each gas mark, as cookery tables give them: 25 °F to a mark."""

PRINTED_C: dict[float, tuple[float, ...]] = {
    0.25: (110,),
    0.5: (120, 130),
    1: (140,),
    2: (150,),
    3: (165, 170),
    4: (180,),
    5: (190,),
    6: (200,),
    7: (220,),
    8: (230,),
    9: (240,),
}
"""Rounded °C of each gas mark in British cookery tables, which disagree at ½ and 3: there both are taken."""


def fahrenheit_of_celsius_f(temperature_c: float) -> float:
    """°F of a temperature in °C: exactly 1.8 for each, and 32. Raises ValueError at absolute zero and below."""
    kelvin(temperature_c)
    return temperature_c * 9 / 5 + 32


def celsius_of_fahrenheit_c(temperature_f: float) -> float:
    """°C of a temperature in °F; the inverse of `fahrenheit_of_celsius_f`. Raises ValueError as that does."""
    temperature_c = (temperature_f - 32) * 5 / 9
    kelvin(temperature_c)
    return temperature_c


def dial_of_gas_mark_f(mark: float) -> float:
    """°F of a gas mark; ¼ is 0.25 and ½ is 0.5. Source: cookery tables. Raises ValueError for no such mark."""
    if mark not in DIAL_F:
        raise ValueError(f"There is no gas mark {mark:g}; there are ¼, ½ and 1 to 9.")
    return DIAL_F[mark]


def celsius_of_gas_mark_c(mark: float) -> float:
    """°C of a gas mark, computed from its °F and not rounded. Raises ValueError for no such mark."""
    return celsius_of_fahrenheit_c(dial_of_gas_mark_f(mark))


def printed_of_gas_mark_c(mark: float) -> tuple[float, ...]:
    """Every rounded °C that British cookery tables print for a gas mark: two at ½ and 3, where they disagree.

    Raises ValueError for no such mark.
    """
    dial_of_gas_mark_f(mark)
    return PRINTED_C[mark]


def nearest_gas_mark(temperature_c: float) -> float:
    """The gas mark with a printed °C nearest to a temperature in °C; of two as near, the one whose °F is nearer.

    So a temperature that any of the tables prints gets the mark that it prints it for. Raises ValueError farther
    than 15 K from all of them: below 95 °C and above 255 °C.
    """
    lowest_c, highest_c = min(PRINTED_C[0.25]), max(PRINTED_C[9])
    require_within(
        "A temperature in °C that has a gas mark",
        temperature_c,
        lowest_c - FARTHEST_FROM_MARK_K,
        highest_c + FARTHEST_FROM_MARK_K,
    )

    def distances_k(mark: float) -> tuple[float, float]:
        printed_k = min(abs(temperature_c - printed_c) for printed_c in PRINTED_C[mark])
        return printed_k, abs(temperature_c - celsius_of_gas_mark_c(mark))

    return min(PRINTED_C, key=distances_k)


def fan_of_conventional_c(conventional_c: float) -> float:
    """°C to set in a fan oven for a recipe's conventional °C: 20 K less.

    A recipe's rule from cookery guidance, not a property of any oven. Raises ValueError outside 50 °C to 320 °C.
    """
    require_within("A recipe's temperature in °C", conventional_c, LEAST_RECIPE_C, HIGHEST_RECIPE_C)
    return conventional_c - FAN_LESS_K


def conventional_of_fan_c(fan_c: float) -> float:
    """°C to set in a conventional oven for a recipe's °C in a fan oven; the inverse of `fan_of_conventional_c`.

    Raises ValueError outside 30 °C to 300 °C.
    """
    require_within(
        "A recipe's fan temperature in °C", fan_c, LEAST_RECIPE_C - FAN_LESS_K, HIGHEST_RECIPE_C - FAN_LESS_K
    )
    return fan_c + FAN_LESS_K

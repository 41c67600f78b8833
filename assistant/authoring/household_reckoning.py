"""The household's numbers: a recipe's heat, the boiling point for checking a thermometer; and what to do with food.

Each function raises ValueError, whose text is a plain sentence, for input that can't be.
"""

from assistant.authoring.reckoned import Number, Reckoned
from assistant.physics.boiling import boiling_point_c, geopotential_height_m, standard_pressure_pa
from assistant.physics.cooking import (
    FAN_LESS_K,
    FARTHEST_FROM_MARK_K,
    HIGHEST_RECIPE_C,
    LEAST_RECIPE_C,
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
from assistant.physics.possible import ABSOLUTE_ZERO_C, require_within

MOST_C = 1000.0
_LEAST_MARK_C = min(PRINTED_C[min(PRINTED_C)]) - FARTHEST_FROM_MARK_K
_MOST_MARK_C = max(PRINTED_C[max(PRINTED_C)]) + FARTHEST_FROM_MARK_K


def heat(value: float, unit: str) -> Reckoned:
    """A temperature in °C (`c`), °F (`f`) or as a gas mark (`mark`), in the others and for a fan oven."""
    given = {"value": value, "unit": unit}
    if unit == "mark":
        numbers, notes = _from_mark(value)
    else:
        numbers, notes = _from_degrees(celsius_of_fahrenheit_c(value) if unit == "f" else value)
    return Reckoned("heat", "household", given, numbers, (*notes, "dial"))


def _from_mark(mark: float) -> tuple[tuple[Number, ...], tuple[str, ...]]:
    numbers = (
        Number("celsius", (celsius_of_gas_mark_c(mark),), "°C", "mark_exactly"),
        Number("fahrenheit", (dial_of_gas_mark_f(mark),), "°F", "cookery"),
        _printed(mark),
        _in_fan(printed_of_gas_mark_c(mark)),
    )
    return numbers, (*_disagreeing(mark), "fan_rule")


def _from_degrees(celsius: float) -> tuple[tuple[Number, ...], tuple[str, ...]]:
    require_within("A temperature in °C", celsius, ABSOLUTE_ZERO_C, MOST_C)
    numbers = [
        Number("celsius", (celsius,), "°C", "exactly"),
        Number("fahrenheit", (fahrenheit_of_celsius_f(celsius),), "°F", "exactly"),
    ]
    notes: tuple[str, ...] = ("no_mark",)
    if _LEAST_MARK_C <= celsius <= _MOST_MARK_C:
        mark = nearest_gas_mark(celsius)
        numbers += (Number("mark", (mark,), "gas mark", "cookery"), _printed(mark))
        notes = _disagreeing(mark)
    fans = _fan_and_conventional(celsius)
    return (*numbers, *fans), (*notes, *(("fan_rule",) if fans else ()))


def _printed(mark: float) -> Number:
    return Number("printed", printed_of_gas_mark_c(mark), "°C", "cookery", {"mark": mark}, joined="or")


def _disagreeing(mark: float) -> tuple[str, ...]:
    return ("tables_disagree",) if len(printed_of_gas_mark_c(mark)) > 1 else ()


def _in_fan(conventional: tuple[float, ...]) -> Number:
    values = tuple(fan_of_conventional_c(celsius) for celsius in conventional)
    return Number("fan", values, "°C", "recipe", {"kelvins": FAN_LESS_K}, joined="or")


def _fan_and_conventional(celsius: float) -> tuple[Number, ...]:
    """Those that a recipe may mean; none far from any recipe's heat."""
    found: list[Number] = []
    if LEAST_RECIPE_C <= celsius <= HIGHEST_RECIPE_C:
        found.append(_in_fan((celsius,)))
    if LEAST_RECIPE_C - FAN_LESS_K <= celsius <= HIGHEST_RECIPE_C - FAN_LESS_K:
        other = (conventional_of_fan_c(celsius),)
        found.append(Number("conventional", other, "°C", "recipe", {"kelvins": FAN_LESS_K}))
    return tuple(found)


def boiling(metres: float) -> Reckoned:
    """Where water boils, so many m above the sea."""
    height = geopotential_height_m(metres)
    numbers = (
        Number("boiling", (boiling_point_c(height),), "°C", "water", {"metres": metres}),
        Number("pressure", (standard_pressure_pa(height) / 100,), "hPa", "atmosphere", {"metres": metres}),
    )
    notes = ("weather", "waterproof", "steam", "one_point")
    return Reckoned("boiling", "household", {"metres": metres}, numbers, notes)


def food() -> Reckoned:
    """What to do with food from an oven that stayed lukewarm: no number says it."""
    notes = ("throw_away", "firmer", "no_second_heat", "no_reading")
    return Reckoned("food", "household", {}, (), notes)

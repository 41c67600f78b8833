"""The engineer's numbers: elements, rating plates, temperature sensors and the supply.

Each function raises ValueError, whose text is a plain sentence, or Refused, for input that can't be.
"""

from assistant.authoring.reckoned import Number, Reckoned
from assistant.errors import Refused
from assistant.physics.heating_element import (
    COLD_C,
    HOTTEST_C,
    TYPICAL_HIGHEST_W,
    TYPICAL_LOWEST_W,
    Alloy,
    RatingPlate,
    cold_resistance_band,
    cold_resistance_ohm,
    current_a,
    typical_cold_band,
    what_the_plate_tells,
    working_resistance_limits_ohm,
    working_resistance_ohm,
)
from assistant.physics.platinum import (
    ToleranceClass,
    platinum_limits_ohm,
    platinum_resistance_ohm,
    platinum_temperature_c,
    platinum_tolerance_k,
)
from assistant.physics.possible import require_within
from assistant.physics.supply import (
    LARGEST_DROP_SHARE,
    UK_SUPPLY,
    circuit_maximum_w,
    cooker_diversity_a,
    power_at_supply_w,
    power_ratio,
    voltage_drop_share,
)
from assistant.physics.thermistor import NOMINAL_C, resistance_by_b_ohm, temperature_by_b_c

MOST_V = 1000.0
MOST_W = 100_000.0
LEAST_NTC_OHM = 1e-3
MOST_NTC_OHM = 1e9
MOST_B_K = 20_000.0
NTC_LOWEST_C = -100.0
NTC_HIGHEST_C = 1000.0
"""Wider than any oven or sensor: beyond these an input is a slip, such as kilohms typed as ohms."""

CIRCUITS_A = (13.0, 16.0, 20.0, 32.0)
_WIRE_C = (COLD_C, *(float(c) for c in range(100, int(HOTTEST_C) + 1, 100)))


def element(watts: float | None, volts: float) -> Reckoned:
    """One heating element: W and V marked on it; without its W, the widest band that is typical."""
    _require_volts(volts)
    if watts is None:
        band = typical_cold_band(volts)
        of = {"volts": volts, "least": TYPICAL_LOWEST_W, "most": TYPICAL_HIGHEST_W}
        wide = Number("typical_band", (band.low_ohm, band.high_ohm), "Ω", "own_estimate", of)
        return Reckoned("element", "engineer", {"volts": volts}, (wide,), ("typical", "inside", "dead"))
    _require_watts(watts)
    marked = {"watts": watts, "volts": volts}
    band = cold_resistance_band(watts, volts)
    numbers = (
        Number("current", (current_a(watts, volts),), "A", "ohm", marked),
        Number("working", (working_resistance_ohm(watts, volts),), "Ω", "ohm", marked),
        Number("working_limits", working_resistance_limits_ohm(watts, volts), "Ω", "input", marked),
        *(_cold(watts, volts, alloy) for alloy in Alloy),
        Number("cold_band", (band.low_ohm, band.high_ohm), "Ω", "input_and_alloys", {"celsius": COLD_C}),
    )
    return Reckoned("element", "engineer", marked, numbers, ("tolerance", "alloys", "inside", "dead"))


def _cold(watts: float, volts: float, alloy: Alloy) -> Number:
    """The table's factors are joined by straight lines, so its own temperatures hold the least and the most."""
    found = [cold_resistance_ohm(watts, volts, alloy, wire_c) for wire_c in _WIRE_C]
    of = {"alloy": alloy.value, "celsius": COLD_C, "hottest": HOTTEST_C}
    return Number("cold", (min(found), max(found)), "Ω", "alloys", of)


def plate(watts: tuple[float, ...], volts: tuple[float, ...]) -> Reckoned:
    """A rating plate, with one or two figures of W and of V."""
    for name, figures in (("--watts", watts), ("--volts", volts)):
        if len(figures) > 2:
            raise Refused("two_figures", {"option": name, "count": str(len(figures))})
    for figure in watts:
        _require_watts(figure)
    for figure in volts:
        _require_volts(figure)
    told = what_the_plate_tells(RatingPlate(watts[0], watts[-1], volts[0], volts[-1]))
    numbers = (
        Number("whole_current", (told.low_current_a, told.high_current_a), "A", "ohm"),
        Number("whole_input", (told.least_input_w, told.most_input_w), "W", "input"),
    )
    given = {"watts": list(watts), "volts": list(volts)}
    return Reckoned("plate", "engineer", given, numbers, ("no_element", "tolerance", "plate_range"))


def platinum(nominal: int, *, celsius: float | None, ohms: float | None) -> Reckoned:
    """A platinum sensor of so many Ω at 0 °C, from either its temperature or its resistance."""
    of = {"nominal": nominal}
    if ohms is not None:
        celsius = platinum_temperature_c(ohms, nominal)
        found = Number("sensor_celsius", (celsius,), "°C", "platinum", {**of, "ohms": ohms})
        given = {"platinum": nominal, "ohms": ohms}
    elif celsius is not None:
        resistance = platinum_resistance_ohm(celsius, nominal)
        found = Number("sensor_ohms", (resistance,), "Ω", "platinum", {**of, "celsius": celsius})
        given = {"platinum": nominal, "celsius": celsius}
    else:
        raise Refused("one_of_two")
    tolerances = [
        each
        for grade in ToleranceClass
        for each in (
            Number("class_kelvin", (platinum_tolerance_k(celsius, grade),), "K", "platinum", {"class": grade.value}),
            Number("class_ohms", platinum_limits_ohm(celsius, grade, nominal), "Ω", "platinum", {"class": grade.value}),
        )
    ]
    return Reckoned("sensor", "engineer", given, (found, *tolerances), ("classes", "leads", "dead"))


def thermistor(nominal: float, b: float, *, celsius: float | None, ohms: float | None) -> Reckoned:
    """A thermistor that falls, of so many Ω at 25 °C and so many K of B, from its temperature or its resistance."""
    require_within("The resistance in ohms at 25 °C", nominal, 1, MOST_NTC_OHM)
    require_within("The constant B in kelvins", b, 100, MOST_B_K)
    of = {"nominal": nominal, "b": b, "reference": NOMINAL_C}
    if ohms is not None:
        require_within("The resistance in ohms", ohms, LEAST_NTC_OHM, MOST_NTC_OHM)
        celsius = temperature_by_b_c(ohms, b, nominal)
        if not NTC_LOWEST_C <= celsius <= NTC_HIGHEST_C:
            raise Refused("no_such_ohms", {"ohms": f"{ohms:g}", "celsius": f"{celsius:.4g}"})
        found = Number("ntc_celsius", (celsius,), "°C", "b", {**of, "ohms": ohms})
        given = {"ntc": [nominal, b], "ohms": ohms}
    elif celsius is not None:
        require_within("The temperature in °C of a thermistor", celsius, NTC_LOWEST_C, NTC_HIGHEST_C)
        found = Number("ntc_ohms", (resistance_by_b_ohm(celsius, b, nominal),), "Ω", "b", {**of, "celsius": celsius})
        given = {"ntc": [nominal, b], "celsius": celsius}
    else:
        raise Refused("one_of_two")
    return Reckoned("sensor", "engineer", given, (found,), ("constant_b", "no_tolerance", "leads", "dead"))


def supply(volts: float, idle: float | None, watts: float | None, marked: float | None) -> Reckoned:
    """The voltage at the oven with its load on; the one without load; the W of a whole cooker at its marked V."""
    _require_volts(volts)
    if watts is not None and marked is None:
        raise Refused("marked_needed")
    against = UK_SUPPLY.nominal_v if marked is None else marked
    _require_volts(against)
    numbers = [
        Number("limits", (UK_SUPPLY.lowest_v, UK_SUPPLY.highest_v), "V", "uk", {"volts": UK_SUPPLY.nominal_v}),
        Number("ratio", (100 * power_ratio(volts, against),), "%", "joule", {"volts": volts, "marked": against}),
    ]
    if watts is not None:
        _require_watts(watts)
        of = {"watts": watts, "volts": volts, "marked": against}
        numbers.append(Number("power", (power_at_supply_w(watts, against, volts),), "W", "joule", of))
    if idle is not None:
        _require_volts(idle)
        drop = 100 * voltage_drop_share(idle, volts)
        numbers.append(Number("drop", (drop,), "%", "arithmetic", {"idle": idle, "volts": volts}))
        numbers.append(Number("most_drop", (100 * LARGEST_DROP_SHARE,), "%", "wiring"))
    for rating in CIRCUITS_A:
        of = {"amperes": rating, "volts": volts}
        numbers.append(Number("circuit", (circuit_maximum_w(rating, volts),), "W", "ohm", of))
    if watts is not None:
        numbers.extend(_diversity(watts, against))
    told = {"volts": volts, "idle": idle, "watts": watts, "marked": marked}
    given = {name: value for name, value in told.items() if value is not None}
    notes = (_beside_limits(volts), *(("drop_is_more",) if idle is not None else ()), "diversity", "no_proof", "live")
    return Reckoned("supply", "engineer", given, tuple(numbers), notes)


def _diversity(watts: float, marked: float) -> list[Number]:
    total = current_a(watts, marked)
    of = {"watts": watts, "volts": marked}
    return [
        Number("total", (total,), "A", "ohm", of),
        Number("design", (cooker_diversity_a(total, has_socket=False),), "A", "diversity"),
        Number("design_socket", (cooker_diversity_a(total, has_socket=True),), "A", "diversity"),
    ]


def _beside_limits(volts: float) -> str:
    if volts < UK_SUPPLY.lowest_v:
        return "below_limits"
    return "above_limits" if volts > UK_SUPPLY.highest_v else "within_limits"


def _require_volts(volts: float) -> None:
    require_within("A voltage in volts", volts, 1, MOST_V)


def _require_watts(watts: float) -> None:
    require_within("A power in watts", watts, 1, MOST_W)

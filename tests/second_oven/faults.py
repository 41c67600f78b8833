"""What goes wrong with the ovens of the second model, by cause: as the trade meets it; all figures are assumed."""

from collections.abc import Callable, Mapping

import numpy as np

from tests.second_oven.traits import Traits

Fault = Callable[[Traits, np.random.Generator], Traits]


def with_cause(ovens: Traits, cause: str, way: str, chance: np.random.Generator) -> Traits:
    """The ovens with the cause, as they then heat in this way of heating. `none` changes nothing."""
    with_control = _control_that_can_have_it(ovens, cause)
    if cause in ONLY_IN and way != ONLY_IN[cause]:
        return with_control
    return {**with_control, **FAULTS[cause](with_control, chance)}


def _control_that_can_have_it(ovens: Traits, cause: str) -> Traits:
    if cause in OF_THERMOSTATS:
        return {**ovens, "board": np.zeros_like(ovens["board"])}
    if cause in OF_BOARDS:
        return {**ovens, "board": np.ones_like(ovens["board"])}
    return ovens


def _size(ovens: Traits) -> int:
    return len(ovens["bake_w"])


def _set_to(**values: float) -> Fault:
    return lambda ovens, chance: {name: np.full(_size(ovens), value) for name, value in values.items()}


def _times(name: str, least: float, most: float) -> Fault:
    return lambda ovens, chance: {name: ovens[name] * chance.uniform(least, most, _size(ovens))}


def _dial_off_by(least: float, most: float) -> Fault:
    return lambda ovens, chance: {"dial_error": ovens["dial_error"] + chance.uniform(least, most, _size(ovens))}


def _contact(name: str) -> Fault:
    """Mostly open; one in six still passes some current, and less heat."""

    def burnt(ovens: Traits, chance: np.random.Generator) -> Traits:
        passes = np.where(chance.random(_size(ovens)) < 1 / 6, chance.uniform(0.2, 0.6, _size(ovens)), 0.0)
        return {name: ovens[name] * passes}

    return burnt


def _drifted_low(ovens: Traits, chance: np.random.Generator) -> Traits:
    return {"dial_error": ovens["dial_error"] - 20 - chance.gamma(2.0, 15.0, _size(ovens))}


def _drifted_high(ovens: Traits, chance: np.random.Generator) -> Traits:
    return {"dial_error": ovens["dial_error"] + 18 + chance.gamma(2.0, 11.0, _size(ovens))}


def _charge_lost(ovens: Traits, chance: np.random.Generator) -> Traits:
    """Less and less of the rise is felt, so it errs by a share, not by degrees."""
    return {"feels": chance.uniform(0.1, 0.85, _size(ovens))}


def _out_of_place(ovens: Traits, chance: np.random.Generator) -> Traits:
    """Against the wall it lags and feels the steel; under the roof's rod it cuts early."""
    number = _size(ovens)
    at_wall = chance.random(number) < 0.6
    return {
        "bulb_at_wall": np.where(at_wall, chance.uniform(0.7, 1.0, number), ovens["bulb_at_wall"]),
        "bulb_lag": ovens["bulb_lag"] * np.where(at_wall, chance.uniform(1.5, 3.5, number), 1.0),
        "dial_error": ovens["dial_error"] - np.where(at_wall, 0.0, chance.uniform(10, 45, number)),
    }


def _seal_worn(ovens: Traits, chance: np.random.Generator) -> Traits:
    number = _size(ovens)
    return {
        "leak": ovens["leak"] + chance.uniform(0.6, 3.0, number),
        "front_colder": chance.uniform(0, 18, number),
        "right_hotter": ovens["right_hotter"] + chance.normal(0, 9, number),
    }


def _foil(ovens: Traits, chance: np.random.Generator) -> Traits:
    return {"floor_bare": chance.uniform(0.15, 0.5, _size(ovens))}


def _knob(ovens: Traits, chance: np.random.Generator) -> Traits:
    """Anywhere on the dial, mostly not far."""
    return {"dial_error": ovens["dial_error"] + chance.normal(0, 55, _size(ovens))}


def _thermometer(ovens: Traits, chance: np.random.Generator) -> Traits:
    return {"thermometer_error": ovens["thermometer_error"] + chance.normal(-8, 30, _size(ovens))}


def _supply(least: float, most: float) -> Fault:
    return lambda ovens, chance: {"supply_v": chance.uniform(least, most, _size(ovens))}


FAULTS: Mapping[str, Fault] = {
    "none": lambda ovens, chance: {},
    "base_element_open": _set_to(bake_w=0),
    "selector_contact_below": _contact("bake_w"),
    "top_element_open": _set_to(roof_w=0),
    "selector_contact_above": _contact("roof_w"),
    "ring_element_open": _set_to(ring_w=0),
    "selector_contact_fan": _contact("ring_w"),
    "thermostat_drifted_low": _drifted_low,
    "thermostat_drifted_high": _drifted_high,
    "thermostat_stuck_closed": _set_to(stuck_closed=1),
    "thermostat_stuck_open": _set_to(stuck_open=1),
    "thermostat_charge_lost": _charge_lost,
    "sensor_drifted": _dial_off_by(-55, -12),
    "relay_stuck_on": _set_to(welded=1),
    "probe_out_of_place": _out_of_place,
    "door_seal_worn": _seal_worn,
    "voltage_low": _supply(165, 205),
    "oven_fan_stopped": _set_to(fan_speed=0),
    "oven_fan_worn": _times("fan_speed", 0.25, 0.7),
    "indicator_lamp_dead": _set_to(lamp_forced=0),
    "wrong_light_watched": _set_to(lamp_forced=1),
    "knob_slips": _knob,
    "own_offset_set": _dial_off_by(-30, 30),
    "foil_or_stone_on_floor": _foil,
    "thermometer_misplaced": _thermometer,
}

OF_THERMOSTATS = frozenset(
    {
        "thermostat_drifted_low",
        "thermostat_drifted_high",
        "thermostat_stuck_closed",
        "thermostat_stuck_open",
        "thermostat_charge_lost",
        "knob_slips",
        "probe_out_of_place",
    }
)
OF_BOARDS = frozenset({"sensor_drifted", "relay_stuck_on", "own_offset_set"})

ONLY_IN: Mapping[str, str] = {
    "selector_contact_below": "conventional",
    "selector_contact_above": "conventional",
    "selector_contact_fan": "fan_with_ring",
}
"""Causes that act in one way of heating alone."""

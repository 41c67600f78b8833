"""What a fault does to an oven: parameters multiplied, shifted or fixed, each by an amount that is itself drawn."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from types import MappingProxyType
from typing import Literal

import numpy as np

from assistant.physics.oven import NAMES, Floats, Ovens


@dataclass(frozen=True)
class Change:
    """One parameter's change: it is multiplied (`factor`), added to (`shift`) or replaced (`value`).

    The amount is drawn per oven: uniform within `middle` ± `spread`, or normal with that mean and deviation.
    """

    how: Literal["factor", "shift", "value"]
    middle: float
    spread: float = 0.0
    drawn: Literal["uniform", "normal"] = "uniform"

    def __post_init__(self) -> None:
        if self.how not in ("factor", "shift", "value"):
            raise ValueError(f"A change is a factor, a shift or a value, not {self.how!r}.")
        if self.drawn not in ("uniform", "normal"):
            raise ValueError(f"A change's amount is drawn uniform or normal, not {self.drawn!r}.")
        if not (np.isfinite(self.middle) and np.isfinite(self.spread) and self.spread >= 0):
            raise ValueError(f"A change is a finite middle and a spread from 0 up, not {self.middle} ± {self.spread}.")


Changes = Mapping[str, Change]

# Beyond these no change leads: there the network has no meaning, or is quicker than the step follows.
_LEAST: Mapping[str, float] = MappingProxyType(
    {
        "supply_voltage": 0.0,
        "rated_voltage": 100.0,
        "element_capacity": 50.0,
        "element_area": 0.01,
        "air_capacity": 250.0,
        "rear_capacity": 250.0,
        "wall_capacity": 500.0,
        "housing_capacity": 500.0,
        "kitchen_temperature": -30.0,
        "switching_offset": -400.0,
        "hysteresis": 0.5,
        "probe_lag": 4.0,
        "thermometer_lag": 4.0,
        "thermometer_bias": -100.0,
        "cut_out_trip": 0.0,
        "cut_out_reset": -30.0,
        "back_lean": -1.0,
        "right_lean": -1.0,
    }
)
_MOST: Mapping[str, float] = MappingProxyType(
    {
        "supply_voltage": 440.0,  # between two phases, where the neutral is lost
        "rated_voltage": 440.0,
        "base_power": 5000.0,
        "top_power": 5000.0,
        "grill_power": 5000.0,
        "ring_power": 5000.0,
        "door_leak": 15.0,  # half of what an open door lets pass at the least, however much keeps it from closing
    }
)
_SHARES = frozenset(
    {
        "radiated_up",
        "radiated_down",
        "fan_speed",
        "cooling_fan_speed",
        "never_opens",
        "never_closes",
        "heats_regardless",
        "probe_upper",
        "probe_wall",
        "probe_rear",
        "probe_outside",
        "cut_out_resets",
        "cut_out_wall",
        "cut_out_rear",
        "top_view",
        "base_view",
        "back_lean",
        "right_lean",
    }
)


def checked(changes: Changes) -> None:
    """Raises ValueError where a name isn't a parameter of an oven."""
    for name in changes:
        if name not in NAMES:
            nearest = get_close_matches(name, NAMES, n=1, cutoff=0.0)[0]
            raise ValueError(f"An oven has no parameter {name!r}; the nearest is {nearest!r}.")


def changed(ovens: Ovens, changes: Changes, random: np.random.Generator) -> Ovens:
    """The ovens with the changes made; those of a second fault may be made on the result.

    Amounts are drawn in the order of the parameters, whatever the order of the changes. A result is kept where it
    means something: shares within 0 to 1, nothing that can't be negative below 0. Raises ValueError for an unknown
    name.
    """
    checked(changes)
    found = {
        name: _kept(name, _applied(getattr(ovens, name), changes[name], random)) for name in NAMES if name in changes
    }
    return replace(ovens, **found)


def _applied(before: Floats, change: Change, random: np.random.Generator) -> Floats:
    draws = int(before.shape[0])
    if change.drawn == "normal":
        amount = random.normal(change.middle, change.spread, draws)
    else:
        amount = random.uniform(change.middle - change.spread, change.middle + change.spread, draws)
    if change.how == "value":
        return amount
    return before * amount if change.how == "factor" else before + amount


def _kept(name: str, values: Floats) -> Floats:
    most = 1.0 if name in _SHARES else _MOST.get(name, np.inf)
    return np.clip(values, _LEAST.get(name, 0.0), most)

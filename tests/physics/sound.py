"""Ovens for the tests: one like another, or drawn."""

from dataclasses import replace

import numpy as np

from assistant.physics.changes import Change, changed
from assistant.physics.heating import Programme, Run, run
from assistant.physics.oven import NAMES, Ovens
from assistant.physics.population import typical_ovens

DEAD = Change("factor", 0.0)
YES = Change("value", 1.0)


def drawn(draws: int, kind: str = "thermostat", seed: int = 4, **changes: Change) -> Ovens:
    """The same sound ovens for a seed, whatever is then changed in them."""
    sound = typical_ovens(kind, draws, np.random.default_rng(seed))
    return changed(sound, changes, np.random.default_rng(seed + 1))


def with_values(ovens: Ovens, **values: float) -> Ovens:
    """One value of a parameter for all, past what a change keeps to."""
    return replace(ovens, **{name: np.full(ovens.draws, value) for name, value in values.items()})


def ran(ovens: Ovens, function: str = "conventional", set_to: float = 180.0, minutes: float = 60.0) -> Run:
    return run(ovens, Programme(function, set_to, minutes * 60))


def till(found: Run, celsius: float) -> np.ndarray:
    """(D,): minutes till the centre first reaches the temperature; infinity where it doesn't."""
    there = found.centre >= celsius
    return np.where(there.any(axis=0), found.times_s[there.argmax(axis=0)] / 60, np.inf)


def lump_alone(capacity: float, loss: float, watts: float) -> Ovens:
    """One oven that is but its base element: the capacity in it, the loss from it to air that stays as it is."""
    nothing = {name: 0.0 for name in NAMES if name.endswith(("_mixing", "_fan", "_leak", "_loss")) or "_to_" in name}
    still = dict.fromkeys(("air_capacity", "rear_capacity", "wall_capacity", "housing_capacity"), 1e15)
    alone = {"element_capacity": capacity, "element_area": 0.0, "base_power": watts, "kitchen_temperature": 20.0}
    volts = {"supply_voltage": 230.0, "rated_voltage": 230.0, "never_opens": 1.0}
    return with_values(drawn(1), **{**nothing, **still, **alone, **volts, "element_to_air": loss})

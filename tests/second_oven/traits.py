"""Sound ovens of the second model: what they are made of, drawn for D ovens at once. Every number is assumed."""

from collections.abc import Mapping
from enum import IntEnum

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Traits = dict[str, Floats]
"""Name -> (D,). Powers W, areas m², capacities J/K, times s, temperatures °C or K of difference, else shares."""


class Node(IntEnum):
    """What has one temperature. `SIDES` holds the back; `JACKET` is wool and casing."""

    ROOF = 0
    FLOOR = 1
    SIDES = 2
    INNER_GLASS = 3
    RACK = 4
    AIR = 5
    OUTER_GLASS = 6
    JACKET = 7
    BAKE_ROD = 8
    ROOF_ROD = 9
    RING_ROD = 10


# name: (least, most), drawn evenly.
_EVEN: Mapping[str, tuple[float, float]] = {
    "supply_v": (222, 241),
    "kitchen_c": (17, 27),
    "bake_w": (1000, 1300),
    "roof_w": (750, 1050),
    "ring_w": (1800, 2500),
    "rod_capacity": (160, 290),
    "rod_area": (0.035, 0.055),
    "roof_capacity": (550, 950),
    "floor_capacity": (600, 1000),
    "sides_capacity": (1500, 2500),
    "glass_capacity": (1000, 1700),
    "rack_capacity": (350, 900),
    "jacket_capacity": (4000, 9000),
    "still_film": (1.6, 2.4),  # W/(m² K^1.25), of a wall in air that rises by itself
    "fan_film": (14, 24),  # W/(m² K), added by the fan at full speed
    "wool": (0.8, 1.4),  # W/K at 20 °C, and a fifth more at 120 K of difference
    "glass_emissivity": (0.25, 0.8),  # of the pair of panes: some are coated
    "leak": (0.3, 1.2),  # W/K at 160 K; draught goes with the root of the difference
    "cooling": (0, 12),  # W/K, of the casing's fan
    "stratified": (0.08, 0.22),  # of the roof's excess over the floor, what the air has above the middle
    "bulb_lag": (14, 40),
    "snap_lag": (4, 18),
    "differential": (6, 14),
    "bulb_at_wall": (0.15, 0.45),
    "cut_out_c": (295, 335),
    "glass_thermometer_lag": (90, 240),
    "pulse_s": (20, 40),
    "band": (8, 16),
}

# name: (mean, standard deviation).
_NORMAL: Mapping[str, tuple[float, float]] = {
    "dial_error": (0, 6),
    "dial_stretch": (0, 0.03),
    "thermometer_error": (0, 8),
    "back_hotter": (8, 8),
    "right_hotter": (0, 6),
}

_SAME: Mapping[str, float] = {
    "fan_speed": 1,
    "feels": 1,  # the share of the heat's rise that the thermostat still feels
    "stuck_closed": 0,
    "stuck_open": 0,
    "welded": 0,
    "lamp_forced": -1,  # 0 dark, 1 lit, whatever happens
    "floor_bare": 1,
    "front_colder": 0,
}

BOARDS = 0.25
"""The share of ovens whose heat is pulsed by a board instead of cut by a thermostat."""
LAMP_TELLS_REACHED = 0.4
"""Of those, whose lamp tells that the setting was reached once, and doesn't follow the pulses."""
HIDDEN_ROD = 0.6
"""The share of ovens whose lower rod lies under the floor."""


def sound_ovens(number: int, chance: np.random.Generator) -> Traits:
    """`number` ovens as they were made."""
    found: Traits = {name: chance.uniform(*ends, number) for name, ends in _EVEN.items()}
    found |= {name: chance.normal(*spread, number) for name, spread in _NORMAL.items()}
    found |= {name: np.full(number, value) for name, value in _SAME.items()}
    found["board"] = (chance.random(number) < BOARDS).astype(float)
    found["tells_reached"] = (chance.random(number) < LAMP_TELLS_REACHED).astype(float)
    found["hidden_rod"] = (chance.random(number) < HIDDEN_ROD).astype(float)
    return found

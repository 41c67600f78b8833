"""Ovens as households have them: every parameter drawn about a common value.

Every number here is assumed; the reasoning stands beside it. The whole is held against what is common in the trade
(time to 180 °C, share of the time the elements are on, period of the lamp) by the tests.
"""

from collections.abc import Mapping
from types import MappingProxyType

import numpy as np

from assistant.physics.oven import NAMES, Floats, Ovens

# name: (middle, spread), uniform within middle ± spread.
_WITHIN: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "supply_voltage": (230, 8),  # assumed: well inside 230 V ± 10 %
        "rated_voltage": (230, 0),  # assumed: the plate's rating
        "base_power": (1150, 150),  # assumed: rating plates show 1000–1300 W
        "top_power": (900, 100),  # assumed: 800–1000 W
        "grill_power": (1650, 250),  # assumed: 1400–1900 W
        "ring_power": (2250, 250),  # assumed: 2000–2500 W
        "element_capacity": (230, 50),  # assumed: 0.3 kg of sheath and filling at 750 J/(kg K)
        "element_area": (0.045, 0.008),  # assumed: 2.5 m of 7 mm rod, emissivity 0.8
        "radiated_up": (0.14, 0.06),  # assumed: the base lies under the floor or a tray
        "radiated_down": (0.36, 0.06),  # assumed: the roof is near, half of the rest meets the sides' upper part
        "air_capacity": (430, 80),  # assumed: 30 l of air (25 J/K), half of 1.6 kg of racks at 480 J/(kg K)
        "rear_capacity": (550, 100),  # assumed: 1.1 kg of cover, fan and sheet
        "wall_capacity": (2500, 380),  # assumed: 60 l cavity, half of 9 kg of liner, a part of the insulation
        "housing_capacity": (6000, 1500),  # assumed: 12 kg of sheet
        "element_to_air": (0.9, 0.2),  # assumed: 0.055 m² at 16 W/(m² K)
        "element_to_air_fan": (2.6, 0.5),  # assumed: three times that in moving air
        "air_to_wall": (4.5, 0.8),  # assumed: 0.5 m² at 9 W/(m² K)
        "air_to_wall_fan": (13, 2.5),  # assumed: 0.5 m² at 26 W/(m² K)
        "zone_mixing": (12, 3),  # assumed: 14 l/s of hot air up and down
        "zone_mixing_fan": (45, 10),  # assumed: the fan turns the cavity's air over in about a second
        "rear_mixing": (0.7, 0.2),  # assumed: slots in the cover, no draught
        "rear_mixing_fan": (24, 5),  # assumed: 60 l/s through the fan, 0.75 kg/m³, half from each zone
        "rear_to_wall": (1.1, 0.3),  # assumed: 0.08 m² of cover and rear sheet, radiation and conduction
        "wall_to_wall": (4.0, 0.8),  # assumed: 0.3 m² seeing each other at 12 W/(m² K), and the liner
        "wall_loss": (0.65, 0.12),  # assumed: 0.25 m² of glass at 5 W/(m² K); in all 600–900 W at 180 °C
        "wall_to_housing": (1.4, 0.22),  # assumed: 0.7 m² of 30 mm wool at 0.045 W/(m K), and its bridges
        "housing_loss": (3.5, 0.8),  # assumed: 0.8 m² in a narrow niche, 4 W/(m² K)
        "housing_loss_fan": (24, 5),  # assumed: 15 l/s of cooling air beside that
        "door_leak": (1.0, 0.35),  # assumed: the vent and a sound seal let about 1 l/s pass
        "door_open_exchange": (50, 15),  # assumed: some 40 l/s through the open door
        "kitchen_temperature": (21, 3),  # assumed: 18–24 °C
        "probe_upper": (0.65, 0.15),  # assumed: the probe hangs in the upper half
        "probe_wall": (0.15, 0.08),  # assumed: it is clipped near the wall
        "probe_rear": (0.08, 0.05),  # assumed: and not far from the rear cover
        "thermometer_lag": (120, 50),  # assumed: hanging bimetal thermometers take minutes
        "cut_out_trip": (172, 6),  # assumed: above what a sound oven shows there at 250 °C
        "cut_out_reset": (140, 8),  # assumed: some 30 K below
        "cut_out_wall": (0.22, 0.02),  # assumed: it sits on the rear sheet, in the housing
        "cut_out_rear": (0.25, 0.03),  # assumed
        "top_view": (0.05, 0.015),  # assumed: rods of 7 mm in front of a roof of 0.15 m²
        "base_view": (0.01, 0.01),  # assumed: mostly covered
    }
)

# name: (mean, standard deviation).
_NORMAL: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "thermometer_bias": (0, 5),  # assumed: ± 10 K is the usual class of a hanging one
        "back_lean": (0.04, 0.03),  # assumed: the back is a little the hotter, by the door's glass
        "right_lean": (0.0, 0.03),  # assumed: no side is the rule
    }
)

# The rest is the same in every sound oven.
_SAME: Mapping[str, float] = MappingProxyType(
    {
        "fan_speed": 1,
        "cooling_fan_speed": 1,
        "never_opens": 0,
        "never_closes": 0,
        "heats_regardless": 0,
        "probe_outside": 0,
        "cut_out_resets": 1,
    }
)

# kind: name: (middle, spread), uniform.
_CONTROLS: Mapping[str, Mapping[str, tuple[float, float]]] = MappingProxyType(
    {
        "thermostat": {
            "switching_offset": (-4, 8),  # assumed: holds within 8 K of what has the centre as set
            "hysteresis": (6.5, 2.5),  # assumed: a capillary thermostat's differential
            "shortest_on": (0, 0),
            "shortest_off": (0, 0),
            "probe_lag": (22, 6),  # assumed: an oil-filled bulb of 4 mm
        },
        "sensor": {
            "switching_offset": (-4, 4),  # assumed: a platinum sensor; within 4 K of what has the centre as set
            "hysteresis": (4, 1.5),  # assumed: set in the board's program
            "shortest_on": (10, 5),  # assumed: to spare the relay
            "shortest_off": (20, 10),  # assumed: to spare the relay
            "probe_lag": (18, 5),  # assumed: a sheathed sensor in slow air
        },
    }
)

KINDS: tuple[str, ...] = tuple(_CONTROLS)


def typical_ovens(kind: str, draws: int, random: np.random.Generator) -> Ovens:
    """Sound ovens with a capillary `thermostat` or with a `sensor` and a relay, their spreads as stated above.

    Raises ValueError for another kind or fewer than one draw.
    """
    if kind not in _CONTROLS:
        raise ValueError(f"There is no kind of oven {kind!r}; there are {', '.join(KINDS)}.")
    if draws < 1:
        raise ValueError(f"At least one oven must be drawn, not {draws}.")
    within = {**_WITHIN, **_CONTROLS[kind]}
    return Ovens(**{name: _drawn(name, within, draws, random) for name in NAMES})


def _drawn(name: str, within: Mapping[str, tuple[float, float]], draws: int, random: np.random.Generator) -> Floats:
    if name in _SAME:
        return np.full(draws, float(_SAME[name]))
    if name in _NORMAL:
        mean, deviation = _NORMAL[name]
        return random.normal(mean, deviation, draws)
    middle, spread = within[name]
    return random.uniform(middle - spread, middle + spread, draws)

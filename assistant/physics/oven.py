"""The parameters of a household electric oven as a heat network, for D ovens at once, and the heating functions.

The oven is cut into lumps, each of one temperature, that exchange heat: a linear lumped network like those published
for household ovens (Ramirez-Laboreo, Sagues and Llorente, "Dynamic heat and mass transfer model of an electric oven
for energy analysis"), with the elements' radiation kept as the difference of fourth powers (Stefan–Boltzmann).
The lumps, in the order of the state's rows, are in `Lump`. A load is left out: slices of bread hold little heat.

Each parameter is an array (D,):

    name                     unit   meaning
    supply_voltage           V      at the oven's terminals while it heats
    rated_voltage            V      at which the elements give their rated power
    base_power               W      rated, of the base element (a burnt one: ×0; one of two circuits gone: ×0.5)
    top_power                W      rated, of the outer top element
    grill_power              W      rated, of the inner grill element
    ring_power               W      rated, of the ring round the fan, behind the rear cover
    element_capacity         J/K    of each element
    element_area             m²     of each element, times its emissivity
    radiated_up              1      share of the base element's radiation that reaches the upper walls
    radiated_down            1      share of the top elements' radiation that reaches the lower walls
    air_capacity             J/K    of each zone's air with the racks and the thin sheet in it
    rear_capacity            J/K    of the air, cover and sheet round the fan
    wall_capacity            J/K    of the upper walls, and of the lower: the liner and the warm part of the insulation
    housing_capacity         J/K    of the outer housing and what is in it
    element_to_air           W/K    from each element by convection, air at rest
    element_to_air_fan       W/K    the same, fan at full speed
    air_to_wall              W/K    in each zone, air at rest
    air_to_wall_fan          W/K    the same, fan at full speed
    zone_mixing              W/K    between the upper and the lower air, air at rest
    zone_mixing_fan          W/K    the same, fan at full speed
    rear_mixing              W/K    between each zone and the rear, air at rest
    rear_mixing_fan          W/K    the same, fan at full speed
    rear_to_wall             W/K    between the rear and each wall
    wall_to_wall             W/K    between the upper and the lower walls: the liner's conduction, their radiation
    fan_speed                1      the oven fan's speed as a share of full speed
    wall_loss                W/K    from each wall to the kitchen, the door's glass included
    wall_to_housing          W/K    from each wall through the insulation to the housing
    housing_loss             W/K    from the housing to the kitchen, cooling fan at rest
    housing_loss_fan         W/K    the same, cooling fan at full speed
    cooling_fan_speed        1      the cooling fan's speed as a share of full speed
    door_leak                W/K    by air past the door's seal and the vent, from both zones together
    door_open_exchange       W/K    by air through the open door, from both zones together
    kitchen_temperature      °C     all begins at it
    switching_offset         K      the middle of the switching points above the temperature set
    hysteresis               K      between the point where the control opens and where it closes
    shortest_on              s      the control stays closed at least so long
    shortest_off             s      the control stays open at least so long
    never_opens              0/1    the control calls for heat always
    never_closes             0/1    the control calls for heat never
    heats_regardless         0/1    the elements' contact is welded: they heat whatever the control calls for
    probe_lag                s      the time constant of the control's probe
    probe_upper              1      share of the upper air in what the probe sees of the air
    probe_wall               1      share of the upper walls in what the probe sees
    probe_rear               1      share of the rear in what the probe sees
    probe_outside            1      share of the housing in what the probe sees (a probe out of its clip)
    thermometer_lag          s      the time constant of the household's thermometer on the middle shelf
    thermometer_bias         K      what it shows above the truth
    cut_out_trip             °C     the thermal cut-out opens above it
    cut_out_reset            °C     the thermal cut-out closes below it
    cut_out_resets           0/1    the cut-out closes by itself
    cut_out_wall             1      share of the upper walls in what the cut-out sees; the rest is the housing
    cut_out_rear             1      share of the rear in what the cut-out sees
    top_view                 1      how much of what a slice on the middle shelf sees above it is each top element
    base_view                1      how much of what it sees below it is the base element (a covered one: 0)
    back_lean                1      browning at the back above the middle's, as a share; the front's is below by as much
    right_lean               1      browning at the right above the middle's, as a share; the left's is below by as much
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from enum import IntEnum
from types import MappingProxyType

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Truths = npt.NDArray[np.bool_]
Lanes = npt.NDArray[np.intp]  # places of some ovens among the D

ZERO_CELSIUS_K = 273.15
STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m² K⁴), CODATA 2018


class Lump(IntEnum):
    """The parts of one temperature, as rows of the state."""

    BASE = 0
    TOP = 1
    GRILL = 2
    RING = 3
    UPPER_AIR = 4
    LOWER_AIR = 5
    REAR = 6
    UPPER_WALL = 7
    LOWER_WALL = 8
    HOUSING = 9
    PROBE = 10
    THERMOMETER = 11


@dataclass(frozen=True)
class Function:
    """What a heating function switches: the share of each element's power, and of the oven fan's speed."""

    base: float = 0.0
    top: float = 0.0
    grill: float = 0.0
    ring: float = 0.0
    fan: float = 0.0


# As the circuits of household ovens are commonly laid out.
FUNCTIONS: Mapping[str, Function] = MappingProxyType(
    {
        "conventional": Function(base=1, top=1),
        "fan_with_ring": Function(ring=1, fan=1),
        "fan_assisted": Function(base=1, top=1, fan=1),
        "base_only": Function(base=1),
        "base_with_ring": Function(base=1, ring=1, fan=1),
        "small_grill": Function(grill=1),
        "full_grill": Function(top=1, grill=1),
        "grill_with_fan": Function(top=1, grill=1, fan=1),
    }
)


@dataclass(frozen=True)
class Ovens:
    """D ovens. Every field is an array (D,); the module's table tells its unit and meaning."""

    supply_voltage: Floats
    rated_voltage: Floats
    base_power: Floats
    top_power: Floats
    grill_power: Floats
    ring_power: Floats
    element_capacity: Floats
    element_area: Floats
    radiated_up: Floats
    radiated_down: Floats
    air_capacity: Floats
    rear_capacity: Floats
    wall_capacity: Floats
    housing_capacity: Floats
    element_to_air: Floats
    element_to_air_fan: Floats
    air_to_wall: Floats
    air_to_wall_fan: Floats
    zone_mixing: Floats
    zone_mixing_fan: Floats
    rear_mixing: Floats
    rear_mixing_fan: Floats
    rear_to_wall: Floats
    wall_to_wall: Floats
    fan_speed: Floats
    wall_loss: Floats
    wall_to_housing: Floats
    housing_loss: Floats
    housing_loss_fan: Floats
    cooling_fan_speed: Floats
    door_leak: Floats
    door_open_exchange: Floats
    kitchen_temperature: Floats
    switching_offset: Floats
    hysteresis: Floats
    shortest_on: Floats
    shortest_off: Floats
    never_opens: Floats
    never_closes: Floats
    heats_regardless: Floats
    probe_lag: Floats
    probe_upper: Floats
    probe_wall: Floats
    probe_rear: Floats
    probe_outside: Floats
    thermometer_lag: Floats
    thermometer_bias: Floats
    cut_out_trip: Floats
    cut_out_reset: Floats
    cut_out_resets: Floats
    cut_out_wall: Floats
    cut_out_rear: Floats
    top_view: Floats
    base_view: Floats
    back_lean: Floats
    right_lean: Floats

    @property
    def draws(self) -> int:
        """D."""
        return int(self.base_power.shape[0])


NAMES: tuple[str, ...] = tuple(field.name for field in fields(Ovens))


def picked(ovens: Ovens, lanes: Lanes) -> Ovens:
    """The ovens at these places."""
    return Ovens(**{name: getattr(ovens, name)[lanes] for name in NAMES})

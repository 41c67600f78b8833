"""An oven as one lump, by hand: how fast it warms up, in closed form, and what share of its power then holds it.

Source of all formulas: the lumped capacitance method, Incropera and others, Fundamentals of Heat and Mass Transfer,
chapter 5. One lump is a crude picture of an oven: good for ratios and orders of size, not for minutes. It stands beside
what is simulated so that a slip of either shows.
"""

from dataclasses import dataclass
from math import log

from assistant.physics.network import network
from assistant.physics.oven import FUNCTIONS, Ovens
from assistant.physics.possible import kelvin, require_above_zero, require_finite


@dataclass(frozen=True)
class LumpedOven:
    """An oven as one lump: heated by `power_w`, losing `loss_w_per_k` for each K above the room at `ambient_c`.

    `capacity_j_per_k` is what it takes to warm all of it by 1 K. Raises ValueError unless power, loss and capacity
    are above zero.
    """

    power_w: float
    loss_w_per_k: float
    capacity_j_per_k: float
    ambient_c: float

    def __post_init__(self) -> None:
        require_above_zero("The power in watts", self.power_w)
        require_above_zero("The loss in watts per kelvin", self.loss_w_per_k)
        require_above_zero("The heat capacity in joules per kelvin", self.capacity_j_per_k)
        kelvin(self.ambient_c)

    @property
    def final_c(self) -> float:
        """°C that it nears with the heat on all the time."""
        return self.ambient_c + self.power_w / self.loss_w_per_k

    @property
    def time_constant_s(self) -> float:
        """s after which 63 % of the way to the final temperature is done."""
        return self.capacity_j_per_k / self.loss_w_per_k


def as_one_lump(ovens: Ovens, function: str) -> LumpedOven:
    """The mean of these ovens as one lump: all of the inside as warm as the setting, the housing only passing heat on.

    Its capacity is that of both zones' air, the walls, the rear and the elements that the function switches on; its
    loss the leak, the door's and, in series, the insulation's and the housing's.
    """
    net = network(ovens, FUNCTIONS[function])
    through_walls = 1 / (1 / (2 * net.wall_to_housing) + 1 / net.housing_loss)
    loss = 2 * net.leak + 2 * net.wall_loss + through_walls
    elements = (net.watts > 0).sum(axis=0) * ovens.element_capacity
    capacity = 2 * (ovens.air_capacity + ovens.wall_capacity) + ovens.rear_capacity + elements
    means = (net.watts.sum(axis=0), loss, capacity, ovens.kitchen_temperature)
    return LumpedOven(*(float(each.mean()) for each in means))


def time_to_temperature_s(start_c: float, final_c: float, time_constant_s: float, target_c: float) -> float:
    """s until a first-order response from `start_c` to `final_c` is at `target_c`: τ·ln((T∞−T0)/(T∞−T)).

    Raises ValueError for a target that it never reaches: not on the way, or the final temperature itself.
    """
    for temperature_c in (start_c, final_c, target_c):
        kelvin(temperature_c)
    require_above_zero("The time constant in seconds", time_constant_s)
    whole_k, left_k = final_c - start_c, final_c - target_c
    if target_c == start_c:
        return 0.0
    if whole_k * left_k <= 0 or abs(left_k) > abs(whole_k):
        raise ValueError(f"From {start_c:g} °C towards {final_c:g} °C the temperature never reaches {target_c:g} °C.")
    return time_constant_s * log(whole_k / left_k)


def heating_up_s(oven: LumpedOven, target_c: float) -> float:
    """s until the oven, from the room's temperature, is at `target_c`. Raises ValueError if it never is."""
    return time_to_temperature_s(oven.ambient_c, oven.final_c, oven.time_constant_s, target_c)


def duty_at_setting(oven: LumpedOven, setting_c: float) -> float:
    """The share of time, from 0 to 1, that the heat is on to hold the setting in °C.

    Raises ValueError for a setting below the room's temperature or above the final one, which can't be held.
    """
    require_finite("The setting in °C", setting_c)
    if not oven.ambient_c <= setting_c <= oven.final_c:
        raise ValueError(
            f"This oven holds settings from {oven.ambient_c:g} °C to {oven.final_c:g} °C, not {setting_c:g} °C."
        )
    return oven.loss_w_per_k * (setting_c - oven.ambient_c) / oven.power_w

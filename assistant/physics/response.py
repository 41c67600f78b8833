"""How fast something warms up: first-order response in closed form, an oven as one lump, and a probe as a bead.

Source of all formulas: the lumped capacitance method, Incropera and others, Fundamentals of Heat and Mass Transfer,
chapter 5. One lump is a crude picture of an oven: good for ratios and orders of size, not for minutes.
"""

from dataclasses import dataclass
from math import expm1, log

from assistant.physics.possible import kelvin, require_above_zero, require_finite, require_zero_or_more


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


def done_share(duration_s: float, time_constant_s: float) -> float:
    """What share of the whole way a first-order response has done after so many s: 1 − e^(−t/τ).

    Raises ValueError unless the duration isn't below 0 and the time constant is above 0.
    """
    require_zero_or_more("The duration in seconds", duration_s)
    require_above_zero("The time constant in seconds", time_constant_s)
    return -expm1(-duration_s / time_constant_s)


def temperature_after_c(start_c: float, final_c: float, time_constant_s: float, duration_s: float) -> float:
    """°C after so many s of a first-order response from `start_c` to `final_c`. Raises as `done_share` does."""
    kelvin(start_c)
    kelvin(final_c)
    return start_c + (final_c - start_c) * done_share(duration_s, time_constant_s)


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


def bead_time_constant_s(
    diameter_m: float, density_kg_per_m3: float, specific_heat_j_per_kg_k: float, transfer_w_per_m2_k: float
) -> float:
    """Time constant in s of a bead of so many m, such as a probe's tip, in moving air: ρ·c·D/(6·h).

    Good where `bead_biot_number` is below 0.1. Raises ValueError unless all are above 0.
    """
    require_above_zero("The diameter in metres", diameter_m)
    require_above_zero("The density in kilograms per cubic metre", density_kg_per_m3)
    require_above_zero("The specific heat in joules per kilogram and kelvin", specific_heat_j_per_kg_k)
    require_above_zero("The heat transfer in watts per square metre and kelvin", transfer_w_per_m2_k)
    return density_kg_per_m3 * specific_heat_j_per_kg_k * diameter_m / (6 * transfer_w_per_m2_k)


def bead_biot_number(diameter_m: float, conductivity_w_per_m_k: float, transfer_w_per_m2_k: float) -> float:
    """Biot number of a bead: h·D/(6·k), how far its inside lags behind its surface.

    Raises ValueError unless all are above 0.
    """
    require_above_zero("The diameter in metres", diameter_m)
    require_above_zero("The conductivity in watts per metre and kelvin", conductivity_w_per_m_k)
    require_above_zero("The heat transfer in watts per square metre and kelvin", transfer_w_per_m2_k)
    return transfer_w_per_m2_k * diameter_m / (6 * conductivity_w_per_m_k)

"""The supply and the circuit: what a voltage does to power, and the figures of circuits, leakage and insulation.

Every figure is that of its named source for one country or one kind of test; none of them says alone that an oven
is sound or faulty.
"""

from dataclasses import dataclass

from assistant.physics.possible import require_above_zero, require_within, require_zero_or_more

DIVERSITY_WHOLE_A = 10.0
DIVERSITY_SHARE_OF_REST = 0.3
DIVERSITY_SOCKET_A = 5.0
LARGEST_DROP_SHARE = 0.05
"""Of the nominal voltage, from the installation's origin to a load other than lighting. BS 7671, Appendix 4."""
USUAL_INSULATION_MEGOHM = 1.0
"""Least MΩ usual in in-service tests of class I appliances, at 500 V d.c.

In Germany by DIN VDE 0701-0702, which DIN EN 50678 (VDE 0701) and DIN EN 50699 (VDE 0702) replaced in 2021; from
memory, not checked.
"""
HEATING_INSULATION_MEGOHM = 0.3
"""Least MΩ allowed by in-service practice to some class I heating appliances when cold.

Sources disagree on which side of 3 kW it is allowed, so it must not decide anything by itself.
"""
LEAKAGE_MA_PER_KW = 0.75
LEAST_LEAKAGE_LIMIT_MA = 0.75
LARGEST_LEAKAGE_LIMIT_MA = 5.0


@dataclass(frozen=True)
class SupplyLimits:
    """The declared voltage of a public supply and its permitted limits, in V."""

    nominal_v: float
    lowest_v: float
    highest_v: float


def supply_limits_v(nominal_v: float, below_share: float, above_share: float) -> SupplyLimits:
    """The limits in V of a supply that may lie so much below and above its nominal V, as shares of it.

    Raises ValueError unless the voltage is above 0 and the shares are from 0 to 1.
    """
    require_above_zero("The nominal voltage in volts", nominal_v)
    require_within("The share below the nominal voltage", below_share, 0, 1)
    require_within("The share above the nominal voltage", above_share, 0, 1)
    return SupplyLimits(nominal_v, nominal_v * (1 - below_share), nominal_v * (1 + above_share))


UK_SUPPLY = supply_limits_v(230.0, below_share=0.06, above_share=0.10)
"""230 V, 10 % more or 6 % less. Source: SI 1994/3021, explanatory note."""


def power_ratio(supply_v: float, marked_v: float) -> float:
    """How many times its marked power a fixed resistance draws on another voltage, both in V: (U/Um)².

    Source: Joule's law. Raises ValueError unless the marked voltage is above 0 and the supply's isn't below 0.
    """
    require_zero_or_more("The supply voltage in volts", supply_v)
    require_above_zero("The marked voltage in volts", marked_v)
    return (supply_v / marked_v) ** 2


def power_at_supply_w(marked_power_w: float, marked_v: float, supply_v: float) -> float:
    """W drawn on `supply_v` V by a resistance marked with so many W at so many V. Raises as `power_ratio` does."""
    require_above_zero("The marked power in watts", marked_power_w)
    return marked_power_w * power_ratio(supply_v, marked_v)


def circuit_maximum_w(rating_a: float, supply_v: float) -> float:
    """W that a circuit of so many A carries on so many V, all of it resistance. Raises unless both are above 0."""
    require_above_zero("The circuit's rating in amperes", rating_a)
    require_above_zero("The supply voltage in volts", supply_v)
    return rating_a * supply_v


def voltage_drop_share(idle_v: float, loaded_v: float) -> float:
    """How much of the voltage without load, in V, is missing under load, as a share from 0 to 1.

    Measured at the oven it holds the network's drop too, so it isn't the drop that `LARGEST_DROP_SHARE` limits,
    but at least as large. Raises ValueError unless the idle voltage is above 0 and the loaded one from 0 to it.
    """
    require_above_zero("The voltage in volts without load", idle_v)
    require_within("The voltage in volts under load", loaded_v, 0, idle_v)
    return (idle_v - loaded_v) / idle_v


def cooker_diversity_a(total_current_a: float, has_socket: bool) -> float:
    """A for which a household cooker's circuit is designed, from its total A: a rule of design, not a limit.

    The first 10 A, 30 % of the rest, and 5 A for a socket on its control unit. It doesn't limit the current, so
    it never tells whether a breaker should trip. Source: J. F. Whitfield, The Electricians Guide, table 6.2.
    Raises ValueError unless the current is above 0.
    """
    require_above_zero("The total current in amperes", total_current_a)
    rest_a = max(total_current_a - DIVERSITY_WHOLE_A, 0.0)
    socket_a = DIVERSITY_SOCKET_A if has_socket else 0.0
    return min(total_current_a, DIVERSITY_WHOLE_A) + DIVERSITY_SHARE_OF_REST * rest_a + socket_a


def leakage_limit_ma(rated_w: float) -> float:
    """The most mA that may leak from a stationary class I heating appliance rated at so many W.

    0.75 mA, or 0.75 mA for each kW if that is more, and 5 mA at most. Source: IEC 60335-1, 13.2 and 16.2; a part 2
    standard may set another. Raises ValueError unless the rating is above 0.
    """
    require_above_zero("The rated power in watts", rated_w)
    by_power_ma = LEAKAGE_MA_PER_KW * rated_w / 1000
    return min(max(LEAST_LEAKAGE_LIMIT_MA, by_power_ma), LARGEST_LEAKAGE_LIMIT_MA)


def insulation_current_ma(voltage_v: float, insulation_megohm: float) -> float:
    """mA that so many V drive through so many MΩ: the resistive part of a leakage, without the capacitive one.

    Source: Ohm's law. Raises ValueError unless both are above 0.
    """
    require_above_zero("The voltage in volts", voltage_v)
    require_above_zero("The insulation resistance in megohms", insulation_megohm)
    return voltage_v / insulation_megohm / 1000

"""Heating elements: what one's own marking says of its resistance, and how little a rating plate's total does.

An element's marking, watts at volts, holds while it glows; cold, the alloy has a few per cent less resistance. An
oven's rating plate gives the watts of all that may draw current together, so no element's resistance follows from it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import inf

import numpy as np

from assistant.physics.possible import require_above_zero, require_within

COLD_C = 20.0
HOTTEST_C = 1000.0
TYPICAL_LOWEST_W = 600.0
TYPICAL_HIGHEST_W = 3600.0
"""Watts of single elements in household ovens, taken wide. This project's own estimate, from no standard."""


class Alloy(StrEnum):
    """Resistance alloys of heating elements."""

    NI80CR20 = "Ni80Cr20"
    FECRAL_25_5 = "FeCrAl 25-5"


_FACTOR_C = (20.0, 100.0, 200.0, 300.0, 400.0, 500.0, 600.0, 700.0, 800.0, 900.0, 1000.0)
_FACTORS = {
    Alloy.NI80CR20: (1.0, 1.006, 1.012, 1.018, 1.025, 1.026, 1.018, 1.010, 1.008, 1.010, 1.014),
    Alloy.FECRAL_25_5: (1.0, 1.002, 1.005, 1.008, 1.013, 1.021, 1.030, 1.038, 1.040, 1.042, 1.044),
}
LARGEST_FACTOR = max(max(row) for row in _FACTORS.values())


class Basis(StrEnum):
    """What a band of resistance rests on."""

    MARKING = "marking"
    TYPICAL = "typical"


@dataclass(frozen=True)
class ResistanceBand:
    """From `low_ohm` to `high_ohm`, in Ω, and what that rests on.

    A band of basis TYPICAL is what some household oven's element may have: outside it is odd, inside proves nothing.
    """

    low_ohm: float
    high_ohm: float
    basis: Basis


@dataclass(frozen=True)
class RatingPlate:
    """An oven's plate: total W from `low_power_w` to `high_power_w`, for supplies from `low_v` to `high_v` V.

    Where the plate has one figure, both are that one. Raises ValueError for figures that aren't above zero or are
    the wrong way round.
    """

    low_power_w: float
    high_power_w: float
    low_v: float
    high_v: float

    def __post_init__(self) -> None:
        require_above_zero("The plate's lower power in watts", self.low_power_w)
        require_above_zero("The plate's lower voltage in volts", self.low_v)
        require_above_zero("The plate's higher power in watts", self.high_power_w)
        require_above_zero("The plate's higher voltage in volts", self.high_v)
        if self.low_power_w > self.high_power_w or self.low_v > self.high_v:
            raise ValueError("The plate's lower figures must not be above its higher ones.")


@dataclass(frozen=True)
class WholeOven:
    """What a rating plate tells, all of it of the whole oven; nothing here is about one element.

    `low_current_a` to `high_current_a`: A that its watts may mean, whichever of its volts they belong to.
    `least_input_w` to `most_input_w`: W within which a new oven's input may lie at its rated voltage.
    """

    low_current_a: float
    high_current_a: float
    least_input_w: float
    most_input_w: float


def hot_to_cold_factor(alloy: Alloy, temperature_c: float) -> float:
    """How many times its resistance at 20 °C a wire of the alloy has at a temperature in °C.

    Source: tables of the factor Ct by alloy grade in the names of GB/T 1234, joined by straight lines. Published
    tables differ by some per cent, so it is good for 'a few per cent', not for more. Raises ValueError outside
    20 °C to 1000 °C.
    """
    require_within("The temperature in °C of the wire", temperature_c, COLD_C, HOTTEST_C)
    return float(np.interp(temperature_c, _FACTOR_C, _FACTORS[Alloy(alloy)]))


def current_a(power_w: float, voltage_v: float) -> float:
    """A drawn by a load of so many W, all of it resistance, at so many V. Raises ValueError unless both are above 0."""
    require_above_zero("The power in watts", power_w)
    require_above_zero("The voltage in volts", voltage_v)
    return power_w / voltage_v


def working_resistance_ohm(marked_power_w: float, marked_v: float) -> float:
    """Ω of an element in use that draws its marked W at its marked V. Raises ValueError unless both are above 0."""
    require_above_zero("The element's marked power in watts", marked_power_w)
    require_above_zero("The element's marked voltage in volts", marked_v)
    return marked_v**2 / marked_power_w


def cold_resistance_ohm(marked_power_w: float, marked_v: float, alloy: Alloy, working_c: float) -> float:
    """Ω at 20 °C of an element marked with so many W at so many V whose wire is at `working_c` °C in use.

    Raises ValueError where `working_resistance_ohm` and `hot_to_cold_factor` do.
    """
    return working_resistance_ohm(marked_power_w, marked_v) / hot_to_cold_factor(alloy, working_c)


def input_limits_w(rated_w: float) -> tuple[float, float]:
    """The least and the most W that a heating appliance rated at so many W may draw at its rated voltage.

    Up to 25 W: 20 % more, and no lower limit (told as 0). Up to 200 W: 10 % either way. Above: 10 % less, and
    5 % or 20 W more, whichever is more. Source: IEC 60335-1, 10.1, table 1, as adopted in GOST R MEK 335-1-94.
    Raises ValueError unless the rating is above 0.
    """
    require_above_zero("The rated power in watts", rated_w)
    if rated_w <= 25:
        return 0.0, 1.2 * rated_w
    if rated_w <= 200:
        return 0.9 * rated_w, 1.1 * rated_w
    return 0.9 * rated_w, max(1.05 * rated_w, rated_w + 20)


def working_resistance_limits_ohm(marked_power_w: float, marked_v: float) -> tuple[float, float]:
    """The least and the most Ω in use of an element marked with so many W at so many V, from `input_limits_w`.

    Endless upwards where the standard sets no lower limit of input. Raises ValueError unless both are above 0.
    """
    require_above_zero("The element's marked voltage in volts", marked_v)
    least_w, most_w = input_limits_w(marked_power_w)
    return marked_v**2 / most_w, marked_v**2 / least_w if least_w else inf


def cold_resistance_band(marked_power_w: float, marked_v: float) -> ResistanceBand:
    """The band of Ω at room temperature of a sound element marked with so many W at so many V.

    It allows for the input tolerance and for either alloy at any temperature of the table, so that it needs no
    more than the marking. The tolerance is that of whole appliances; element makers' own may be another.
    Raises ValueError unless both are above 0.
    """
    least_ohm, most_ohm = working_resistance_limits_ohm(marked_power_w, marked_v)
    return ResistanceBand(least_ohm / LARGEST_FACTOR, most_ohm, Basis.MARKING)


def typical_cold_band(supply_v: float) -> ResistanceBand:
    """A wide band of Ω at room temperature for one element of which no marking is known, on so many V.

    From this project's estimate that such elements have 600 W to 3600 W. Raises ValueError unless the voltage is
    above 0.
    """
    low_ohm = cold_resistance_band(TYPICAL_HIGHEST_W, supply_v).low_ohm
    high_ohm = cold_resistance_band(TYPICAL_LOWEST_W, supply_v).high_ohm
    return ResistanceBand(low_ohm, high_ohm, Basis.TYPICAL)


def cold_band_under_plate(plate_power_w: float, supply_v: float) -> ResistanceBand:
    """The same where the oven's plate is known: no element has more W than the whole oven.

    That narrows the band from below, and not at all for an oven of more W than any element. Raises ValueError unless
    both are above 0.
    """
    typical = typical_cold_band(supply_v)
    low_ohm = max(typical.low_ohm, cold_resistance_band(plate_power_w, supply_v).low_ohm)
    return ResistanceBand(min(low_ohm, typical.high_ohm), typical.high_ohm, Basis.TYPICAL)


def parallel_ohm(resistances_ohm: Sequence[float]) -> float:
    """Ω of resistances side by side. Raises ValueError if there are none or one isn't above 0."""
    if not resistances_ohm:
        raise ValueError("At least one resistance is needed.")
    for resistance_ohm in resistances_ohm:
        require_above_zero("A resistance in ohms", resistance_ohm)
    return 1 / sum(1 / resistance_ohm for resistance_ohm in resistances_ohm)


def what_the_plate_tells(plate: RatingPlate) -> WholeOven:
    """The oven's total current and the limits of its input, and nothing about any one element.

    With a range of volts and one figure of watts the plate doesn't say at which of them it draws that, so the
    current spans both ends. The limits are those of `input_limits_w`: IEC 60335-1, 10.1.
    """
    return WholeOven(
        low_current_a=plate.low_power_w / plate.high_v,
        high_current_a=plate.high_power_w / plate.low_v,
        least_input_w=input_limits_w(plate.low_power_w)[0],
        most_input_w=input_limits_w(plate.high_power_w)[1],
    )

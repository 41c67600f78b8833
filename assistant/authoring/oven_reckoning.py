"""The engineer's expectation of a sound oven: how long its elements heat it up, and what share of the time is then on.

Simulated: each range is that of sound ovens which are drawn, and says so. Raises ValueError, whose text is a plain
sentence, or Refused, for input that can't be.
"""

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from assistant.authoring.reckoned import Number, Reckoned
from assistant.errors import Refused
from assistant.physics.expectation import Elements, Expected, expected, used_elements
from assistant.physics.heating_element import TYPICAL_HIGHEST_W
from assistant.physics.oven import Floats
from assistant.physics.possible import require_within
from assistant.physics.response import LumpedOven, as_one_lump, duty_at_setting, heating_up_s
from assistant.physics.supply import UK_SUPPLY, power_at_supply_w

LEAST_W, MOST_W = 100.0, TYPICAL_HIGHEST_W
LEAST_V, MOST_V = 100.0, 440.0
"""Up to two phases, where the neutral is lost."""
LEAST_SET_C, MOST_SET_C = 100.0, 250.0
"""Below, a few cycles of the control are too few for a share of the time; beyond, sound ovens trip their cut-outs."""
LEAST_KITCHEN_C, MOST_KITCHEN_C = 0.0, 40.0
RANGE = (0.05, 0.95)
MIDDLE = (0.5,)


def oven(
    way: str, watts: Mapping[str, float], celsius: float, volts: float | None, marked: float | None, kitchen: float
) -> Reckoned:
    """An oven of elements of so many W at `marked` V, set to a way of heating and so many °C, on `volts` V.

    `watts`: base, top, grill, ring -> W; those that the way switches on must be given. Without voltages it is 230 V.
    """
    volts = UK_SUPPLY.nominal_v if volts is None else volts
    marked = UK_SUPPLY.nominal_v if marked is None else marked
    _require(watts, celsius, (volts, marked), kitchen)
    used = used_elements(way)
    if missing := [f"--{name}" for name in used if name not in watts]:
        raise Refused("elements_missing", {"way": way, "elements": ", ".join(missing)})
    switched = {name: watts[name] for name in used}
    found = expected(way, celsius, Elements(switched, volts, marked, kitchen))
    if found.cut_out.any():
        raise Refused("cut_out_trips")
    one_lump = as_one_lump(found.ovens, way)
    numbers = (*_electrical(way, switched, volts, marked), *_simulated(found, one_lump, celsius, kitchen))
    told = {"way": way, "watts": dict(watts), "celsius": celsius, "volts": volts, "marked": marked, "kitchen": kitchen}
    return Reckoned("oven", "engineer", told, numbers, tuple(_notes(found, numbers, len(watts) > len(used))))


def _require(watts: Mapping[str, float], celsius: float, voltages: Sequence[float], kitchen: float) -> None:
    for figure in watts.values():
        require_within("The power of an element in watts", figure, LEAST_W, MOST_W)
    for figure in voltages:
        require_within("A voltage in volts", figure, LEAST_V, MOST_V)
    require_within("The setting in °C", celsius, LEAST_SET_C, MOST_SET_C)
    require_within("The kitchen's temperature in °C", kitchen, LEAST_KITCHEN_C, MOST_KITCHEN_C)


def _electrical(way: str, watts: Mapping[str, float], volts: float, marked: float) -> Iterator[Number]:
    power = {name: power_at_supply_w(each, marked, volts) for name, each in watts.items()}
    for name, each in watts.items():
        of: dict[str, float | str] = {"element": name, "watts": each, "marked": marked, "volts": volts}
        yield Number("element_current", (power[name] / volts,), "A", "ohm", of)
    yield Number("heating_power", (sum(power.values()),), "W", "joule", {"way": way})


def _simulated(found: Expected, one_lump: LumpedOven, celsius: float, kitchen: float) -> Iterator[Number]:
    opens, period = _or_never(found.opens_s) / 60, _or_never(found.period_s) / 60
    duty, hourly = 100 * found.share_on, found.share_on * found.power_w / 1000
    of = {"celsius": celsius, "kitchen": kitchen, "draws": float(found.ovens.draws)}
    if np.isfinite(_at(opens, MIDDLE)).all():
        yield Number("opens_middle", _at(opens, MIDDLE), "min", "simulated", of)
        yield Number("opens", _at(opens, RANGE), "min", "simulated")
    if celsius < one_lump.final_c:
        yield Number("opens_by_hand", (heating_up_s(one_lump, celsius) / 60,), "min", "one_lump")
    yield Number("duty_middle", _at(duty, MIDDLE), "%", "simulated")
    yield Number("duty", _at(duty, RANGE), "%", "simulated")
    if celsius < one_lump.final_c:
        yield Number("duty_by_hand", (100 * duty_at_setting(one_lump, celsius),), "%", "one_lump")
    if np.isfinite(_at(period, MIDDLE)).all():
        yield Number("period", _at(period, RANGE), "min", "simulated")
    yield Number("hourly", _at(hourly, RANGE), "kWh", "balance")


def _or_never(times: Floats) -> Floats:
    """Infinite where it doesn't come about."""
    return np.where(np.isnan(times), np.inf, times)


def _at(values: Floats, shares: Sequence[float]) -> tuple[float, ...]:
    """The values of drawn ovens at these shares of them, none between two."""
    return tuple(float(each) for each in np.quantile(values, shares, method="inverted_cdf"))


def _notes(found: Expected, numbers: Sequence[Number], idle: bool) -> Iterator[str]:
    never = np.isnan(found.opens_s).any()
    yield from ("simulated", "as_simulated", "by_hand")
    if never:
        yield "some_never_open" if any(number.name == "opens" for number in numbers) else "few_open"
    if idle:
        yield "idle_elements"
    yield from ("outside_proves_nothing", "no_proof", "live")

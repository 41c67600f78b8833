"""The oven's equations for one oven, written out a second time, carried by scipy with its events.

The heat exchanges are written lump by lump as balances, not by the rows of arrays the package uses. Source of the
method: scipy.integrate.solve_ivp, LSODA, whose switching points are roots of event functions.
"""

import warnings
from collections.abc import Callable
from dataclasses import dataclass
from types import SimpleNamespace

import numpy as np
from scipy.integrate import solve_ivp

from assistant.physics.oven import NAMES, Function, Ovens

SIGMA = 5.670374419e-8
NOUGHT = 273.15


@dataclass
class Outside:
    """`times` every 10 s, `states` (K, 12) in °C, and when the control and the cut-out switched."""

    times: np.ndarray
    states: np.ndarray
    control: list[float]
    cut_out: list[float]


def lane(ovens: Ovens, number: int) -> SimpleNamespace:
    return SimpleNamespace(**{name: float(getattr(ovens, name)[number]) for name in NAMES})


def balances(o: SimpleNamespace, f: Function, on: bool, door: bool) -> Callable[[float, np.ndarray], list[float]]:
    """The right-hand side in °C."""
    fan = o.fan_speed * f.fan

    def g(name: str, speed: float = fan) -> float:
        return getattr(o, name) * (1 - speed) + getattr(o, name + "_fan") * speed

    volts = (o.supply_voltage / o.rated_voltage) ** 2 * on
    film, to_wall, mixing, to_rear = g("element_to_air"), g("air_to_wall"), g("zone_mixing"), g("rear_mixing")
    leak = o.door_leak / 2 + (o.door_open_exchange / 2 if door else 0)

    def rates(_time: float, y: np.ndarray) -> list[float]:
        base, top, grill, ring, up, low, rear, roof, floor, housing, probe, gauge = y

        def glow(hot: float, cold: float) -> float:
            return SIGMA * o.element_area * ((hot + NOUGHT) ** 4 - (cold + NOUGHT) ** 4)

        base_roof, base_floor = o.radiated_up * glow(base, roof), (1 - o.radiated_up) * glow(base, floor)
        top_roof, top_floor = (1 - o.radiated_down) * glow(top, roof), o.radiated_down * glow(top, floor)
        grill_roof, grill_floor = (1 - o.radiated_down) * glow(grill, roof), o.radiated_down * glow(grill, floor)
        ring_rear = glow(ring, rear)
        roof_floor = o.wall_to_wall * (roof - floor)
        wall_shares = o.probe_wall * roof + o.probe_rear * rear + o.probe_outside * housing
        air_share = 1 - o.probe_wall - o.probe_rear - o.probe_outside
        sees = air_share * (o.probe_upper * up + (1 - o.probe_upper) * low) + wall_shares
        return [
            (o.base_power * f.base * volts - film * (base - low) - base_roof - base_floor) / o.element_capacity,
            (o.top_power * f.top * volts - film * (top - up) - top_roof - top_floor) / o.element_capacity,
            (o.grill_power * f.grill * volts - film * (grill - up) - grill_roof - grill_floor) / o.element_capacity,
            (o.ring_power * f.ring * volts - film * (ring - rear) - ring_rear) / o.element_capacity,
            (
                film * (top + grill - 2 * up)
                + to_wall * (roof - up)
                + mixing * (low - up)
                + to_rear * (rear - up)
                + leak * (o.kitchen_temperature - up)
            )
            / o.air_capacity,
            (
                film * (base - low)
                + to_wall * (floor - low)
                + mixing * (up - low)
                + to_rear * (rear - low)
                + leak * (o.kitchen_temperature - low)
            )
            / o.air_capacity,
            (
                film * (ring - rear)
                + ring_rear
                + to_rear * (up + low - 2 * rear)
                + o.rear_to_wall * (roof + floor - 2 * rear)
            )
            / o.rear_capacity,
            (
                base_roof
                + top_roof
                + grill_roof
                + to_wall * (up - roof)
                + o.rear_to_wall * (rear - roof)
                - roof_floor
                - o.wall_loss * (roof - o.kitchen_temperature)
                - o.wall_to_housing * (roof - housing)
            )
            / o.wall_capacity,
            (
                base_floor
                + top_floor
                + grill_floor
                + to_wall * (low - floor)
                + o.rear_to_wall * (rear - floor)
                + roof_floor
                - o.wall_loss * (floor - o.kitchen_temperature)
                - o.wall_to_housing * (floor - housing)
            )
            / o.wall_capacity,
            (
                o.wall_to_housing * (roof + floor - 2 * housing)
                - g("housing_loss", o.cooling_fan_speed) * (housing - o.kitchen_temperature)
            )
            / o.housing_capacity,
            (sees - probe) / o.probe_lag,
            ((up + low) / 2 + o.thermometer_bias - gauge) / o.thermometer_lag,
        ]

    return rates


def outside(
    o: SimpleNamespace, f: Function, set_temperature: float, until: float, door: tuple[tuple[float, float], ...] = ()
) -> Outside:
    """The programme from cold. Not for controls with shortest times that bind, nor for welded contacts."""
    middle = set_temperature + o.switching_offset
    calls, sound, now = True, True, 0.0
    state = np.full(12, o.kitchen_temperature)
    state[11] += o.thermometer_bias
    breaks = sorted({until, *(edge for since, lasting in door for edge in (since, since + lasting) if edge < until)})
    found = Outside(np.arange(0, until + 1, 10.0), np.empty((int(until / 10) + 1, 12)), [], [])
    while now < until - 1e-9:

        def control(_t: float, y: np.ndarray, calls: bool = calls) -> float:
            return float(y[10] - middle - (0.5 if calls else -0.5) * o.hysteresis)

        def cut_out(_t: float, y: np.ndarray, sound: bool = sound) -> float:
            housing_share = 1 - o.cut_out_wall - o.cut_out_rear
            sees = o.cut_out_wall * y[7] + o.cut_out_rear * y[6] + housing_share * y[9]
            return float(sees - (o.cut_out_trip if sound else o.cut_out_reset))

        control.terminal = cut_out.terminal = True  # type: ignore[attr-defined]
        control.direction = 1 if calls else -1  # type: ignore[attr-defined]
        cut_out.direction = 1 if sound else -1  # type: ignore[attr-defined]
        stop = next(edge for edge in breaks if edge > now + 1e-9)
        is_open = any(since <= now + 1e-9 < since + lasting for since, lasting in door)
        rates = balances(o, f, calls and sound, is_open)
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", UserWarning)
            piece = solve_ivp(
                rates, (now, stop), state, "LSODA", rtol=1e-8, atol=1e-8, events=[control, cut_out], dense_output=True
            )
        end = float(piece.t[-1])
        inside = (found.times >= now - 1e-9) & (found.times <= end + 1e-9)
        if inside.any():
            found.states[inside] = piece.sol(found.times[inside]).T
        if piece.t_events[0].size:
            calls = not calls
            found.control.append(end)
        if piece.t_events[1].size:
            sound = not sound
            found.cut_out.append(end)
        now, state = end, piece.y[:, -1]
    return found

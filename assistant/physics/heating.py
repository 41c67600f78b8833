"""An oven heats: the heat network carried through a programme, for D ovens at once.

Heun's method of third order in steps of 10/3 s. A control or cut-out that switches within a step does so where the
parabola through the step meets its switching point, and from there on the elements have the heat, and have passed on
the heat, that they then have: none is lost or made by switching. Over an hour the switching times are within some
0.2 s of the exact ones.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.physics.network import Network, Room, fastest_rate, network, pass_on, seen, slopes
from assistant.physics.oven import FUNCTIONS, ZERO_CELSIUS_K, Floats, Function, Lump, Ovens, Truths
from assistant.physics.switching import Switches

GRID_S = 10.0
STEPS_PER_POINT = 3
STEP_S = GRID_S / STEPS_PER_POINT

Grid = npt.NDArray[np.float32]  # temperatures on the grid, to 0.0001 K
_STABLE = 2.5  # the method's bound on rate × step, where the rates are real (2.51)


@dataclass(frozen=True)
class Programme:
    """What is asked of the ovens. From cold, all at the kitchen's temperature.

    `set_temperature`: °C, one or (D,). `duration_s` is rounded up to whole 10 s. `door_openings`: (from, for), s.
    """

    function: str | Function
    set_temperature: float | Floats
    duration_s: float
    door_openings: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True)
class Switched:
    """How a switch stood: `closed_first` (D,) at the start; `times` (M, D), s, each turning it over; NaN after."""

    closed_first: Truths
    times: Floats


@dataclass(frozen=True)
class Run:
    """What happened: K points 10 s apart, the first at 0 s.

    `temperatures`: (K, 12, D), °C, of each `Lump`. `control`: closed while it calls for heat. `cut_out`: closed
    unless tripped. `watts`: (4, D), of each element while it heats.
    """

    ovens: Ovens
    programme: Programme
    function: Function
    times_s: Floats
    temperatures: Grid
    control: Switched
    cut_out: Switched
    watts: Floats

    def of(self, lump: Lump) -> Grid:
        """(K, D), °C."""
        return self.temperatures[:, lump]

    @property
    def centre(self) -> Grid:
        """(K, D), °C: the air at the middle shelf, midway between the zones."""
        middle: Grid = self.temperatures[:, Lump.UPPER_AIR : Lump.REAR].mean(axis=1)
        return middle


def run(ovens: Ovens, programme: Programme) -> Run:
    """Heat the ovens from cold by the programme.

    Raises ValueError for an unknown function, a duration that isn't above 0, or ovens too quick for the step.
    """
    function = _function(programme.function)
    if not programme.duration_s > 0:
        raise ValueError(f"A programme must last some time, not {programme.duration_s} s.")
    net = network(ovens, function)
    if fastest_rate(net) * STEP_S > _STABLE:
        raise ValueError("Some of these ovens change quicker than the step follows: a capacity or a lag is too small.")
    control, cut_out = _control(ovens, programme), _cut_out(ovens)
    points = int(np.ceil(programme.duration_s / GRID_S - 1e-9)) + 1
    temperatures = _carried(ovens, net, control, cut_out, _door(programme, points))
    return Run(
        ovens=ovens,
        programme=programme,
        function=function,
        times_s=np.arange(points, dtype=np.float64) * GRID_S,
        temperatures=temperatures,
        control=Switched(control.closed_first, control.times()),
        cut_out=Switched(cut_out.closed_first, cut_out.times()),
        watts=net.watts,
    )


def _function(named: str | Function) -> Function:
    if isinstance(named, Function):
        return named
    if named not in FUNCTIONS:
        raise ValueError(f"There is no function {named!r}; there are {', '.join(FUNCTIONS)}.")
    return FUNCTIONS[named]


def _control(ovens: Ovens, programme: Programme) -> Switches:
    """In K. A control that never closes doesn't, whatever else it has."""
    middle = programme.set_temperature + ovens.switching_offset + ZERO_CELSIUS_K
    opens_at = np.where(ovens.never_opens > 0.5, np.inf, middle + ovens.hysteresis / 2)
    never = ovens.never_closes > 0.5
    closes_at = np.where(never, -np.inf, middle - ovens.hysteresis / 2)
    closed = (ovens.kitchen_temperature + ZERO_CELSIUS_K < opens_at) & ~never
    return Switches(opens_at, closes_at, closed, ovens.shortest_on, ovens.shortest_off)


def _cut_out(ovens: Ovens) -> Switches:
    none = np.zeros(ovens.draws)
    closes_at = np.where(ovens.cut_out_resets > 0.5, ovens.cut_out_reset + ZERO_CELSIUS_K, -np.inf)
    return Switches(ovens.cut_out_trip + ZERO_CELSIUS_K, closes_at, np.full(ovens.draws, True), none, none)


def _door(programme: Programme, points: int) -> Floats:
    """(steps,): the share of each step for which the door is open."""
    starts = np.arange((points - 1) * STEPS_PER_POINT) * STEP_S
    open_for = np.zeros(starts.size)
    for since, lasting in programme.door_openings:
        open_for += np.clip(np.minimum(starts + STEP_S, since + lasting) - np.maximum(starts, since), 0, None)
    return np.minimum(open_for / STEP_S, 1.0)


def _carried(ovens: Ovens, net: Network, control: Switches, cut_out: Switches, door: Floats) -> Grid:
    """(K, 12, D): the temperatures on the grid, °C."""
    state = np.repeat(net.kitchen[None], len(Lump), axis=0)
    state[Lump.THERMOMETER] += net.thermometer_bias
    grid = np.empty((door.size // STEPS_PER_POINT + 1, *state.shape), dtype=np.float32)
    np.subtract(state, ZERO_CELSIUS_K, out=grid[0], casting="same_kind")
    heats = _heats(ovens, control, cut_out)
    power = net.watts * heats()
    room = Room(ovens.draws)
    at_cut_out = seen(net.cut_out_sees, state, room)
    leak = net.leak
    after = np.empty_like(state)
    for number in range(door.size):
        if door[number] != door[number - 1] or number == 0:
            leak = net.leak + door[number] * net.door_open
        _step(net, state, power, leak, room, after)
        at_cut_out_after = seen(net.cut_out_sees, after, room)
        start = number * STEP_S
        for switches, before, now, rate in (
            (control, state[Lump.PROBE], after[Lump.PROBE], room.first[Lump.PROBE]),
            (cut_out, at_cut_out, at_cut_out_after, (at_cut_out_after - at_cut_out) / STEP_S),
        ):
            turned = switches.advance(before, now, rate, start, STEP_S)
            if turned is not None:
                lanes, share = turned
                changed = net.watts[:, lanes] * heats()[lanes] - power[:, lanes]
                power[:, lanes] += changed
                lasting = (1 - share) * STEP_S
                pass_on(net, after, lanes, changed * lasting * net.inverse_capacity[:4, lanes], lasting)
        state, after, at_cut_out = after, state, at_cut_out_after
        if (number + 1) % STEPS_PER_POINT == 0:
            np.subtract(state, ZERO_CELSIUS_K, out=grid[(number + 1) // STEPS_PER_POINT], casting="same_kind")
    return grid


def _step(net: Network, state: Floats, power: Floats, leak: Floats, room: Room, after: Floats) -> None:
    """`after` becomes the state a step on, by Heun's method of third order."""
    first, slope = room.first, room.slope
    slopes(net, state, power, leak, room, first)
    np.multiply(first, STEP_S / 3, out=after)
    after += state
    slopes(net, after, power, leak, room, slope)
    np.multiply(slope, STEP_S * 2 / 3, out=after)
    after += state
    slopes(net, after, power, leak, room, slope)
    np.multiply(slope, 3.0, out=after)
    after += first
    after *= STEP_S / 4
    after += state


def _heats(ovens: Ovens, control: Switches, cut_out: Switches) -> Callable[[], Truths]:
    """Whether each oven's elements have current, as the switches now stand."""
    regardless = ovens.heats_regardless > 0.5

    def now() -> Truths:
        return (control.closed | regardless) & cut_out.closed

    return now

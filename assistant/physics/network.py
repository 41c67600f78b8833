"""How fast each part of an oven warms: the heat network's equations, for D ovens at once."""

from dataclasses import dataclass

import numpy as np

from assistant.physics.oven import STEFAN_BOLTZMANN, ZERO_CELSIUS_K, Floats, Function, Lanes, Lump, Ovens

_PARTNERS = np.array([Lump.LOWER_AIR, Lump.UPPER_AIR, Lump.UPPER_AIR, Lump.REAR])  # of each element, by convection
_FASTEST_K = 1300.0  # at which the elements' radiation is taken when asking whether a step is short enough


@dataclass(frozen=True)
class Network:
    """The conductances (W/K), radiation (W/K⁴) and capacities of D ovens in one function. Arrays (D,) or (rows, D)."""

    watts: Floats  # (4, D): each element's power while it heats
    convected: Floats  # (4, D)
    to_upper: Floats  # (3, D): radiated by base, top and grill to the upper walls
    to_lower: Floats  # (3, D)
    to_rear: Floats  # radiated by the ring
    air_to_wall: Floats
    mixing: Floats
    rear_mixing: Floats
    rear_to_wall: Floats
    wall_to_wall: Floats
    wall_loss: Floats
    wall_to_housing: Floats
    housing_loss: Floats
    leak: Floats  # from each zone
    door_open: Floats  # from each zone, beside the leak
    inverse_capacity: Floats  # (10, D)
    probe_sees: Floats  # (6, D): shares of the upper air … housing
    cut_out_sees: Floats  # (6, D)
    inverse_probe_lag: Floats
    inverse_thermometer_lag: Floats
    thermometer_bias: Floats
    kitchen: Floats  # K


def network(ovens: Ovens, function: Function) -> Network:
    """The ovens' network while the function is chosen."""
    turning = ovens.fan_speed * function.fan
    radiating = ovens.element_area * STEFAN_BOLTZMANN
    up, down = ovens.radiated_up, ovens.radiated_down
    powers = np.array(
        [
            ovens.base_power * function.base,
            ovens.top_power * function.top,
            ovens.grill_power * function.grill,
            ovens.ring_power * function.ring,
        ]
    )
    convected = _between(ovens.element_to_air, ovens.element_to_air_fan, turning)
    return Network(
        watts=powers * (ovens.supply_voltage / ovens.rated_voltage) ** 2,
        convected=np.repeat(convected[None], 4, axis=0),
        to_upper=radiating * np.array([up, 1 - down, 1 - down]),
        to_lower=radiating * np.array([1 - up, down, down]),
        to_rear=radiating,
        air_to_wall=_between(ovens.air_to_wall, ovens.air_to_wall_fan, turning),
        mixing=_between(ovens.zone_mixing, ovens.zone_mixing_fan, turning),
        rear_mixing=_between(ovens.rear_mixing, ovens.rear_mixing_fan, turning),
        rear_to_wall=ovens.rear_to_wall,
        wall_to_wall=ovens.wall_to_wall,
        wall_loss=ovens.wall_loss,
        wall_to_housing=ovens.wall_to_housing,
        housing_loss=_between(ovens.housing_loss, ovens.housing_loss_fan, ovens.cooling_fan_speed),
        leak=ovens.door_leak / 2,
        door_open=ovens.door_open_exchange / 2,
        inverse_capacity=1 / _capacities(ovens),
        probe_sees=_probe_sees(ovens),
        cut_out_sees=_cut_out_sees(ovens),
        inverse_probe_lag=1 / ovens.probe_lag,
        inverse_thermometer_lag=1 / ovens.thermometer_lag,
        thermometer_bias=ovens.thermometer_bias,
        kitchen=ovens.kitchen_temperature + ZERO_CELSIUS_K,
    )


def _between(still: Floats, full: Floats, speed: Floats) -> Floats:
    return still + (full - still) * speed


def _capacities(ovens: Ovens) -> Floats:
    element, air, wall = ovens.element_capacity, ovens.air_capacity, ovens.wall_capacity
    lumps = [element] * 4 + [air, air, ovens.rear_capacity, wall, wall, ovens.housing_capacity]
    return np.array(lumps)


def _probe_sees(ovens: Ovens) -> Floats:
    """Shares that are above 1 together leave nothing for the air and are scaled to 1."""
    elsewhere = np.array([ovens.probe_rear, ovens.probe_wall, ovens.probe_outside])
    rear, wall, outside = elsewhere / np.maximum(elsewhere.sum(axis=0), 1.0)
    air = 1 - (rear + wall + outside)
    upper = air * ovens.probe_upper
    return np.array([upper, air - upper, rear, wall, np.zeros_like(wall), outside])


def _cut_out_sees(ovens: Ovens) -> Floats:
    wall, rear, none = ovens.cut_out_wall, ovens.cut_out_rear, np.zeros_like(ovens.cut_out_wall)
    return np.array([none, none, rear, wall, none, 1 - wall - rear])


class Room:
    """Where the equations work: made once and used at every step, which spares most of the time of making arrays."""

    def __init__(self, draws: int) -> None:
        self.partners, self.convected = np.empty((4, draws)), np.empty((4, draws))
        self.upper, self.lower = np.empty((3, draws)), np.empty((3, draws))
        self.air_wall, self.air_rear, self.wall_rear, self.wall_housing = np.empty((4, 2, draws))
        self.one = np.empty(draws)
        self.shares = np.empty((6, draws))
        self.first, self.slope = np.empty((2, len(Lump), draws))


def seen(shares: Floats, state: Floats, room: Room) -> Floats:
    """(D,): what a probe with these shares (6, D) of the air, rear, walls and housing sees, K."""
    np.multiply(shares, state[Lump.UPPER_AIR : Lump.PROBE], out=room.shares)
    found: Floats = room.shares.sum(axis=0)
    return found


def slopes(net: Network, state: Floats, power: Floats, leak: Floats, room: Room, found: Floats) -> None:
    """`found` (12, D) becomes the change of the state (12, D; K) in K/s. `power`: (4, D), W; `leak`: (D,), W/K."""
    air, walls, rear, housing = state[4:6], state[7:9], state[6], state[9]
    _elements(net, state, power, room, found)
    from_air = _flow(net.air_to_wall, air, walls, room.air_wall)
    air_to_rear = _flow(net.rear_mixing, air, rear, room.air_rear)
    mixed = _flow(net.mixing, air[0], air[1], room.one)
    _flow(leak, net.kitchen, air, found[4:6])
    found[4:6] -= from_air
    found[4:6] -= air_to_rear
    found[4] -= mixed
    found[4] += room.convected[1]
    found[4] += room.convected[2]
    found[5] += mixed
    found[5] += room.convected[0]

    wall_to_rear = _flow(net.rear_to_wall, walls, rear, room.wall_rear)
    across = _flow(net.wall_to_wall, walls[0], walls[1], room.one)
    to_housing = _flow(net.wall_to_housing, walls, housing, room.wall_housing)
    for part in (*air_to_rear, *wall_to_rear, room.convected[3]):
        found[6] += part
    from_air += _flow(net.wall_loss, net.kitchen, walls, found[7:9])
    from_air -= wall_to_rear
    np.subtract(from_air, to_housing, out=found[7:9])
    found[7] -= across
    found[8] += across
    for part in range(3):
        found[7] += room.upper[part]
        found[8] += room.lower[part]
    _flow(net.housing_loss, net.kitchen, housing, found[9])
    found[9] += to_housing[0]
    found[9] += to_housing[1]
    found[:10] *= net.inverse_capacity
    _probes(net, state, room, found)


def _flow(conductance: Floats, hot: Floats, cold: Floats, out: Floats) -> Floats:
    """W."""
    np.subtract(hot, cold, out=out)
    out *= conductance
    return out


def _elements(net: Network, state: Floats, power: Floats, room: Room, found: Floats) -> None:
    """The elements' rows, in W; their flows to the air and the walls stay in the room, the ring's in the rear's row."""
    fourth = np.square(state[:9], out=found[:9])
    np.square(fourth, out=fourth)
    _flow(net.to_upper, fourth[:3], fourth[7], room.upper)
    _flow(net.to_lower, fourth[:3], fourth[8], room.lower)
    _flow(net.to_rear, fourth[3], fourth[6], found[6])
    np.take(state, _PARTNERS, axis=0, out=room.partners, mode="clip")
    _flow(net.convected, state[:4], room.partners, room.convected)
    np.subtract(power, room.convected, out=found[:4])
    found[:3] -= room.upper
    found[:3] -= room.lower
    found[3] -= found[6]


def _probes(net: Network, state: Floats, room: Room, found: Floats) -> None:
    np.subtract(seen(net.probe_sees, state, room), state[10], out=found[10])
    found[10] *= net.inverse_probe_lag
    on_shelf = np.add(state[4], state[5], out=room.one)
    on_shelf *= 0.5
    on_shelf += net.thermometer_bias
    _flow(net.inverse_thermometer_lag, on_shelf, state[11], found[11])


def pass_on(net: Network, state: Floats, lanes: Lanes, gained: Floats, lasting: Floats) -> None:
    """The elements of some lanes gain warmth (4, n; K) that came evenly over the last `lasting` seconds (n,).

    What they have passed on of it in that time, half of what they would pass on of the whole, goes to the air, the
    walls and the rear. `state` changes in place; heat is kept.
    """
    state[:4, lanes] += gained
    half = gained * lasting / 2
    steep = 4 * state[:4, lanes] ** 3 * half
    convected = net.convected[:, lanes] * half
    upper, lower = net.to_upper[:, lanes] * steep[:3], net.to_lower[:, lanes] * steep[:3]
    to_rear = net.to_rear[lanes] * steep[3]
    passed = convected.copy()
    passed[:3] += upper + lower
    passed[3] += to_rear
    received = [convected[1] + convected[2], convected[0], convected[3] + to_rear, upper.sum(axis=0), lower.sum(axis=0)]
    state[:9, lanes] += np.concatenate([-passed, received]) * net.inverse_capacity[:9, lanes]


def fastest_rate(net: Network) -> float:
    """1/s: a bound of the quickest decay in any of the ovens, the door open (Gershgorin's circles)."""
    radiated = 4 * _FASTEST_K**3 * net.to_rear
    elements = net.convected + radiated
    zone = net.air_to_wall + net.mixing + net.rear_mixing + net.leak + net.door_open + net.convected[1:3].sum(axis=0)
    rear = 2 * (net.rear_mixing + net.rear_to_wall) + net.convected[3] + radiated
    to_kitchen = net.wall_loss + net.wall_to_housing
    wall = net.air_to_wall + net.rear_to_wall + net.wall_to_wall + to_kitchen + 3 * radiated
    housing = 2 * net.wall_to_housing + net.housing_loss
    lumps = np.array([*elements, zone, zone, rear, wall, wall, housing]) * net.inverse_capacity
    probes = np.maximum(net.inverse_probe_lag, net.inverse_thermometer_lag)
    return max(2 * float(lumps.max()), float(probes.max()))

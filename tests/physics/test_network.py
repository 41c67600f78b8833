"""The heat network's equations."""

import numpy as np
import pytest

from assistant.physics.network import Network, Room, network, pass_on, seen, slopes
from assistant.physics.oven import FUNCTIONS, Lump
from tests.physics.oven_equations import NOUGHT, balances, lane
from tests.physics.sound import drawn, with_values

OVENS = drawn(4)


def _somewhere(seed: int) -> np.ndarray:
    """(12, 4): temperatures as they may be, K."""
    return np.random.default_rng(seed).uniform(300, 900, (12, 4))


def _changes(net: Network, state: np.ndarray, on: bool = True) -> np.ndarray:
    found = np.empty_like(state)
    slopes(net, state, net.watts * on, net.leak, Room(4), found)
    return found


@pytest.mark.parametrize("function", list(FUNCTIONS))
def test_the_changes_are_those_of_the_balances_written_a_second_time(function: str) -> None:
    state = _somewhere(1)
    for on in (True, False):
        found = _changes(network(OVENS, FUNCTIONS[function]), state, on)
        for number in range(4):
            other = balances(lane(OVENS, number), FUNCTIONS[function], on, False)(0.0, state[:, number] - NOUGHT)
            np.testing.assert_allclose(found[:, number], other, rtol=1e-9, atol=1e-9)


def test_an_oven_as_warm_as_the_kitchen_stays_so() -> None:
    still = with_values(OVENS, thermometer_bias=0.0)
    net = network(still, FUNCTIONS["fan_assisted"])
    np.testing.assert_allclose(_changes(net, np.repeat(net.kitchen[None], 12, axis=0), on=False), 0, atol=1e-9)


def test_heat_passed_on_is_kept() -> None:
    """Source: the first law: the gain of all lumps is that of the elements."""
    net, state = network(OVENS, FUNCTIONS["fan_with_ring"]), _somewhere(2)
    after, lanes, gained = state.copy(), np.array([1, 3]), np.random.default_rng(3).uniform(-5, 20, (4, 2))
    pass_on(net, after, lanes, gained, np.array([1.0, 2.5]))
    heat = ((after - state)[:10] / net.inverse_capacity).sum(axis=0)
    np.testing.assert_allclose(heat[lanes], (gained / net.inverse_capacity[:4, lanes]).sum(axis=0))
    np.testing.assert_array_equal(after[:, [0, 2]], state[:, [0, 2]])
    assert (np.abs((after - state)[:4, lanes]) < np.abs(gained)).all()


def test_a_probe_sees_the_temperature_of_an_even_oven() -> None:
    everywhere = np.full((12, 4), 450.0)
    net = network(with_values(OVENS, probe_outside=0.9, probe_wall=0.8), FUNCTIONS["conventional"])
    for shares in (net.probe_sees, net.cut_out_sees):
        np.testing.assert_allclose(seen(shares, everywhere, Room(4)), 450.0)


def test_a_displaced_probe_sees_the_place_it_is_at() -> None:
    state = _somewhere(4)
    for name, lump in (
        ("probe_wall", Lump.UPPER_WALL),
        ("probe_rear", Lump.REAR),
        ("probe_outside", Lump.HOUSING),
    ):
        nowhere_else = {"probe_wall": 0.0, "probe_rear": 0.0, "probe_outside": 0.0, name: 1.0}
        net = network(with_values(OVENS, **nowhere_else), FUNCTIONS["conventional"])
        np.testing.assert_allclose(seen(net.probe_sees, state, Room(4)), state[lump])

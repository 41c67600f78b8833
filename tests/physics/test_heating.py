"""The carrying of an oven through a programme, against closed forms, quadrature and scipy."""

import time
from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import simpson

from assistant.physics.browning import browning
from assistant.physics.changes import Change
from assistant.physics.heating import GRID_S, STEP_S, Programme, Run, run
from assistant.physics.network import fastest_rate, network
from assistant.physics.oven import FUNCTIONS, NAMES, Function, Lump, Ovens, picked
from tests.physics.oven_equations import Outside, balances, lane, outside
from tests.physics.sound import DEAD, YES, drawn, lump_alone, ran, till, with_values


def _switched(times: np.ndarray) -> np.ndarray:
    return times[~np.isnan(times)]


def _against_scipy(ovens: Ovens, function: str, set_to: float, door: tuple[tuple[float, float], ...] = ()) -> None:
    """Source: scipy's LSODA with event roots, on the equations written a second time (oven_equations)."""
    found = run(ovens, Programme(function, set_to, 3600.0, door))
    for number in range(ovens.draws):
        other: Outside = outside(lane(ovens, number), FUNCTIONS[function], set_to, 3600.0, door)
        for ours, theirs in ((found.control, other.control), (found.cut_out, other.cut_out)):
            mine = _switched(ours.times[:, number])
            assert mine.size == len(theirs)
            np.testing.assert_allclose(mine, theirs, atol=0.5, rtol=0)
        apart = np.abs(found.temperatures[:, :, number] - other.states)
        assert apart[:, Lump.UPPER_AIR :].max() < 0.5
        assert apart.max() < 5.0  # an element warms by up to 10 K/s: a point just after it switched shows how near


@pytest.mark.parametrize("kind", ["thermostat", "sensor"])
@pytest.mark.parametrize(
    ("function", "set_to"), [("conventional", 180.0), ("fan_with_ring", 180.0), ("fan_assisted", 220.0)]
)
def test_switching_and_temperatures_are_scipys(kind: str, function: str, set_to: float) -> None:
    _against_scipy(drawn(3, kind), function, set_to)


def test_an_opened_door_is_scipys_too() -> None:
    _against_scipy(drawn(2), "conventional", 180.0, ((1803.0, 31.5), (2400.0, 300.0)))


def test_a_cut_out_that_trips_and_resets_is_scipys_too() -> None:
    stopped = drawn(2, fan_speed=DEAD)
    assert np.isfinite(ran(stopped, "fan_with_ring").cut_out.times[:2]).all()
    _against_scipy(stopped, "fan_with_ring", 180.0)


# Source of the next three: the closed form of one capacity with one loss, T = Tk + P/G (1 - exp(-t G/C)), with
# P = 2000 W, G = 6 W/K, C = 12 kJ/K: 20 + 333.33 °C at last, C/G = 2000 s, 2000 s · ln(333.33 / 173.33) = 1307.85 s.
def test_one_lump_ends_at_power_over_loss() -> None:
    found = ran(lump_alone(12_000, 6, 2000), "base_only", 900, minutes=400)
    assert found.of(Lump.BASE)[-1, 0] == pytest.approx(353.33, abs=0.01)


def test_one_lump_has_capacity_over_loss_as_time_constant() -> None:
    found = ran(lump_alone(12_000, 6, 2000), "base_only", 900)
    closed = 20 + 1000 / 3 * (1 - np.exp(-found.times_s / 2000))
    np.testing.assert_allclose(found.of(Lump.BASE)[:, 0], closed, atol=0.001)


def test_one_lump_reaches_180_when_the_closed_form_does() -> None:
    found = ran(lump_alone(12_000, 6, 2000), "base_only", 900)
    assert np.interp(180.0, found.of(Lump.BASE)[:, 0], found.times_s) == pytest.approx(1307.85, abs=0.1)


def _lasting(found: Run, number: int) -> float:
    """Seconds the elements had current, from the switching alone (neither cut-out nor welding in play)."""
    bounds = np.concatenate([[0.0], _switched(found.control.times[:, number]), [found.times_s[-1]]])
    return float(np.diff(bounds)[::2].sum())


@pytest.mark.parametrize("function", ["conventional", "fan_with_ring", "full_grill"])
def test_heat_in_is_heat_stored_and_lost(function: str) -> None:
    """Source: the first law, by quadrature (Simpson) of the recorded temperatures; 0.1 %."""
    ovens = drawn(5)
    found = ran(ovens, function, 180, minutes=90)
    for number in range(ovens.draws):
        o, kitchen = lane(ovens, number), float(ovens.kitchen_temperature[number])
        above = found.temperatures[:, :, number].astype(np.float64) - kitchen
        air, walls, housing = above[:, 4:6].sum(axis=1), above[:, 7:9].sum(axis=1), above[:, 9]
        lost = simpson(o.door_leak / 2 * air + o.wall_loss * walls + o.housing_loss_fan * housing, dx=GRID_S)
        last = above[-1]
        stored = (
            o.element_capacity * last[:4].sum()
            + o.air_capacity * last[4:6].sum()
            + o.rear_capacity * last[6]
            + o.wall_capacity * last[7:9].sum()
            + o.housing_capacity * last[9]
        )
        given = found.watts[:, number].sum() * _lasting(found, number)
        assert stored + lost == pytest.approx(given, rel=0.001)


def test_power_goes_with_the_square_of_the_voltage() -> None:
    """Source: Joule's law at constant resistance, P = V²/R."""
    ovens = with_values(drawn(3), rated_voltage=230.0)
    full = ran(with_values(ovens, supply_voltage=230.0), minutes=1).watts
    half = ran(with_values(ovens, supply_voltage=115.0), minutes=1).watts
    np.testing.assert_allclose(half, full / 4)
    np.testing.assert_allclose(full[:2], [ovens.base_power, ovens.top_power])


def test_half_the_power_at_least_doubles_the_time_to_heat() -> None:
    """Source: with losses, the time to a temperature is more than in inverse proportion to the power."""
    ovens = drawn(50)
    half = replace(ovens, base_power=ovens.base_power / 2, top_power=ovens.top_power / 2)
    assert (till(ran(half, minutes=120), 160) >= 2 * till(ran(ovens), 160) - GRID_S / 60).all()


def test_a_warmer_kitchen_never_slows_an_oven() -> None:
    """Source: all exchanges grow with the difference of temperatures (a comparison principle)."""
    ovens = drawn(50)
    cool, warm = (ran(with_values(ovens, kitchen_temperature=celsius), minutes=40) for celsius in (12.0, 28.0))
    assert (warm.control.times[0] < cool.control.times[0]).all()
    until_first = warm.times_s[:, None] < warm.control.times[0]
    assert (warm.centre >= cool.centre - 1e-3)[until_first].all()


def test_lanes_do_not_influence_each_other() -> None:
    ovens, lanes = drawn(40), np.array([3, 17, 39])
    together, apart = ran(ovens, "fan_with_ring"), ran(picked(ovens, lanes), "fan_with_ring")
    np.testing.assert_array_equal(together.temperatures[:, :, lanes], apart.temperatures)
    for number, place in enumerate(lanes):
        np.testing.assert_array_equal(
            _switched(together.control.times[:, place]), _switched(apart.control.times[:, number])
        )


def test_the_same_seed_gives_the_same_run() -> None:
    first, second = (ran(drawn(10, seed=8)) for _ in range(2))
    np.testing.assert_array_equal(first.temperatures, second.temperatures)
    np.testing.assert_array_equal(first.control.times, second.control.times)
    assert (ran(drawn(10, seed=9)).temperatures[-1] != first.temperatures[-1]).any()


def test_each_oven_may_have_its_own_setting() -> None:
    ovens = drawn(2)
    each = run(ovens, Programme("conventional", np.array([120.0, 200.0]), 3600))
    for number, celsius in enumerate((120.0, 200.0)):
        np.testing.assert_array_equal(each.centre[:, number], ran(ovens, set_to=celsius).centre[:, number])


def test_a_function_may_be_given_by_its_shares() -> None:
    ovens = drawn(2)
    shares = run(ovens, Programme(Function(base=1, top=1), 180.0, 1200))
    np.testing.assert_array_equal(shares.temperatures, run(ovens, Programme("conventional", 180.0, 1200)).temperatures)


def test_a_welded_contact_heats_whatever_the_control_says() -> None:
    """The control opens and stays open, and the oven goes on heating."""
    found = ran(drawn(20, heats_regardless=YES))
    assert (np.isfinite(found.control.times).sum(axis=0) == 1).all()
    assert (found.centre.max(axis=0) > 260).all()


def test_a_cut_out_that_does_not_reset_stays_open() -> None:
    ovens = drawn(20, never_opens=YES, cut_out_resets=DEAD)
    found = ran(ovens, minutes=240)
    assert np.isfinite(found.cut_out.times).sum(axis=0).tolist() == [1] * 20
    assert (found.centre[-1] < 60).all()


def test_opening_the_door_cools_the_air_more_than_the_walls() -> None:
    ovens = drawn(20)
    opened = run(ovens, Programme("conventional", 180.0, 3600, ((3000.0, 30.0),)))
    shut = run(ovens, Programme("conventional", 180.0, 3600))
    np.testing.assert_array_equal(opened.centre[:301], shut.centre[:301])
    fall = (shut.temperatures - opened.temperatures)[303]
    assert (fall[Lump.UPPER_AIR] > 15).all()
    assert (fall[Lump.UPPER_AIR] > 5 * fall[Lump.UPPER_WALL]).all()


def test_a_duration_is_rounded_up_to_the_grid() -> None:
    assert run(drawn(1), Programme("conventional", 180.0, 61)).times_s.tolist() == [0, 10, 20, 30, 40, 50, 60, 70]


@pytest.mark.parametrize("duration", [0.0, -5.0, float("nan")])
def test_no_duration_is_refused(duration: float) -> None:
    with pytest.raises(ValueError, match="must last some time"):
        run(drawn(1), Programme("conventional", 180.0, duration))


def test_an_unknown_function_is_refused() -> None:
    with pytest.raises(ValueError, match="no function 'boil'; there are conventional,"):
        run(drawn(1), Programme("boil", 180.0, 600))


def test_an_oven_too_quick_for_the_step_is_refused() -> None:
    with pytest.raises(ValueError, match="quicker than the step follows"):
        ran(with_values(drawn(1), air_capacity=20.0))


def test_the_bound_of_rates_is_above_the_quickest_rate() -> None:
    """Source: numpy's eigenvalues of the linear part, by differences of the equations written a second time."""
    ovens = drawn(4)
    bound = fastest_rate(network(ovens, FUNCTIONS["fan_with_ring"]))
    for number in range(4):
        rates = balances(lane(ovens, number), FUNCTIONS["fan_with_ring"], True, True)
        hot = np.full(12, 300.0)
        hot[3] = 700.0
        columns = [np.subtract(rates(0, hot + 0.5 * unit), rates(0, hot - 0.5 * unit)) for unit in np.eye(12)]
        assert 0 < -np.linalg.eigvals(np.array(columns).T).real.min() < bound


def test_2000_ovens_heat_for_an_hour_in_little_time() -> None:
    """Some 0.6 s of one core when it is otherwise idle; ten times that is given to a busy machine."""
    ovens = drawn(2000)
    before = time.process_time()
    ran(ovens)
    assert time.process_time() - before < 6.0


def test_every_parameter_is_heeded() -> None:
    """Each one changed in a lane of its own changes what is seen there: temperatures or browning."""
    both = {"fan_speed": 0.5, "cooling_fan_speed": 0.5, "cut_out_trip": 140.0, "cut_out_reset": 135.0}
    one = with_values(drawn(1, "sensor"), **both, shortest_on=100.0, shortest_off=600.0)
    lanes = picked(one, np.zeros(len(NAMES) + 1, dtype=np.intp))
    ways = {"cut_out_resets": 0.0, "never_opens": 1.0, "never_closes": 1.0, "heats_regardless": 1.0}
    for number, name in enumerate(NAMES):
        values = getattr(lanes, name)
        values[number] = ways.get(name, values[number] * 1.2 + 0.05)
    shown = []
    for set_to in (170.0, 300.0):  # the control switches, then the cut-out
        found = run(lanes, Programme(Function(1, 1, 1, 1, fan=0.5), set_to, 2400, ((600.0, 60.0),)))
        brown = browning(found)
        shown += [found.temperatures.reshape(-1, lanes.draws), brown.back, brown.front, brown.left, brown.right]
    seen = np.concatenate(shown)
    unheeded = [name for name, same in zip(NAMES, (seen[:, :-1] == seen[:, -1:]).all(axis=0), strict=True) if same]
    assert unheeded == []


def test_whatever_a_change_does_a_run_is_finite_or_refused() -> None:
    """Every parameter made nothing, and ten times as much, with everything on and the fan at full speed."""
    refused = set()
    for name in NAMES:
        for factor in (0.0, 10.0):
            ovens = drawn(3, "sensor", **{name: Change("factor", factor)})
            all_on = Function(1, 1, 1, 1, fan=1)
            if fastest_rate(network(ovens, all_on)) * STEP_S > 2.5:
                with pytest.raises(ValueError, match="quicker than the step follows"):
                    run(ovens, Programme(all_on, 230.0, 600))
                refused.add(name)
            else:
                found = run(ovens, Programme(all_on, 230.0, 600, ((300.0, 30.0),)))
                assert -30 < found.temperatures.min() <= found.temperatures.max() < 1600, name
    masses = {"element_capacity", "air_capacity", "rear_capacity", "element_area"}
    exchanges = {"air_to_wall_fan", "zone_mixing_fan", "rear_mixing_fan", "door_open_exchange"}
    assert refused <= masses | exchanges  # of all these no fault's change is so large

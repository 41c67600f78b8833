"""What is expected of sound ovens, against the first law, Joule's law and the closed form of one lump."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import simpson

from assistant.physics.expectation import (
    LASTING_S,
    STEADY_FROM_S,
    Elements,
    expected,
    sound_ovens,
    used_elements,
)
from assistant.physics.heating import GRID_S, Programme, run
from assistant.physics.lamp import lamp_times
from assistant.physics.oven import FUNCTIONS, picked
from assistant.physics.parameters import WAYS
from assistant.physics.response import as_one_lump, duty_at_setting, heating_up_s
from tests.physics.oven_equations import lane
from tests.physics.sound import with_values

USUAL = {"base": 1150.0, "top": 900.0, "grill": 1650.0, "ring": 2250.0}
ON_230 = Elements(USUAL, 230.0, 230.0, 20.0)


@pytest.mark.parametrize(("way", "set_c"), [("conventional", 180.0), ("fan_with_ring", 200.0), ("base_only", 150.0)])
def test_in_the_steady_state_the_power_for_its_share_of_the_time_is_what_is_lost(way: str, set_c: float) -> None:
    """Source: the first law, with the losses summed up lump by lump from recorded temperatures (Simpson)."""
    found = expected(way, set_c, ON_230)
    temperatures = run(found.ovens, Programme(way, set_c, LASTING_S)).temperatures[int(STEADY_FROM_S / GRID_S) :]
    for number in range(0, found.ovens.draws, 25):
        o, above = lane(found.ovens, number), temperatures[:, :, number].astype(np.float64) - 20.0
        air, walls, housing = above[:, 4:6].sum(axis=1), above[:, 7:9].sum(axis=1), above[:, 9]
        lost_w = o.door_leak / 2 * air + o.wall_loss * walls + o.housing_loss_fan * housing
        mean_w = simpson(lost_w, dx=GRID_S) / (LASTING_S - STEADY_FROM_S)
        gained = above[-1] - above[0]
        stored = o.element_capacity * gained[:4].sum() + o.air_capacity * gained[4:6].sum()
        stored += o.rear_capacity * gained[6] + o.wall_capacity * gained[7:9].sum() + o.housing_capacity * gained[9]
        given_w = found.share_on[number] * found.power_w[number]
        assert given_w == pytest.approx(mean_w + stored / (LASTING_S - STEADY_FROM_S), rel=0.001)
        assert given_w == pytest.approx(mean_w, rel=0.03)  # what is stored no longer counts


def test_at_207_volts_every_oven_takes_longer_by_more_than_its_power_is_less() -> None:
    """Source: Joule's law, P ∝ V²; with losses, time grows by more than power falls."""
    full, low = (expected("conventional", 180.0, replace(ON_230, supply_v=volts)) for volts in (230.0, 207.0))
    np.testing.assert_allclose(low.power_w, full.power_w * 0.81)
    assert (low.opens_s >= full.opens_s / 0.81).all()
    assert (low.share_on > full.share_on).all()


def test_what_an_element_is_marked_with_counts_at_the_marked_voltage() -> None:
    """Source: Joule's law: 2000 W at 240 V are 1836.8 W at 230 V."""
    found = expected("fan_with_ring", 180.0, Elements({"ring": 2000.0}, 230.0, 240.0, 20.0))
    np.testing.assert_allclose(found.power_w, 1836.806, atol=0.001)


def test_ovens_whose_inside_is_well_mixed_do_what_one_lump_does_in_closed_form() -> None:
    """Source: the closed form of a first-order response. What is left apart: element, probe, and the swing."""
    mixed = dict.fromkeys(("air_to_wall", "zone_mixing", "rear_mixing", "rear_to_wall", "wall_to_wall"), 25.0)
    quick = {"probe_lag": 6.0, "element_to_air": 10.0, "housing_capacity": 500.0, "hysteresis": 1.0}
    centred = {"switching_offset": -0.5, "shortest_on": 0.0, "shortest_off": 0.0}
    ovens = with_values(sound_ovens(ON_230, of_a_kind=10), **mixed, **quick, **centred)
    found = run(ovens, Programme("conventional", 180.0, LASTING_S))
    opens_s, share_on = lamp_times(found, 0, LASTING_S).first_out, lamp_times(found, 3600, LASTING_S).share_lit
    for number in range(ovens.draws):
        one_lump = as_one_lump(picked(ovens, np.array([number])), "conventional")
        assert opens_s[number] == pytest.approx(heating_up_s(one_lump, 180), rel=0.08)
        assert share_on[number] == pytest.approx(duty_at_setting(one_lump, 180), rel=0.04)


@pytest.mark.parametrize(("way", "set_c"), [("conventional", 180.0), ("fan_with_ring", 180.0), ("base_only", 150.0)])
def test_one_lump_by_hand_is_of_the_right_size(way: str, set_c: float) -> None:
    found = expected(way, set_c, ON_230)
    one_lump = as_one_lump(found.ovens, way)
    assert heating_up_s(one_lump, set_c) == pytest.approx(np.median(found.opens_s), rel=0.25)
    assert duty_at_setting(one_lump, set_c) == pytest.approx(np.median(found.share_on), rel=0.2)


def test_one_lump_is_the_sum_of_an_ovens_parts() -> None:
    """Source: the same added up for one oven in plain Python, conductances in series by their inverses."""
    ovens = picked(sound_ovens(ON_230, of_a_kind=1), np.array([0]))
    o, one_lump = lane(ovens, 0), as_one_lump(ovens, "conventional")
    walls = 1 / (1 / (2 * o.wall_to_housing) + 1 / o.housing_loss_fan)
    assert one_lump.loss_w_per_k == pytest.approx(o.door_leak + 2 * o.wall_loss + walls)
    inside = 2 * o.air_capacity + 2 * o.wall_capacity + o.rear_capacity + 2 * o.element_capacity
    assert one_lump.capacity_j_per_k == pytest.approx(inside)
    assert (one_lump.power_w, one_lump.ambient_c) == pytest.approx((2050, 20))


def test_an_element_that_is_left_off_changes_nothing() -> None:
    alone, beside = (
        expected("base_only", 180.0, Elements(watts, 230.0, 230.0, 20.0))
        for watts in ({"base": 1150.0}, {**USUAL, "grill": 3000.0})
    )
    np.testing.assert_array_equal(alone.opens_s, beside.opens_s)
    np.testing.assert_array_equal(alone.share_on, beside.share_on)


def test_the_same_ovens_are_drawn_whatever_elements_they_are_given() -> None:
    few, many = (sound_ovens(Elements({"base": watts}, 230.0, 230.0, 20.0)) for watts in (800.0, 1600.0))
    np.testing.assert_array_equal(few.wall_capacity, many.wall_capacity)
    assert (few.base_power == 800).all()
    assert (many.base_power == 1600).all()


def test_ovens_that_never_open_are_on_all_the_time_and_have_no_period() -> None:
    found = expected("base_only", 250.0, Elements({"base": 600.0}, 230.0, 230.0, 20.0))
    assert np.isnan(found.opens_s).all()
    assert np.isnan(found.period_s).all()
    assert (found.share_on == 1).all()
    assert not found.cut_out.any()


def test_a_cut_out_that_trips_is_told() -> None:
    found = expected("fan_with_ring", 250.0, Elements({"ring": 3600.0}, 440.0, 230.0, 20.0))
    assert found.cut_out.any()


@pytest.mark.parametrize("way", WAYS)
def test_the_elements_of_a_way_are_those_that_its_function_switches_on(way: str) -> None:
    function = FUNCTIONS[way]
    assert {name: getattr(function, name) for name in used_elements(way)} == {
        name: share for name, share in vars(function).items() if share > 0 and name != "fan"
    }
    assert used_elements(way)

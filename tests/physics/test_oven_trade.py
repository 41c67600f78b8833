"""What every repairer knows of ovens, found again in the model. The source of each is common practice."""

import numpy as np

from assistant.physics.browning import browning
from assistant.physics.changes import Change
from assistant.physics.heating import Run
from assistant.physics.lamp import Pattern, lamp_times
from assistant.physics.oven import Lump
from tests.physics.sound import DEAD, YES, drawn, ran, till

DRAWS = 200
SOUND = drawn(DRAWS)


def _above_over_below(found: Run) -> np.ndarray:
    brown = browning(found)
    return brown.above_so_far[-1] / brown.below_so_far[-1]


def test_without_the_base_element_bread_is_dark_above_and_pale_below() -> None:
    dead = ran(drawn(DRAWS, base_power=DEAD), "conventional", 180, 90)
    assert (_above_over_below(dead) > 1.3).all()


def test_without_the_base_element_heating_takes_twice_as_long_and_230_is_out_of_reach() -> None:
    dead = drawn(DRAWS, base_power=DEAD)
    assert (till(ran(dead, "conventional", 180), 160) > 2 * till(ran(SOUND), 160)).all()
    at_230 = ran(dead, "conventional", 230)
    assert (at_230.centre[-1] < 220).mean() > 0.9
    assert (lamp_times(at_230, 0, 3600).pattern == Pattern.NEVER_OUT).mean() > 0.9


def test_without_the_top_element_bread_is_pale_above() -> None:
    dead = ran(drawn(DRAWS, top_power=DEAD), "conventional", 180, 90)
    assert (_above_over_below(dead) < 0.8).all()


def test_half_a_base_element_lies_between_a_whole_one_and_none() -> None:
    none, half, whole = (
        _above_over_below(ran(drawn(DRAWS, base_power=Change("factor", part)))) for part in (0, 0.5, 1)
    )
    assert ((none > half) & (half > whole)).all()


def test_a_control_that_never_opens_heats_far_above_the_setting_until_the_cut_out() -> None:
    stuck = ran(drawn(DRAWS, never_opens=YES), "conventional", 180, 90)
    assert (lamp_times(stuck, 0, 5400).pattern == Pattern.NEVER_OUT).all()
    assert (stuck.centre.max(axis=0) > 260).all()
    tripped = stuck.cut_out.times[0]
    assert np.isfinite(tripped).all()
    assert (stuck.times_s[stuck.centre.argmax(axis=0)] <= tripped + 60).mean() > 0.9


def test_a_control_that_never_closes_leaves_the_oven_cold_and_the_lamp_dark() -> None:
    dark = ran(drawn(DRAWS, never_closes=YES))
    assert (lamp_times(dark, 0, 3600).pattern == Pattern.NEVER_LIT).all()
    np.testing.assert_allclose(dark.centre[-1], dark.centre[0], atol=1e-3)


def test_at_100_degrees_the_lamp_goes_out_within_some_minutes() -> None:
    for function in ("conventional", "fan_with_ring", "fan_assisted"):
        out = ran(SOUND, function, 100).control.times[0] / 60
        assert ((out > 2) & (out < 10)).all()


def test_a_control_drifted_low_bakes_cool_and_its_lamp_goes_out_early() -> None:
    low = ran(drawn(DRAWS, switching_offset=Change("shift", -60, 10, "normal")))
    assert (low.control.times[0] < ran(SOUND).control.times[0]).all()
    assert (low.centre[180:].mean(axis=0) < 160).all()
    assert (lamp_times(low, 0, 3600).pattern == Pattern.CYCLES).all()


def test_a_probe_out_of_its_clip_reads_the_housing_and_the_oven_overheats() -> None:
    out = ran(drawn(DRAWS, probe_outside=Change("value", 0.6)), minutes=90)
    assert (out.centre.max(axis=0) > ran(SOUND, minutes=90).centre.max(axis=0) + 50).all()


def test_a_probe_against_the_wall_lets_the_air_run_hotter_before_it_first_switches() -> None:
    at_wall = ran(drawn(DRAWS, probe_wall=Change("value", 0.8)))
    assert (at_wall.control.times[0] > ran(SOUND).control.times[0]).all()
    assert (at_wall.centre.max(axis=0) > ran(SOUND).centre.max(axis=0)).all()


def test_a_sluggish_probe_swings_wider_and_slower() -> None:
    sluggish, usual = ran(drawn(DRAWS, probe_lag=Change("factor", 4))), ran(SOUND)
    assert (np.ptp(sluggish.centre[180:], axis=0) > np.ptp(usual.centre[180:], axis=0)).all()
    assert (lamp_times(sluggish, 1200, 3600).period > lamp_times(usual, 1200, 3600).period).all()


def test_on_a_low_supply_an_oven_is_slow_and_still_cycles_at_middle_settings() -> None:
    low = ran(drawn(DRAWS, supply_voltage=Change("factor", 0.85)))
    assert (low.control.times[0] > 1.3 * ran(SOUND).control.times[0]).all()
    assert (lamp_times(low, 0, 3600).pattern == Pattern.CYCLES).all()


def test_with_the_oven_fan_stopped_and_the_ring_on_the_middle_stays_cool_and_something_switches_early() -> None:
    stopped, usual = ran(drawn(DRAWS, fan_speed=DEAD), "fan_with_ring"), ran(SOUND, "fan_with_ring")
    first = np.fmin(stopped.control.times[0], np.min(stopped.cut_out.times[:1], axis=0, initial=np.inf))
    at_first = stopped.centre[np.minimum(first / 10, 360).astype(int), np.arange(DRAWS)]
    assert (at_first < 160).mean() > 0.9
    assert (first < usual.control.times[0]).mean() > 0.9
    assert (till(stopped, 160) > 1.3 * till(usual, 160)).mean() > 0.9


def test_with_the_ring_dead_the_fan_blows_cold() -> None:
    dead = ran(drawn(DRAWS, ring_power=DEAD), "fan_with_ring")
    assert (lamp_times(dead, 0, 3600).pattern == Pattern.NEVER_OUT).all()
    np.testing.assert_allclose(dead.centre[-1], dead.centre[0], atol=1e-3)


def test_with_the_cooling_fan_stopped_the_housing_is_far_hotter_and_cut_outs_trip_at_high_settings() -> None:
    stopped = ran(drawn(DRAWS, cooling_fan_speed=DEAD), "conventional", 250, 90)
    usual = ran(SOUND, "conventional", 250, 90)
    assert ((stopped.of(Lump.HOUSING) - usual.of(Lump.HOUSING)).max(axis=0) > 25).all()
    assert np.isfinite(stopped.cut_out.times[0]).mean() > 0.5
    assert usual.cut_out.times.size == 0


def test_a_leaking_seal_makes_an_oven_slower_and_work_more() -> None:
    leaking, usual = ran(drawn(DRAWS, door_leak=Change("factor", 4))), ran(SOUND)
    assert (leaking.control.times[0] > 1.1 * usual.control.times[0]).all()
    assert (lamp_times(leaking, 1200, 3600).share_lit > lamp_times(usual, 1200, 3600).share_lit + 0.08).all()


def test_a_grill_browns_above() -> None:
    assert (_above_over_below(ran(SOUND, "full_grill", 220, 30)) > 1.3).all()

"""First-order response against a textbook's example, closed forms, and its own inverse."""

from dataclasses import replace
from math import exp, inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.response import (
    LumpedOven,
    duty_at_setting,
    heating_up_s,
    time_to_temperature_s,
)

OVEN = LumpedOven(power_w=2000, loss_w_per_k=6, capacity_j_per_k=12000, ambient_c=20)
ovens = some.builds(
    LumpedOven,
    power_w=some.floats(1000, 4000),
    loss_w_per_k=some.floats(2, 8),
    capacity_j_per_k=some.floats(5e3, 3e4),
    ambient_c=some.floats(10, 30),
)
shares = some.floats(0.01, 0.99)
constants_s = some.floats(1, 5000)


# From 20 °C to 180 °C, Python arithmetic.
@pytest.mark.parametrize(
    ("final_c", "constant_s", "expected_s"), [(350, 900, 596.965), (250, 600, 713.750), (400, 1200, 655.852)]
)
def test_times_to_180_degrees_are_the_computed_ones(final_c, constant_s, expected_s):
    assert time_to_temperature_s(20, final_c, constant_s, 180) == pytest.approx(expected_s, abs=6e-4)


def test_a_lumped_oven_has_the_computed_figures():
    # Python arithmetic.
    assert OVEN.final_c == pytest.approx(353.33, abs=6e-3)
    assert OVEN.time_constant_s == pytest.approx(2000)
    assert heating_up_s(OVEN, 180) == pytest.approx(1307.85, abs=6e-3)
    assert duty_at_setting(OVEN, 180) == pytest.approx(0.48)


# The same oven with less power: 1500 W, and the shares of (230/240)² and (216.2/230)². Python arithmetic.
@pytest.mark.parametrize(
    ("power_w", "expected_s"), [(1500, 2043.30), (2000 * 0.9184, 1479.00), (2000 * 0.8836, 1567.16)]
)
def test_an_oven_with_less_power_takes_the_computed_time(power_w, expected_s):
    assert heating_up_s(replace(OVEN, power_w=power_w), 180) == pytest.approx(expected_s, abs=6e-3)


def test_1500_watts_end_at_270_degrees():
    # Python arithmetic.
    assert replace(OVEN, power_w=1500).final_c == pytest.approx(270)


def test_a_thermocouple_answers_as_the_textbook_s_first_example():
    # Incropera and others, example 5.1: 25 °C to 199 °C of 200 °C in a stream, 5.2 s; 5.1648 s by Python arithmetic.
    assert time_to_temperature_s(25, 200, 1, 199) == pytest.approx(5.1648, abs=6e-5)


@given(start_c=some.floats(0, 300), final_c=some.floats(0, 400), constant_s=constants_s, share=shares)
def test_there_and_back_is_the_same_time(start_c, final_c, constant_s, share):
    final_c = final_c if abs(final_c - start_c) > 1 else start_c + 50
    duration_s = share * 5 * constant_s
    at_c = final_c - (final_c - start_c) * exp(-duration_s / constant_s)
    assert min(start_c, final_c) <= at_c <= max(start_c, final_c)
    assert time_to_temperature_s(start_c, final_c, constant_s, at_c) == pytest.approx(duration_s, rel=1e-6)


@given(oven=ovens, share=shares)
def test_half_the_power_takes_at_least_twice_the_time(oven, share):
    weaker = replace(oven, power_w=oven.power_w / 2)
    target_c = oven.ambient_c + share * (weaker.final_c - oven.ambient_c)
    assert heating_up_s(weaker, target_c) >= 2 * heating_up_s(oven, target_c)


@given(oven=ovens, share=shares, more=some.floats(1.01, 3))
def test_more_power_is_sooner_more_mass_later_and_more_loss_later(oven, share, more):
    leaky = replace(oven, loss_w_per_k=oven.loss_w_per_k * more)
    target_c = oven.ambient_c + share * (leaky.final_c - oven.ambient_c)
    usual_s = heating_up_s(oven, target_c)
    assert heating_up_s(replace(oven, power_w=oven.power_w * more), target_c) < usual_s
    assert heating_up_s(replace(oven, capacity_j_per_k=oven.capacity_j_per_k * more), target_c) > usual_s
    assert heating_up_s(leaky, target_c) > usual_s


@given(oven=ovens, share=shares)
def test_an_oven_with_as_much_power_as_its_duty_ends_at_the_setting(oven, share):
    setting_c = oven.ambient_c + share * (oven.final_c - oven.ambient_c)
    held = replace(oven, power_w=oven.power_w * duty_at_setting(oven, setting_c))
    assert held.final_c == pytest.approx(setting_c)
    assert duty_at_setting(oven, setting_c) == pytest.approx(share)


def test_the_ends_of_what_can_be_held_are_never_on_and_always_on():
    assert duty_at_setting(OVEN, OVEN.ambient_c) == 0
    assert duty_at_setting(OVEN, OVEN.final_c) == pytest.approx(1)
    assert heating_up_s(OVEN, OVEN.ambient_c) == 0


@pytest.mark.parametrize(
    ("start_c", "final_c", "target_c"), [(20, 250, 250), (20, 250, 260), (20, 250, 10), (250, 20, 260), (20, 20, 30)]
)
def test_what_is_never_reached_is_refused_in_a_sentence(start_c, final_c, target_c):
    with pytest.raises(ValueError, match=r"^From .+ °C towards .+ °C the temperature never reaches .+ °C\.$"):
        time_to_temperature_s(start_c, final_c, 900, target_c)


@pytest.mark.parametrize("setting_c", [19.9, 353.4, 500.0])
def test_settings_that_cannot_be_held_are_refused_in_a_sentence(setting_c):
    with pytest.raises(ValueError, match=r"^This oven holds settings from 20 °C to 353\.333 °C, not .+ °C\.$"):
        duty_at_setting(OVEN, setting_c)


@pytest.mark.parametrize("wrong", [0.0, -1.0, nan, inf])
def test_what_must_be_above_zero_is_refused_in_a_sentence(wrong):
    for call in (
        lambda: LumpedOven(wrong, 6, 12000, 20),
        lambda: LumpedOven(2000, wrong, 12000, 20),
        lambda: LumpedOven(2000, 6, wrong, 20),
        lambda: time_to_temperature_s(20, 250, wrong, 100),
    ):
        with pytest.raises(ValueError, match=r"must be (above zero|a finite number); it is .+\.$"):
            call()


def test_other_impossible_input_is_refused_in_a_sentence():
    with pytest.raises(ValueError, match=r"^The temperature must be above absolute zero, .+ °C\.$"):
        LumpedOven(2000, 6, 12000, -300)
    with pytest.raises(ValueError, match=r"^The setting in °C must be a finite number; it is nan\.$"):
        duty_at_setting(OVEN, nan)

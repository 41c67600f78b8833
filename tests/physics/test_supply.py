"""Supply and circuits against regulations, a design guide and plain arithmetic."""

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.physics.supply import (
    HEATING_INSULATION_MEGOHM,
    LARGEST_DROP_SHARE,
    UK_SUPPLY,
    USUAL_INSULATION_MEGOHM,
    circuit_maximum_w,
    cooker_diversity_a,
    insulation_current_ma,
    leakage_limit_ma,
    power_at_supply_w,
    power_ratio,
    supply_limits_v,
    voltage_drop_share,
)

currents_a = some.floats(0.1, 100)


def test_the_british_supply_has_its_limits():
    # SI 1994/3021, explanatory note.
    assert (UK_SUPPLY.nominal_v, UK_SUPPLY.lowest_v, UK_SUPPLY.highest_v) == pytest.approx((230, 216.2, 253.0))


# Python arithmetic.
@pytest.mark.parametrize(
    ("supply_v", "marked_v", "expected"),
    [(240, 230, 1.088847), (230, 240, 0.918403), (253, 230, 1.2100), (216.2, 230, 0.8836)],
)
def test_power_goes_with_the_square_of_the_voltage(supply_v, marked_v, expected):
    assert power_ratio(supply_v, marked_v) == pytest.approx(expected, abs=6e-7)
    assert power_at_supply_w(2000, marked_v, supply_v) == pytest.approx(2000 * expected, rel=1e-6)


@given(marked_v=some.floats(100, 260), supply_v=some.floats(50, 260), step_v=some.floats(0.1, 20))
def test_more_volts_are_more_power_and_twice_the_volts_four_times(marked_v, supply_v, step_v):
    assert power_ratio(supply_v + step_v, marked_v) > power_ratio(supply_v, marked_v)
    assert power_ratio(2 * supply_v, marked_v) == pytest.approx(4 * power_ratio(supply_v, marked_v))
    assert power_ratio(supply_v, marked_v) * power_ratio(marked_v, supply_v) == pytest.approx(1)


def test_without_a_supply_there_is_no_power():
    assert power_at_supply_w(2000, 230, 0) == 0


# Python arithmetic.
@pytest.mark.parametrize(("rating_a", "expected_w"), [(13, 2990), (16, 3680), (20, 4600), (32, 7360), (40, 9200)])
def test_circuits_carry_their_rating(rating_a, expected_w):
    assert circuit_maximum_w(rating_a, 230) == pytest.approx(expected_w)


def test_a_drop_of_the_guide_s_share_is_eleven_and_a_half_volts():
    # BS 7671, Appendix 4: 5 % of 230 V is 11.5 V.
    assert voltage_drop_share(230, 230 - 11.5) == pytest.approx(LARGEST_DROP_SHARE)
    assert voltage_drop_share(236, 236) == 0


# J. F. Whitfield, The Electricians Guide, table 6.2 and its worked examples.
def test_cookers_are_designed_for_as_the_guide_s_examples():
    assert cooker_diversity_a(30, has_socket=False) == pytest.approx(16)
    # Published as 26.8 A from a current rounded to 66 A; 27.0 A unrounded, Python arithmetic.
    assert cooker_diversity_a(66, has_socket=False) == pytest.approx(26.8)
    assert cooker_diversity_a(16000 / 240, has_socket=False) == pytest.approx(27.0)


# The same rule at 230 V, Python arithmetic.
@pytest.mark.parametrize(("kilowatts", "expected_a"), [(7, 16.130), (10, 20.043), (12, 22.652), (16, 27.870)])
def test_cookers_at_230_volts_are_designed_for_as_computed(kilowatts, expected_a):
    assert cooker_diversity_a(kilowatts * 1000 / 230, has_socket=False) == pytest.approx(expected_a, abs=6e-4)
    assert cooker_diversity_a(kilowatts * 1000 / 230, has_socket=True) == pytest.approx(expected_a + 5, abs=6e-4)


@given(total_a=currents_a, more_a=some.floats(0.01, 50))
def test_diversity_never_adds_and_never_falls(total_a, more_a):
    designed_a = cooker_diversity_a(total_a, has_socket=False)
    assert designed_a <= total_a
    assert cooker_diversity_a(total_a + more_a, has_socket=False) > designed_a


# IEC 60335-1, 13.2 and 16.2; Python arithmetic.
@pytest.mark.parametrize(
    ("rated_w", "expected_ma"), [(500, 0.75), (1000, 0.75), (2500, 1.875), (5000, 3.75), (7000, 5), (12000, 5)]
)
def test_leakage_is_limited_by_power(rated_w, expected_ma):
    assert leakage_limit_ma(rated_w) == pytest.approx(expected_ma)


# Ohm's law, Python arithmetic.
@pytest.mark.parametrize(("insulation_megohm", "expected_ma"), [(0.3, 0.767), (0.5, 0.460), (1, 0.230), (2, 0.115)])
def test_insulation_lets_through_as_computed(insulation_megohm, expected_ma):
    assert insulation_current_ma(230, insulation_megohm) == pytest.approx(expected_ma, abs=6e-4)


def test_insulation_of_the_usual_figure_leaks_less_than_the_limit_of_any_oven():
    # In-service practice: 1 MΩ, and 0.3 MΩ for some heating appliances; mA by Python arithmetic.
    assert insulation_current_ma(230, USUAL_INSULATION_MEGOHM) == pytest.approx(0.230, abs=6e-4)
    assert insulation_current_ma(230, HEATING_INSULATION_MEGOHM) == pytest.approx(0.767, abs=6e-4)
    assert insulation_current_ma(UK_SUPPLY.highest_v, USUAL_INSULATION_MEGOHM) < leakage_limit_ma(1)


@pytest.mark.parametrize("wrong", [0.0, -1.0, nan, inf])
def test_what_must_be_above_zero_is_refused_in_a_sentence(wrong):
    for call in (
        lambda: power_ratio(230, wrong),
        lambda: power_at_supply_w(wrong, 230, 230),
        lambda: circuit_maximum_w(wrong, 230),
        lambda: circuit_maximum_w(32, wrong),
        lambda: voltage_drop_share(wrong, 0),
        lambda: cooker_diversity_a(wrong, has_socket=False),
        lambda: leakage_limit_ma(wrong),
        lambda: insulation_current_ma(wrong, 1),
        lambda: insulation_current_ma(230, wrong),
        lambda: supply_limits_v(wrong, 0.1, 0.1),
    ):
        with pytest.raises(ValueError, match=r"must be (above zero|a finite number); it is .+\.$"):
            call()


def test_other_impossible_input_is_refused_in_a_sentence():
    with pytest.raises(ValueError, match=r"^The supply voltage in volts must not be below zero; it is -1\.$"):
        power_ratio(-1, 230)
    with pytest.raises(ValueError, match=r"^The voltage in volts under load must be from 0 to 230; it is 231\.$"):
        voltage_drop_share(230, 231)
    for shares in ((-0.1, 0.1), (0.1, 1.1)):
        with pytest.raises(ValueError, match=r"the nominal voltage must be from 0 to 1; it is .+\.$"):
            supply_limits_v(230, *shares)

"""What a fault does to an oven's parameters."""

import numpy as np
import pytest

from assistant.physics.changes import Change, changed
from assistant.physics.oven import NAMES
from assistant.physics.population import typical_ovens

SOUND = typical_ovens("thermostat", 4000, np.random.default_rng(1))


def test_a_factor_multiplies_a_shift_adds_a_value_replaces() -> None:
    found = changed(
        SOUND,
        {
            "base_power": Change("factor", 0.5),
            "switching_offset": Change("shift", -60),
            "never_opens": Change("value", 1),
        },
        np.random.default_rng(5),
    )
    np.testing.assert_allclose(found.base_power, SOUND.base_power / 2)
    np.testing.assert_allclose(found.switching_offset, SOUND.switching_offset - 60)
    assert (found.never_opens == 1).all()


def test_what_is_not_named_stays() -> None:
    found = changed(SOUND, {"base_power": Change("factor", 0)}, np.random.default_rng(5))
    assert all(getattr(found, name) is getattr(SOUND, name) for name in NAMES if name != "base_power")


def test_a_uniform_amount_is_within_its_spread_and_fills_it() -> None:
    """Source: a uniform's mean is its middle, its deviation the spread over √3."""
    found = changed(SOUND, {"door_leak": Change("factor", 4, 2)}, np.random.default_rng(5))
    amount = found.door_leak / SOUND.door_leak
    assert amount.min() >= 2
    assert amount.max() <= 6
    assert amount.mean() == pytest.approx(4, abs=0.1)
    assert amount.std() == pytest.approx(2 / np.sqrt(3), abs=0.05)


def test_a_normal_amount_has_its_mean_and_deviation() -> None:
    found = changed(SOUND, {"switching_offset": Change("shift", -60, 20, "normal")}, np.random.default_rng(5))
    amount = found.switching_offset - SOUND.switching_offset
    assert amount.mean() == pytest.approx(-60, abs=1.5)
    assert amount.std() == pytest.approx(20, abs=1)
    assert amount.min() < -100


def test_two_faults_are_made_one_after_the_other() -> None:
    random = np.random.default_rng(5)
    once = changed(SOUND, {"base_power": Change("factor", 0.5)}, random)
    twice = changed(once, {"base_power": Change("factor", 0.5), "supply_voltage": Change("factor", 0.9)}, random)
    np.testing.assert_allclose(twice.base_power, SOUND.base_power / 4)
    np.testing.assert_allclose(twice.supply_voltage, SOUND.supply_voltage * 0.9)


def test_the_order_of_the_changes_draws_the_same() -> None:
    changes = {"door_leak": Change("factor", 4, 2), "hysteresis": Change("shift", 3, 1)}
    backwards = dict(reversed(changes.items()))
    first, second = (changed(SOUND, one, np.random.default_rng(5)) for one in (changes, backwards))
    assert all((getattr(first, name) == getattr(second, name)).all() for name in NAMES)


def test_results_are_kept_to_what_means_something() -> None:
    found = changed(
        SOUND,
        {
            "door_leak": Change("factor", 0, 3),
            "probe_outside": Change("value", 0.9, 0.5),
            "hysteresis": Change("value", -5),
            "probe_lag": Change("factor", 0),
        },
        np.random.default_rng(5),
    )
    assert found.door_leak.min() == 0
    assert (found.probe_outside.min() >= 0.4) & (found.probe_outside.max() == 1)
    assert (found.hysteresis > 0).all()
    assert (found.probe_lag >= 4).all()


def test_an_unknown_name_is_refused_with_the_nearest() -> None:
    with pytest.raises(ValueError, match="no parameter 'bse_power'; the nearest is 'base_power'"):
        changed(SOUND, {"bse_power": Change("factor", 0)}, np.random.default_rng(5))


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        ({"how": "times", "middle": 1}, "a factor, a shift or a value"),
        ({"how": "shift", "middle": 1, "drawn": "triangular"}, "uniform or normal"),
        ({"how": "shift", "middle": float("nan")}, "finite middle"),
        ({"how": "shift", "middle": 1, "spread": -1}, "spread from 0 up"),
    ],
)
def test_a_change_that_means_nothing_is_refused(wrong: dict[str, object], says: str) -> None:
    with pytest.raises(ValueError, match=says):
        Change(**wrong)  # type: ignore[arg-type]

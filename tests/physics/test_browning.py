"""How a slice on the middle shelf browns."""

from dataclasses import replace

import numpy as np
import pytest

from assistant.physics.browning import MOVED_AIR, SLICE_EMISSIVITY, STILL_AIR, browning
from assistant.physics.heating import Run
from assistant.physics.oven import STEFAN_BOLTZMANN, Lump
from tests.physics.sound import DEAD, drawn, ran, with_values


def _at(celsius: float, function: str = "conventional") -> Run:
    """A run whose every part is at one temperature for ten minutes, by no physics but this test's."""
    level = with_values(drawn(2), back_lean=0.0, right_lean=0.0)
    found = ran(level, function, minutes=10)
    return replace(found, temperatures=np.full_like(found.temperatures, celsius))


@pytest.mark.parametrize(("function", "film"), [("conventional", STILL_AIR), ("fan_with_ring", MOVED_AIR)])
def test_in_an_even_oven_the_flux_is_newtons_and_stefan_boltzmanns(function: str, film: float) -> None:
    """Source: Newton's law of cooling and the Stefan–Boltzmann law, to a surface at 100 °C."""
    found = browning(_at(200.0, function))
    flux = film * 100 + SLICE_EMISSIVITY * STEFAN_BOLTZMANN * (473.15**4 - 373.15**4)
    np.testing.assert_allclose([found.above, found.below], flux)
    np.testing.assert_allclose(found.above_so_far[-1], flux * 600 / 1e6)
    for side in (found.back, found.front, found.left, found.right):
        np.testing.assert_allclose(side[-1], 2 * flux * 600 / 1e6)


def test_nothing_browns_below_100_degrees() -> None:
    found = browning(_at(90.0))
    for index in (found.above, found.below, found.back, found.front, found.left, found.right):
        assert not index.any()


def test_a_lean_shares_out_what_is_there() -> None:
    run = _at(200.0)
    leaning = replace(run, ovens=with_values(run.ovens, back_lean=0.1, right_lean=-0.2))
    found, level = browning(leaning), browning(run)
    np.testing.assert_allclose(found.back[-1], 1.1 * level.back[-1])
    np.testing.assert_allclose(found.front[-1], 0.9 * level.front[-1])
    np.testing.assert_allclose(found.right[-1], 0.8 * level.right[-1])
    np.testing.assert_allclose(found.left[-1], 1.2 * level.left[-1])


def test_a_sound_oven_browns_above_about_as_much_as_below() -> None:
    """Source: common practice: both elements on, middle shelf, even colour."""
    for function in ("conventional", "fan_with_ring", "fan_assisted"):
        found = browning(ran(drawn(100), function))
        ratio = found.above_so_far[-1] / found.below_so_far[-1]
        assert ((ratio > 0.8) & (ratio < 1.25)).all()


def test_a_glowing_grill_is_felt_from_above_only() -> None:
    run = _at(200.0)
    hot = run.temperatures.copy()
    hot[:, Lump.GRILL] = 700.0
    found, level = browning(replace(run, temperatures=hot)), browning(run)
    assert (found.above > 1.3 * level.above).all()
    np.testing.assert_array_equal(found.below, level.below)


def test_with_the_fan_stopped_the_back_browns_more_than_the_front() -> None:
    """Source: common practice: the ring's heat stays behind its cover."""
    still, moved = (browning(ran(drawn(50, **change), "fan_with_ring")) for change in ({"fan_speed": DEAD}, {}))
    assert (still.back[-1] / still.front[-1] > 1.1 * moved.back[-1] / moved.front[-1]).all()

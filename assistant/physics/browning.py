"""How a slice on the middle shelf browns: the heat that reaches it from above and from below.

A simple index: browning goes with the heat taken up by a surface still held at 100 °C by its water, by convection
from the air (at rest or moved) and by radiation from the walls and the elements it sees. Colour itself isn't modelled;
only comparisons of one index with another mean something.
"""

from dataclasses import dataclass

import numpy as np

from assistant.physics.heating import GRID_S, Run
from assistant.physics.oven import STEFAN_BOLTZMANN, ZERO_CELSIUS_K, Floats, Lump

SLICE_C = 100.0  # the surface of what still holds water
SLICE_EMISSIVITY = 0.9  # assumed: of dough and bread, as of most that isn't metal
STILL_AIR = 7.0  # W/(m² K), assumed: free convection on a flat piece
MOVED_AIR = 20.0  # W/(m² K), assumed: a household oven's fan at full speed
REAR_SHARE = 0.25  # assumed: how much of the rear's excess over the centre the air at the shelf's back has


@dataclass(frozen=True)
class Browning:
    """(K, D) each, on the run's grid. Heat fluxes `above` and `below`, W/m²; what they sum up to so far, MJ/m².

    `back`, `front`, `left`, `right`: the sum of above and below so far at the shelf's four sides, MJ/m².
    """

    above: Floats
    below: Floats
    above_so_far: Floats
    below_so_far: Floats
    back: Floats
    front: Floats
    left: Floats
    right: Floats


def browning(run: Run) -> Browning:
    """The index over the run."""
    ovens = run.ovens
    film = STILL_AIR + (MOVED_AIR - STILL_AIR) * ovens.fan_speed * run.function.fan
    top_view, base_view = ovens.top_view, ovens.base_view
    top, grill, base = (_radiated(run, lump) for lump in (Lump.TOP, Lump.GRILL, Lump.BASE))
    roof = (1 - 2 * top_view) * _radiated(run, Lump.UPPER_WALL) + top_view * (top + grill)
    floor = (1 - base_view) * _radiated(run, Lump.LOWER_WALL) + base_view * base
    above = np.maximum(film * (run.of(Lump.UPPER_AIR) - SLICE_C) + roof, 0.0)
    below = np.maximum(film * (run.of(Lump.LOWER_AIR) - SLICE_C) + floor, 0.0)
    whole = above + below
    at_back = run.centre + REAR_SHARE * np.maximum(run.of(Lump.REAR) - run.centre, 0.0)
    from_rear = 2 * film * (np.maximum(at_back, SLICE_C) - np.maximum(run.centre, SLICE_C))
    return Browning(
        above=above,
        below=below,
        above_so_far=_summed(above),
        below_so_far=_summed(below),
        back=_summed(whole * (1 + ovens.back_lean) + from_rear),
        front=_summed(whole * (1 - ovens.back_lean)),
        left=_summed(whole * (1 - ovens.right_lean)),
        right=_summed(whole * (1 + ovens.right_lean)),
    )


def _radiated(run: Run, lump: Lump) -> Floats:
    """(K, D): what a slice that sees nothing but this lump takes up, W/m²."""
    kelvin = run.of(lump).astype(np.float64) + ZERO_CELSIUS_K
    found: Floats = SLICE_EMISSIVITY * STEFAN_BOLTZMANN * (kelvin**4 - (SLICE_C + ZERO_CELSIUS_K) ** 4)
    return found


def _summed(flux: Floats) -> Floats:
    """(K, D): by the trapezoid rule, MJ/m²."""
    so_far = np.zeros_like(flux)
    np.cumsum((flux[1:] + flux[:-1]) * (GRID_S / 2e6), axis=0, out=so_far[1:])
    return so_far

"""The second oven heats: eleven nodes, natural convection with ΔT^1.25, the cavity's surfaces seeing one another.

Steps of a second. Each node moves by its heat over its capacity and what the step's own warming would take away
again (semi-implicit in the diagonal), so that light nodes don't swing.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from tests.second_oven.bread import Slices
from tests.second_oven.controls import Control, Truths
from tests.second_oven.traits import Floats, Node, Traits

SIGMA = 5.67e-8
KELVIN = 273.15
EVERY_S = 10
"""Temperatures and bread are kept so often."""

# m²: roof, floor, sides with back, the door's inner glass, the rack.
AREAS = np.array([0.16, 0.16, 0.36, 0.17, 0.10])[:, None]
ENAMEL = np.array([0.85, 0.85, 0.85, 0.85, 0.5])[:, None]
SURFACES = slice(0, 5)
RODS = slice(Node.BAKE_ROD, Node.RING_ROD + 1)

# What each rod's radiation meets, as shares: roof, floor, sides, inner glass, rack.
BAKE_SHOWN = np.array([0.15, 0.30, 0.30, 0.10, 0.15])[:, None]
BAKE_HIDDEN = np.array([0.0, 0.55, 0.37, 0.08, 0.0])[:, None]
ROOF_SHOWN = np.array([0.34, 0.10, 0.28, 0.08, 0.20])[:, None]
RING_SHOWN = np.array([0.02, 0.02, 0.92, 0.02, 0.02])[:, None]

WAYS = {"conventional": (1.0, 1.0, 0.0, 0.0), "fan_with_ring": (0.0, 0.0, 1.0, 1.0)}
"""Way of heating -> which of the rods (bake, roof, ring) has current, and the fan's speed."""


@dataclass(frozen=True)
class Course:
    """What happened. `lit`: (seconds, D). `thermometer_c`: (T, D) every EVERY_S. `shades`: (T, 18, D), see bread.

    `centre_c`: (T, D), the air in the middle.
    """

    lit: Truths
    thermometer_c: npt.NDArray[np.float32]
    centre_c: npt.NDArray[np.float32]
    shades: npt.NDArray[np.float32]


def course(ovens: Traits, way: str, setting: float, seconds: int) -> Course:
    """From cold, all at the kitchen's temperature."""
    number = len(ovens["kitchen_c"])
    *currents, fan = WAYS[way]
    fan_speed = fan * ovens["fan_speed"]
    nodes = np.repeat(ovens["kitchen_c"][None], len(Node), axis=0)
    capacities, watts = _capacities(ovens), _watts(ovens, currents)
    control, slices = Control(ovens, setting), Slices.fresh(number)
    thermometer = ovens["kitchen_c"].copy()
    lit = np.zeros((seconds, number), dtype=np.bool_)
    kept: list[tuple[Floats, Floats, Floats]] = []
    for second in range(seconds):
        above, below = _layers(ovens, nodes, fan_speed)
        felt = nodes[Node.AIR] + 0.6 * (above - nodes[Node.AIR])
        heats, lit[second] = control.follow(felt, nodes[Node.SIDES], _at_cut_out(nodes, fan_speed), second)
        if second % EVERY_S == 0:
            kept.append((thermometer + ovens["thermometer_error"], nodes[Node.AIR].copy(), slices.shades()))
        slices.bake(ovens, nodes, above, below, fan_speed)
        seen = 0.8 * nodes[Node.AIR] + 0.2 * nodes[SURFACES].mean(axis=0)
        thermometer += (seen - thermometer) / ovens["glass_thermometer_lag"]
        heat, takes = _flows(ovens, nodes, watts * heats, fan_speed)
        nodes = nodes + heat / (capacities + takes)
    shown, centre, shades = (np.array(each, dtype=np.float32) for each in zip(*kept, strict=True))
    return Course(lit, shown, centre, shades)


def _capacities(ovens: Traits) -> Floats:
    names = ("roof", "floor", "sides", "glass", "rack", "", "glass", "jacket", "rod", "rod", "rod")
    air = np.full_like(ovens["kitchen_c"], 75.0)  # 60 l of air, and the thin wire in it
    found: Floats = np.array([ovens[f"{name}_capacity"] if name else air for name in names])
    return found


def _watts(ovens: Traits, currents: list[float]) -> Floats:
    """(3, D): rated at 230 V; the wire's own resistance rises by a few percent, left out."""
    rated = np.array([ovens["bake_w"], ovens["roof_w"], ovens["ring_w"]])
    found: Floats = rated * np.array(currents)[:, None] * (ovens["supply_v"] / 230.0) ** 2
    return found


def _layers(ovens: Traits, nodes: Floats, fan_speed: Floats) -> tuple[Floats, Floats]:
    """The air above and below the middle: warmer above where the roof is the warmer; a fan stirs it."""
    excess = np.clip(nodes[Node.ROOF] - nodes[Node.FLOOR], -15, 120)
    apart = ovens["stratified"] * excess * (1 - 0.9 * np.minimum(fan_speed, 1))
    return nodes[Node.AIR] + apart, nodes[Node.AIR] - apart


def _at_cut_out(nodes: Floats, fan_speed: Floats) -> Floats:
    """It sits behind the back: a ring that no fan cools glows at it."""
    still = 1 - np.minimum(fan_speed, 1)
    found: Floats = nodes[Node.SIDES] + 0.3 * still * np.maximum(nodes[Node.RING_ROD] - nodes[Node.SIDES], 0.0)
    return found


def _flows(ovens: Traits, nodes: Floats, power: Floats, fan_speed: Floats) -> tuple[Floats, Floats]:
    """(11, D) each: W into every node, and W/K that a kelvin more would take away."""
    heat, takes = np.zeros_like(nodes), np.zeros_like(nodes)
    kelvin = nodes + KELVIN
    _enclosure(ovens, kelvin, heat, takes)
    _from_rods(ovens, nodes, kelvin, power, fan_speed, heat, takes)
    _to_air(ovens, nodes, fan_speed, heat, takes)
    _outwards(ovens, nodes, kelvin, heat, takes)
    return heat, takes


def _enclosure(ovens: Traits, kelvin: Floats, heat: Floats, takes: Floats) -> None:
    """The cavity's surfaces exchange radiation with what they all see on average."""
    bare = np.repeat(AREAS * ENAMEL, kelvin.shape[1], axis=1)
    bare[Node.FLOOR] *= ovens["floor_bare"]
    fourth = kelvin[SURFACES] ** 4
    average = (bare * fourth).sum(axis=0) / bare.sum(axis=0)
    heat[SURFACES] += bare * SIGMA * (average - fourth)
    takes[SURFACES] += 4 * bare * SIGMA * kelvin[SURFACES] ** 3


def _from_rods(
    ovens: Traits, nodes: Floats, kelvin: Floats, power: Floats, fan_speed: Floats, heat: Floats, takes: Floats
) -> None:
    hidden = ovens["hidden_rod"]
    shown = (hidden * BAKE_HIDDEN + (1 - hidden) * BAKE_SHOWN, ROOF_SHOWN, RING_SHOWN)
    behind_steel = (hidden, np.zeros_like(hidden), np.zeros_like(hidden))
    heat[RODS] += power
    for rod, shares, behind in zip((Node.BAKE_ROD, Node.ROOF_ROD, Node.RING_ROD), shown, behind_steel, strict=True):
        radiated = ovens["rod_area"] * SIGMA * 0.85 * (kelvin[rod] ** 4 - (shares * kelvin[SURFACES] ** 4).sum(axis=0))
        moved = fan_speed if rod == Node.RING_ROD else 0.2 * fan_speed
        film = ovens["rod_area"] * (9 + 60 * moved) * (1 - behind)
        into_air = film * (nodes[rod] - nodes[Node.AIR])
        heat[rod] -= radiated + into_air
        heat[SURFACES] += shares * radiated
        heat[Node.AIR] += into_air
        takes[rod] += 4 * ovens["rod_area"] * SIGMA * 0.85 * kelvin[rod] ** 3 + film
        takes[Node.AIR] += film
    below = hidden * 0.5 * (nodes[Node.BAKE_ROD] - nodes[Node.JACKET])  # a rod under the floor also heats the wool
    heat[Node.BAKE_ROD] -= below
    heat[Node.JACKET] += below


def _to_air(ovens: Traits, nodes: Floats, fan_speed: Floats, heat: Floats, takes: Floats) -> None:
    bare = np.repeat(AREAS, nodes.shape[1], axis=1)
    bare[Node.FLOOR] *= 0.3 + 0.7 * ovens["floor_bare"]
    difference = nodes[SURFACES] - nodes[Node.AIR]
    film = bare * (ovens["still_film"] * np.abs(difference) ** 0.25 + ovens["fan_film"] * fan_speed)
    film[Node.ROOF] *= np.where(difference[Node.ROOF] > 0, 0.5, 1.0)  # warm air lies still under a warm roof
    into_air = film * difference
    heat[SURFACES] -= into_air
    heat[Node.AIR] += into_air.sum(axis=0)
    takes[SURFACES] += film
    takes[Node.AIR] += film.sum(axis=0)


def _outwards(ovens: Traits, nodes: Floats, kelvin: Floats, heat: Floats, takes: Floats) -> None:
    kitchen = ovens["kitchen_c"]
    for wall, part in ((Node.ROOF, 0.25), (Node.FLOOR, 0.25), (Node.SIDES, 0.5)):
        apart = nodes[wall] - nodes[Node.JACKET]
        conducts = part * ovens["wool"] * (1 + 0.2 * np.abs(apart) / 120)
        heat[wall] -= conducts * apart
        heat[Node.JACKET] += conducts * apart
        takes[wall] += conducts
    panes = 0.17 * ovens["glass_emissivity"] * SIGMA
    gap = 0.17 * 2.0 * (nodes[Node.INNER_GLASS] - nodes[Node.OUTER_GLASS])
    through = panes * (kelvin[Node.INNER_GLASS] ** 4 - kelvin[Node.OUTER_GLASS] ** 4) + gap
    heat[Node.INNER_GLASS] -= through
    heat[Node.OUTER_GLASS] += through
    for outside, area, blown in ((Node.OUTER_GLASS, 0.2, 0.0), (Node.JACKET, 0.6, ovens["cooling"])):
        apart = nodes[outside] - kitchen
        lost = area * 1.5 * np.abs(apart) ** 0.25 * apart + blown * apart
        lost += area * 0.8 * SIGMA * (kelvin[outside] ** 4 - (kitchen + KELVIN) ** 4)
        heat[outside] -= lost
        takes[outside] += area * 10 + blown
    rise = np.maximum(nodes[Node.AIR] - kitchen, 0.0)
    leak = ovens["leak"] * np.sqrt(rise / 160)
    heat[Node.AIR] -= leak * rise
    takes[Node.AIR] += leak

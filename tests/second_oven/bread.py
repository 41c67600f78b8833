"""Nine slices on the wire shelf of the second oven: a crust dries, and browns the faster the hotter it is."""

from dataclasses import dataclass

import numpy as np

from tests.second_oven.traits import Floats, Node, Traits

SIGMA = 5.67e-8
KELVIN = 273.15
CRUST = 1800.0  # J/(m² K)
WATER = 1.5e5  # J/m², to dry the crust
INTO_CRUMB = 14.0  # W/(m² K), to a crumb at 95 °C
BROWNS_AT_C, BROWNS_BY_K, BROWNS_IN_S = 150.0, 30.0, 320.0
DARKEST = 5.0

# Of the nine places, row by row from the back left: 1 at the back, -1 in front; 1 at the right, -1 at the left.
TO_BACK = np.repeat([1.0, 0.0, -1.0], 3)[:, None]
TO_RIGHT = np.tile([-1.0, 0.0, 1.0], 3)[:, None]


@dataclass
class Slices:
    """(18, D) each: nine tops, then nine undersides."""

    crust_c: Floats
    water: Floats
    browned: Floats

    @classmethod
    def fresh(cls, number: int) -> "Slices":
        shape = (18, number)
        return cls(np.full(shape, 20.0), np.full(shape, WATER), np.zeros(shape))

    def shades(self) -> Floats:
        """(18, D), from 0 (white) to 5 (burnt)."""
        return DARKEST * (1 - np.exp(-self.browned))

    def bake(self, ovens: Traits, nodes: Floats, above: Floats, below: Floats, fan_speed: Floats) -> None:
        """One second on."""
        place = TO_BACK * ovens["back_hotter"] + TO_RIGHT * ovens["right_hotter"]
        place = place - np.where(TO_BACK < 0, ovens["front_colder"], 0.0)
        air = np.concatenate([above + place, below + place])
        film = 6 + 14 * fan_speed
        surfaces = self._radiation(ovens, nodes)
        taken = film * (air - self.crust_c) + surfaces - 0.9 * SIGMA * (self.crust_c + KELVIN) ** 4
        inwards = np.where(self.crust_c > 95, INTO_CRUMB * (self.crust_c - 95), 0.0)
        net = taken - inwards
        boils = (self.crust_c >= 100) & (self.water > 0) & (net > 0)
        self.water = np.where(boils, self.water - net, self.water)
        self.crust_c = np.where(boils, self.crust_c, self.crust_c + net / (CRUST + film + INTO_CRUMB + 8))
        dry = self.water <= 0
        self.browned += np.where(dry, np.exp((self.crust_c - BROWNS_AT_C) / BROWNS_BY_K), 0.0) / BROWNS_IN_S

    def _radiation(self, ovens: Traits, nodes: Floats) -> Floats:
        """(18, D), W/m²: tops see roof, sides and the rod above; undersides the floor, the sides and a bare rod."""
        fourth = SIGMA * 0.9 * (nodes + KELVIN) ** 4
        top = 0.53 * fourth[Node.ROOF] + 0.33 * fourth[Node.SIDES] + 0.1 * fourth[Node.INNER_GLASS]
        top = top + 0.04 * fourth[Node.ROOF_ROD]
        rod = 0.04 * (1 - ovens["hidden_rod"]) * ovens["floor_bare"]
        bare = ovens["floor_bare"]
        floor = bare * fourth[Node.FLOOR] + (1 - bare) * SIGMA * 0.9 * (nodes[Node.AIR] + KELVIN - 15) ** 4
        under = (0.57 - rod) * floor + 0.33 * fourth[Node.SIDES] + 0.1 * fourth[Node.INNER_GLASS]
        under = under + rod * fourth[Node.BAKE_ROD]
        return np.concatenate([np.repeat(top[None], 9, axis=0), np.repeat(under[None], 9, axis=0)])

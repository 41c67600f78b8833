"""How the ovens of the second model are switched: by a snap thermostat on a bulb, or by a board that pulses."""

from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from tests.second_oven.traits import Floats, Traits

Truths = npt.NDArray[np.bool_]

RELIT_BELOW_K = 15.0
"""A lamp that told the setting was reached is lit again so far below it."""
BOARD_LAG_S = 12.0
TRIPPED_FOR_K = 45.0
"""The cut-out closes again when what it sees has cooled by so much."""


@dataclass
class Control:
    """What was felt, and how the contacts stand; moved on second by second. `setting`: °C."""

    ovens: Traits
    setting: float
    bulb_c: Floats = field(init=False)
    snap_c: Floats = field(init=False)
    closed: Truths = field(init=False)
    not_tripped: Truths = field(init=False)
    reached: Truths = field(init=False)

    def __post_init__(self) -> None:
        kitchen = self.ovens["kitchen_c"]
        self.bulb_c, self.snap_c = kitchen.copy(), kitchen.copy()
        self.closed = (self.ovens["stuck_open"] < 0.5) & (kitchen < self._opens_at())
        self.not_tripped = np.full(len(kitchen), True)
        self.reached = np.full(len(kitchen), False)

    def _opens_at(self) -> Floats:
        stretched = self.setting + self.ovens["dial_stretch"] * (self.setting - 100)
        return stretched + self.ovens["dial_error"] + self.ovens["differential"] / 2

    def follow(self, air_c: Floats, sides_c: Floats, cut_out_c: Floats, second: int) -> tuple[Truths, Truths]:
        """Whether the rods have current, and whether the lamp is lit, in the second to come."""
        ovens = self.ovens
        seen = (1 - ovens["bulb_at_wall"]) * air_c + ovens["bulb_at_wall"] * sides_c
        felt = ovens["kitchen_c"] + ovens["feels"] * (seen - ovens["kitchen_c"])
        lag = np.where(ovens["board"] > 0.5, BOARD_LAG_S, ovens["bulb_lag"])
        self.bulb_c += (felt - self.bulb_c) / lag
        self.snap_c += (self.bulb_c - self.snap_c) / ovens["snap_lag"]
        by_board = self._pulsed(second)
        self.closed = np.where(ovens["board"] > 0.5, by_board, self._snapped())
        self.closed |= ovens["stuck_closed"] > 0.5
        self.closed &= ovens["stuck_open"] < 0.5
        self._trip(cut_out_c)
        heats = (self.closed | (ovens["welded"] > 0.5)) & self.not_tripped
        return heats, self._lamp()

    def _snapped(self) -> Truths:
        opens = self._opens_at()
        closes = opens - self.ovens["differential"]
        found: Truths = np.where(self.closed, self.snap_c < opens, self.snap_c <= closes)
        return found

    def _pulsed(self, second: int) -> Truths:
        """In each period for as much of it as the reading is below the setting, against the band."""
        target = self.setting + self.ovens["dial_error"] / 2 + 2.0
        self.reached = (self.bulb_c >= target - 3) | (self.reached & (self.bulb_c > target - RELIT_BELOW_K))
        share = np.clip((target - self.bulb_c) / self.ovens["band"] + 0.3, 0, 1)
        found: Truths = (second % self.ovens["pulse_s"]) < share * self.ovens["pulse_s"]
        return found

    def _trip(self, cut_out_c: Floats) -> None:
        trips = self.ovens["cut_out_c"]
        self.not_tripped = np.where(self.not_tripped, cut_out_c < trips, cut_out_c < trips - TRIPPED_FOR_K)

    def _lamp(self) -> Truths:
        ovens = self.ovens
        tells_reached = (ovens["board"] > 0.5) & (ovens["tells_reached"] > 0.5)
        lit = np.where(tells_reached, ~self.reached, self.closed)
        found: Truths = np.where(ovens["lamp_forced"] < -0.5, lit, ovens["lamp_forced"] > 0.5)
        return found

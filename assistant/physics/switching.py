"""Two-point switches, for D lanes at once: when within a step they switch."""

import numpy as np

from assistant.physics.oven import Floats, Lanes, Truths


class Switches:
    """D switches, each open above `opens_at`, closed below `closes_at`, and between them as it was.

    All (D,). A switch stays closed at least `shortest_on`, open at least `shortest_off` (s). A point of plus or
    minus infinity is never reached. `closed` is how they stand; it changes as the switches do.
    """

    def __init__(
        self, opens_at: Floats, closes_at: Floats, closed: Truths, shortest_on: Floats, shortest_off: Floats
    ) -> None:
        self.closed_first = closed.copy()
        self.closed = closed.copy()
        self._opens_at, self._closes_at = opens_at, closes_at
        self._shortest_on, self._shortest_off = shortest_on, shortest_off
        self._holds = bool((shortest_on > 0).any() or (shortest_off > 0).any())
        self._side = np.where(closed, 1.0, -1.0)
        self._level = np.where(closed, opens_at, closes_at)
        self._earliest = np.where(closed, shortest_on, 0.0)
        self._lanes: list[Lanes] = []
        self._times: list[Floats] = []

    def advance(
        self, before: Floats, after: Floats, rate: Floats, start: float, step: float
    ) -> tuple[Lanes, Floats] | None:
        """The lanes that switch within the step and the share of it that is past then, or none.

        `before` and `after` (D,) are what the switches see at the step's ends, `rate` (D,) how fast it changes at its
        start, 1/s; between them it is taken as the parabola through the three.
        """
        past = self._side * (after - self._level) >= 0
        if self._holds:
            past &= self._earliest <= start + step
        if not past.any():
            return None
        lanes = np.flatnonzero(past)
        missing = self._side[lanes] * (self._level[lanes] - before[lanes])
        climb = self._side[lanes] * rate[lanes] * step
        bend = self._side[lanes] * (after[lanes] - before[lanes]) - climb
        root = climb + np.sqrt(np.maximum(climb**2 + 4 * bend * missing, 0.0))
        share = np.where(missing > 0, 2 * missing / np.where(missing > 0, root, 1.0), 0.0)
        share = np.maximum(share, (self._earliest[lanes] - start) / step)
        self._turn(lanes, start + share * step)
        return lanes, share

    def _turn(self, lanes: Lanes, times: Floats) -> None:
        closed = ~self.closed[lanes]
        self.closed[lanes] = closed
        self._side[lanes] = np.where(closed, 1.0, -1.0)
        self._level[lanes] = np.where(closed, self._opens_at[lanes], self._closes_at[lanes])
        self._earliest[lanes] = times + np.where(closed, self._shortest_on[lanes], self._shortest_off[lanes])
        self._lanes.append(lanes)
        self._times.append(times)

    def times(self) -> Floats:
        """(M, D): when each lane switched, in order, s; NaN after its last. M is the most any lane switched."""
        draws = self.closed.shape[0]
        if not self._lanes:
            return np.full((0, draws), np.nan)
        lanes, times = np.concatenate(self._lanes), np.concatenate(self._times)
        order = np.lexsort((times, lanes))
        lanes, times = lanes[order], times[order]
        counts = np.bincount(lanes, minlength=draws)
        firsts = np.cumsum(counts) - counts
        found = np.full((int(counts.max()), draws), np.nan)
        found[np.arange(lanes.size) - firsts[lanes], lanes] = times
        return found

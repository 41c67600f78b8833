"""How far real ovens differ from simulated ones, beyond the parameters that are drawn.

Every oven model is wrong somewhere: heavier walls, another overshoot, warmer corners. What a simulated oven shows is
therefore stretched and shifted, a model discrepancy (Kennedy and O'Hagan, Bayesian calibration of computer models,
2001): half of it alike whenever the same oven is measured, half anew each time. All sizes are assumed.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats

FIRST_OUT = 0.12
"""Of the time until the lamp first goes out, and of heating up, as a logarithm."""
DARK, LIT = 0.35, 0.35
"""Of the times for which it is then out and lit, as logarithms."""
WARMER = 0.04
"""Of how far the thermometer stands above the kitchen, as a share."""
SAME_OVEN = 0.5
"""How much of all this, as a variance, one oven shows at each of its measurements."""
FROM_C = 20.0
LONGER = 1.5
"""Of the longest time, how long is simulated: what a faster oven shows by then comes later in the simulated one."""


@dataclass(frozen=True)
class Discrepancy:
    """(D,) each: factors of times, and of how far the thermometer stands above FROM_C.

    The lamp isn't watched on the day on which the thermometer is read: `slower` is of the latter's times.
    """

    first_out: Floats
    dark: Floats
    lit: Floats
    slower: Floats
    warmer: Floats

    def of_turns(self, lit_first: npt.NDArray[np.bool_], turns_s: npt.NDArray[np.float32]) -> npt.NDArray[np.float32]:
        """(K, D, M): when the lamp of these ovens (K, D) changes."""
        gaps = np.diff(turns_s, axis=-1, prepend=np.float32(0))
        lit = lit_first[..., None] ^ (np.arange(gaps.shape[-1]) % 2 == 1)
        factor = np.where(lit, self.lit[:, None], self.dark[:, None])
        factor[..., 0] = self.first_out
        found: npt.NDArray[np.float32] = np.cumsum(gaps * factor, axis=-1).astype(np.float32)
        return found

    def of_readings(self, times_s: Floats, shown_c: npt.NDArray[np.float32]) -> npt.NDArray[np.float32]:
        """(K, D, T): what the thermometer shows at `times_s` (T,); beyond the last, as then."""
        at = np.minimum(times_s / self.slower[:, None], times_s[-1])
        left = np.clip(np.searchsorted(times_s, at, side="right") - 1, 0, len(times_s) - 2)
        share = (at - times_s[left]) / (times_s[left + 1] - times_s[left])
        draws = np.arange(len(self.slower))[:, None]
        stretched = shown_c[:, draws, left] * (1 - share) + shown_c[:, draws, left + 1] * share
        found: npt.NDArray[np.float32] = (FROM_C + (stretched - FROM_C) * self.warmer[:, None]).astype(np.float32)
        return found


def drawn(draws: int, seed: int, run: str) -> Discrepancy:
    """Of D ovens, at the measurements that are made while the oven is run in the way that `run` names."""
    ovens = np.random.default_rng([seed, 2]).standard_normal((4, draws))
    each_time = np.random.default_rng([seed, 3, *run.encode()]).standard_normal((5, draws))
    of_all = np.sqrt(SAME_OVEN) * ovens[[0, 1, 2, 0, 3]] + np.sqrt(1 - SAME_OVEN) * each_time
    first_out, dark, lit, slower = np.exp(np.array([FIRST_OUT, DARK, LIT, FIRST_OUT])[:, None] * of_all[:4])
    return Discrepancy(first_out, dark, lit, slower, 1 + WARMER * of_all[4])

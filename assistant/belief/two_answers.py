"""What is believed after two answers: for each pair of rows of an outlook, what the pair leaves of every cause.

A hypothesis holds one or two causes of nearly a hundred. So the sums over hypotheses are made cause by cause, over
those few that hold it: one product of what each row leaves of them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats

PAIRS_AT_ONCE = 3000
"""About so many are held in memory together."""

Numbers = npt.NDArray[np.intp]


@dataclass(frozen=True)
class Pairs:
    """Pairs of rows, N of them: `first` and `second` are rows of different questions, `first` of the earlier one.

    `marginals`: (N, C) P(cause, both answers); `total`: (N,) P(both answers).
    """

    first: Numbers
    second: Numbers
    marginals: Floats
    total: Floats

    def places(self, one: slice, other: slice) -> Numbers:
        """Where the pairs of these two questions stand: for each row of the one, all rows of the other."""
        of_both = (self.first >= one.start) & (self.first < one.stop)
        of_both &= (self.second >= other.start) & (self.second < other.stop)
        return np.flatnonzero(of_both)


def pairs_of_rows(
    given: Floats, probabilities: Floats, members: Floats, rows: Sequence[slice], at_once: int = PAIRS_AT_ONCE
) -> Iterator[Pairs]:
    """Every pair once, some questions' at a time. `given`: (R, H) P(answer | hypothesis); `rows`: those of each
    question, one after the other.

    The answers of two questions are taken to be independent given the hypothesis.
    """
    question = np.repeat(np.arange(len(rows)), [each.stop - each.start for each in rows])
    holding = [np.flatnonzero(of_cause) for of_cause in members.T]
    for block in _blocks(rows, at_once):
        later = slice(block.start, len(given))
        earlier = question[block, None] < question[None, later]
        first, second = np.nonzero(earlier)
        flat = np.flatnonzero(earlier)
        marginals = np.zeros((len(flat), len(holding)))
        for cause, held in enumerate(holding):
            if len(held):
                marginals[:, cause] = (given[block, held] * probabilities[held] @ given[later, held].T).ravel()[flat]
        total = (given[block] * probabilities @ given[later].T).ravel()[flat]
        yield Pairs(first + block.start, second + block.start, marginals, total)


def _blocks(rows: Sequence[slice], at_once: int) -> Iterator[slice]:
    """The rows of questions that follow each other, as many as make `at_once` pairs with all later rows, or one."""
    start = 0
    for number, each in enumerate(rows):
        after = rows[number + 1].stop if number + 1 < len(rows) else None
        if after is None or (after - start) * (rows[-1].stop - start) > at_once:
            yield slice(start, each.stop)
            start = each.stop

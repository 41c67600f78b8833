"""What is believed after two answers: for each pair of rows of an outlook, what the pair leaves of every cause.

A hypothesis holds one or two causes of nearly a hundred. So the sums over hypotheses are made cause by cause, over
those few that hold it: one symmetric product of what each row leaves of them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats

Numbers = npt.NDArray[np.intp]


@dataclass(frozen=True)
class Pairs:
    """Pairs of rows, N of them: `first` and `second` are rows, of different questions; `first` is the earlier one.

    `marginals`: (N, C) P(cause, both answers); `total`: (N,) P(both answers).
    """

    first: Numbers
    second: Numbers
    marginals: Floats
    total: Floats

    def places(self, first: slice, second: slice) -> Numbers:
        """Where the pairs of two questions' rows stand, the second one's answers by turns first."""
        of_both = (self.first >= first.start) & (self.first < first.stop)
        of_both &= (self.second >= second.start) & (self.second < second.stop)
        return np.flatnonzero(of_both)


def pairs_of_rows(given: Floats, probabilities: Floats, members: Floats, rows: Sequence[slice]) -> Pairs:
    """`given`: (R, H) P(answer | hypothesis); `rows`: those of each question, one after the other.

    The answers of two questions are taken to be independent given the hypothesis.
    """
    question = np.repeat(np.arange(len(rows)), [each.stop - each.start for each in rows])
    first, second = np.nonzero(question[:, None] < question[None, :])
    rooted = given * np.sqrt(probabilities)
    found = np.empty((len(first), members.shape[1]))
    flat = first * len(given) + second
    for cause, holding in _holding(members):
        found[:, cause] = _squared(rooted[:, holding]).ravel()[flat] if len(holding) else 0.0
    return Pairs(first, second, found, _squared(rooted).ravel()[flat])


def _holding(members: Floats) -> Iterator[tuple[int, Numbers]]:
    """Each cause with the hypotheses that hold it."""
    for cause in range(members.shape[1]):
        yield cause, np.flatnonzero(members[:, cause])


def _squared(rooted: Floats) -> Floats:
    """(R, R): the product with itself, of which the library computes one half."""
    product: Floats = rooted @ rooted.T
    return product

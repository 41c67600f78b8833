"""What several causes at once show: P(state | set of causes) for one observable.

Ordered observables combine by the leaky noisy-MAX (Henrion 1989; Díez 1993): the state shown is the worst of what
each cause brings about by itself and of what is met anyway (the leak, here what a sound oven shows). A cause is
described as it is seen, leak included, so its own share of the cumulative distribution is F(cause) / F(normal).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations, product

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Shown:
    """What the causes show of one observable, each by itself. S states, C causes.

    `normal`: (S,). `alone`: (C, S), rows of causes that say nothing are `normal`. `speaks`, `masks`: (C,) of
    truths. `pairs`: two causes -> (S,), given for that pair. Every distribution sums to 1 and holds no 0.
    """

    ordered: bool
    normal: Floats
    alone: Floats
    speaks: npt.NDArray[np.bool_]
    masks: npt.NDArray[np.bool_]
    pairs: Mapping[tuple[int, int], Floats] = field(default_factory=dict)


def own_part(alone: Floats, normal: Floats) -> Floats:
    """(…, S): the cumulative distribution of what a cause adds to the leak.

    Where a cause is seen with fewer bad states than a sound oven, the part that would have to be above 1, or fall,
    is cut to the largest that is a distribution: beside another fault no cause makes anything better.
    """
    ratio = np.cumsum(alone, axis=-1) / np.cumsum(normal, axis=-1)
    ratio[..., -1] = 1.0
    rising: Floats = np.minimum.accumulate(ratio[..., ::-1], axis=-1)[..., ::-1]
    return rising


def states_given(shown: Shown, members: npt.NDArray[np.bool_]) -> Floats:
    """(S, H): P(state | set) for each row of `members` (H, C). A set of one shows what its cause shows.

    A cause that masks the observable hides all that don't. Of a pattern (not ordered) each cause that speaks of it
    is as likely to be the one that is seen. A pair with a table of its own counts as one cause: it speaks of the
    observable, and masks it where one of the two does.
    """
    parts, masks = [*shown.alone], [*shown.masks]
    seen = [members[:, cause] & speaks for cause, speaks in enumerate(shown.speaks)]
    for (first, second), table in shown.pairs.items():
        both = members[:, first] & members[:, second]
        for cause in (first, second):
            seen[cause] = seen[cause] & ~both
        parts.append(table)
        masks.append(shown.masks[first] | shown.masks[second])
        seen.append(both)
    shares, masking = np.array(seen).T, np.array(masks)
    shares[(shares & masking).any(axis=1)] &= masking
    present = shares.astype(np.float64)
    tables = np.array(parts)
    found = _worst_of(tables, present, shown.normal) if shown.ordered else _one_of(tables, present, shown.normal)
    single = present.sum(axis=1) == 1
    found[single] = present[single] @ tables
    return np.ascontiguousarray(found.T)


def _worst_of(tables: Floats, present: Floats, normal: Floats) -> Floats:
    """(H, S) by the leaky noisy-MAX."""
    log_parts = np.log(own_part(tables, normal))
    cumulative = np.cumsum(normal) * np.exp(present @ log_parts)
    cumulative[:, -1] = 1.0
    found: Floats = np.diff(cumulative, axis=1, prepend=0.0)
    return found


def _one_of(tables: Floats, present: Floats, normal: Floats) -> Floats:
    """(H, S): an even mixture of those present; what is normal where there is none."""
    number = present.sum(axis=1, keepdims=True)
    found: Floats = np.where(number > 0, present @ tables / np.maximum(number, 1), normal)
    return found


def sets_of_causes(
    faults: Sequence[str], habits: Sequence[str], excluded: Iterable[frozenset[str]]
) -> tuple[tuple[str, ...], ...]:
    """Every set of at most two causes, of which at most one is a habit, that may be there together.

    The empty one comes first, then single faults, single habits, pairs of faults, and a fault with a habit.
    """
    never = set(excluded)
    pairs = (*combinations(faults, 2), *product(faults, habits))
    single = ((cause,) for cause in (*faults, *habits))
    return ((), *single, *(pair for pair in pairs if frozenset(pair) not in never))

"""Likelihoods in words or figures -> numbers that sum to 1."""

from collections.abc import Mapping, Sequence

from assistant.knowledge.model import Distribution, Figure, Likelihood, SpokenWord

WORD_SCALING = (0.8, 1.25)
ROUNDING = 1e-6

Words = Mapping[SpokenWord, Figure]


class NotADistribution(ValueError):
    """The likelihoods don't make a distribution; `code` and `total` (percent) say why."""

    def __init__(self, code: str, total: float) -> None:
        super().__init__(code)
        self.code = code
        self.total = total


def share_of(likelihood: Likelihood, words: Words) -> float:
    """One likelihood as a share of one. `rest` has no share of its own: KeyError."""
    if isinstance(likelihood, Figure):
        return likelihood.share
    if likelihood == "rest":
        raise KeyError(likelihood)
    return words[likelihood].share


def shares(distribution: Distribution, states: Sequence[str], words: Words) -> tuple[float, ...]:
    """P(state) for each state, in the order of `states`; sums to 1, none is 0.

    Words are rounded speech: they are scaled to fill what the figures leave, if that changes them by no more
    than WORD_SCALING; a state that says `rest` takes what is left. Raises NotADistribution.
    """
    figures = {s: v.share for s, v in distribution.items() if isinstance(v, Figure)}
    spoken = {s: words[v].share for s, v in distribution.items() if isinstance(v, str) and v != "rest"}
    resting = [s for s, v in distribution.items() if v == "rest"]
    total = sum(figures.values()) + sum(spoken.values())
    if min([*figures.values(), *spoken.values()], default=1) <= 0:
        raise NotADistribution("never_impossible", total * 100)
    if resting:
        values = figures | spoken | {resting[0]: _left(total, len(resting))}
    elif spoken:
        scale = (1 - sum(figures.values())) / sum(spoken.values())
        if not WORD_SCALING[0] - ROUNDING <= scale <= WORD_SCALING[1] + ROUNDING:
            raise NotADistribution("words_far_from_whole", total * 100)
        values = figures | {s: v * scale for s, v in spoken.items()}
    else:
        if abs(total - 1) > ROUNDING:
            raise NotADistribution("sum_not_one", total * 100)
        values = {s: v / total for s, v in figures.items()}
    return tuple(values[state] for state in states)


def _left(total: float, resting: int) -> float:
    """What is left for the one state that says `rest`."""
    if resting > 1:
        raise NotADistribution("rest_twice", total * 100)
    if total > 1 - ROUNDING:
        raise NotADistribution("nothing_left", total * 100)
    return 1 - total

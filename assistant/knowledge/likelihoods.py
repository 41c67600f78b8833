"""Likelihoods in words or figures -> numbers that sum to 1."""

from collections.abc import Mapping, Sequence

from assistant.knowledge.model import Distribution, Figure, Likelihood, SpokenWord

WORD_SCALING = (0.8, 1.25)

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
    if resting:
        if len(resting) > 1:
            raise NotADistribution("rest_twice", total * 100)
        values = figures | spoken | {resting[0]: 1 - total}
    elif spoken:
        scale = (1 - sum(figures.values())) / sum(spoken.values())
        if not WORD_SCALING[0] <= scale <= WORD_SCALING[1]:
            raise NotADistribution("sum_not_one", total * 100)
        values = figures | {s: v * scale for s, v in spoken.items()}
    else:
        values = figures
    if abs(sum(values.values()) - 1) > 1e-6:
        raise NotADistribution("sum_not_one", total * 100)
    if min(values.values()) <= 0:
        raise NotADistribution("never_impossible", total * 100)
    return tuple(values[state] for state in states)

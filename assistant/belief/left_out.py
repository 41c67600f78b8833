"""How much is left out by weighing at most two causes at a time, of which one a habit, for the evidence given.

The next larger sets, of three causes or of two habits, are weighed exactly, outside the posterior. Sets that are
larger still are bounded: whatever is wrong, the answers can't be more probable than in the states that explain each
of them best, so their weight is at most their prior odds times that.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from itertools import combinations, islice, product

import numpy as np

from assistant.belief.combination import Floats, states_given
from assistant.belief.hypotheses import EvidenceModel, Hypothesis, Priors, membership
from assistant.belief.posterior import log_likelihoods, log_priors, state_weights

SETS_AT_ONCE = 20_000
WEIGHED = ((0, 0), (1, 0), (2, 0), (0, 1), (1, 1))
THREE_CAUSES = ((3, 0), (2, 1))
TWO_HABITS = ((0, 2), (1, 2))
"""Numbers of faults and habits in a set."""


@dataclass(frozen=True)
class LeftOut:
    """Shares of everything that could be, given the answers, which no hypothesis holds.

    `three_causes`: three faults, or two and a habit. `two_habits`: alone or with one fault. Both are computed.
    `still_more_at_most`: a bound for all larger sets.
    """

    three_causes: float
    two_habits: float
    still_more_at_most: float

    @property
    def at_most(self) -> float:
        return self.three_causes + self.two_habits + self.still_more_at_most


def left_out(model: EvidenceModel, answers: Mapping[str, str], not_fitted: Set[str] = frozenset()) -> LeftOut:
    """Weights relative to the heaviest hypothesis, then as shares of them all."""
    log_weights = log_priors(model, not_fitted) + sum(log_likelihoods(model, answers).values())
    heaviest = float(log_weights.max())
    weighed = float(np.exp(log_weights - heaviest).sum())
    likelihoods = state_weights(model, answers)
    fitted = [cause for cause in model.causes[:-1] if not_fitted.isdisjoint(model.needs[cause])]
    faults = [cause for cause in fitted if cause in model.priors.faults]
    habits = [cause for cause in fitted if cause in model.priors.habits]
    three = _weight(model, _sets(model.priors, faults, habits, THREE_CAUSES), likelihoods, heaviest)
    two = _weight(model, _sets(model.priors, faults, habits, TWO_HABITS), likelihoods, heaviest)
    best = float(np.exp(sum(np.log(row.max()) for row in likelihoods.values()) - heaviest))
    larger = odds_of_larger_sets(model.priors, faults, habits) * best
    everything = weighed + three + two + larger
    return LeftOut(three / everything, two / everything, larger / everything)


def _sets(
    priors: Priors, faults: Sequence[str], habits: Sequence[str], numbers: Sequence[tuple[int, int]]
) -> Iterator[Hypothesis]:
    """Every set of these numbers of faults and habits whose causes may be there together."""
    for of_faults, of_habits in numbers:
        for chosen in product(combinations(faults, of_faults), combinations(habits, of_habits)):
            causes = (*chosen[0], *chosen[1])
            if not any(frozenset(pair) in priors.never for pair in combinations(causes, 2)):
                yield causes


def _weight(
    model: EvidenceModel, sets: Iterator[Hypothesis], likelihoods: Mapping[str, Floats], heaviest: float
) -> float:
    """Prior odds times likelihood of all these sets, relative to the heaviest hypothesis."""
    total = 0.0
    while some := tuple(islice(sets, SETS_AT_ONCE)):
        members = membership(some, model.causes[:-1])
        log_weights = np.log([model.priors.odds_of(each) for each in some])
        for name, row in likelihoods.items():
            log_weights = log_weights + np.log(row @ states_given(model.shown[name], members))
        total += float(np.exp(log_weights - heaviest).sum())
    return total


def odds_of_larger_sets(priors: Priors, faults: Sequence[str], habits: Sequence[str]) -> float:
    """The prior odds of all sets with four or more causes, and of those of three habits.

    Exclusions are forgotten, which only makes it larger.
    """
    odds = _odds_by_numbers(priors, faults, habits)
    for of_faults, of_habits in (*WEIGHED, *THREE_CAUSES, *TWO_HABITS):
        odds[of_faults : of_faults + 1, of_habits : of_habits + 1] = 0.0
    return priors.asked_about * float(odds.sum())


def _odds_by_numbers(priors: Priors, faults: Sequence[str], habits: Sequence[str]) -> Floats:
    """(faults + 1, habits + 1): the odds of all sets of so many of each, in ovens at large.

    Causes of pairs that come together are taken set by set; the others' sums are coefficients of a product.
    """
    paired = [cause for cause in (*faults, *habits) if any(cause in pair for pair in priors.beside)]
    others = np.multiply.outer(_coefficients(priors, faults, paired), _coefficients(priors, habits, paired))
    found = np.zeros((len(faults) + 1, len(habits) + 1))
    for some in (chosen for number in range(len(paired) + 1) for chosen in combinations(paired, number)):
        odds = priors.odds_of(some) / priors.asked_about if some else 1.0
        first = sum(cause in priors.faults for cause in some), sum(cause in priors.habits for cause in some)
        found[first[0] : first[0] + others.shape[0], first[1] : first[1] + others.shape[1]] += odds * others
    return found


def _coefficients(priors: Priors, causes: Sequence[str], paired: Sequence[str]) -> Floats:
    """Number of causes -> the odds of all sets of so many of those that are in no pair."""
    odds = [priors.at_large[cause] for cause in causes if cause not in paired]
    return np.asarray(np.poly(-np.array(odds)) if odds else np.ones(1), dtype=np.float64)

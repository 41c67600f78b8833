"""How much is left out by weighing at most two faults and one habit at a time, for the evidence given.

The next larger sets, of three faults or of two habits, are weighed exactly, outside the posterior. Sets that are
larger still are bounded: whatever is wrong, the answers can't be more probable than in the states that explain each
of them best, so their weight is at most their prior odds times that.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from itertools import combinations, islice

import numpy as np

from assistant.belief.combination import Floats, states_given
from assistant.belief.hypotheses import EvidenceModel, Hypothesis, Priors, membership
from assistant.belief.posterior import log_likelihoods, log_priors, state_weights

SETS_AT_ONCE = 20_000
MOST_FAULTS, MOST_HABITS = 2, 1


@dataclass(frozen=True)
class LeftOut:
    """Shares of everything that could be, given the answers, which no hypothesis holds.

    `three_faults`, `two_habits`: computed. `still_more_at_most`: a bound for all larger sets.
    """

    three_faults: float
    two_habits: float
    still_more_at_most: float

    @property
    def at_most(self) -> float:
        return self.three_faults + self.two_habits + self.still_more_at_most


def left_out(model: EvidenceModel, answers: Mapping[str, str], not_fitted: Set[str] = frozenset()) -> LeftOut:
    """Weights relative to the heaviest hypothesis, then as shares of them all."""
    log_weights = log_priors(model, not_fitted) + sum(log_likelihoods(model, answers).values())
    heaviest = float(log_weights.max())
    weighed = float(np.exp(log_weights - heaviest).sum())
    likelihoods = state_weights(model, answers)
    fitted = [cause for cause in model.causes[:-1] if not_fitted.isdisjoint(model.needs[cause])]
    faults = [cause for cause in fitted if cause in model.priors.faults]
    habits = [cause for cause in fitted if cause in model.priors.habits]
    three = _weight(model, _sets(model.priors, faults, habits, (3,), (0, 1)), likelihoods, heaviest)
    two = _weight(model, _sets(model.priors, faults, habits, (0, 1, 2), (2,)), likelihoods, heaviest)
    best = float(np.exp(sum(np.log(row.max()) for row in likelihoods.values()) - heaviest))
    larger = odds_of_larger_sets(model.priors, faults, habits) * best
    everything = weighed + three + two + larger
    return LeftOut(three / everything, two / everything, larger / everything)


def _sets(
    priors: Priors, faults: Sequence[str], habits: Sequence[str], faults_each: Sequence[int], habits_each: Sequence[int]
) -> Iterator[Hypothesis]:
    """Every set of these numbers of faults and habits whose causes may be there together."""
    for some in (chosen for number in faults_each for chosen in combinations(faults, number)):
        for others in (chosen for number in habits_each for chosen in combinations(habits, number)):
            causes = (*some, *others)
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
    """The prior odds of all sets with four or more faults, or three or more habits, or three faults and two habits.

    Exclusions are forgotten, which only makes it larger.
    """
    odds = _odds_by_number(priors, faults, habits)
    odds[: MOST_FAULTS + 1, : MOST_HABITS + 1] = 0
    odds[MOST_FAULTS + 1 : MOST_FAULTS + 2, : MOST_HABITS + 1] = 0
    odds[: MOST_FAULTS + 1, MOST_HABITS + 1 : MOST_HABITS + 2] = 0
    return priors.asked_about * float(odds.sum())


def _odds_by_number(priors: Priors, faults: Sequence[str], habits: Sequence[str]) -> Floats:
    """(faults + 1, habits + 1): the odds of all sets of so many, in ovens at large; pairs that come together counted
    so.
    """
    at_large = replace(priors, asked_about=1.0)
    paired = [cause for cause in (*faults, *habits) if any(cause in pair for pair in priors.beside)]
    of_faults, of_habits = (
        np.poly([-priors.at_large[cause] for cause in kind if cause not in paired]) for kind in (faults, habits)
    )
    others = np.outer(of_faults, of_habits)
    found = np.zeros((len(faults) + 1, len(habits) + 1))
    for number in range(len(paired) + 1):
        for some in combinations(paired, number):
            first = sum(cause in faults for cause in some)
            rows = slice(first, first + others.shape[0])
            columns = slice(number - first, number - first + others.shape[1])
            found[rows, columns] += at_large.odds_of(some) * others
    return found

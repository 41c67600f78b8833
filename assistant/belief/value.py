"""What a question is worth: by how much its answer is expected to lower the cost of the ending.

Expected value of information (Raiffa and Schlaifer 1961; for troubleshooting Heckerman, Breese and Rommelse,
Communications of the ACM 38(3), 1995), in money, against the minutes and the care that the question takes. One step
looks at a single question; two steps also at the best one after it, so that questions which tell only together are
seen too.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.decision import Decision, least_costs
from assistant.belief.hypotheses import EvidenceModel
from assistant.belief.posterior import Posterior, state_weights
from assistant.belief.two_answers import Pairs, pairs_of_rows

LEAST_MONEY = 0.001
"""Less is nothing: it is rounding, and must not choose."""

MASS_DROPPED = 1e-3
"""Of the probability: so much of the least probable sets of causes is left out when worths are compared."""
MASS_DROPPED_FOR_DANGER = 1e-5
MASS_DROPPED_FOR_TESTS = 0.1
"""A visit is for what is likeliest; a test that only tells of the rest isn't worth taking the oven apart."""
MINUTES_BESIDES = 10
"""Getting at the place, writing it down: assumed. Without it every short test would come before the one that tells."""


@dataclass(frozen=True)
class Candidate:
    """A question that may be asked: `effort` in money, `minutes`, both with the questions that open the way to it.

    `way`: those that open it, in their order; `opens`: the probability that they do.
    """

    question_id: str
    effort: float
    minutes: float
    opens: float = 1.0
    way: tuple[str, ...] = ()


@dataclass(frozen=True)
class Worth:
    """`value`: expected saving, in money; `net`: less the effort; `bits_per_minute`: for ties only."""

    question_id: str
    value: float
    net: float
    bits_per_minute: float


@dataclass(frozen=True)
class Outlook:
    """What the answers of the candidates would do. R rows, one for each answer; H hypotheses that are kept.

    `given`: (R, H) P(answer | hypothesis, the answers so far). `rows`: question -> its rows.
    `states`: observable of several candidates -> (S, H) P(state | hypothesis, the answers so far).
    """

    probabilities: Floats
    members: Floats
    given: Floats
    rows: Mapping[str, slice]
    states: Mapping[str, Floats]

    def sums(self, by_row: Floats) -> dict[str, float]:
        """question -> the sum over its answers."""
        if not self.rows:
            return {}
        starts = [rows.start for rows in self.rows.values()]
        return dict(zip(self.rows, map(float, np.add.reduceat(by_row, starts)), strict=True))


def look_ahead(
    model: EvidenceModel, answers: Mapping[str, str], now: Posterior, asked: Sequence[str], dropped: float
) -> Outlook:
    """Keep the fewest hypotheses that leave out no more than the probability `dropped`."""
    kept = _most_probable(now.probabilities, dropped)
    weights = state_weights(model, answers)
    names = dict.fromkeys(model.observable_of[question_id] for question_id in asked)
    states = {name: _states_now(model.state_given[name][:, kept], weights.get(name)) for name in names}
    rows, start = {}, 0
    for question_id in asked:
        rows[question_id] = slice(start, start + len(model.report_given[question_id]))
        start = rows[question_id].stop
    given = np.empty((start, len(kept)))
    for question_id, own in rows.items():
        np.matmul(model.report_given[question_id], states[model.observable_of[question_id]], out=given[own])
    probabilities = now.probabilities[kept] / now.probabilities[kept].sum()
    told_twice = [name for name, reports in Counter(map(model.observable_of.__getitem__, asked)).items() if reports > 1]
    return Outlook(probabilities, model.held[kept], given, rows, {name: states[name] for name in told_twice})


def _most_probable(probabilities: Floats, dropped: float) -> np.ndarray[tuple[int], np.dtype[np.intp]]:
    """In the order of the rules, so that sums don't hang on the order of equals.

    Those that are too small to fill a tenth of what may be left out, all together, needn't be put in order.
    """
    likely = np.flatnonzero(probabilities > dropped / 10 / len(probabilities))
    order = likely[np.argsort(-probabilities[likely].round(12), kind="stable")]
    enough = int(np.searchsorted(np.cumsum(probabilities[order]), 1 - dropped)) + 1
    return np.sort(order[:enough])


def _states_now(given: Floats, weights: Floats | None) -> Floats:
    if weights is None:
        return given
    weighed = given * weights[:, None]
    normalised: Floats = weighed / weighed.sum(axis=0)
    return normalised


def one_step(
    decision: Decision, outlook: Outlook, candidates: Sequence[Candidate], allowed: Sequence[int]
) -> tuple[Worth, ...]:
    """The worth of each candidate, in their order."""
    stop_now, after = _costs_after_one(decision, outlook, allowed)
    cost, bits = outlook.sums(after), outlook.sums(_information(outlook))
    return tuple(_worth(each, stop_now - cost[each.question_id], bits) for each in candidates)


def _worth(candidate: Candidate, saved: float, bits: Mapping[str, float]) -> Worth:
    value = saved * candidate.opens if saved * candidate.opens >= LEAST_MONEY else 0.0
    return Worth(
        candidate.question_id, value, value - candidate.effort, bits[candidate.question_id] / candidate.minutes
    )


def _costs_after_one(decision: Decision, outlook: Outlook, allowed: Sequence[int]) -> tuple[float, Floats]:
    """The least cost of ending now, and (R,) after each answer, times the answer's probability."""
    weighed = outlook.members * outlook.probabilities[:, None]
    now = least_costs(decision, weighed.sum(axis=0)[None, :], np.ones(1), allowed)
    after = least_costs(decision, outlook.given @ weighed, outlook.given @ outlook.probabilities, allowed)
    return float(now[0]), after


def two_steps(
    decision: Decision,
    model: EvidenceModel,
    outlook: Outlook,
    candidates: Sequence[Candidate],
    allowed: Sequence[int],
) -> tuple[Worth, ...]:
    """The worth of each candidate when the best other one may follow, or none. No candidate is left out first."""
    stop_now, after_one = _costs_after_one(decision, outlook, allowed)
    after_two = _costs_after_two(decision, model, outlook, candidates, allowed)
    told = outlook.given @ outlook.probabilities
    best = after_one.copy()
    for second in candidates:
        going_on = told * second.effort + second.opens * after_two[second.question_id] + (1 - second.opens) * after_one
        others = np.ones(len(best), dtype=np.bool_)
        others[outlook.rows[second.question_id]] = False
        best[others] = np.minimum(best[others], going_on[others])
    cost, bits = outlook.sums(best), outlook.sums(_information(outlook))
    return tuple(_worth(each, stop_now - cost[each.question_id], bits) for each in candidates)


def _costs_after_two(
    decision: Decision,
    model: EvidenceModel,
    outlook: Outlook,
    candidates: Sequence[Candidate],
    allowed: Sequence[int],
) -> dict[str, Floats]:
    """question -> (R,): the expected cost after each row's answer and then that question's, best ended each time."""
    names = [each.question_id for each in candidates]
    by_pair = np.zeros((len(outlook.given), len(outlook.given)))
    for pairs in pairs_of_rows(outlook.given, outlook.probabilities, outlook.members, list(outlook.rows.values())):
        _tell_of_one_thing(model, outlook, names, pairs)
        by_pair[pairs.first, pairs.second] = least_costs(decision, pairs.marginals, pairs.total, allowed)
    by_pair += by_pair.T
    starts = [outlook.rows[name].start for name in names]
    return dict(zip(names, np.add.reduceat(by_pair, starts, axis=0), strict=True)) if names else {}


def _tell_of_one_thing(model: EvidenceModel, outlook: Outlook, names: Sequence[str], pairs: Pairs) -> None:
    """Two reports of one observable hang together through its state: put what they leave into the pairs."""
    of_observable: dict[str, list[str]] = {}
    for name in names:
        of_observable.setdefault(model.observable_of[name], []).append(name)
    for observable, reports in of_observable.items():
        for one, other in combinations(reports, 2):
            at = pairs.places(outlook.rows[one], outlook.rows[other])
            if len(at):
                tables = model.report_given[one][:, None, :] * model.report_given[other][None]
                states = outlook.states[observable]
                joint = tables.reshape(-1, len(states)) @ (states * outlook.probabilities)
                pairs.marginals[at] = joint @ outlook.members
                pairs.total[at] = joint.sum(axis=1)


def _information(outlook: Outlook) -> Floats:
    """(R,): each answer's part of the expected fall of the entropy over the hypotheses, in bits (Shannon 1948)."""
    told = outlook.given @ outlook.probabilities
    by_row: Floats = -_xlog2x(told) + _xlog2x(outlook.given) @ outlook.probabilities
    return by_row


def most_telling_together(outlook: Outlook, candidates: Sequence[Candidate], most: int, least: float) -> list[str]:
    """At most so many candidates, each the one that tells most in a minute after those before it (MINUTES_BESIDES its
    own), and no less than `least` bits: what another has told counts no second time.

    Greedy, as is usual for choosing what to observe (Krause and Guestrin, Uncertainty in Artificial Intelligence,
    2005). Takes the answers as independent under each hypothesis, as reports of different observables are.
    """
    together = outlook.probabilities[None, :]
    chosen: list[Candidate] = []
    while len(chosen) < most:
        bits = _bits_after(outlook, together)
        telling = [each for each in candidates if each not in chosen and bits[each.question_id] >= least]
        in_a_minute = {each: round(bits[each.question_id] / (each.minutes + MINUTES_BESIDES), 9) for each in telling}
        best = max(telling, key=in_a_minute.__getitem__, default=None)
        if best is None:
            break
        chosen.append(best)
        given = outlook.given[outlook.rows[best.question_id]]
        together = (together[:, None, :] * given[None]).reshape(-1, together.shape[1])
    return [each.question_id for each in chosen]


def bits_told(outlook: Outlook) -> dict[str, float]:
    """question -> by how much its answer is expected to lower the entropy over the hypotheses, in bits."""
    return outlook.sums(_information(outlook))


def _bits_after(outlook: Outlook, together: Floats) -> dict[str, float]:
    """question -> the bits it still tells after answers whose probabilities with each hypothesis are these (K, H)."""
    told = together @ outlook.given.T
    before = _xlog2x(together.sum(axis=1)).sum()
    after = outlook.sums(_xlog2x(told).sum(axis=0))
    certain = outlook.sums(_xlog2x(outlook.given) @ outlook.probabilities)
    return {question_id: before - after[question_id] + certain[question_id] for question_id in outlook.rows}


def _xlog2x(values: Floats) -> Floats:
    found: Floats = np.log2(values)
    found *= values
    return found


def best_of(worths: Sequence[Worth]) -> Worth | None:
    """The one with the greatest net worth, if any is worth its effort; ties go to more bits a minute, then to order."""
    worthy = [each for each in worths if each.net >= LEAST_MONEY]
    return max(worthy, key=lambda each: (round(each.net, 2), round(each.bits_per_minute, 6)), default=None)

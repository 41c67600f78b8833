"""How common causes are: the expert's rates, corrected by the outcomes that were seen. Pure.

Outcomes are seen for a reason: visits show what had to be visited, calls what a call could solve, and most sessions
show nothing. So causes are counted within a group, and groups weigh as they occur among all sessions
(post-stratification; W. G. Cochran, Sampling Techniques, 3rd ed., 1977, chapter 5A).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import get_args

import numpy as np

from assistant.belief.outcomes import Outcome, latest_of_each_session
from assistant.knowledge.figures import Figure
from assistant.knowledge.learned import Count, Group, Learned, Sessions
from assistant.knowledge.model import Knowledge

CASES_WITHOUT_RANGE = 100.0
FEWEST_CASES, MOST_CASES = 1.0, 10_000.0
STANDARD_DEVIATIONS_IN_RANGE = 4
INTERVAL = (0.05, 0.95)
DRAWS = 20_000
SEED = 1984


@dataclass(frozen=True)
class Estimate:
    """A cause's rate among all sessions, as shares of one, with its 90 % interval."""

    rate: float
    low: float
    high: float


@dataclass(frozen=True)
class _Stratum:
    """A share of all sessions, and the Beta distribution of a cause's rate within it."""

    share: float
    found: float
    not_found: float

    @property
    def rate(self) -> float:
        return self.found / (self.found + self.not_found)


def equivalent_cases(figure: Figure) -> float:
    """The number of cases that an expert's percentage is worth.

    Its range is taken as two standard deviations to either side of the value; a Beta distribution with mean m
    and variance v has a + b = m (1 - m) / v - 1 (Gelman et al., Bayesian Data Analysis, 3rd ed., appendix A).
    From 1 to 10 000; a figure without a range is worth 100.
    """
    if figure.range is None:
        return CASES_WITHOUT_RANGE
    low, high = figure.range
    deviation = (high - low) / 100 / STANDARD_DEVIATIONS_IN_RANGE
    if deviation == 0:
        return MOST_CASES
    cases = figure.share * (1 - figure.share) / deviation**2 - 1
    return min(max(cases, FEWEST_CASES), MOST_CASES)


def base_rates(knowledge: Knowledge) -> dict[str, float]:
    """Cause -> its rate among all sessions, a share of one: the expert's where nothing was learned."""
    return {cause_id: _rate(cause_id, knowledge) for cause_id in knowledge.causes}


def _rate(cause_id: str, knowledge: Knowledge) -> float:
    learned = knowledge.learned
    if learned is None or not any(learned.count(group, cause_id).of for group in get_args(Group)):
        return knowledge.causes[cause_id].base_rate.share
    return sum(part.share * part.rate for part in _strata(cause_id, knowledge))


def estimate(cause_id: str, knowledge: Knowledge) -> Estimate:
    """The rate with its interval: the 5 % and 95 % points of what the groups' distributions add up to.

    The points are drawn, always with the same seed: good to about a fiftieth of the interval's width.
    """
    strata = _strata(cause_id, knowledge)
    draw = np.random.default_rng(SEED)
    drawn = sum((part.share * draw.beta(part.found, part.not_found, DRAWS) for part in strata), np.zeros(DRAWS))
    low, high = np.quantile(drawn, INTERVAL)
    return Estimate(_rate(cause_id, knowledge), float(low), float(high))


def _strata(cause_id: str, knowledge: Knowledge) -> tuple[_Stratum, ...]:
    """The groups and the rest of the sessions, whose outcome nobody knows.

    The expert speaks of all sessions together. The cases that this is worth are split by the groups' shares, so
    that the sum over the groups is as certain as the expert was before anything was counted.
    """
    figure = knowledge.causes[cause_id].base_rate
    cases = equivalent_cases(figure)
    learned = knowledge.learned
    if learned is None or learned.sessions.total == 0:
        return (_Stratum(1.0, cases * figure.share, cases * (1 - figure.share)),)
    sizes = {group: (learned.sessions.of_group(group), learned.count(group, cause_id)) for group in get_args(Group)}
    sizes["unknown"] = (learned.sessions.unknown, Count(found=0, of=0))
    shares = {name: (size / learned.sessions.total, count) for name, (size, count) in sizes.items() if size > 0}
    return tuple(
        _Stratum(
            share,
            share * cases * figure.share + count.found,
            share * cases * (1 - figure.share) + count.of - count.found,
        )
        for share, count in shares.values()
    )


def learned_from(outcomes: Iterable[Outcome], knowledge: Knowledge, sizes: Mapping[str, int]) -> Learned | None:
    """Counts of all the outcomes, anew from the first; None if none of them counts.

    `sizes`: how many sessions each group had in all, and `unknown`; a group that isn't named had as many as have
    an outcome. Raises ValueError if a group is said to be smaller than that.
    """
    latest = latest_of_each_session(outcomes)
    counted = [outcome for outcome in latest if outcome.counts]
    if not counted:
        return None
    counts: dict[Group, dict[str, Count]] = {}
    sessions = {"unknown": sizes.get("unknown", 0)}
    for group in get_args(Group):
        known = sum(outcome.group == group for outcome in latest)
        sessions[group] = sizes.get(group, known)
        if sessions[group] < known:
            raise ValueError(group)
        seen = [outcome.known_causes(knowledge.causes) for outcome in counted if outcome.group == group]
        if seen:
            counts[group] = {
                cause_id: Count(found=sum(cause_id in causes for causes in seen), of=len(seen))
                for cause_id in knowledge.causes
            }
    return Learned(until=max(outcome.recorded_on for outcome in counted), sessions=Sessions(**sessions), counts=counts)

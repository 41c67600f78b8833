"""A case's answers under rules in which a number is another one: what belief makes of them, and how the case ends.

No interview is held anew: the answers stay as they were given. What doesn't hang on numbers (findings, parts, danger
that was told) stays too, so only belief is computed, and of it only what differs.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import NOTHING_WRONG, EvidenceModel
from assistant.belief.posterior import Posterior, reports_of_observables, state_weights
from assistant.interview.assess import Assessment, assess
from assistant.interview.choice import choose
from assistant.interview.danger import Danger, Stop, danger_of
from assistant.interview.script import Script
from assistant.interview.state import State
from assistant.interview.verdict import named_causes

Columns = np.ndarray[tuple[int], np.dtype[np.intp]]


@dataclass(frozen=True)
class Ended:
    """What of a verdict is looked at. `who`: who comes, or the act or the advice. `stop`: the signs that stand."""

    action: str
    first: str
    stop: tuple[str, ...]
    who: str


@dataclass(frozen=True)
class _Known(Posterior):
    """A posterior whose marginals are computed already."""

    by_cause: Floats

    @cached_property
    def marginals(self) -> Floats:
        return self.by_cause


@dataclass(frozen=True)
class Difference:
    """Where one compiled model differs from another of the same causes and reports.

    `priors`: (H,) logarithms of how much likelier each hypothesis is before any answer, None where none differs.
    `states`: observable -> the hypotheses for which it shows something else. `reports`: those mistaken otherwise.
    """

    before: EvidenceModel
    after: EvidenceModel
    priors: Floats | None
    states: Mapping[str, Columns]
    reports: frozenset[str]

    @property
    def observables(self) -> frozenset[str]:
        """Those of which a report may weigh otherwise."""
        return frozenset(self.states) | {self.before.observable_of[report] for report in self.reports}


def difference(before: EvidenceModel, after: EvidenceModel) -> Difference:
    priors = None
    if before.prior_odds is not after.prior_odds and not np.array_equal(before.prior_odds, after.prior_odds):
        priors = after.log_prior_odds - before.log_prior_odds
    states = {}
    for name, old in before.state_given.items():
        new = after.state_given.get(name, old)  # what measurements may come to isn't compiled anew
        if new is not old:
            columns = np.flatnonzero((new != old).any(axis=0))
            if len(columns):
                states[name] = columns
    tables = before.report_given.items()
    reports = frozenset(r for r, old in tables if not np.array_equal(old, after.report_given.get(r, old)))
    return Difference(before, after, priors, states, reports)


class AnsweredCase:
    """One case with the answers that were given in it, assessed under the rules as they are."""

    def __init__(self, script: Script, state: State) -> None:
        self._script = script
        self._state = _without_likely_danger(script, state)
        self._base = assess(script, self._state)
        self._reports = reports_of_observables(script.evidence_model, self._base.evidence)
        dangerous = [number for number, c in enumerate(script.evidence_model.causes) if c in script.dangerous]
        self._dangerous = script.evidence_model.members[:, dangerous].any(axis=1).astype(np.float64)
        self._as_it_is = self._ended(script, self._base.posterior, self._base.danger)

    @property
    def state(self) -> State:
        """The session as its answers alone left it."""
        return self._state

    @property
    def as_it_is(self) -> Ended:
        """How it ends under the rules as they are."""
        return self._as_it_is

    def touched_by(self, change: Difference) -> bool:
        """Whether its probabilities may differ."""
        return change.priors is not None or not change.observables.isdisjoint(self._reports)

    def under(self, script: Script, change: Difference) -> tuple[Ended, float]:
        """How it ends under other rules, and by how much the probability moves that moves most.

        `script` holds the other rules, `change` what of their compiled model differs.
        """
        belief = self._believed(change) if self.touched_by(change) else self._base.posterior
        moved = max(
            float(np.abs(belief.marginals - self._base.posterior.marginals).max()),
            abs(belief.of_set(NOTHING_WRONG) - self._base.posterior.of_set(NOTHING_WRONG)),
        )
        return self._ended(script, belief, None), moved

    def _believed(self, change: Difference) -> Posterior:
        """The posterior, changed where it differs: P' is P times the ratio of the likelihoods, over the new total."""
        old, model = self._base.posterior, change.before
        delta = np.zeros(len(old.probabilities)) if change.priors is None else change.priors.copy()
        for name in change.observables & self._reports.keys():
            reports = self._reports[name]
            columns: Columns | slice = change.states.get(name, np.array([], dtype=np.intp))
            if not change.reports.isdisjoint(report for report, _ in reports):
                columns = slice(None)
            was, now = (
                np.log(state_weights(each, dict(reports))[name] @ each.state_given[name][:, columns])
                for each in (model, change.after)
            )
            delta[columns] += now - was
        rows = np.flatnonzero(delta)
        added = old.probabilities[rows] * np.expm1(delta[rows])
        total = 1 + float(added.sum())
        probabilities = old.probabilities.copy()
        probabilities[rows] += added
        return _Known(model, probabilities / total, (old.marginals + added @ model.held[rows]) / total)

    def _ended(self, script: Script, belief: Posterior, danger: Danger | None) -> Ended:
        dangerous = float(belief.probabilities @ self._dangerous)
        danger = danger or self._danger(script, belief, dangerous)
        first = named_causes(belief)[0][0]
        if danger.stops:
            gravest = script.knowledge.signs[danger.stops[0].sign_id]
            return Ended("stop_and_isolate", first, tuple(stop.sign_id for stop in danger.stops), gravest.who)
        choice = choose(script, replace(self._base, posterior=belief, dangerous=dangerous, danger=danger))
        details = choice.details
        who = details.get("who") or details.get("act") or details.get("advice") or ""
        return Ended(choice.action, first, (), str(who))

    def _danger(self, script: Script, belief: Posterior, dangerous: float) -> Danger:
        """With a stop by likely danger where dangerous causes together are probable enough for one."""
        stops = {stop.sign_id: stop for stop in self._base.danger.stops if stop.source == "finding"}
        likely = dangerous >= script.knowledge.settings.stop_above.share
        if likely:
            cause = next(cause for cause, _ in belief.causes() if cause in script.dangerous)
            sign_id = str(script.knowledge.causes[cause].danger)
            stops.setdefault(sign_id, Stop(sign_id, "belief", cause, 0))
        if not likely and not _by_belief(self._base):
            return self._base.danger
        return danger_of(self._state, script.knowledge, stops)


def _by_belief(assessment: Assessment) -> set[str]:
    return {stop.sign_id for stop in assessment.danger.stops if stop.source == "belief"}


def _without_likely_danger(script: Script, state: State) -> State:
    """The state as if no stop by likely danger that stands now had been recorded: with other numbers it may not."""
    likely = _by_belief(assess(script, state))
    reached = {sign_id: at for sign_id, at in state.reached.items() if sign_id not in likely}
    return replace(state, standing_signs=state.standing_signs - likely, reached=reached)

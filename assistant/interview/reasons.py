"""What a verdict rests on: answers, findings and signs, and what each answer weighs."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from assistant.belief.hypotheses import NOT_CHOSEN, SOMETHING_ELSE, Hypothesis
from assistant.belief.posterior import (
    DECIBANS_PER_NAT,
    Posterior,
    log_likelihoods,
    log_priors,
    posterior,
    weights_of_evidence,
)
from assistant.interview.assess import Assessment
from assistant.interview.script import Script, question_of_key
from assistant.interview.state import Value

TELLING_DECIBANS = 1.0
COMPLAINT = "what_goes_wrong"
MOST_REASONS = 6
HOLDS_UP = 1.05
"""Without an answer that holds the leader up, its odds would be at least this many times smaller."""

POORLY_EXPLAINED = 3.0
"""What was told isn't explained by a set of causes under which it would be told at most once for every three times that
it would under another cause alone, or in a sound oven. Half as often is within what the likelihoods, most of them
assumed, may be wrong by; a third is outside it.
"""
MOST_UNEXPLAINED = 3


@dataclass(frozen=True)
class Reason:
    """An answer, a finding or a sign that the verdict rests on.

    For answers: `decibans` is the weight of its observable for the leader against the runner-up; these add up.
    `without`: the leader's probability if that answer were withdrawn. Behind a stop by likely danger the leader is
    the most probable set with a dangerous cause, the runner-up the most probable without.
    """

    kind: Literal["answer", "finding", "sign"]
    id: str
    value: Value | None = None
    decibans: float | None = None
    without: float | None = None


def leader_and_rival(belief: Posterior) -> tuple[Hypothesis, Hypothesis]:
    """The most probable hypothesis, and the most probable one that shares no cause with it."""
    model, leader = belief.model, belief.leader()
    place = model.place_of[leader]
    apart = ~(model.members & model.members[place]).any(axis=1)
    apart[place] = False
    rivals = np.where(apart, belief.probabilities.round(12), -1.0)
    return leader, model.hypotheses[int(np.argmax(rivals))]


def compared(script: Script, assessment: Assessment) -> tuple[Hypothesis, Hypothesis]:
    """The leader, and the most probable hypothesis without a cause in common that some answer tells from it: what its
    reasons are given against. Where no answer tells any from it, simply the most probable one.
    """
    leader, rival = leader_and_rival(assessment.posterior)
    weights = _weights(script, assessment, leader, rival)
    if max(weights.values(), default=0.0) >= TELLING_DECIBANS:
        return leader, rival
    return leader, _rival_told_apart(assessment, leader) or rival


def answer_reasons(script: Script, assessment: Assessment) -> tuple[Reason, ...]:
    """The answers that speak for the leader against the runner-up, strongest first; of an observable, the stronger.

    Where no answer tells these two apart, as causes with one physical effect, the runner-up is the most probable
    hypothesis that some answer tells from the leader.
    """
    return _reasons_for(script, assessment, *compared(script, assessment))


def holding_up(script: Script, assessment: Assessment) -> tuple[Hypothesis, tuple[Reason, ...]]:
    """The likeliest set of causes that have a name, or nothing wrong; and the answers without which it would lose most,
    against everything else together, most first. Not the complaint.

    `without` as in any reason; there are no decibans, for these don't add up.
    """
    leader = next(each for each, _ in assessment.posterior.ranked() if SOMETHING_ELSE not in each)
    now = _odds(assessment.posterior.of_set(leader))
    told = dict.fromkeys(question_of_key(report) for report, code in assessment.evidence.items() if code != NOT_CHOSEN)
    found = []
    for question_id in told:
        others = {r: code for r, code in assessment.evidence.items() if question_of_key(r) != question_id}
        without = posterior(script.evidence_model, others, assessment.not_fitted).of_set(leader)
        answer = assessment.state.answers.get(question_id)
        if question_id != COMPLAINT and answer is not None and _odds(without) * HOLDS_UP <= now:
            found.append(Reason("answer", question_id, answer.value, without=round(without, 4)))
    return leader, tuple(sorted(found, key=lambda each: each.without or 0.0)[:MOST_REASONS])


def unexplained(script: Script, assessment: Assessment) -> tuple[Hypothesis, tuple[Reason, ...]]:
    """The likeliest set that has a name, as what holds it up is told of; and what it leaves unexplained: the danger
    signs that stand and that no cause of it carries, then the answers that it predicts badly, the worst first. An
    answer that holds it up against all the rest is none of these, though some single cause may predict it better.
    """
    leader, holding = holding_up(script, assessment)
    causes = script.knowledge.causes
    carried = {causes[cause].danger for cause in leader}
    signs = [
        Reason("sign", stop.sign_id)
        for stop in assessment.danger.stops
        if stop.source == "sign" and stop.sign_id not in carried
    ]
    held = {each.id for each in holding}
    badly = [each for each in _predicted_badly(script, assessment, leader) if each not in held]
    told = [Reason("answer", each, assessment.state.answers[each].value) for each in badly[:MOST_UNEXPLAINED]]
    return leader, (*signs, *told)


def _predicted_badly(script: Script, assessment: Assessment, leader: Hypothesis) -> list[str]:
    """The questions whose answers are told too seldom under the leader, the worst first; not those about danger."""
    model = assessment.posterior.model
    can_be = np.isfinite(log_priors(model, assessment.not_fitted))
    single = [place for place, each in enumerate(model.hypotheses) if len(each) < 2 and can_be[place]]
    place = model.place_of[leader]
    nats = {name: float(r[single].max() - r[place]) for name, r in log_likelihoods(model, assessment.evidence).items()}
    found: dict[str, float] = {}
    for report, code in assessment.evidence.items():
        question_id = question_of_key(report)
        lost = nats.get(model.observable_of[report], 0.0)
        is_danger = script.knowledge.questions[question_id].stage == "danger"
        if code != NOT_CHOSEN and lost >= np.log(POORLY_EXPLAINED) and not is_danger:
            found[question_id] = max(lost, found.get(question_id, 0.0))
    return sorted(found, key=lambda each: -round(found[each], 9))


def _odds(probability: float) -> float:
    return probability / max(1 - probability, 1e-12)


def _rival_told_apart(assessment: Assessment, leader: Hypothesis) -> Hypothesis | None:
    """The most probable one that shares no cause with the leader and that an answer speaks against, beside it."""
    belief, model = assessment.posterior, assessment.posterior.model
    place = model.place_of[leader]
    told = {report: code for report, code in assessment.evidence.items() if code != NOT_CHOSEN}
    names = {model.observable_of[report] for report in told}
    rows = [row for name, row in log_likelihoods(model, assessment.evidence).items() if name in names]
    apart = ~(model.members & model.members[place]).any(axis=1)
    for_leader = [(row[place] - row) * DECIBANS_PER_NAT >= TELLING_DECIBANS for row in rows]
    candidates = np.where(apart & np.any(for_leader, axis=0), belief.probabilities.round(12), 0.0)
    best = int(np.argmax(candidates))
    return model.hypotheses[best] if candidates[best] > 0 else None


def feared_and_harmless(script: Script, assessment: Assessment) -> tuple[Hypothesis, Hypothesis]:
    """The most probable set with a dangerous cause, and the most probable one without any."""
    ranked = [hypothesis for hypothesis, _ in assessment.posterior.ranked()]
    feared = next(each for each in ranked if not script.dangerous.isdisjoint(each))
    return feared, next(each for each in ranked if script.dangerous.isdisjoint(each))


def danger_reasons(script: Script, assessment: Assessment) -> tuple[Reason, ...]:
    """The answers that speak for the most probable set with a dangerous cause against the best one without any."""
    return _reasons_for(script, assessment, *feared_and_harmless(script, assessment))


def _weights(script: Script, assessment: Assessment, leader: Hypothesis, rival: Hypothesis) -> dict[str, float]:
    """Report -> the decibans of its observable for the leader; those that weren't named among several tell nothing."""
    decibans = weights_of_evidence(script.evidence_model, assessment.evidence, leader, rival)
    return {
        report: decibans.get(script.evidence_model.observable_of[report], 0.0)
        for report, code in assessment.evidence.items()
        if code != NOT_CHOSEN
    }


def _reasons_for(script: Script, assessment: Assessment, leader: Hypothesis, rival: Hypothesis) -> tuple[Reason, ...]:
    strongest: dict[str, Reason] = {}
    for report, decibans in _weights(script, assessment, leader, rival).items():
        if decibans >= TELLING_DECIBANS:  # what was measured too, tells nothing by itself
            name = script.evidence_model.observable_of[report]
            reason = _reason(script, assessment, report, leader, round(decibans, 1))
            known = strongest.get(name)
            if known is None or (reason.without or 0) < (known.without or 0):
                strongest[name] = reason
    told = sorted(strongest.values(), key=lambda reason: -(reason.decibans or 0))
    once = {(reason.id, reason.value): reason for reason in reversed(told)}
    return tuple(reason for reason in told if once[(reason.id, reason.value)] is reason)[:MOST_REASONS]


def _reason(script: Script, assessment: Assessment, report: str, leader: Hypothesis, decibans: float) -> Reason:
    others = {other: code for other, code in assessment.evidence.items() if _answer_of(other) != _answer_of(report)}
    without = posterior(script.evidence_model, others, assessment.not_fitted).of_set(leader)
    return Reason("answer", question_of_key(report), _value(assessment, report), decibans, round(without, 4))


def _answer_of(report: str) -> list[str]:
    """The question; of one with several answers, also the one that reports, which may report several observables."""
    return report.split("__")[:2]


def _value(assessment: Assessment, report: str) -> Value:
    """What was answered; of several answers, the one that reports."""
    question_id, *item = _answer_of(report)
    given = assessment.state.answers[question_id].value
    if not item and isinstance(given, tuple):
        return given
    return tuple(item) if isinstance(given, tuple) else item[0] if item else assessment.evidence[question_id]


def explanations(assessment: Assessment) -> tuple[Reason, ...]:
    return tuple(Reason("finding", f) for f, effect in assessment.effects.items() if effect.explains)

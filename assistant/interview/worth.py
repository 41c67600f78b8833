"""Which of the questions that may still be asked is worth most: belief's arithmetic on the session's questions."""

from collections.abc import Sequence

import numpy as np

from assistant.belief import value
from assistant.belief.posterior import measured_observables
from assistant.belief.value import Candidate, Outlook, Worth
from assistant.interview.actions import Actions
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.way import WayFinder
from assistant.knowledge.model import Care

MOST_SKIPS = 1
ALREADY = (4, 1)
"""Answers known and not known that are taken to have been seen before the first."""


def candidates(script: Script, assessment: Assessment, finder: WayFinder, status: str) -> tuple[Candidate, ...]:
    """Questions of the stage `signs` that report something not measured yet, of this status, with what they cost.

    A question whose way isn't open yet carries the effort of those that open it.
    """
    found = []
    measured = measured_observables(script.evidence_model, assessment.evidence)
    for question_id, question in script.knowledge.questions.items():
        if question.stage != "signs" or question_id not in script.evidence_model.report_given:
            continue
        if question.observable in measured:
            continue
        if assessment.state.status(question_id) != status or assessment.state.times_skipped(question_id) > MOST_SKIPS:
            continue
        way = finder.way_to(question_id)
        if way is not None:
            found.append(_candidate(script, assessment, question_id, way))
    return tuple(found)


def _candidate(script: Script, assessment: Assessment, question_id: str, way: tuple[str, ...]) -> Candidate:
    questions = [script.knowledge.questions[q] for q in (*way, question_id)]
    costs = script.region(assessment.state.region).costs
    minutes = sum(question.minutes.value for question in questions)
    care = sum(costs.care[question.care].value for question in questions)
    tired = 1 + len(assessment.state.answers) / script.knowledge.settings.patience.value
    return Candidate(
        question_id=question_id,
        effort=minutes * costs.minute.value + care + len(questions) * costs.question.value * tired,
        minutes=minutes,
        opens=script.knowledge.settings.way_opens.share ** len(way) * _known_share(script, assessment),
        way=way,
    )


def _known_share(script: Script, assessment: Assessment) -> float:
    """How likely this person is to know an answer: a rule of succession over what was asked (Laplace 1814).

    Before anything is asked it stands at ALREADY[0] of sum(ALREADY).
    """
    questions = script.knowledge.questions
    told = [a.status for q, a in assessment.state.answers.items() if q in questions and questions[q].observable]
    known, unknown = told.count("answered"), told.count("not_sure")
    return (known + ALREADY[0]) / (known + unknown + sum(ALREADY))


def towards_danger(script: Script, assessment: Assessment, open_ones: Sequence[Candidate]) -> str | None:
    """The question that may tell most about a dangerous cause, while one is probable enough to be asked about.

    Injury has no price, so it isn't weighed against money. Only questions count whose answer is likely enough to carry
    the dangerous causes together over a threshold. Of these the one comes first whose answers are expected to carry
    them farthest beyond it in a minute: close to a threshold nearly any answer crosses it, and tells nothing. Only
    questions that need no more than a cold look are asked for it.
    """
    settings = script.knowledge.settings
    questions = script.knowledge.questions
    now = assessment.dangerous
    near = [c for c in open_ones if not c.way and questions[c.question_id].care.rank <= Care.LOOK_COLD.rank]
    if not near or not settings.danger_asked_above.share <= now < settings.stop_above.share:
        return None
    limit = settings.stop_above if now >= settings.dangerous_above.share else settings.dangerous_above
    outlook = _outlook(script, assessment, near, value.MASS_DROPPED_FOR_DANGER)
    over = _over_threshold(script, outlook, limit.share)
    telling = [each for each in near if over[each.question_id][0] >= settings.danger_told_above.share]
    best = max(telling, key=lambda each: round(over[each.question_id][1] / each.minutes, 6), default=None)
    return best.question_id if best is not None else None


def _over_threshold(script: Script, outlook: Outlook, limit: float) -> dict[str, tuple[float, float]]:
    """question -> the probability that its answer carries the dangerous causes together over the threshold, and how
    far beyond it its answers are expected to carry them, in probability.
    """
    dangerous = [script.evidence_model.causes.index(cause) for cause in script.dangerous]
    of_danger = outlook.probabilities * outlook.members[:, dangerous].any(axis=1)
    told = outlook.given @ outlook.probabilities
    beyond = outlook.given @ of_danger - limit * told
    return {
        question_id: (float(told[rows][beyond[rows] >= 0].sum()), float(np.maximum(beyond[rows], 0).sum()))
        for question_id, rows in outlook.rows.items()
    }


def most_worth(
    script: Script, assessment: Assessment, open_ones: Sequence[Candidate], actions: Actions
) -> Candidate | None:
    """The question that is worth most, two steps ahead, or None where none is worth its effort."""
    if not open_ones:
        return None
    best = value.best_of(foreseen(script, assessment, open_ones, actions))
    if best is None:
        return None
    return next(each for each in open_ones if each.question_id == best.question_id)


def first_step(candidate: Candidate) -> str:
    """The question itself, or the first one that opens the way to it."""
    return (*candidate.way, candidate.question_id)[0]


def foreseen(
    script: Script, assessment: Assessment, open_ones: Sequence[Candidate], actions: Actions
) -> tuple[Worth, ...]:
    """The worth of each, two steps ahead. Remembered for the script: the same evidence gives the same worths."""
    key = (assessment.state.region, tuple(sorted(assessment.evidence.items())), assessment.not_fitted, actions)

    def weighed() -> tuple[Worth, ...]:
        outlook = _outlook(script, assessment, open_ones, value.MASS_DROPPED)
        decision = script.decision(assessment.state.region)
        return value.two_steps(decision, script.evidence_model, outlook, open_ones, actions)

    return script.foreseen.get((key, tuple(open_ones)), weighed)


def one_step_ahead(
    script: Script, assessment: Assessment, open_ones: Sequence[Candidate], actions: Actions
) -> tuple[Worth, ...]:
    """The worth of each by itself, in the same order: what shows which questions tell only together with another."""
    outlook = _outlook(script, assessment, open_ones, value.MASS_DROPPED)
    return value.one_step(script.decision(assessment.state.region), outlook, open_ones, actions)


def most_telling(
    script: Script, assessment: Assessment, open_ones: Sequence[Candidate], least: float
) -> Candidate | None:
    """The one that tells most of what is likeliest, if that is at least so many bits."""
    outlook = _outlook(script, assessment, open_ones, value.MASS_DROPPED)
    bits = value.bits_told(outlook)
    telling = [each for each in open_ones if bits[each.question_id] >= least]
    return max(telling, key=lambda each: round(bits[each.question_id], 6), default=None)


def telling_together(
    script: Script, assessment: Assessment, open_ones: Sequence[Candidate], most: int, least: float
) -> list[str]:
    """At most so many of them, each telling no less than `least` bits after those before it of what is likeliest."""
    outlook = _outlook(script, assessment, open_ones, value.MASS_DROPPED_FOR_TESTS)
    return value.most_telling_together(outlook, open_ones, most, least)


def _outlook(script: Script, assessment: Assessment, open_ones: Sequence[Candidate], dropped: float) -> Outlook:
    asked = [each.question_id for each in open_ones]
    return value.look_ahead(script.evidence_model, assessment.evidence, assessment.posterior, asked, dropped)

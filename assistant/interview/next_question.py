"""Which question comes next, and why: danger, then the opening in the rules' order, then what is worth most."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from assistant.belief.decision import least_action
from assistant.interview.actions import Actions, actions_in_reach, allowed_actions, way_to_action
from assistant.interview.assess import Assessment
from assistant.interview.choice import little_is_known
from assistant.interview.script import Script
from assistant.interview.way import WayFinder, may_ask
from assistant.interview.worth import (
    candidates,
    first_step,
    most_telling,
    most_worth,
    one_step_ahead,
    towards_danger,
)
from assistant.knowledge.model import Care

SYMPTOM_OF = 10
"""An observable that so many causes show is a symptom, and not the sign of one of them."""
MOST_TRIED = 8
"""Who couldn't answer by then isn't asked more only to know something."""

LEAST_OFFERED_BITS = 0.25
"""A measurement that would tell less of what is wrong isn't offered."""

Ground = Literal["danger", "finding", "order", "likely_danger", "worth", "little_known", "ending", "offer"]


@dataclass(frozen=True)
class Chosen:
    """The next question and the ground on which it is chosen.

    `by`: the finding that asks for it, the stage in whose order it stands, or the question that is worth most or is
    offered, to which this one may only open the way; empty for danger, where little is known, and where the likely
    ending waits.
    """

    question_id: str
    ground: Ground
    by: str = ""


def choose_next(script: Script, assessment: Assessment) -> str | None:
    """The id of the next question, or None when it is time for the verdict."""
    chosen = next_chosen(script, assessment)
    return chosen.question_id if chosen is not None else None


def next_chosen(script: Script, assessment: Assessment) -> Chosen | None:
    """The next question with its ground, or None when it is time for the verdict."""
    danger = assessment.danger
    if danger.urgent_question is not None:
        return Chosen(danger.urgent_question, "danger")
    if danger.stops and not (danger.off_confirmed and danger.ask_whether_off):
        return None
    if danger.open_questions:
        return Chosen(danger.open_questions[0], "danger")
    if any(effect.hands_on_to for effect in assessment.effects.values()) or assessment.state.finished:
        return None
    wanted = next(_wanted(script, assessment), None) or next(_in_order(script, assessment, "complaint"), None)
    if wanted is not None:
        return wanted
    if not danger.stops:
        best = _best(script, assessment)
        if best is not None:
            return best
    if not danger.stops and not visit_comes(script, assessment):
        return None
    if danger.stops:
        return next(_in_order(script, assessment, "visit"), None)
    looked = next(_in_order(script, assessment, "look"), None)
    return looked or _offered(script, assessment) or next(_in_order(script, assessment, "visit"), None)


def _offered(script: Script, assessment: Assessment) -> Chosen | None:
    """Where somebody comes anyway, the measurement that would tell most of what is wrong.

    Its minutes may not pay for the household, so it is theirs to say no. One is offered, and no more: the next would
    begin with an oven that isn't cold. What opens the way to it is asked first.
    """
    measuring = script.evidence_model.instruments
    if any(assessment.state.status(question_id) != "not_asked" for question_id in measuring):
        return None
    open_ones = [
        each
        for each in candidates(script, assessment, WayFinder(script, assessment), "not_asked")
        if each.question_id in measuring
    ]
    telling = most_telling(script, assessment, open_ones, LEAST_OFFERED_BITS)
    return Chosen(first_step(telling), "offer", telling.question_id) if telling is not None else None


def _wanted(script: Script, assessment: Assessment) -> Iterator[Chosen]:
    """What findings ask for."""
    for finding_id, effect in assessment.effects.items():
        if effect.asks and _not_asked(assessment, effect.asks) and may_ask(script, assessment, effect.asks):
            yield Chosen(effect.asks, "finding", finding_id)


def _not_asked(assessment: Assessment, question_id: str) -> bool:
    return assessment.state.status(question_id) == "not_asked"


def _in_order(script: Script, assessment: Assessment, stage: str) -> Iterator[Chosen]:
    of_stage = [(question.order, q) for q, question in script.knowledge.questions.items() if question.stage == stage]
    for _, question_id in sorted(of_stage):
        if _not_asked(assessment, question_id) and may_ask(script, assessment, question_id):
            yield Chosen(question_id, "order", stage)


def best_question(script: Script, assessment: Assessment) -> str | None:
    """By danger first, then by worth, then what the likely ending waits for.

    A question that was skipped may come back once, after the others.
    """
    best = _best(script, assessment)
    return best.question_id if best is not None else None


def _best(script: Script, assessment: Assessment) -> Chosen | None:
    finder = WayFinder(script, assessment)
    actions = actions_in_reach(script, assessment, finder)
    for status in ("not_asked", "skipped"):
        open_ones = candidates(script, assessment, finder, status)
        dangerous = towards_danger(script, assessment, open_ones)
        if dangerous is not None:
            return Chosen(dangerous, "likely_danger")
        best = most_worth(script, assessment, open_ones, actions)
        if best is not None:
            return Chosen(first_step(best), "worth", best.question_id)
    if little_is_known(assessment) and (telling := most_telling_if_few_were_asked(script, assessment, actions)):
        return Chosen(telling, "little_known")
    decision = script.decision(assessment.state.region)
    ending = least_action(decision, assessment.posterior.marginals, actions)
    waited_for = next(iter(way_to_action(script, assessment, finder, ending)), None)
    return Chosen(waited_for, "ending") if waited_for is not None else None


def most_telling_if_few_were_asked(script: Script, assessment: Assessment, actions: Actions) -> str | None:
    """While next to nothing is known and not much was tried: of the common symptoms, asked from memory, the one that
    tells most in a minute.
    """
    questions = script.knowledge.questions
    shown = Counter(name for cause in script.knowledge.causes.values() for name in cause.shows)
    tried = [q for q in assessment.state.answers if q in questions and questions[q].observable is not None]
    if len(tried) >= MOST_TRIED:
        return None
    finder = WayFinder(script, assessment)
    open_ones = candidates(script, assessment, finder, "not_asked")
    from_memory = [
        c
        for c in open_ones
        if not c.way
        and questions[c.question_id].care == Care.TALK
        and shown[questions[c.question_id].observable or ""] >= SYMPTOM_OF
    ]
    worths = one_step_ahead(script, assessment, from_memory, actions)
    best = max(worths, key=lambda worth: round(worth.bits_per_minute, 6), default=None)
    return best.question_id if best is not None else None


def visit_comes(script: Script, assessment: Assessment) -> bool:
    """Whether belief, within what is allowed, ends in a visit."""
    decision = script.decision(assessment.state.region)
    allowed = allowed_actions(script, assessment)
    return least_action(decision, assessment.posterior.marginals, allowed).ending == "book_visit"

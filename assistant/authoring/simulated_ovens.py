"""Ovens and their householders' answers, drawn from the rules' own tables.

Such ovens behave exactly as belief expects, so they show whether the rules agree with themselves and what their
questions can tell apart. They never show how often the program would be right about real ovens.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal
from zlib import crc32

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import CHOSEN, NOTHING_WRONG, EvidenceModel, Hypothesis, item_key
from assistant.knowledge.danger_questions import NONE, is_danger_question
from assistant.knowledge.model import Knowledge

How = Literal["faulty", "asked_about", "each_cause"]
"""By prior odds where something is wrong; by prior odds, sound ovens too; each cause alone as often as none."""

AT_THE_OVEN = 0.7
MOST_TRIES = 200

FOLLOWS: Mapping[str, tuple[str, str, str, str]] = {
    "sign_too_hot": ("runs_too_hot", "far", "burns_in_minutes", "no"),
    "sign_lights_dim_elsewhere": ("lights_elsewhere", "swinging", "bright_and_dim", "no"),
    "ever_tripped": ("breaker", "off_again", "lately", "never"),
}
"""Question -> an observable, its state, the answer in that state, and the answer in any other."""
CHANGES: Mapping[str, tuple[str, str]] = {
    "moved_or_fitted": ("began_with_work", "yes"),
    "power_cut": ("clock_state", "flashing"),
}
"""What may have changed -> the observable and its state by which it did."""


@dataclass(frozen=True)
class Reply:
    """What would be answered to one question: `code`, or where the person is mistaken, `wrong`.

    `slip` and `doubt` are drawn evenly from 0 to 1: below the rate of mistakes the wrong answer is given, below the
    rate of not knowing, none. So a higher rate changes more answers of the same oven, and no others.
    """

    code: str
    wrong: str
    slip: float
    doubt: float


@dataclass(frozen=True)
class DrawnOven:
    """`states`: observable -> its state. `replies`: of questions that report. `fixed`: answers to the others."""

    number: int
    hypothesis: Hypothesis
    states: dict[str, str]
    replies: dict[str, Reply]
    fixed: dict[str, str | list[str]]


def draw_ovens(knowledge: Knowledge, model: EvidenceModel, how: How, number: int, seed: int) -> tuple[DrawnOven, ...]:
    """Each oven hangs on the seed and its own number alone."""
    return tuple(draw_oven(knowledge, model, how, each, seed) for each in range(number))


def draw_oven(knowledge: Knowledge, model: EvidenceModel, how: How, number: int, seed: int) -> DrawnOven:
    chance = np.random.default_rng([seed, number])
    hypothesis = draw_hypothesis(model, how, number, chance)
    return _oven_with(knowledge, model, hypothesis, number, (seed, number), chance)


def oven_with_cause(knowledge: Knowledge, model: EvidenceModel, cause: str, number: int, seed: int) -> DrawnOven:
    """One that has this cause alone; it hangs on the seed, the cause's name and the number, and on no other oven."""
    key = (seed, crc(cause), number)
    return _oven_with(knowledge, model, (cause,), number, key, np.random.default_rng(key))


def _oven_with(
    knowledge: Knowledge,
    model: EvidenceModel,
    hypothesis: Hypothesis,
    number: int,
    key: tuple[int, ...],
    chance: np.random.Generator,
) -> DrawnOven:
    states = draw_states(knowledge, model, hypothesis, chance)
    replies = {
        question_id: draw_reply(model, question_id, knowledge, states, np.random.default_rng([*key, crc(question_id)]))
        for question_id, question in knowledge.questions.items()
        if question.observable
    }
    return DrawnOven(number, hypothesis, states, replies, _fixed(knowledge, model, hypothesis, states, chance))


def crc(text: str) -> int:
    return crc32(text.encode())


def draw_hypothesis(model: EvidenceModel, how: How, number: int, chance: np.random.Generator) -> Hypothesis:
    if how == "each_cause":
        each: Sequence[Hypothesis] = (NOTHING_WRONG, *((cause,) for cause in model.causes))
        return each[number % len(each)]
    odds = model.prior_odds.copy()
    if how == "faulty":
        odds[model.place_of[NOTHING_WRONG]] = 0.0
    return model.hypotheses[int(chance.choice(len(odds), p=odds / odds.sum()))]


def draw_states(
    knowledge: Knowledge, model: EvidenceModel, hypothesis: Hypothesis, chance: np.random.Generator
) -> dict[str, str]:
    column = model.place_of[hypothesis]
    return {
        name: one_of(knowledge.observables[name].states, given[:, column], chance)
        for name, given in model.state_given.items()
    }


def one_of(names: Sequence[str], shares: Floats, chance: np.random.Generator) -> str:
    return names[int(chance.choice(len(names), p=shares / shares.sum()))]


def draw_reply(
    model: EvidenceModel, report: str, knowledge: Knowledge, states: Mapping[str, str], chance: np.random.Generator
) -> Reply:
    name = model.observable_of[report]
    codes = model.codes[report]
    state = knowledge.observables[name].states.index(states[name])
    code = one_of(codes, model.report_given[report][:, state], chance)
    wrong = [other for other in codes if other != code] or [code]
    return Reply(code, wrong[int(chance.integers(len(wrong)))], float(chance.random()), float(chance.random()))


def _fixed(
    knowledge: Knowledge,
    model: EvidenceModel,
    hypothesis: Hypothesis,
    states: Mapping[str, str],
    chance: np.random.Generator,
) -> dict[str, str | list[str]]:
    """Answers to the questions that report nothing by themselves, as far as this oven has a say in them."""
    questions = knowledge.questions
    found: dict[str, str | list[str]] = {
        question_id: draw_complaint(question_id, model, knowledge, hypothesis, states, chance)
        for question_id in complaint_questions(knowledge)
    }
    if "which_worry" in questions:
        worries = [choice for choice in questions["which_worry"].choices if choice != "none"]
        found["which_worry"] = [worries[int(chance.integers(len(worries)))]]
    found["person_at_oven"] = "yes" if chance.random() < AT_THE_OVEN else "no"
    found["what_changed"] = what_changed(states)
    for question_id, (name, state, then, otherwise) in FOLLOWS.items():
        found[question_id] = then if states.get(name) == state else otherwise
    return {question_id: value for question_id, value in found.items() if question_id in questions}


def complaint_questions(knowledge: Knowledge) -> Iterator[str]:
    """Those of which several answers may be given that each report something; nobody tells of danger at first."""
    for question_id, question in knowledge.questions.items():
        reports = any(choice.said_when for choice in question.choices.values())
        if question.kind == "choices" and reports and not is_danger_question(question_id):
            yield question_id


def draw_complaint(
    question_id: str,
    model: EvidenceModel,
    knowledge: Knowledge,
    hypothesis: Hypothesis,
    states: Mapping[str, str],
    chance: np.random.Generator,
) -> list[str]:
    """Each item as often as the drawn states have it said; none, where that may be said.

    Else it is drawn again until there is one. Of a sound oven, where nothing is said at first, the complaint is a
    worry. Where the question has no answer for want of any, nothing is said: an empty list.
    """
    choices = knowledge.questions[question_id].choices
    shares = {
        choice_id: said_share(model, knowledge, question_id, choice_id, states)
        for choice_id, choice in choices.items()
        if choice.said_when
    }
    instead = NONE if NONE in choices else "a_worry" if hypothesis == NOTHING_WRONG else "something_else_wrong"
    for _ in range(MOST_TRIES if instead == "something_else_wrong" else 1):
        said = [choice for choice, share in shares.items() if chance.random() < share]
        if said:
            return said
    return [instead] if instead in choices else []


def said_share(
    model: EvidenceModel, knowledge: Knowledge, question_id: str, choice_id: str, states: Mapping[str, str]
) -> float:
    """How often the item is named: what it says of several observables is multiplied, as in belief."""
    share = 1.0
    for name in knowledge.questions[question_id].choices[choice_id].said_when:
        report = item_key(item_key(question_id, choice_id), name)
        row = model.report_given[report][model.codes[report].index(CHOSEN)]
        share *= float(row[knowledge.observables[name].states.index(states[name])])
    return share


def what_changed(states: Mapping[str, str]) -> list[str]:
    return [change for change, (name, state) in CHANGES.items() if states.get(name) == state] or ["none"]

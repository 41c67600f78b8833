"""Ovens and their householders' answers, drawn from the program's own tables.

Such ovens behave exactly as belief expects, so they show whether the program is consistent and what its questions
can tell apart. They never show how often it would be right about real ovens.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal
from zlib import crc32

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import CHOSEN, NOTHING_WRONG, EvidenceModel, Hypothesis, item_key
from assistant.knowledge.model import Knowledge, Question

How = Literal["faulty", "asked_about", "each_cause"]
"""By prior odds where something is wrong; by prior odds, sound ovens too; each cause alone as often as none."""

AT_THE_OVEN = 0.7
COMPLAINT = "what_goes_wrong"
MOST_TRIES = 200


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
    states = draw_states(knowledge, model, hypothesis, chance)
    replies = {
        question_id: draw_reply(
            model, question_id, knowledge, states, np.random.default_rng([seed, number, crc(question_id)])
        )
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
        odds[model.hypotheses.index(NOTHING_WRONG)] = 0.0
    return model.hypotheses[int(chance.choice(len(odds), p=odds / odds.sum()))]


def draw_states(
    knowledge: Knowledge, model: EvidenceModel, hypothesis: Hypothesis, chance: np.random.Generator
) -> dict[str, str]:
    column = model.hypotheses.index(hypothesis)
    return {
        name: one_of(knowledge.observables[name].states, given[:, column], chance)
        for name, given in model.state_given.items()
    }


def one_of(names: Sequence[str], shares: Floats, chance: np.random.Generator) -> str:
    return names[int(chance.choice(len(names), p=shares / shares.sum()))]


def draw_reply(
    model: EvidenceModel, report: str, knowledge: Knowledge, states: dict[str, str], chance: np.random.Generator
) -> Reply:
    name = model.observable_of[report]
    codes = model.codes[report]
    state = knowledge.observables[name].states.index(states[name])
    code = one_of(codes, model.report_given[report][:, state], chance)
    wrong = [other for other in codes if other != code]
    return Reply(code, wrong[int(chance.integers(len(wrong)))], float(chance.random()), float(chance.random()))


def _fixed(
    knowledge: Knowledge,
    model: EvidenceModel,
    hypothesis: Hypothesis,
    states: dict[str, str],
    chance: np.random.Generator,
) -> dict[str, str | list[str]]:
    """Answers to the questions that report nothing by themselves, as far as this oven has a say in them."""
    worries = [choice for choice in knowledge.questions["which_worry"].choices if choice != "none"]
    far_too_hot = states["runs_too_hot"] == "far"
    return {
        COMPLAINT: draw_complaint(knowledge.questions[COMPLAINT], model, knowledge, hypothesis, states, chance),
        "which_worry": [worries[int(chance.integers(len(worries)))]],
        "person_at_oven": "yes" if chance.random() < AT_THE_OVEN else "no",
        "what_changed": what_changed(states),
        "sign_too_hot": "burns_in_minutes" if far_too_hot else "no",
        "sign_lights_dim_elsewhere": "bright_and_dim" if states["lights_elsewhere"] == "swinging" else "no",
        "ever_tripped": "lately" if states["breaker"] == "off_again" else "never",
    }


def draw_complaint(
    question: Question,
    model: EvidenceModel,
    knowledge: Knowledge,
    hypothesis: Hypothesis,
    states: dict[str, str],
    chance: np.random.Generator,
) -> list[str]:
    """Each item as often as the drawn states have it said; drawn again until there is one.

    Of a sound oven, where nothing is said at first, the complaint is a worry.
    """
    shares = {c: said_share(model, knowledge, c, states) for c, choice in question.choices.items() if choice.said_when}
    for _ in range(MOST_TRIES):
        said = [choice for choice, share in shares.items() if chance.random() < share]
        if said:
            return said
        if hypothesis == NOTHING_WRONG:
            return ["a_worry"]
    return ["something_else_wrong"]


def said_share(model: EvidenceModel, knowledge: Knowledge, choice_id: str, states: dict[str, str]) -> float:
    """How often the item is named: what it says of several observables is multiplied, as in belief."""
    share = 1.0
    for name in knowledge.questions[COMPLAINT].choices[choice_id].said_when:
        report = item_key(item_key(COMPLAINT, choice_id), name)
        row = model.report_given[report][model.codes[report].index(CHOSEN)]
        share *= float(row[knowledge.observables[name].states.index(states[name])])
    return share


def what_changed(states: dict[str, str]) -> list[str]:
    changes = {
        "moved_or_fitted": states["began_with_work"] == "yes",
        "power_cut": states["clock_state"] == "flashing",
    }
    return [change for change, fits in changes.items() if fits] or ["none"]

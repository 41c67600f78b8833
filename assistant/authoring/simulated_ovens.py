"""Ovens and their householders' answers, drawn from the rules' own tables.

Such ovens behave exactly as belief expects, so they show whether the rules agree with themselves and what their
questions can tell apart. They never show how often the program would be right about real ovens.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from assistant.authoring.simulated_answers import Key, answers_of_household, chance_for, crc, region_of
from assistant.authoring.simulated_interview import REGION
from assistant.belief.combination import Floats
from assistant.belief.hypotheses import NOTHING_WRONG, EvidenceModel, Hypothesis
from assistant.knowledge.model import Knowledge

How = Literal["faulty", "asked_about", "each_cause"]
"""By prior odds where something is wrong; by prior odds, sound ovens too; each cause alone as often as none."""


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
    """`states`: observable -> its state. `replies`: of questions that report. `fixed`: answers to the others, and to
    those that the oven's parts decide. `region`: where it stands.
    """

    number: int
    hypothesis: Hypothesis
    region: str
    states: dict[str, str]
    replies: dict[str, Reply]
    fixed: dict[str, str | list[str]]


def draw_ovens(
    knowledge: Knowledge, model: EvidenceModel, how: How, number: int, seed: int, region: str = REGION
) -> tuple[DrawnOven, ...]:
    """Each oven hangs on the seed and its own number alone."""
    return tuple(draw_oven(knowledge, model, how, each, seed, region) for each in range(number))


def draw_oven(
    knowledge: Knowledge, model: EvidenceModel, how: How, number: int, seed: int, region: str = REGION
) -> DrawnOven:
    hypothesis = draw_hypothesis(model, how, number, np.random.default_rng([seed, number]))
    return _oven_with(knowledge, model, hypothesis, number, (seed, number), region)


def oven_with_cause(
    knowledge: Knowledge, model: EvidenceModel, cause: str, number: int, seed: int, region: str = REGION
) -> DrawnOven:
    """One that has this cause alone; it hangs on the seed, the cause's name and the number, and on no other oven."""
    return _oven_with(knowledge, model, (cause,), number, (seed, crc(cause), number), region)


def _oven_with(
    knowledge: Knowledge, model: EvidenceModel, hypothesis: Hypothesis, number: int, key: Key, region: str
) -> DrawnOven:
    states = draw_states(knowledge, model, hypothesis, chance_for(key, "states"))
    replies = {
        question_id: draw_reply(model, question_id, knowledge, states, chance_for(key, question_id))
        for question_id, question in knowledge.questions.items()
        if question.observable
    }
    where = region_of(knowledge, hypothesis, region)
    fixed = answers_of_household(knowledge, model, hypothesis, states, where, key)
    return DrawnOven(number, hypothesis, where, states, replies, fixed)


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
        name: one_of(observable.states, model.state_given[name][:, column], chance)
        for name, observable in knowledge.observables.items()
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

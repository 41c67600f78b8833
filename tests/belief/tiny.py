"""Small invented evidence models, made without files."""

import random

from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import (
    Band,
    BeliefSettings,
    Care,
    Cause,
    Choice,
    Figure,
    Knowledge,
    NumberRange,
    Observable,
    Ovens,
    Question,
)
from tests.knowledge.broken import SOUND

NEXT_TO_NOTHING = 1e-10
"""Percent: for what can't be 0 in a model, and is 0 in a published example."""

WORDS = {"almost always": 95, "often": 75, "sometimes": 30, "seldom": 10, "almost never": 2}


def figure(value, unit="percent"):
    return Figure(value=value, unit=unit, source="a test")


def figures(**values):
    return {name: figure(value) for name, value in values.items()}


def sound_knowledge():
    return load_knowledge(SOUND, None)


def settings(something_else=5.0, breadth=50.0):
    return BeliefSettings(
        something_else=figure(something_else),
        something_else_breadth=figure(breadth),
        settled_at=figure(90),
        worth_asking_above=figure(2),
        tells_apart_at_least=figure(10),
        most_questions=figure(20, "questions"),
        dangerous_above=figure(15),
        habit_first_above=figure(35),
        words={word: figure(value) for word, value in WORDS.items()},
    )


def observable(**normal):
    return Observable(note="x", states=tuple(normal), normal=figures(**normal))


def cause(rate, shows, needs=()):
    return Cause(
        note="x",
        kind="fault",
        base_rate=figure(rate),
        mended_by="appliance_engineer",
        can_mislead="x",
        needs=needs,
        shows=shows,
    )


def question(observable_id, means, mistakes=None, table=None):
    """A choice whose answers mean these states."""
    return Question(
        note="x",
        stage="signs",
        order=1,
        kind="choice",
        care=Care.TALK,
        minutes=figure(1, "minutes"),
        observable=observable_id,
        choices={code: Choice(means=states) for code, states in means.items()},
        mistakes=None if mistakes is None else figure(mistakes),
        table=table,
    )


def number_question(observable_id, bands, mistakes):
    """Bands as (code, below, states)."""
    return Question(
        note="x",
        stage="signs",
        order=1,
        kind="number",
        care=Care.TALK,
        minutes=figure(1, "minutes"),
        observable=observable_id,
        number=NumberRange(
            unit="degrees_celsius",
            least=0,
            most=300,
            bands={code: Band(below=below, means=states) for code, below, states in bands},
        ),
        mistakes=figure(mistakes),
    )


def knowledge(observables, questions, causes, **of_settings):
    return Knowledge(
        fingerprint="",
        settings=settings(**of_settings),
        ovens=Ovens(parts={}, functions={}),
        observables=observables,
        questions=questions,
        causes=causes,
        findings={},
        signs={},
        regions={},
        roles={},
        acts={},
        advice={},
        steps={},
    )


def random_distribution(chance, names):
    parts = [chance.randint(1, 100) for _ in names]
    return {name: figure(100 * part / sum(parts)) for name, part in zip(names, parts, strict=True)}


def random_knowledge(seed):
    """Two to three observables, two to four causes, three to six questions of every kind that reports."""
    chance = random.Random(seed)
    observables = {}
    for number in range(chance.randint(2, 3)):
        states = tuple(f"s{state}" for state in range(chance.randint(2, 4)))
        observables[f"o{number}"] = Observable(note="x", states=states, normal=random_distribution(chance, states))
    causes = {}
    for number in range(chance.randint(2, 4)):
        shown = chance.sample(list(observables), chance.randint(1, len(observables)))
        shows = {name: random_distribution(chance, observables[name].states) for name in shown}
        causes[f"c{number}"] = cause(chance.uniform(0.1, 40), shows, needs=(f"p{number}",))
    questions = {f"q{number}": random_question(chance, observables) for number in range(chance.randint(3, 6))}
    return knowledge(
        observables, questions, causes, something_else=chance.uniform(1, 20), breadth=chance.uniform(0, 100)
    )


def random_question(chance, observables):
    name = chance.choice(list(observables))
    states = observables[name].states
    kind = chance.choice(["table", "mistakes", "number"])
    codes = [f"a{number}" for number in range(len(states))]
    if kind == "table":
        table = {state: random_distribution(chance, codes) for state in states}
        return question(name, dict.fromkeys(codes, ()), table=table)
    means = {code: (state,) for code, state in zip(codes, states, strict=True)}
    if kind == "number":
        limits = [10.0 * (number + 1) for number in range(len(codes) - 1)]
        bands = [(code, below, means[code]) for code, below in zip(codes, [*limits, None], strict=True)]
        return number_question(name, bands, chance.uniform(1, 49))
    means[codes[0]] = states[:2]
    return question(name, means, mistakes=chance.uniform(1, 49))


def random_answers(model, seed):
    chance = random.Random(seed)
    asked = chance.sample(list(model.codes), chance.randint(1, len(model.codes)))
    return {question_id: chance.choice(model.codes[question_id]) for question_id in asked}

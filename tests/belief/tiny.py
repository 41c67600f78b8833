"""Small invented evidence models, made without files."""

import random
from itertools import combinations

import numpy as np

from assistant.belief.decision import Action, Decision
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import (
    Band,
    BeliefSettings,
    Care,
    Cause,
    Choice,
    Costs,
    Figure,
    Knowledge,
    NumberRange,
    Observable,
    Ovens,
    Pair,
    Question,
    Region,
)
from assistant.knowledge.regions import Supply
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


def easily_asked():
    """The sound folder where every cause is common and every question costs next to nothing: interviews ask them."""
    knowledge = sound_knowledge()
    causes = {c: cause.model_copy(update={"base_rate": figure(25)}) for c, cause in knowledge.causes.items()}
    cheap = {"care": Care.TALK, "minutes": figure(0.1, "minutes"), "ask_when": ()}
    questions = {
        q: question.model_copy(update=cheap) if question.observable else question
        for q, question in knowledge.questions.items()
    }
    return knowledge.model_copy(update={"causes": causes, "questions": questions})


def settings(something_else=5.0, breadth=50.0, asked_about=1.0, parts=3, tests=5):
    return BeliefSettings(
        something_else=figure(something_else),
        something_else_breadth=figure(breadth),
        asked_about=figure(asked_about, "times"),
        words={word: figure(value) for word, value in WORDS.items()},
        dangerous_above=figure(15),
        stop_above=figure(40),
        danger_asked_above=figure(3),
        danger_told_above=figure(2),
        way_opens=figure(60),
        patience=figure(8, "questions"),
        proposed_above=figure(25),
        parts_brought=figure(parts, "parts"),
        tests_planned=figure(tests, "tests"),
    )


PRICES = {
    "return_visit": 60,
    "part_brought": 12,
    "test": 6,
    "fault_left": 150,
    "habit_left": 30,
    "tried_in_vain": 25,
    "habit_visited": 40,
    "act": 1,
    "advice": 2,
    "minute": 0.3,
    "question": 0.4,
}


def costs(engineer=85, electrician=95, **prices):
    visit = {"appliance_engineer": figure(engineer, "money"), "electrician": figure(electrician, "money")}
    care = {each: figure(number, "money") for number, each in enumerate(Care)}
    return Costs(visit=visit, care=care, **{name: figure(p, "money") for name, p in (PRICES | prices).items()})


def region(of_costs):
    volts = figure(230, "volts")
    supply = Supply(nominal=volts, lowest=volts, highest=volts)
    return Region(note="x", lines={}, supply=supply, currency="XTS", time_zone="Etc/UTC", costs=of_costs)


def observable(ordered=True, **normal):
    return Observable(note="x", states=tuple(normal), ordered=ordered, normal=figures(**normal))


def cause(rate, shows, needs=(), part=None, mended_by="appliance_engineer", **others):
    return Cause(
        note="x",
        kind="fault",
        base_rate=figure(rate),
        mended_by=mended_by,
        can_mislead="x",
        needs=needs,
        part=part,
        shows=shows,
        **others,
    )


def habit(rate, shows, needs=(), advice="use_it_so", **others):
    if "act" not in others:
        others["advice"] = advice
    return Cause(
        note="x",
        kind="habit",
        base_rate=figure(rate),
        mended_by="householder",
        can_mislead="x",
        needs=needs,
        shows=shows,
        **others,
    )


def pair(first, second, together=None, shows=None):
    rate = None if together is None else figure(together)
    return Pair(note="x", causes=(first, second), together=rate, can_mislead="x", shows=shows or {})


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


def choices_question(said_when):
    """Several answers may be chosen: code -> observable -> state -> percent of times that it is among them."""
    choices = {
        code: Choice(said_when={name: figures(**shares) for name, shares in of_each.items()})
        for code, of_each in said_when.items()
    }
    return Question(
        note="x",
        stage="complaint",
        order=1,
        kind="choices",
        care=Care.TALK,
        minutes=figure(1, "minutes"),
        choices=choices,
    )


def knowledge(observables, questions, causes, pairs=(), prices=None, **of_settings):
    return Knowledge(
        fingerprint="",
        settings=settings(**of_settings),
        ovens=Ovens(parts={}, functions={}),
        observables=observables,
        questions=questions,
        causes=causes,
        pairs={f"pair{number}": each for number, each in enumerate(pairs)},
        findings={},
        signs={},
        regions={"here": region(prices or costs())},
        roles={},
        acts={},
        advice={},
        steps={},
    )


def random_distribution(chance, names):
    parts = [chance.randint(1, 100) for _ in names]
    return {name: figure(100 * part / sum(parts)) for name, part in zip(names, parts, strict=True)}


def random_knowledge(seed, **of_settings):
    """Two to three observables, ordered or not; faults and habits with masks, exclusions and pairs; questions of
    every kind that reports, some of them about one observable.
    """
    chance = random.Random(seed)
    observables = {}
    for number in range(chance.randint(2, 3)):
        states = tuple(f"s{state}" for state in range(chance.randint(2, 4)))
        normal = random_distribution(chance, states)
        observables[f"o{number}"] = Observable(note="x", states=states, ordered=chance.random() < 0.6, normal=normal)
    names = [*(f"f{n}" for n in range(chance.randint(2, 4))), *(f"h{n}" for n in range(chance.randint(1, 2)))]
    causes = {name: random_cause(chance, name, names, observables) for name in names}
    couples = [p for p in combinations(names, 2) if chance.random() < 0.3]
    pairs = [random_pair(chance, couple, observables) for couple in couples]
    questions = {f"q{number}": random_question(chance, observables) for number in range(chance.randint(3, 5))}
    questions["several"] = random_choices(chance, observables)
    given = {
        "something_else": chance.uniform(1, 20),
        "breadth": chance.uniform(0, 100),
        "asked_about": chance.uniform(1, 10),
        "prices": random_costs(chance),
    }
    return knowledge(observables, questions, causes, pairs, **(given | of_settings))


def random_costs(chance):
    prices = {name: chance.uniform(0.2, 2) * price for name, price in PRICES.items()}
    return costs(chance.uniform(40, 150), chance.uniform(40, 150), **prices)


def random_cause(chance, name, names, observables):
    """The first fault needs nothing and excludes nothing, the others now and then the one before them."""
    shown = chance.sample(list(observables), chance.randint(1, len(observables)))
    given = {
        "rate": chance.uniform(0.1, 14),
        "shows": {each: random_distribution(chance, observables[each].states) for each in shown},
        "needs": (f"p_{name}",),
        "masks": tuple(each for each in observables if chance.random() < 0.15),
        "excludes": (names[names.index(name) - 1],) if name != "f0" and chance.random() < 0.2 else (),
    }
    if name.startswith("h"):
        return habit(**{chance.choice(["act", "advice"]): f"remedy_{name}"}, **given)
    trade = chance.choice(["appliance_engineer", "appliance_engineer", "electrician"])
    return cause(part=chance.choice([None, "part_a", "part_b"]), mended_by=trade, **given)


def random_pair(chance, couple, observables):
    first, second = couple if chance.random() < 0.5 else couple[::-1]
    together = chance.uniform(1, 60) if chance.random() < 0.6 else None
    shown = [name for name in observables if chance.random() < 0.4 or (together is None and name == "o0")]
    return pair(
        first, second, together, {name: random_distribution(chance, observables[name].states) for name in shown}
    )


def random_choices(chance, observables):
    """Two answers; the first may be said of two observables."""
    said = {}
    for code in ("a0", "a1"):
        shown = chance.sample(list(observables), 2 if code == "a0" and chance.random() < 0.5 else 1)
        said[code] = {n: {state: chance.uniform(1, 99) for state in observables[n].states} for n in shown}
    return choices_question(said)


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


def plain_decision(names, price, left):
    """A bare table of action x cause, (C, A) in `left`: no visits, kits or tests, and nothing tried in vain."""
    return Decision(
        actions=tuple(Action("do_one_thing", name) for name in names),
        price=np.array(price, dtype=float),
        left=np.array(left, dtype=float),
        serves=np.ones((len(left), len(names))),
        visits={},
        part_of=np.zeros((len(left), 0)),
        parts=(),
        return_visit=0.0,
        part_brought=0.0,
        test=0.0,
        parts_brought=1,
        tests_planned=1,
        tried_in_vain=0.0,
    )

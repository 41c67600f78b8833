"""Parts of the project's own rules as Bayesian networks with one node for each cause.

A node `together` that is observed to be true says which causes may be there at once, and how much more often. What
sets of causes show comes from brute_force.py: nothing here imports the program's combination of causes.
"""

from functools import cache
from pathlib import Path

import numpy as np

from assistant.knowledge.load import load_knowledge
from tests.belief.brute_force import (
    SOMETHING_ELSE,
    against_sound,
    chance_of_evidence,
    observable_of,
    odds,
    reports_of,
    sets_of,
    states_under,
)

RULES = Path(__file__).parents[2] / "rules"
ABSENT, PRESENT = "absent", "present"
TOGETHER = "together"
MOST_CAUSES = 11
"""Besides something else."""


@cache
def project_rules():
    return load_knowledge(RULES, None)


def causes_picked(knowledge, chance, least=7, most=MOST_CAUSES):
    """A pair of the rules, two that exclude each other and one that masks, now and then; a habit; others at random."""
    pairs = [pair.causes for pair in knowledge.pairs.values()]
    excluding = [(name, other) for name, cause in knowledge.causes.items() for other in cause.excludes]
    masking = [name for name, cause in knowledge.causes.items() if cause.masks]
    habits = [name for name, cause in knowledge.causes.items() if cause.kind == "habit"]
    picked = {*chance.choice(pairs), chance.choice(habits)}
    if chance.random() < 0.7:
        picked.update(chance.choice(excluding))
    if chance.random() < 0.7:
        picked.add(chance.choice(masking))
    others = [name for name in knowledge.causes if name not in picked]
    picked.update(chance.sample(others, chance.randint(least, most) - len(picked)))
    return [name for name in knowledge.causes if name in picked]


def part_of(knowledge, causes):
    """The same rules with these causes alone."""
    pairs = {name: pair for name, pair in knowledge.pairs.items() if set(pair.causes) <= set(causes)}
    return knowledge.model_copy(update={"causes": {c: knowledge.causes[c] for c in causes}, "pairs": pairs})


def random_evidence(knowledge, chance, most=14):
    """Answers to one to `most` questions: half of the time as some set of causes would have them, else at random."""
    reports = reports_of(knowledge)
    asked = chance.sample(list(reports), chance.randint(1, most))
    if chance.random() < 0.5:
        return {report: chance.choice(reports[report]) for report in asked}
    causes, states, answers = chance.choice(sets_of(knowledge)), {}, {}
    for report in asked:
        name = observable_of(knowledge, report)
        if name not in states:
            under = states_under(knowledge, name, causes)
            states[name] = chance.choices(list(under), list(under.values()))[0]
        codes = reports[report]
        weights = [chance_of_evidence(knowledge, report, code, states[name]) for code in codes]
        answers[report] = chance.choices(codes, weights)[0]
    return answers


def told(report):
    """The name of its node: a cause may have the same name as a question."""
    return f"told {report}"


class Tables:
    """The network: name -> (states, parents, chances with an axis for the states and one for each parent)."""

    def __init__(self, knowledge):
        self.knowledge = knowledge
        self.causes = [*knowledge.causes, SOMETHING_ELSE]
        self.sets = dict.fromkeys(sets_of(knowledge))
        self.nodes = {cause: self._cause(cause) for cause in self.causes}
        self.nodes[TOGETHER] = self._together()
        for report, codes in reports_of(knowledge).items():
            name = observable_of(knowledge, report)
            if f"of {name}" not in self.nodes:
                self.nodes[f"of {name}"] = self._observable(name)
            states = knowledge.observables[name].states
            chances = [[chance_of_evidence(knowledge, report, code, state) for state in states] for code in codes]
            self.nodes[told(report)] = (codes, [f"of {name}"], np.array(chances))

    def _at_large(self, cause):
        """Odds among all ovens, asked about or not; something else keeps its own."""
        if cause == SOMETHING_ELSE:
            return against_sound(self.knowledge, self.knowledge.settings.something_else.value)
        rate = self.knowledge.causes[cause].base_rate.value
        return against_sound(self.knowledge, rate) / self.knowledge.settings.asked_about.value

    def _cause(self, cause):
        at_large = self._at_large(cause)
        return [ABSENT, PRESENT], [], np.array([1 / (1 + at_large), at_large / (1 + at_large)])

    def _weight(self, causes):
        """How much more often such a set is met among ovens asked about than its causes' odds at large say."""
        if causes in (frozenset(), {SOMETHING_ELSE}):
            return 1.0
        weight = self.knowledge.settings.asked_about.value
        for pair in self.knowledge.pairs.values():
            if pair.together is not None and set(pair.causes) <= causes:
                weight *= odds(pair.together.value) / self._at_large(pair.causes[1])
        return weight

    def _together(self):
        """True as often as the set is weighed, never where it can't be."""
        weights = {causes: self._weight(causes) for causes in self.sets}
        true = np.zeros((2,) * len(self.causes))
        for causes, weight in weights.items():
            true[tuple(int(cause in causes) for cause in self.causes)] = weight / max(weights.values())
        return [ABSENT, PRESENT], self.causes, np.stack([1 - true, true])

    def _observable(self, name):
        """Its parents are the causes that speak of it. Sets that can't be get any distribution."""
        parents = [cause for cause in self.causes if cause == SOMETHING_ELSE or self._speaks(cause, name)]
        states = list(self.knowledge.observables[name].states)
        chances = np.full((len(states),) + (2,) * len(parents), 1 / len(states))
        for causes in self.sets:
            if causes <= set(parents):
                under = states_under(self.knowledge, name, causes)
                held = (int(parent in causes) for parent in parents)
                chances[(slice(None), *held)] = [under[state] for state in states]
        return states, parents, chances

    def _speaks(self, cause, name):
        of_pairs = any(cause in pair.causes and name in pair.shows for pair in self.knowledge.pairs.values())
        return name in self.knowledge.causes[cause].shows or name in self.knowledge.causes[cause].masks or of_pairs

"""Belief and the value of questions: times and ratios of one run, on one thread.

    python -m tests.benchmarks.belief_speed

What is measured beside it does the same on the same rules and evidence: pgmpy with one node for the exclusive set of
causes, whose children are the observables, whose children are the reports; and, for parts of the rules, pgmpy with a
node for each cause. Answers are compared first. The growth is that of rules made larger by copies.
"""

import os

os.environ["OPENBLAS_NUM_THREADS"] = "1"
os.environ["OMP_NUM_THREADS"] = "1"
os.environ["MKL_NUM_THREADS"] = "1"

import random
import statistics
import time
from dataclasses import dataclass

import numpy as np

from assistant.belief.decision import Decision, decision_of, least_costs
from assistant.belief.hypotheses import EvidenceModel, compile_evidence_model
from assistant.belief.posterior import posterior
from assistant.belief.value import (
    LEAST_MONEY,
    MASS_DROPPED,
    Candidate,
    look_ahead,
    one_step,
    two_steps,
)
from assistant.knowledge.model import Knowledge
from tests.belief.outside import Asked, pgmpy_network
from tests.belief.sub_models import (
    PRESENT,
    TOGETHER,
    Tables,
    causes_picked,
    part_of,
    project_rules,
    random_evidence,
    told,
)

SETS = 30
REGION = "great_britain"


@dataclass
class Subject:
    """Rules made ready, with random evidence."""

    knowledge: Knowledge
    model: EvidenceModel
    decision: Decision
    evidence: list[dict[str, str]]

    @property
    def allowed(self):
        return range(len(self.decision.actions))

    def candidates(self, answers):
        """Every question of its own that isn't answered; no effort, so that nothing is cut off."""
        return [Candidate(q, 0.0, 1.0) for q in self.model.codes if "__" not in q and q not in answers]


def subject(knowledge, sets=SETS):
    chance = random.Random(1)
    model = compile_evidence_model(knowledge)
    evidence = [random_evidence(project_rules(), chance) for _ in range(sets)]
    return Subject(knowledge, model, decision_of(knowledge, REGION), evidence)


def milliseconds(do, repeats=5):
    """Median of `repeats`."""
    times = []
    for _ in range(repeats):
        began = time.perf_counter()
        do()
        times.append(1000 * (time.perf_counter() - began))
    return statistics.median(times)


def network_of_sets(model):
    """One node with a state for each exclusive set of causes."""
    sets = [str(number) for number in range(len(model.hypotheses))]
    tables = {"set": (sets, [], model.prior_odds / model.prior_odds.sum())}
    for name, chances in model.state_given.items():
        tables[f"of {name}"] = ([str(number) for number in range(len(chances))], ["set"], chances)
    for report, chances in model.report_given.items():
        tables[report] = (list(model.codes[report]), [f"of {model.observable_of[report]}"], chances)
    return pgmpy_network(tables)


def row(what, here, elsewhere, target):
    print(f"{what:<66} {here:9.3f} {elsewhere:10.2f} {elsewhere / here:8.0f}x  {target}")


def posterior_on_all_rules(rules, asked):
    here, elsewhere, apart = [], [], 0.0
    for answers in rules.evidence:
        found = asked.chances(["set"], answers)
        apart = max(apart, np.abs(found - posterior(rules.model, answers).probabilities).max())
        here.append(milliseconds(lambda answers=answers: posterior(rules.model, answers).marginals))
        elsewhere.append(milliseconds(lambda answers=answers: asked.chances(["set"], answers), 3))
    row(f"posterior, all rules, {len(rules.model.hypotheses)} sets in one node", *medians(here, elsewhere), ">= 50x")
    print(f"    greatest difference {apart:.1e}")


class Part(Subject):
    """A part of the rules, also as a network with a node for each cause."""

    def __init__(self, chance, *how_many):
        knowledge = part_of(project_rules(), causes_picked(project_rules(), chance, *how_many))
        evidence = [random_evidence(knowledge, chance) for _ in range(5)]
        super().__init__(knowledge, compile_evidence_model(knowledge), decision_of(knowledge, REGION), evidence)
        tables = Tables(knowledge)
        self.causes, self.asked = tables.causes, Asked(pgmpy_network(tables.nodes))

    def joint(self, answers, *questions):
        """Of the questions and of all causes, an axis each."""
        known = {told(report): code for report, code in answers.items()} | {TOGETHER: PRESENT}
        return self.asked.chances([*map(told, questions), *self.causes], known)


def parts_of_the_rules(number, *how_many):
    chance = random.Random(2)
    return [Part(chance, *how_many) for _ in range(number)]


def posterior_on_parts(parts, size):
    """A node for each cause; the joint distribution of the causes is asked for."""
    here, elsewhere, apart = [], [], 0.0
    for part in parts:
        for answers in part.evidence:
            own = posterior(part.model, answers).marginals
            apart = max(apart, np.abs(marginals_of(part.joint(answers)[None])[0] - own).max())
            here.append(milliseconds(lambda p=part, a=answers: posterior(p.model, a).marginals))
            elsewhere.append(milliseconds(lambda p=part, a=answers: p.joint(a), 3))
    row(f"posterior, parts of the rules, {size} nodes of causes", *medians(here, elsewhere), ">= 50x")
    print(f"    greatest difference {apart:.1e}")


def marginals_of(joint):
    """(answers, causes) from an axis for the answers and one for each cause."""
    by_cause = [joint.take(1, axis).reshape(len(joint), -1).sum(axis=1) for axis in range(1, joint.ndim)]
    return np.array(by_cause).T


def medians(here, elsewhere):
    return statistics.median(here), statistics.median(elsewhere)


def values_by_queries(rules, asked, answers, candidates):
    """For each question the joint distribution of sets and answers, and the same costs of endings."""
    members = rules.model.members.astype(float)
    values = []
    for each in candidates:
        joint = asked.chances([each.question_id, "set"], answers)
        values.append(saving(rules, joint @ members, joint.sum(axis=1)))
    return values


def values_by_queries_of_causes(part, answers, candidates):
    """The same with a node for each cause."""
    values = []
    for each in candidates:
        joint = part.joint(answers, each.question_id)
        values.append(saving(part, marginals_of(joint), joint.reshape(len(joint), -1).sum(axis=1)))
    return values


def saving(rules, marginals, total):
    """Answers x causes, unnormalised, and the probability of each answer; less than 0.001 is nothing."""
    now = least_costs(rules.decision, marginals.sum(axis=0)[None, :], np.ones(1), rules.allowed)
    saved = float(now[0] - least_costs(rules.decision, marginals, total, rules.allowed).sum())
    return saved if saved >= LEAST_MONEY else 0.0


def values_here(rules, answers, candidates, dropped=0.0):
    now = posterior(rules.model, answers)
    outlook = look_ahead(rules.model, answers, now, [each.question_id for each in candidates], dropped)
    return one_step(rules.decision, outlook, candidates, rules.allowed)


def value_of_all_questions(rules, asked):
    here, short, elsewhere, apart = [], [], [], 0.0
    for answers in rules.evidence[:10]:
        candidates = rules.candidates(answers)
        expected = values_by_queries(rules, asked, answers, candidates)
        apart = max(apart, difference(values_here(rules, answers, candidates), expected))
        here.append(milliseconds(lambda a=answers, c=candidates: values_here(rules, a, c)))
        short.append(milliseconds(lambda a=answers, c=candidates: values_here(rules, a, c, MASS_DROPPED)))
        elsewhere.append(milliseconds(lambda a=answers, c=candidates: values_by_queries(rules, asked, a, c), 1))
    number = len(rules.candidates({}))
    row(f"value of up to {number} open questions, all rules, no set left out", *medians(here, elsewhere), ">= 100x")
    row("the same, the improbable left out as in an interview", *medians(short, elsewhere), ">= 100x")
    print(f"    greatest difference in money {apart:.1e}")


def value_on_parts(parts, size):
    here, elsewhere, apart = [], [], 0.0
    for part in parts:
        answers = part.evidence[0]
        candidates = part.candidates(answers)
        expected = values_by_queries_of_causes(part, answers, candidates)
        apart = max(apart, difference(values_here(part, answers, candidates), expected))
        here.append(milliseconds(lambda p=part, a=answers, c=candidates: values_here(p, a, c)))
        elsewhere.append(milliseconds(lambda p=part, a=answers, c=candidates: values_by_queries_of_causes(p, a, c), 1))
    row(f"value of all open questions, parts, {size} nodes of causes", *medians(here, elsewhere), ">= 100x")
    print(f"    greatest difference in money {apart:.1e}")


def difference(worths, expected):
    return max(abs(worth.value - other) for worth, other in zip(worths, expected, strict=True))


def one_turn(rules, answers):
    values_here(rules, answers, rules.candidates(answers), MASS_DROPPED)


def two_step_turn(rules, answers):
    candidates = rules.candidates(answers)
    now = posterior(rules.model, answers)
    asked = [each.question_id for each in candidates]
    outlook = look_ahead(rules.model, answers, now, asked, MASS_DROPPED)
    two_steps(rules.decision, rules.model, outlook, candidates, rules.allowed)


def turns(name, rules, repeats=5):
    """Medians in milliseconds: the posterior, one step, two steps at the opening and after the answers."""
    print(
        f"{name:<46} {len(rules.model.causes) - 1:6} {len(rules.model.hypotheses):7} {len(rules.candidates({})):9} "
        f"{statistics.median(milliseconds(lambda a=a: posterior(rules.model, a), 1) for a in rules.evidence):9.2f} "
        f"{statistics.median(milliseconds(lambda a=a: one_turn(rules, a), 1) for a in rules.evidence):9.2f} "
        f"{milliseconds(lambda: two_step_turn(rules, {}), repeats):12.1f} "
        f"{statistics.median(milliseconds(lambda a=a: two_step_turn(rules, a), 1) for a in rules.evidence[:6]):12.1f}"
    )


def with_more_causes(knowledge, faults, habits):
    """The rules with copies of their causes, as many of each kind as said; pairs and exclusions are not copied."""
    causes = dict(knowledge.causes)
    for kind, number in (("fault", faults), ("habit", habits)):
        originals = [(name, cause) for name, cause in knowledge.causes.items() if cause.kind == kind]
        for copy in range(number - len(originals)):
            name, cause = originals[copy % len(originals)]
            copied = {"excludes": (), "look_alikes": ()}
            causes[f"{name}_copy{copy}"] = cause.model_copy(update=copied)
    return knowledge.model_copy(update={"causes": causes})


def with_more_questions(knowledge, times):
    """Every observable and its questions so many times; the causes show each copy as they do the first."""
    observables, questions = dict(knowledge.observables), dict(knowledge.questions)
    shows = {name: dict(cause.shows) for name, cause in knowledge.causes.items()}
    for copy in range(1, times):
        observables.update({f"{name}_copy{copy}": each for name, each in knowledge.observables.items()})
        for name, question in knowledge.questions.items():
            if question.observable is not None:
                copied = {"observable": f"{question.observable}_copy{copy}"}
                questions[f"{name}_copy{copy}"] = question.model_copy(update=copied)
        for name, cause in knowledge.causes.items():
            shows[name].update({f"{shown}_copy{copy}": each for shown, each in cause.shows.items()})
    causes = {n: cause.model_copy(update={"shows": shows[n]}) for n, cause in knowledge.causes.items()}
    return knowledge.model_copy(update={"observables": observables, "questions": questions, "causes": causes})


def growth():
    """Ten times the sets of causes; ten times the causes would make some three million sets, which nobody needs."""
    rules = project_rules()
    heading = ("causes", "sets", "questions", "posterior", "one step", "two, opening", "two, later")
    print(f"\nmilliseconds, medians{'':<25} {{:>6}} {{:>7}} {{:>9}} {{:>9}} {{:>9}} {{:>12}} {{:>12}}".format(*heading))
    turns("the rules; targets: one step 10, opening 100", subject(rules))
    turns("ten times the sets of causes", subject(with_more_causes(rules, 45, 31)), 3)
    turns("ten times the questions", subject(with_more_questions(rules, 10), 10), 1)


def main():
    rules = subject(project_rules())
    asked = Asked(network_of_sets(rules.model))
    print(f"{'milliseconds, medians':<66} {'here':>9} {'pgmpy':>10} {'ratio':>9}  target")
    posterior_on_all_rules(rules, asked)
    parts, larger = parts_of_the_rules(8), parts_of_the_rules(2, 15, 15)
    posterior_on_parts(parts, "8 to 12")
    posterior_on_parts(larger, "16")
    value_of_all_questions(rules, asked)
    value_on_parts(parts, "8 to 12")
    value_on_parts(larger, "16")
    growth()


if __name__ == "__main__":
    main()

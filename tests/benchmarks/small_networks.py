"""Small problems, drawn at random, whose best way of asking can be found by trying all of them."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from assistant.authoring.simulated_answers import draw_complaint
from assistant.authoring.simulated_ovens import draw_hypothesis, draw_states
from assistant.belief.combination import Floats
from assistant.belief.decision import Decision, decision_of
from assistant.belief.hypotheses import CHOSEN, NOTHING_WRONG, EvidenceModel, compile_evidence_model
from assistant.knowledge.model import Costs, Knowledge

REGION = "great_britain"
COMPLAINT = "what_goes_wrong"
MOST_SETS_OF_ANSWERS = 40_000
FEWEST = 4
CARE = (0.0, 0.0, 0.3, 0.5, 4.0)
"""What the care of a question is drawn from, in money."""


@dataclass(frozen=True)
class Network:
    """A few causes and questions. `told`: reports of the complaint. `questions` in the rules' order.

    `trouble`: question -> money for its minutes and its care; `minutes`: question -> minutes.
    """

    model: EvidenceModel
    decision: Decision
    told: Mapping[str, str]
    questions: tuple[str, ...]
    trouble: Mapping[str, float]
    minutes: Mapping[str, float]
    price: float
    patience: float

    def effort(self, question_id: str, asked: int) -> float:
        """As in an interview: each question is dearer than the one before."""
        return self.trouble[question_id] + self.price * (1 + asked / self.patience)


def draw_network(knowledge: Knowledge, chance: np.random.Generator, causes: int, questions: int) -> Network:
    """Some of the project's own causes, a complaint, and some of the questions that tell something of them."""
    while True:
        network = _some_of(knowledge, chance, causes, questions)
        sets = np.prod([len(network.model.codes[q]) + 1 for q in network.questions])
        if len(network.questions) >= FEWEST and sets <= MOST_SETS_OF_ANSWERS:
            return network


def _some_of(knowledge: Knowledge, chance: np.random.Generator, causes: int, questions: int) -> Network:
    kept = _pick(tuple(knowledge.causes), int(chance.integers(FEWEST, causes + 1)), chance)
    few = without_causes(knowledge, set(knowledge.causes) - set(kept))
    model = compile_evidence_model(few)
    hypothesis = draw_hypothesis(model, "faulty", 0, chance)
    states = draw_states(few, model, hypothesis, chance)
    said = draw_complaint(COMPLAINT, model, few, hypothesis, states, chance)
    telling = {name for cause in few.causes.values() for name in cause.shows}
    relevant = [q for q, question in few.questions.items() if question.observable in telling]
    asked = _pick(
        sorted(relevant, key=lambda q: few.questions[q].order), int(chance.integers(FEWEST, questions + 1)), chance
    )
    costs = few.regions[REGION].costs
    return Network(
        model=model,
        decision=decision_of(few, REGION),
        told={r: CHOSEN for r in model.observable_of if any(r.startswith(f"{COMPLAINT}__{item}__") for item in said)},
        questions=asked,
        trouble={q: _trouble(few, q, costs) for q in asked},
        minutes={q: few.questions[q].minutes.value for q in asked},
        price=costs.question.value,
        patience=few.settings.patience.value,
    )


def _trouble(knowledge: Knowledge, question_id: str, costs: Costs) -> float:
    question = knowledge.questions[question_id]
    return question.minutes.value * costs.minute.value + costs.care[question.care].value


def _pick(names: list[str] | tuple[str, ...], number: int, chance: np.random.Generator) -> tuple[str, ...]:
    """Some of them, in their own order."""
    chosen = sorted(chance.permutation(len(names))[:number])
    return tuple(names[each] for each in chosen)


def without_causes(knowledge: Knowledge, left_out: set[str]) -> Knowledge:
    """The knowledge as if nobody had written these causes down."""
    causes = {
        cause_id: cause.model_copy(update={"excludes": tuple(c for c in cause.excludes if c not in left_out)})
        for cause_id, cause in knowledge.causes.items()
        if cause_id not in left_out
    }
    pairs = {name: pair for name, pair in knowledge.pairs.items() if left_out.isdisjoint(pair.causes)}
    return knowledge.model_copy(update={"causes": causes, "pairs": pairs})


def randomised(network: Network, chance: np.random.Generator) -> Network:
    """The same causes and costs of endings, but what is shown, reported and asked for is drawn from nowhere."""
    model = network.model
    hypotheses = len(model.hypotheses)
    alone = np.array([len(hypothesis) == 1 for hypothesis in model.hypotheses])
    odds = np.where(alone, chance.lognormal(-2.0, 1.0, hypotheses), model.prior_odds)
    odds[model.hypotheses.index(NOTHING_WRONG)] = 1.0
    states = {name: _columns(*given.shape, 0.5, chance) for name, given in model.state_given.items()}
    reports = {name: _reports(*given.shape, chance) for name, given in model.report_given.items()}
    minutes = {question_id: float(chance.uniform(0.2, 4.0)) for question_id in network.questions}
    equally = [1 / len(CARE)] * len(CARE)
    trouble = {q: 0.3 * minutes[q] + float(chance.choice(CARE, p=equally)) for q in minutes}
    drawn = replace(model, prior_odds=odds, state_given=states, report_given=reports)
    return replace(network, model=drawn, minutes=minutes, trouble=trouble)


def _columns(rows: int, columns: int, spread: float, chance: np.random.Generator) -> Floats:
    drawn: Floats = chance.dirichlet([spread] * rows, columns).T + 0.002
    return drawn / drawn.sum(axis=0)


def _reports(answers: int, states: int, chance: np.random.Generator) -> Floats:
    """Mostly right where answers and states go by pairs."""
    right = np.eye(answers, states) + 1e-9
    mistaken = float(chance.uniform(0.02, 0.3))
    return (1 - mistaken) * right / right.sum(axis=0) + mistaken * _columns(answers, states, 1.0, chance)

"""What the best way of asking costs in a small network, and what any other way costs there.

Every set of answers is a cell of an array with one axis for each question: its answers, and last 'not asked'. All
costs are multiplied by the probability of their cell, so that cells add up.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations

import numpy as np

from assistant.belief.combination import Floats
from assistant.belief.decision import least_costs
from assistant.belief.posterior import log_priors, posterior, state_weights
from assistant.belief.value import (
    LEAST_MONEY,
    MASS_DROPPED,
    Candidate,
    Worth,
    best_of,
    look_ahead,
    one_step,
    two_steps,
)
from tests.benchmarks.small_networks import Network

Cell = tuple[int, ...]
LEAST_PROBABLE = 1e-9
STOPPED_EARLY, ASKED_IN_VAIN, ASKED_ANOTHER = "stops too early", "asks where it should stop", "asks another question"


@dataclass(frozen=True)
class Problem:
    """A network with the probability and the cost of ending at every set of answers."""

    network: Network

    @cached_property
    def joint(self) -> Floats:
        """(answers + 1, …, H): P(answers, hypothesis), given the complaint; 1 for what isn't asked."""
        network, model = self.network, self.network.model
        told = state_weights(model, network.told)
        prior = np.exp(log_priors(model, frozenset()))
        axes = {question_id: axis for axis, question_id in enumerate(network.questions)}
        found = np.ones([1] * len(axes) + [len(prior)]) * prior
        for name, given in model.state_given.items():
            those = [q for q in network.questions if model.observable_of[q] == name]
            if not those and name not in told:
                continue
            part = self._of_observable(those, given, told.get(name, np.ones(len(given))))
            shape = [len(model.codes[q]) + 1 if q in those else 1 for q in axes]
            found = found * part.reshape([*shape, len(prior)])
        nothing = (-1,) * len(axes)
        joint: Floats = found / found[nothing].sum()
        return joint

    def _of_observable(self, those: list[str], given: Floats, weights: Floats) -> Floats:
        """(answers + 1 of each question, …, H): P(its reports | hypothesis)."""
        found = weights[:, None] * given
        for question_id in reversed(those):
            table = self.network.model.report_given[question_id]
            rows = np.vstack([table, np.ones(table.shape[1])])
            found = rows.reshape([rows.shape[0], rows.shape[1], *[1] * (found.ndim - 1)]) * found[None, ...]
            found = np.moveaxis(found, 1, 0)
        total: Floats = found.sum(axis=0)
        return total

    @cached_property
    def probability(self) -> Floats:
        total: Floats = self.joint.sum(axis=-1)
        return total

    @cached_property
    def ending(self) -> Floats:
        """The least cost of ending at each set of answers."""
        network = self.network
        flat = self.joint.reshape(-1, self.joint.shape[-1])
        marginals = flat @ network.model.members.astype(np.float64)
        allowed = range(len(network.decision.actions))
        return least_costs(network.decision, marginals, flat.sum(axis=1), allowed).reshape(self.probability.shape)

    @property
    def best_cost(self) -> float:
        """The expected cost of the best policy."""
        return float(self.best[self.start])

    @cached_property
    def best(self) -> Floats:
        """The least expected cost from each set of answers on: from all asked back to none, by dynamic programming."""
        cost = self.ending.copy()
        questions = self.network.questions
        for asked in self._sets_from_all():
            cells = cost[self._where(asked)]
            for axis, question_id in enumerate(questions):
                if axis in asked:
                    continue
                further = cost[self._where((*asked, axis))].sum(axis=axis, keepdims=True)
                effort = self.network.effort(question_id, len(asked)) * self.probability[self._where(asked)]
                np.minimum(cells, further + effort, out=cells)
        return cost

    def dearer_for_knowing(self) -> tuple[int, int]:
        """How often an answer to come, free of effort, makes the ending dearer on average; and out of how many.

        Where the table of costs is sound it never does: who knows more can end as before.
        """
        dearer = looked_at = 0
        for asked in self._sets_from_all():
            cells, reached = self.ending[self._where(asked)], self.probability[self._where(asked)]
            for axis in set(range(len(self.network.questions))) - set(asked):
                further = self.ending[self._where((*asked, axis))].sum(axis=axis, keepdims=True)
                dearer += int((further > cells + LEAST_MONEY * reached).sum())
                looked_at += cells.size
        return dearer, looked_at

    def _sets_from_all(self) -> Iterator[tuple[int, ...]]:
        number = len(self.network.questions)
        for size in range(number - 1, -1, -1):
            yield from combinations(range(number), size)

    def _where(self, asked: tuple[int, ...]) -> tuple[slice, ...]:
        """All answers of what was asked, 'not asked' of the rest; every axis stays."""
        sizes = self.probability.shape
        return tuple(slice(0, size - 1) if a in asked else slice(size - 1, size) for a, size in enumerate(sizes))

    @cached_property
    def start(self) -> Cell:
        return tuple(size - 1 for size in self.probability.shape)

    def asked(self, cell: Cell) -> int:
        return sum(a != b for a, b in zip(cell, self.start, strict=True))

    def cost_of(self, policy: "Policy", cell: Cell | None = None) -> float:
        """The expected cost of asking by a policy, from a set of answers on."""
        cell = self.start if cell is None else cell
        if self.probability[cell] < LEAST_PROBABLE:
            return float(self.ending[cell])
        question_id = policy(self, cell)
        if question_id is None:
            return float(self.ending[cell])
        after = self.after(cell, question_id)
        return self.effort(cell, question_id) + sum(self.cost_of(policy, each) for each in after)

    def effort(self, cell: Cell, question_id: str) -> float:
        return self.network.effort(question_id, self.asked(cell)) * float(self.probability[cell])

    def after(self, cell: Cell, question_id: str) -> list[Cell]:
        """The sets of answers that this question leads to."""
        axis = self.network.questions.index(question_id)
        return [(*cell[:axis], answer, *cell[axis + 1 :]) for answer in range(self.start[axis])]

    def losses(self, policy: "Policy", cell: Cell | None = None) -> dict[str, float]:
        """Where the policy loses against the best one, by kind of mistake; together, all that it loses."""
        cell = self.start if cell is None else cell
        question_id = policy(self, cell)
        best = float(self.best[cell])
        if self.probability[cell] < LEAST_PROBABLE or question_id is None:
            return {STOPPED_EARLY: float(self.ending[cell]) - best}
        after = self.after(cell, question_id)
        lost = self.effort(cell, question_id) + sum(float(self.best[each]) for each in after) - best
        kind = ASKED_IN_VAIN if best >= float(self.ending[cell]) - 1e-12 else ASKED_ANOTHER
        found = {kind: lost}
        for each in after:
            for name, money in self.losses(policy, each).items():
                found[name] = found.get(name, 0.0) + money
        return found

    @cached_property
    def seen(self) -> dict[tuple[Cell, bool], tuple[Worth, ...]]:
        return {}

    def worths(self, cell: Cell, two: bool) -> tuple[Worth, ...]:
        """What the open questions are worth by the program's own arithmetic, in the rules' order."""
        if (cell, two) not in self.seen:
            self.seen[cell, two] = self._worths(cell, two)
        return self.seen[cell, two]

    def _worths(self, cell: Cell, two: bool) -> tuple[Worth, ...]:
        network, model = self.network, self.network.model
        by_question = dict(zip(network.questions, cell, strict=True))
        codes = {q: model.codes[q] for q in network.questions}
        answers = {q: codes[q][code] for q, code in by_question.items() if code < len(codes[q])}
        open_ones = [q for q in network.questions if q not in answers]
        candidates = [Candidate(q, network.effort(q, len(answers)), network.minutes[q]) for q in open_ones]
        if not candidates:
            return ()
        evidence = {**network.told, **answers}
        outlook = look_ahead(model, evidence, posterior(model, evidence), open_ones, MASS_DROPPED)
        allowed = range(len(network.decision.actions))
        if two:
            return two_steps(network.decision, model, outlook, candidates, allowed)
        return one_step(network.decision, outlook, candidates, allowed)


Policy = Callable[[Problem, Cell], str | None]


def ours(problem: Problem, cell: Cell) -> str | None:
    """Two steps ahead, until no question is worth its effort."""
    best = best_of(problem.worths(cell, two=True))
    return best.question_id if best else None


def one_step_ahead(problem: Problem, cell: Cell) -> str | None:
    best = best_of(problem.worths(cell, two=False))
    return best.question_id if best else None


def by_order(problem: Problem, cell: Cell) -> str | None:
    """The next in the rules' order, until two steps ahead no question is worth its effort."""
    return problem.worths(cell, two=True)[0].question_id if ours(problem, cell) else None


def by_entropy(problem: Problem, cell: Cell) -> str | None:
    """Most bits a minute, until two steps ahead no question is worth its effort."""
    if not ours(problem, cell):
        return None
    return max(problem.worths(cell, two=True), key=lambda worth: worth.bits_per_minute).question_id


def all_in_order(problem: Problem, cell: Cell) -> str | None:
    """Everything."""
    worths = problem.worths(cell, two=False)
    return worths[0].question_id if worths else None


def nothing_asked(problem: Problem, cell: Cell) -> str | None:
    return None


POLICIES: dict[str, Policy] = {
    "ours: two steps ahead": ours,
    "one step ahead": one_step_ahead,
    "bits a minute": by_entropy,
    "the rules' order": by_order,
    "all questions": all_in_order,
    "no question": nothing_asked,
}

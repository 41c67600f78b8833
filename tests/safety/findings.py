"""The oven's parts and the findings of many conversations at once, from their answers."""

from collections.abc import Iterator
from functools import cached_property
from graphlib import TopologicalSorter

import numpy as np

from assistant.knowledge.model import Condition, Knowledge
from tests.safety.codes import FIRST, Codes, Flags, Ints
from tests.safety.talks import Talks

PartsOfItem = tuple[int, tuple[str, ...], tuple[str, ...], tuple[str, ...]]
"""Bits of items; parts that the oven has not, or has, where one is chosen; parts that it has not where none is."""

Applies = dict[frozenset[str], Flags]
"""Parts that a question needs -> where the oven may have all of them."""


class Findings:
    """The compiled findings of one rules folder. Raises CycleError if they rest on each other in a circle."""

    def __init__(self, knowledge: Knowledge, codes: Codes, region: str | None = None) -> None:
        self.knowledge = knowledge
        self.codes = codes
        self.region = knowledge.regions[region or next(iter(knowledge.regions))]
        self._items_of_kind: dict[str | None, tuple[tuple[int, tuple[PartsOfItem, ...]], ...]] = {}

    @cached_property
    def order(self) -> tuple[str, ...]:
        """Findings, each after those that it rests on."""
        rests_on = {
            finding_id: {*finding.unless, *(c.finding for group in finding.groups for c in group if c.finding)}
            for finding_id, finding in self.knowledge.findings.items()
        }
        return tuple(TopologicalSorter(rests_on).static_order())

    @cached_property
    def needs(self) -> tuple[frozenset[str], ...]:
        return tuple(frozenset(self.knowledge.questions[q].needs) for q in self.codes.questions)

    @cached_property
    def _parts_told(self) -> tuple[tuple[int, int, tuple[str, ...], tuple[str, ...]], ...]:
        """Question, code, and the parts which that answer says the oven has not, and has."""
        told = []
        for n, question_id in enumerate(self.codes.questions):
            question = self.knowledge.questions[question_id]
            if n in self.codes.items:
                continue
            for code, (choice_id, choice) in enumerate(question.choices.items(), FIRST):
                kind = self.knowledge.ovens.kinds.get(choice_id) if question.tells == "kind" else None
                told.append((n, code, (*choice.has_not, *(kind.has_not if kind else ())), choice.has))
        return tuple(each for each in told if any(each[2:]))

    def _of_kinds(self, talks: Talks) -> Iterator[tuple[str | None, Flags]]:
        """Each kind of oven whose functions differ, and none, with where that kind was told."""
        others = np.ones(talks.number, bool)
        for n, question_id in enumerate(self.codes.questions):
            question = self.knowledge.questions[question_id]
            for code, choice_id in enumerate(question.choices, FIRST):
                kind = self.knowledge.ovens.kinds.get(choice_id) if question.tells == "kind" else None
                if kind is not None and kind.functions:
                    told = talks.answer[n] == code
                    others &= ~told
                    yield choice_id, told
        yield None, others

    def parts_not_fitted(self, talks: Talks) -> dict[str, Flags]:
        """part -> where the oven is known to lack it."""
        parts = self.knowledge.ovens.parts
        lacking, having = ({part: np.zeros(talks.number, bool) for part in parts} for _ in range(2))
        for question, code, has_not, has in self._parts_told:
            said = talks.answer[question] == code
            for part in has_not:
                lacking[part] |= said
            for part in has:
                having[part] |= said
        for kind, of_kind in self._of_kinds(talks):
            self._add_items(talks, kind, of_kind, lacking, having)
        of_region = {part: np.full(talks.number, part in self.region.has_not) for part in parts}
        return {part: lacking[part] & ~having[part] | of_region[part] for part in parts}

    def _add_items(
        self, talks: Talks, kind: str | None, of_kind: Flags, lacking: dict[str, Flags], having: dict[str, Flags]
    ) -> None:
        for question, of_item in self._parts_of_items(kind):
            answered = of_kind & (talks.answer[question] == FIRST)
            for item, has_not, has, among in of_item:
                chosen = answered & (talks.mask[question] & item != 0)
                for part in has_not:
                    lacking[part] |= chosen
                for part in has:
                    having[part] |= chosen
                for part in among:
                    lacking[part] |= answered & ~chosen

    def _parts_of_items(self, kind: str | None) -> tuple[tuple[int, tuple[PartsOfItem, ...]], ...]:
        """Question, and of its items the parts that they tell of in that kind of oven."""
        if kind not in self._items_of_kind:
            self._items_of_kind[kind] = self._told_by_items(kind)
        return self._items_of_kind[kind]

    def _told_by_items(self, kind: str | None) -> tuple[tuple[int, tuple[PartsOfItem, ...]], ...]:
        found = []
        ovens = self.knowledge.ovens
        for n, items in self.codes.items.items():
            question = self.knowledge.questions[self.codes.questions[n]]
            told = [(1 << i, c.has_not, c.has, ()) for i, c in enumerate(question.choices.values())]
            if question.tells == "functions":
                generic = {part for name in ovens.functions for part in ovens.uses(name)}
                for part in sorted(generic | {part for name in items for part in ovens.uses(name, kind)}):
                    using = sum(1 << i for i, name in enumerate(items) if part in ovens.uses(name, kind))
                    told.append((using, (), (part,), (part,) if part in generic else ()))
            found.append((n, tuple(each for each in told if any(each[1:]))))
        return tuple(found)

    def applies(self, talks: Talks) -> Applies:
        """Where a question makes sense for the oven, by what it needs."""
        lacking = self.parts_not_fitted(talks)
        return {needs: self._free_of(needs, lacking, talks) for needs in set(self.needs)}

    def _free_of(self, needs: frozenset[str], lacking: dict[str, Flags], talks: Talks) -> Flags:
        found = np.ones(talks.number, bool)
        for part in needs & lacking.keys():
            found &= ~lacking[part]
        return found

    def conclude(self, talks: Talks, applies: Applies) -> dict[str, Flags]:
        holds: dict[str, Flags] = {}
        tested: dict[tuple, Flags] = {}

        def held(condition: Condition) -> Flags:
            if condition.finding is not None:
                return holds[condition.finding]
            key = _key(condition)
            if key not in tested:
                tested[key] = self._answered_so(condition, talks, applies)
            return tested[key]

        for finding_id in self.order:
            finding = self.knowledge.findings[finding_id]
            found = np.zeros(talks.number, bool)
            for group in finding.groups:
                all_hold = held(group[0])
                for condition in group[1:]:
                    all_hold = all_hold & held(condition)
                found |= all_hold
            for other in finding.unless:
                found &= ~holds[other]
            holds[finding_id] = found
        return holds

    def _answered_so(self, condition: Condition, talks: Talks, applies: Applies) -> Flags:
        question = self.codes.place[str(condition.question)]
        makes_sense = applies[self.needs[question]] | self._read_far_too_hot(question, talks)
        if condition.includes is not None:
            item = 1 << self.codes.items[question].index(condition.includes)
            return makes_sense & (talks.answer[question] == FIRST) & (talks.mask[question] & item != 0)
        key = _key(condition)
        if key not in self._tables:
            self._tables[key] = self._table(condition, question)
        return makes_sense & self._tables[key][talks.answer[question]]

    def _read_far_too_hot(self, question: int, talks: Talks) -> Flags | np.bool_:
        """That counts whatever was said of the oven's parts."""
        if question not in self.codes.measured or not self.codes.has_readings[self.codes.measured.index(question)]:
            return np.False_
        found: Flags = talks.answer[question] == self.codes.very_hot(question)
        return found

    @cached_property
    def _tables(self) -> dict[tuple, Flags]:
        return {}

    def _table(self, condition: Condition, question: int) -> Flags:
        """code -> whether the condition holds."""
        given: tuple[str | float, ...] = ("", "not_sure", "skipped", *self.codes.answers[question])
        if condition.bounded:
            return np.array([isinstance(v, float | int) and _within(condition, v) for v in given])
        codes = {condition.equals} if condition.equals is not None else set(condition.is_one_of)
        return np.array([v in codes for v in given])

    def since_of_stops(self, talks: Talks, holds: dict[str, Flags], applies: Applies) -> dict[int, Ints]:
        """sign -> since which event a finding stops by it, -1 where none does; of several the last one counts."""
        found: dict[int, Ints] = {}
        for finding_id, finding in self.knowledge.findings.items():
            if finding.then.stops is not None:
                sign = self.codes.signs.index(finding.then.stops)
                before = found.get(sign, np.full(talks.number, -1))
                since = self._since(finding_id, talks, holds, applies)
                found[sign] = np.where(holds[finding_id], since, before)
        return found

    def _since(self, finding_id: str, talks: Talks, holds: dict[str, Flags], applies: Applies) -> Ints:
        """The latest answer behind a finding, through every finding between."""
        latest = np.zeros(talks.number, np.int64)
        for group in self.knowledge.findings[finding_id].groups:
            held = holds[finding_id].copy()
            behind = np.zeros(talks.number, np.int64)
            for c in group:
                if c.finding is not None:
                    held &= holds[c.finding]
                    behind = np.maximum(behind, self._since(c.finding, talks, holds, applies))
                else:
                    held &= self._answered_so(c, talks, applies)
                    behind = np.maximum(behind, talks.at[self.codes.place[str(c.question)]])
            latest = np.maximum(latest, np.where(held, behind, 0))
        return latest

    @cached_property
    def wanted_for_care(self) -> Ints:
        """(Q,): the answer by which a question helps to allow more than talk, 0 where it doesn't."""
        found = np.zeros(len(self.codes.questions), np.int64)
        left = [f for f, finding in self.knowledge.findings.items() if finding.then.allows_care is not None]
        while left:
            for condition in (c for group in self.knowledge.findings[left.pop()].groups for c in group):
                if condition.finding is not None:
                    left.append(condition.finding)
                    continue
                question = self.codes.place[str(condition.question)]
                wanted = condition.equals or next(iter(condition.is_one_of), None)
                answers = self.codes.answers[question]
                found[question] = FIRST + (answers.index(wanted) if wanted in answers else 0)
        return found


def _key(condition: Condition) -> tuple:
    c = condition
    return (c.question, c.equals, c.is_one_of, c.includes, c.at_least, c.more_than, c.at_most, c.less_than)


def _within(c: Condition, value: float) -> bool:
    return (
        (c.at_least is None or value >= c.at_least)
        and (c.more_than is None or value > c.more_than)
        and (c.at_most is None or value <= c.at_most)
        and (c.less_than is None or value < c.less_than)
    )

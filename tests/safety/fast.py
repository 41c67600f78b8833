"""Findings, danger, care and the questions that may come next, of many conversations at once.

The same as `interview.assess`, `interview.danger` and `interview.way`, said a second time in arrays, for speed; the
tests hold the two against each other. Belief isn't computed: it is whatever a caller supposes.
"""

from dataclasses import dataclass
from functools import cached_property
from graphlib import TopologicalSorter

import numpy as np

from assistant.interview.danger import STILL_ON
from assistant.interview.way import STAGES_AFTER_A_STOP
from assistant.knowledge.danger_questions import DANGER_NOW, DANGER_PLAINLY, OVEN_IS_OFF
from assistant.knowledge.model import Care, Condition, Knowledge
from tests.safety.codes import FIRST, NOT_ASKED, NOT_SURE, SKIPPED, Codes, Flags, Ints
from tests.safety.talks import Talks

MOST_SKIPS = 1
PartsOfItem = tuple[int, tuple[str, ...], tuple[str, ...], tuple[str, ...]]
"""Bits of items; parts that the oven has not, or has, where one is chosen; parts that it has not where none is."""

CALM, DANGEROUS, STOPPING = 0, 1, 2
"""What belief may suppose: nothing, that danger is likely, or (from here on, with the sign) that it must stop."""


@dataclass
class Standing:
    """What follows from the states of many conversations. Signs are bits, the gravest the lowest."""

    holds: dict[str, Flags]
    applies: dict[frozenset[str], Flags]
    stops: Ints
    by_answers: Ints
    open_signs: Ints
    open_screen: Ints
    withdrawn: Ints
    off_confirmed: Flags
    ask_whether_off: Flags
    urgent: Ints
    care: Ints
    hearable: Ints
    handed_on: Flags
    must_visit: Flags

    @property
    def danger_open(self) -> Flags:
        return (self.stops != 0) | (self.open_signs != 0) | (self.open_screen >= 0)


class Fast:
    """The compiled knowledge of one rules folder. Raises CycleError if findings rest on each other in a circle."""

    def __init__(self, knowledge: Knowledge, role: str = "householder") -> None:
        self.knowledge = knowledge
        self.codes = Codes(knowledge)
        self.role = role
        signs = [knowledge.signs[sign_id] for sign_id in self.codes.signs]
        self._at_once = sum(1 << n for n, sign in enumerate(signs) if sign.grade == "stop")
        self._confirming = sum(1 << n for n, sign in enumerate(signs) if sign.confirm_off)
        self._all_signs = (1 << len(signs)) - 1
        self._speakers = [n for n in range(len(self.codes.questions)) if self._may_speak(n)]

    def _may_speak(self, question: int) -> bool:
        by_items = any(question == q for q, _, _ in self.codes.spoken_by_items)
        return bool(self.codes.spoken[question].any()) or by_items

    @cached_property
    def order(self) -> tuple[str, ...]:
        """Findings, each after those that it rests on."""
        rests_on = {
            finding_id: {*finding.unless, *(c.finding for group in finding.groups for c in group if c.finding)}
            for finding_id, finding in self.knowledge.findings.items()
        }
        return tuple(TopologicalSorter(rests_on).static_order())

    @cached_property
    def _needs(self) -> tuple[frozenset[str], ...]:
        return tuple(frozenset(self.knowledge.questions[q].needs) for q in self.codes.questions)

    @cached_property
    def _parts_told(self) -> tuple[tuple[int, int, tuple[str, ...], tuple[str, ...]], ...]:
        """Question, code, and the parts which that answer says the oven has not, and has."""
        return tuple(
            (n, code, choice.has_not, choice.has)
            for n, question_id in enumerate(self.codes.questions)
            if n not in self.codes.items
            for code, choice in enumerate(self.knowledge.questions[question_id].choices.values(), FIRST)
            if choice.has_not or choice.has
        )

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

    def conclude(self, talks: Talks, supposed: Ints) -> Standing:
        """Everything that follows; the stops reached or left are recorded in the talks, as a conversation does.

        `supposed`: of each conversation CALM, DANGEROUS, or STOPPING plus the number of a sign.
        """
        lacking = self.parts_not_fitted(talks)
        applies = {needs: self._free_of(needs, lacking, talks) for needs in set(self._needs)}
        holds = self._findings(talks, applies)
        by_answers = self._stops_by_answers(talks)
        since = self._since_of_finding_stops(talks, holds, applies)
        by_findings = sum((1 << sign) * (at >= 0) for sign, at in since.items()) if since else np.int64(0)
        by_belief = np.where(supposed >= STOPPING, 1 << np.maximum(supposed - STOPPING, 0), 0)
        stops = by_answers | by_findings | by_belief
        talks.record(stops)
        open_signs = self._open(talks) & ~stops
        screen = self._screen(talks)
        lowest_stop, lowest_open = stops & -stops, open_signs & -open_signs
        reached = sum((1 << sign) * (at > 0) for sign, at in enumerate(talks.reached))
        withdrawn = reached & ~stops
        ask = (stops & ~self._confirming) == 0
        standing = Standing(
            holds=holds,
            applies=applies,
            stops=stops,
            by_answers=by_answers,
            open_signs=open_signs,
            open_screen=screen,
            withdrawn=withdrawn,
            off_confirmed=ask & self._off_confirmed(talks, stops, by_answers, since),
            ask_whether_off=ask,
            urgent=np.where((stops != 0) & (lowest_open != 0) & (lowest_open < lowest_stop), lowest_open, 0),
            care=np.zeros(0),
            hearable=self._hearable(talks, by_answers),
            handed_on=self._with("hands_on_to", talks, holds),
            must_visit=self._with("visit_anyway", talks, holds) | (withdrawn != 0) | (supposed >= DANGEROUS),
        )
        standing.care = self._care(talks, standing, supposed)
        return standing

    def _with(self, effect: str, talks: Talks, holds: dict[str, Flags]) -> Flags:
        """(N,): where a finding holds that has this effect."""
        found = np.zeros(talks.number, bool)
        for finding_id, finding in self.knowledge.findings.items():
            if getattr(finding.then, effect) is not None:
                found |= holds[finding_id]
        return found

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
        for question, of_item in self._parts_of_items:
            answered = talks.answer[question] == FIRST
            for item, has_not, has, among in of_item:
                chosen = answered & (talks.mask[question] & item != 0)
                for part in has_not:
                    lacking[part] |= chosen
                for part in has:
                    having[part] |= chosen
                for part in among:
                    lacking[part] |= answered & ~chosen
        return {part: lacking[part] & ~having[part] for part in parts}

    @cached_property
    def _parts_of_items(self) -> tuple[tuple[int, tuple[PartsOfItem, ...]], ...]:
        """Question, and of its items the parts that they tell of."""
        found = []
        functions = self.knowledge.ovens.functions
        for n, items in self.codes.items.items():
            question = self.knowledge.questions[self.codes.questions[n]]
            told = [(1 << i, c.has_not, c.has, ()) for i, c in enumerate(question.choices.values())]
            if question.tells == "functions":
                for part in {part for f in functions.values() for part in f.uses}:
                    using = sum(1 << i for i, name in enumerate(items) if part in functions[name].uses)
                    told.append((using, (), (part,), (part,)))
            found.append((n, tuple(each for each in told if any(each[1:]))))
        return tuple(found)

    def _free_of(self, needs: frozenset[str], lacking: dict[str, Flags], talks: Talks) -> Flags:
        found = np.ones(talks.number, bool)
        for part in needs & lacking.keys():
            found &= ~lacking[part]
        return found

    def _findings(self, talks: Talks, applies: dict[frozenset[str], Flags]) -> dict[str, Flags]:
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

    def _answered_so(self, condition: Condition, talks: Talks, applies: dict[frozenset[str], Flags]) -> Flags:
        question = self.codes.place[str(condition.question)]
        makes_sense = applies[self._needs[question]]
        if condition.includes is not None:
            item = 1 << self.codes.items[question].index(condition.includes)
            return makes_sense & (talks.answer[question] == FIRST) & (talks.mask[question] & item != 0)
        key = _key(condition)
        if key not in self._tables:
            self._tables[key] = self._table(condition, question)
        return makes_sense & self._tables[key][talks.answer[question]]

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

    def _stops_by_answers(self, talks: Talks) -> Ints:
        raised = np.bitwise_or.reduce(talks.speaks[self._speakers], axis=0) & self._at_once
        for sign, own in enumerate(self.codes.own):
            raised |= talks.speaks[own] & (1 << sign)
        return raised

    def _since_of_finding_stops(
        self, talks: Talks, holds: dict[str, Flags], applies: dict[frozenset[str], Flags]
    ) -> dict[int, Ints]:
        """sign -> since which event a finding stops by it, -1 where none does; of several the last one counts."""
        found: dict[int, Ints] = {}
        for finding_id, finding in self.knowledge.findings.items():
            if finding.then.stops is not None:
                sign = self.codes.signs.index(finding.then.stops)
                before = found.get(sign, np.full(talks.number, -1))
                since = self._since(finding_id, talks, holds, applies)
                found[sign] = np.where(holds[finding_id], since, before)
        return found

    def _since(
        self, finding_id: str, talks: Talks, holds: dict[str, Flags], applies: dict[frozenset[str], Flags]
    ) -> Ints:
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

    def _open(self, talks: Talks) -> Ints:
        """Signs that were ever raised, heard or stood, and whose own question has no answer since then."""
        found = talks.standing.copy()
        for sign, own in enumerate(self.codes.own):
            latest = np.maximum(np.maximum(talks.raised_before[sign], talks.heard[sign]), talks.reached[sign])
            for question in self._speakers_of(sign):
                latest = np.maximum(latest, np.where(talks.speaks[question] >> sign & 1, talks.at[question], 0))
            found |= np.where(latest > talks.at[own], 1 << sign, 0)
        return found

    def _speakers_of(self, sign: int) -> tuple[int, ...]:
        if sign not in self._of_sign:
            by_items = {q for q, _, signs in self.codes.spoken_by_items if signs >> sign & 1}
            by_codes = {q for q in self._speakers if (self.codes.spoken[q] >> sign & 1).any()}
            self._of_sign[sign] = tuple(sorted(by_items | by_codes))
        return self._of_sign[sign]

    @cached_property
    def _of_sign(self) -> dict[int, tuple[int, ...]]:
        return {}

    def _screen(self, talks: Talks) -> Ints:
        """The screen that is open, as a question, or -1."""
        now, plainly = self.codes.now, self.codes.plainly
        unsure = (talks.answer[now] == NOT_SURE) | (talks.answer[now] == SKIPPED)
        again = unsure & ((talks.answer[plainly] == NOT_ASKED) | (talks.at[plainly] < talks.at[now]))
        return np.where(talks.answer[now] == NOT_ASKED, now, np.where(again, plainly, -1))

    def _off_confirmed(self, talks: Talks, stops: Ints, by_answers: Ints, since: dict[int, Ints]) -> Flags:
        off = self.codes.is_off
        still_on = FIRST + self.codes.answers[off].index(STILL_ON)
        confirmed = (talks.answer[off] >= FIRST) & (talks.answer[off] != still_on)
        for sign in range(len(self.codes.signs)):
            latest = talks.heard[sign].copy()
            for question in self._speakers_of(sign):
                counts = (talks.speaks[question] >> sign & 1 == 1) & (by_answers >> sign & 1 == 1)
                if not self._at_once >> sign & 1 and question != self.codes.own[sign]:
                    continue
                latest = np.maximum(latest, np.where(counts, talks.at[question], 0))
            if sign in since:
                by_finding = (by_answers >> sign & 1 == 0) & (since[sign] >= 0)
                latest = np.maximum(latest, np.where(by_finding, since[sign], 0))
            stands = stops >> sign & 1 == 1
            confirmed &= ~stands | (talks.at[off] > latest)
        return confirmed

    def _hearable(self, talks: Talks, by_answers: Ints) -> Ints:
        open_now = self._open(talks) & ~by_answers & ~talks.standing
        told = np.where(talks.answer[self.codes.is_off] == NOT_ASKED, talks.standing, 0)
        return self._all_signs & ~(told | open_now)

    def _care(self, talks: Talks, standing: Standing, supposed: Ints) -> Ints:
        allowed = np.zeros(talks.number, np.int64)
        limit = np.full(talks.number, self.knowledge.roles[self.role].asked_up_to.rank)
        for finding_id, finding in self.knowledge.findings.items():
            holds = standing.holds[finding_id]
            if finding.then.allows_care is not None:
                allowed = np.where(holds, np.maximum(allowed, finding.then.allows_care.rank), allowed)
            if finding.then.care_at_most is not None:
                limit = np.where(holds, np.minimum(limit, finding.then.care_at_most.rank), limit)
        wary = (standing.withdrawn != 0) | (supposed >= DANGEROUS)
        limit = np.where(wary, np.minimum(limit, Care.LOOK_COLD.rank), limit)
        limit = np.where(standing.danger_open, Care.TALK.rank, limit)
        return np.minimum(allowed, limit)

    def may_ask(self, talks: Talks, standing: Standing) -> Flags:
        """(Q, N): as `way.may_ask`, asked already or not."""
        found = np.zeros((len(self.codes.questions), talks.number), bool)
        stopped = standing.stops != 0
        for n, question_id in enumerate(self.codes.questions):
            question = self.knowledge.questions[question_id]
            if question_id == OVEN_IS_OFF or self.codes.danger_questions[n]:
                continue
            let_in = standing.applies[self._needs[n]] & (standing.care >= question.care.rank)
            for finding_id in question.not_when:
                let_in = let_in & ~standing.holds[finding_id]
            if question.ask_when:
                let_in = let_in & np.logical_or.reduce([standing.holds[f] for f in question.ask_when])
            if question.stage not in STAGES_AFTER_A_STOP:
                let_in = let_in & ~stopped
            found[n] = let_in
        return found

    def offered(self, talks: Talks, standing: Standing) -> Flags:
        """(Q, N): every question that could come next under any belief; none where only a verdict can."""
        danger = np.zeros((len(self.codes.questions), talks.number), bool)
        for sign, own in enumerate(self.codes.own):
            danger[own] = standing.open_signs >> sign & 1 == 1
        for screen in (self.codes.place[DANGER_NOW], self.codes.place[DANGER_PLAINLY]):
            danger[screen] = standing.open_screen == screen
        urgent = standing.urgent != 0
        told = (standing.stops != 0) & ~standing.off_confirmed & ~urgent
        in_danger = ~urgent & ~told & danger.any(axis=0)
        others = ~urgent & ~told & ~in_danger & ~standing.handed_on
        askable = (talks.answer == NOT_ASKED) | ((talks.answer == SKIPPED) & (talks.skips <= MOST_SKIPS))
        found = self.may_ask(talks, standing) & askable & others
        found |= danger & in_danger
        for sign, own in enumerate(self.codes.own):
            found[own] |= standing.urgent == 1 << sign
        found[self.codes.is_off] = told & standing.ask_whether_off
        return found

    def acts_in_reach(self, talks: Talks, standing: Standing) -> dict[str, Flags]:
        """act -> where a verdict could tell it, whatever belief says."""
        free = (standing.stops == 0) & ~standing.danger_open & ~standing.handed_on & ~standing.must_visit
        found = {}
        for act_id, act in self.knowledge.acts.items():
            held = np.logical_or.reduce([standing.holds[f] for f in act.only_when]) if act.only_when else True
            found[act_id] = free & held
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

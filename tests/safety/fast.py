"""Danger, care and the questions that may come next, of many conversations at once.

The same as `interview.assess`, `interview.danger` and `interview.way`, said a second time in arrays, for speed; the
tests hold the two against each other. Belief isn't computed: it is whatever a caller supposes.
"""

from dataclasses import dataclass

import numpy as np

from assistant.interview.way import STAGES_AFTER_A_STOP
from assistant.knowledge.danger_questions import DANGER_NOW, DANGER_PLAINLY, OVEN_IS_OFF
from assistant.knowledge.model import CALL_STAGES, Care, Knowledge
from tests.safety.codes import NOT_ASKED, SKIPPED, Codes, Flags, Ints
from tests.safety.findings import Applies, Findings
from tests.safety.raised import Raised
from tests.safety.talks import Talks

MOST_SKIPS = 1
CALM, DANGEROUS, STOPPING = 0, 1, 2
"""What belief may suppose: nothing, that danger is likely, or (from here on, with the sign) that it must stop."""


@dataclass
class Standing:
    """What follows from the states of many conversations. Signs are bits, the gravest the lowest."""

    holds: dict[str, Flags]
    applies: Applies
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
    fit: Flags

    @property
    def danger_open(self) -> Flags:
        return (self.stops != 0) | (self.open_signs != 0) | (self.open_screen >= 0)


class Fast:
    """The compiled knowledge of one rules folder, for one role and one region, else the first.

    `answerable`: the questions whose answers that role gives; the others are refused.
    """

    def __init__(self, knowledge: Knowledge, role: str = "householder", region: str | None = None) -> None:
        self.knowledge = knowledge
        self.codes = Codes(knowledge)
        self.findings = Findings(knowledge, self.codes, region)
        self.raised = Raised(knowledge, self.codes)
        self.role = role
        self.care_of = np.array([knowledge.questions[q].care.rank for q in self.codes.questions])
        taken = self.care_of <= knowledge.roles[role].asked_up_to.rank
        self._of_a_call = np.array([knowledge.questions[q].stage in CALL_STAGES for q in self.codes.questions])
        if not knowledge.roles[role].on_the_telephone:
            taken &= ~self._of_a_call
        self.answerable = np.flatnonzero(taken)
        effects = {f: finding.then for f, finding in knowledge.findings.items()}
        self._allowing = {f: then.allows_care.rank for f, then in effects.items() if then.allows_care is not None}
        self._capping = {f: then.care_at_most.rank for f, then in effects.items() if then.care_at_most is not None}

    def conclude(self, talks: Talks, supposed: Ints) -> Standing:
        """Everything that follows; the stops reached or left are recorded in the talks, as a conversation does.

        `supposed`: of each conversation CALM, DANGEROUS, or STOPPING plus the number of a sign.
        """
        applies = self.findings.applies(talks)
        holds = self.findings.conclude(talks, applies)
        by_answers = self.raised.stops_by_answers(talks)
        since = self.findings.since_of_stops(talks, holds, applies)
        by_findings = sum((1 << sign) * (at >= 0) for sign, at in since.items()) if since else np.int64(0)
        by_belief = np.where(supposed >= STOPPING, 1 << np.maximum(supposed - STOPPING, 0), 0)
        stops = by_answers | by_findings | by_belief
        talks.record(stops)
        open_signs = self.raised.open(talks) & ~stops
        screen = self.raised.screen(talks)
        lowest_stop, lowest_open = stops & -stops, open_signs & -open_signs
        reached = sum((1 << sign) * (at > 0) for sign, at in enumerate(talks.reached))
        withdrawn = reached & ~stops
        ask = (stops & ~self.raised.confirming) == 0
        standing = Standing(
            holds=holds,
            applies=applies,
            stops=stops,
            by_answers=by_answers,
            open_signs=open_signs,
            open_screen=screen,
            withdrawn=withdrawn,
            off_confirmed=ask & self.raised.off_confirmed(talks, stops, by_answers, since),
            ask_whether_off=ask,
            urgent=np.where((stops != 0) & (lowest_open != 0) & (lowest_open < lowest_stop), lowest_open, 0),
            care=np.zeros(0),
            hearable=self.raised.hearable(talks, by_answers),
            handed_on=self._with("hands_on_to", talks, holds),
            must_visit=self._with("visit_anyway", talks, holds) | (withdrawn != 0) | (supposed >= DANGEROUS),
            fit=np.zeros((0, talks.number), bool),
        )
        standing.care = self._care(talks, standing, supposed)
        standing.fit = self._fit(talks, standing)
        talks.leave(~standing.fit)
        return standing

    def _fit(self, talks: Talks, standing: Standing) -> Flags:
        """(measured, N): what may be measured, and go on being measured."""
        calm = ~standing.danger_open
        found = [self._lets_in(n, standing) & calm for n in self.codes.measured]
        return np.array(found).reshape(len(found), talks.number)

    def _with(self, effect: str, talks: Talks, holds: dict[str, Flags]) -> Flags:
        """(N,): where a finding holds that has this effect."""
        found = np.zeros(talks.number, bool)
        for finding_id, finding in self.knowledge.findings.items():
            if getattr(finding.then, effect) is not None:
                found |= holds[finding_id]
        return found

    def _care(self, talks: Talks, standing: Standing, supposed: Ints) -> Ints:
        allowed = np.zeros(talks.number, np.int64)
        limit = np.full(talks.number, self.knowledge.roles[self.role].asked_up_to.rank)
        for finding_id, care in self._allowing.items():
            allowed = np.where(standing.holds[finding_id], np.maximum(allowed, care), allowed)
        for finding_id, care in self._capping.items():
            limit = np.where(standing.holds[finding_id], np.minimum(limit, care), limit)
        wary = (standing.withdrawn != 0) | (supposed >= DANGEROUS)
        limit = np.where(wary, np.minimum(limit, Care.LOOK_COLD.rank), limit)
        limit = np.where(standing.danger_open, Care.TALK.rank, limit)
        return np.minimum(allowed, limit)

    def may_ask(self, talks: Talks, standing: Standing) -> Flags:
        """(Q, N): as `way.may_ask`, asked already or not."""
        found = np.zeros((len(self.codes.questions), talks.number), bool)
        for n, question_id in enumerate(self.codes.questions):
            if question_id == OVEN_IS_OFF or self.codes.danger_questions[n]:
                continue
            found[n] = self._lets_in(n, standing)
        return found

    def _lets_in(self, n: int, standing: Standing) -> Flags:
        question = self.knowledge.questions[self.codes.questions[n]]
        let_in = standing.applies[self.findings.needs[n]] & (standing.care >= self.care_of[n])
        for finding_id in question.not_when:
            let_in = let_in & ~standing.holds[finding_id]
        if question.ask_when:
            let_in = let_in & np.logical_or.reduce([standing.holds[f] for f in question.ask_when])
        if question.stage not in STAGES_AFTER_A_STOP:
            let_in = let_in & (standing.stops == 0)
        return let_in

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
        found[self._of_a_call] = False
        return found

    def acts_in_reach(self, talks: Talks, standing: Standing) -> dict[str, Flags]:
        """act -> where a verdict could tell it, whatever belief says."""
        free = (standing.stops == 0) & ~standing.danger_open & ~standing.handed_on & ~standing.must_visit
        found = {}
        for act_id, act in self.knowledge.acts.items():
            held = np.logical_or.reduce([standing.holds[f] for f in act.only_when]) if act.only_when else True
            found[act_id] = free & held
        return found

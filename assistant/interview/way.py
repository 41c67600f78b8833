"""What stands between now and a question: nothing, a few others that open the way, or a closed door."""

from collections.abc import Iterable

from assistant.interview.assess import Assessment, applies, care_limit, facts_of
from assistant.interview.script import Script, test_of
from assistant.knowledge.danger_questions import OVEN_IS_OFF, is_danger_question
from assistant.knowledge.model import Condition, Question

STAGES_AFTER_A_STOP = ("greeting", "call", "complaint", "oven", "visit", "closing")

Way = tuple[str, ...]
"""Questions to ask first, in their order; empty where the way is open."""


def gates_open(assessment: Assessment, question: Question) -> bool:
    """Whether the findings let the question through."""
    concluded = assessment.trace.concluded
    return concluded.isdisjoint(question.not_when) and (
        not question.ask_when or not concluded.isdisjoint(question.ask_when)
    )


def may_ask(script: Script, assessment: Assessment, question_id: str) -> bool:
    """About something that this oven has, within the allowed care, and let through by the findings."""
    question = script.knowledge.questions[question_id]
    return (
        _may_ever_come(assessment, question_id, question)
        and question.care.rank <= assessment.allowed_care.rank
        and gates_open(assessment, question)
    )


def _may_ever_come(assessment: Assessment, question_id: str, question: Question) -> bool:
    return (
        question_id != OVEN_IS_OFF
        and not is_danger_question(question_id)
        and applies(question, assessment.not_fitted)
        and assessment.trace.concluded.isdisjoint(question.not_when)
        and (not assessment.danger.stops or question.stage in STAGES_AFTER_A_STOP)
    )


class WayFinder:
    """Finds ways to questions for one assessment; findings are looked into once."""

    def __init__(self, script: Script, assessment: Assessment) -> None:
        self._script = script
        self._assessment = assessment
        self._facts = facts_of(assessment.state.answers, script.knowledge)
        self._known: dict[str, Way | None] = {}
        self._limit = care_limit(
            script.knowledge, assessment.state.role, assessment.effects, assessment.danger, assessment.dangerous
        )

    def way_to(self, question_id: str) -> Way | None:
        """The shortest way, or None where no answer could open one now."""
        question = self._script.knowledge.questions[question_id]
        if not _may_ever_come(self._assessment, question_id, question) or question.care.rank > self._limit.rank:
            return None
        ways = []
        if not gates_open(self._assessment, question):
            ways.append(self.shortest(question.ask_when))
        if question.care.rank > self._assessment.allowed_care.rank:
            findings = self._script.knowledge.findings
            allowed = {f: finding.then.allows_care for f, finding in findings.items() if finding.then.allows_care}
            raising = (f for f, care in allowed.items() if care.rank >= question.care.rank)
            ways.append(self.shortest(raising))
        if any(way is None for way in ways):
            return None
        return self._in_order(step for way in ways if way for step in way)

    def shortest(self, findings: Iterable[str]) -> Way | None:
        """The shortest way to one of the findings."""
        ways = [way for way in (self.way_to_finding(f) for f in findings) if way is not None]
        return min(ways, key=len, default=None)

    def way_to_finding(self, finding_id: str) -> Way | None:
        """The shortest way to conclude it; empty if it is concluded, None where no answer could do it now."""
        if finding_id in self._assessment.trace.concluded:
            return ()
        if finding_id not in self._known:
            self._known[finding_id] = None  # a circle leads nowhere
            finding = self._script.knowledge.findings[finding_id]
            if self._assessment.trace.concluded.isdisjoint(finding.unless):
                ways = [way for way in map(self._way_through, finding.groups) if way is not None]
                self._known[finding_id] = min(ways, key=len, default=None)
        return self._known[finding_id]

    def _way_through(self, conditions: tuple[Condition, ...]) -> Way | None:
        steps: list[str] = []
        for condition in conditions:
            way = self._way_by(condition)
            if way is None:
                return None
            steps.extend(way)
        return self._in_order(steps)

    def _way_by(self, condition: Condition) -> Way | None:
        if condition.finding is not None:
            return self.way_to_finding(condition.finding)
        question_id = str(condition.question)
        test = test_of(condition)
        if question_id in self._assessment.state.answers:
            return () if test.key in self._facts and test.holds(self._facts[test.key]) else None
        question = self._script.knowledge.questions[question_id]
        if not (condition.bounded or condition.includes or set(test.is_one_of) & question.choices.keys()):
            return None
        before = self.way_to(question_id)
        return None if before is None else (*before, question_id)

    def _in_order(self, steps: Iterable[str]) -> Way:
        """Each once; what opens the way to another stays before it."""
        return tuple(dict.fromkeys(steps))

"""What an interview follows: the knowledge, with its rules and its evidence model made ready."""

from collections.abc import Iterator
from dataclasses import dataclass

from assistant.belief.hypotheses import EvidenceModel, compile_evidence_model
from assistant.belief.learning import base_rates, with_rates
from assistant.engine import Evaluator, evaluator
from assistant.engine.crisp import CrispRule, Test
from assistant.knowledge.model import Condition, Finding, Knowledge

SAFETY_BAND, GATE_BAND, ADVICE_BAND = 0, 1, 2


@dataclass(frozen=True)
class Script:
    knowledge: Knowledge
    evaluator: Evaluator
    evidence_model: EvidenceModel


def script_of(knowledge: Knowledge) -> Script:
    """Compile the knowledge once for all the sessions that follow it."""
    rules = crisp_rules(knowledge)
    evidence_model = compile_evidence_model(with_rates(knowledge, base_rates(knowledge)))
    return Script(knowledge, evaluator(rules, fact_keys(knowledge)), evidence_model)


def crisp_rules(knowledge: Knowledge) -> tuple[CrispRule, ...]:
    """The findings in the engine's form: each group of conditions a rule of its own."""
    return tuple(
        rule
        for order, (finding_id, finding) in enumerate(knowledge.findings.items())
        for rule in rules_of_finding(finding_id, finding, order)
    )


def rules_of_finding(finding_id: str, finding: Finding, order: int) -> Iterator[CrispRule]:
    for number, group in enumerate(finding.groups):
        yield CrispRule(
            id=f"{finding_id}__{number}" if len(finding.groups) > 1 else finding_id,
            concludes=finding_id,
            tests=tuple(_test(condition) for condition in group),
            absent=finding.unless,
            band=_band(finding),
            order=order,
        )


def _test(condition: Condition) -> Test:
    if condition.finding is not None:
        return Test(condition.finding, is_one_of=("yes",))
    key = str(condition.question)
    if condition.includes is not None:
        return Test(item_key(key, condition.includes), is_one_of=("yes",))
    codes = (condition.equals,) if condition.equals is not None else condition.is_one_of
    return Test(
        key,
        is_one_of=codes,
        at_least=condition.at_least,
        more_than=condition.more_than,
        at_most=condition.at_most,
        less_than=condition.less_than,
    )


def item_key(question_id: str, choice_id: str) -> str:
    """The fact key of one item of a question with several choices."""
    return f"{question_id}__{choice_id}"


def question_of_key(key: str) -> str:
    return key.split("__", 1)[0]


def _band(finding: Finding) -> int:
    if finding.then.stops or finding.then.hands_on_to:
        return SAFETY_BAND
    return GATE_BAND if finding.then.allows_care or finding.then.care_at_most else ADVICE_BAND


def fact_keys(knowledge: Knowledge) -> tuple[str, ...]:
    """Every key on which an answer may give a fact."""
    items = [
        item_key(question_id, choice_id)
        for question_id, question in knowledge.questions.items()
        if question.kind == "choices"
        for choice_id in question.choices
    ]
    return (*knowledge.questions, *items)

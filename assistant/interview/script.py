"""What an interview follows: the knowledge, with its rules and its evidence model made ready."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from assistant.belief.decision import Decision, decision_of
from assistant.belief.hypotheses import EvidenceModel, compile_evidence_model, item_key
from assistant.belief.instruments import with_instruments
from assistant.belief.learning import base_rates
from assistant.belief.remembered import Remembered
from assistant.belief.value import Worth
from assistant.engine import Evaluator, evaluator
from assistant.engine.crisp import CrispRule, Facts, Test, Trace
from assistant.knowledge.model import Condition, Finding, Knowledge, Region

SAFETY_BAND, GATE_BAND, ADVICE_BAND = 0, 1, 2


MOST_FORESEEN = 512
MOST_TRACES = 512


def _remembered_worths() -> Remembered[tuple[Worth, ...]]:
    return Remembered(MOST_FORESEEN)


def _remembered_traces() -> Remembered[Trace]:
    return Remembered(MOST_TRACES)


@dataclass(frozen=True)
class Script:
    """`decisions`: region -> what each way to end costs there."""

    knowledge: Knowledge
    evaluator: Evaluator
    keys_read: frozenset[str]
    evidence_model: EvidenceModel
    decisions: Mapping[str, Decision]
    dangerous: frozenset[str]
    foreseen: Remembered[tuple[Worth, ...]] = field(default_factory=_remembered_worths, compare=False)
    traces: Remembered[Trace] = field(default_factory=_remembered_traces, compare=False)

    def trace(self, facts: Facts) -> Trace:
        """What the facts that some rule reads lead to. Raises ValueError for one that can't be used."""
        read = {key: value for key, value in facts.items() if key in self.keys_read}
        key = (self.evaluator, frozenset(read.items()))
        return self.traces.get(key, lambda: self.evaluator.evaluate(read))

    def region(self, name: str) -> Region:
        """The region of that name, or the one that stands in for it."""
        return region_of(self.knowledge, name)

    def decision(self, region: str) -> Decision:
        """That of the same region."""
        return self.decisions[self.region_name(region)]

    def region_name(self, region: str) -> str:
        """Its name; that of the first one, for a session from a region that the rules no longer know."""
        return region if region in self.decisions else next(iter(self.decisions))


def region_of(knowledge: Knowledge, name: str) -> Region:
    """The region of that name; the first one, for a session from a region that the rules no longer know."""
    return knowledge.regions.get(name) or next(iter(knowledge.regions.values()))


def script_of(knowledge: Knowledge, cache: Path | None = None) -> Script:
    """Compile the knowledge once for all the sessions that follow it. `cache`: where simulated ovens are kept."""
    rules = crisp_rules(knowledge)
    return Script(
        knowledge,
        evaluator(rules, keys_read(rules)),
        frozenset(keys_read(rules)),
        with_instruments(compile_evidence_model(knowledge, base_rates(knowledge)), knowledge, cache),
        {region: decision_of(knowledge, region) for region in knowledge.regions},
        frozenset(cause_id for cause_id, cause in knowledge.causes.items() if cause.danger),
    )


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
            tests=tuple(test_of(condition) for condition in group),
            absent=finding.unless,
            band=_band(finding),
            order=order,
        )


def test_of(condition: Condition) -> Test:
    """The condition as the engine tests it."""
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


def question_of_key(key: str) -> str:
    return key.split("__", 1)[0]


def _band(finding: Finding) -> int:
    if finding.then.stops or finding.then.hands_on_to:
        return SAFETY_BAND
    return GATE_BAND if finding.then.allows_care or finding.then.care_at_most else ADVICE_BAND


def keys_read(rules: Iterable[CrispRule]) -> tuple[str, ...]:
    """The keys of facts that some rule reads; no other fact can matter to it."""
    rules = tuple(rules)
    concluded = {rule.concludes for rule in rules}
    return tuple(dict.fromkeys(test.key for rule in rules for test in rule.tests if test.key not in concluded))

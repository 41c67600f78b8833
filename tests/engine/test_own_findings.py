"""The engine and the naive evaluator agree on the project's own findings."""

from random import Random

from assistant.engine.durable_adapter import DurableEvaluator
from assistant.engine.naive import NaiveEvaluator
from tests.engine.own_findings import answers_for, own_findings
from tests.engine.random_rules import shuffled


def test_both_evaluators_agree_on_random_answers_to_our_own_questions() -> None:
    rules = own_findings()
    engine, naive = DurableEvaluator(rules), NaiveEvaluator(rules)
    chance = Random(20)
    concluded: set[str] = set()
    for _ in range(400):
        answers = answers_for(rules, chance)
        trace = naive.evaluate(answers)
        assert engine.evaluate(shuffled(chance, answers)) == trace
        concluded |= trace.concluded
    assert engine.fell_back == 0
    assert len(concluded) >= 0.9 * len({rule.concludes for rule in rules})

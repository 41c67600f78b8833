"""Compares durable-rules with the naive evaluator on random rules and answers, and times both.

    python -m tests.benchmarks.engine_agreement --sets 20000 --seed 1

The same number of sets is then answered at random for the project's own findings.
Exits with 1 if any two traces differ, or if the engine failed and the naive evaluator answered instead.
"""

import argparse
import sys
from random import Random
from statistics import median, quantiles
from time import perf_counter

from assistant.engine.crisp import CrispRule, Test
from assistant.engine.durable_adapter import DurableEvaluator
from assistant.engine.naive import NaiveEvaluator
from tests.engine.own_findings import answers_for, own_findings
from tests.engine.random_rules import Evaluate, disagreements, random_rules, random_test, shuffled

SETS_PER_RULE_SET = 50
TIMED_RULES = 300
TIMED_FACTS = 60
TIMED_RUNS = 200


def main() -> int:
    arguments = argparse.ArgumentParser(description="Compare the two evaluators of crisp rules.")
    arguments.add_argument("--sets", type=int, default=20_000, help="how many sets of answers")
    arguments.add_argument("--seed", type=int, default=1)
    chosen = arguments.parse_args()
    faults = compare(chosen.sets, Random(chosen.seed)) + compare_own(chosen.sets, Random(chosen.seed))
    time_both(Random(chosen.seed))
    return 1 if faults else 0


def compare(sets: int, random: Random) -> int:
    """Print how many sets of answers agreed; the number of those that didn't, or that the engine failed."""
    compared = rules_seen = rule_sets = fired = differing = fell_back = 0
    while compared < sets:
        rules = random_rules(random)
        here = min(SETS_PER_RULE_SET, sets - compared)
        engine, naive = DurableEvaluator(rules), NaiveEvaluator(rules)

        def counted(facts, naive=naive):
            nonlocal fired
            trace = naive.evaluate(facts)
            fired += len(trace.fired)
            return trace

        for found in disagreements(counted, engine.evaluate, random, rules, here):
            differing += 1
            print(f"differs on {found.facts}\n  rules {rules}\n  naive  {found.one}\n  engine {found.other}")
        compared += here
        rule_sets += 1
        rules_seen += len(rules)
        fell_back += engine.fell_back
    print(f"{compared} sets of answers, {rule_sets} sets of rules with {rules_seen} rules, {fired} firings")
    print(f"{compared - differing} agreed, {differing} differed, {fell_back} not answered by the engine")
    return differing + fell_back


def compare_own(sets: int, random: Random) -> int:
    """The same for the project's own findings."""
    rules = own_findings()
    engine, naive = DurableEvaluator(rules), NaiveEvaluator(rules)
    fired = differing = 0
    for _ in range(sets):
        answers = answers_for(rules, random)
        expected = naive.evaluate(answers)
        fired += len(expected.fired)
        if engine.evaluate(shuffled(random, answers)) != expected:
            differing += 1
            print(f"own findings differ on {answers}")
    print(f"{sets} sets of answers, {len(rules)} rules of the project's own, {fired} firings")
    print(f"{sets - differing} agreed, {differing} differed, {engine.fell_back} not answered by the engine")
    return differing + engine.fell_back


def time_both(random: Random) -> None:
    """Print the times of one evaluation of each evaluator."""
    keys = [f"{'n' if number % 3 == 0 else 'q'}{number}" for number in range(TIMED_FACTS)]
    rules = [timed_rule(random, number, keys) for number in range(TIMED_RULES)]
    facts = {key: random.choice((0.0, 3.0, 60.0)) if key[0] == "n" else "yes" for key in keys}
    for evaluator in (DurableEvaluator(rules), NaiveEvaluator(rules)):
        fired = len(evaluator.evaluate(facts).fired)
        milliseconds = timed(evaluator.evaluate, facts)
        print(
            f"{evaluator.name}: {TIMED_RULES} rules, {TIMED_FACTS} facts, {fired} fired: median "
            f"{median(milliseconds):.2f} ms, 99th percentile {quantiles(milliseconds, n=100)[-1]:.2f} ms"
        )


def timed_rule(random: Random, number: int, keys: list[str]) -> CrispRule:
    """A rule on two or three keys; every third one also tests a conclusion, every fifth negates one."""
    tests = [timed_test(random, key) for key in random.sample(keys, random.choice((1, 2, 3)))]
    layer = number // 100
    if layer and number % 3 == 0:
        tests.append(Test(f"c{layer - 1}_{random.randrange(60)}", is_one_of=("yes",)))
    absent = (f"c{layer - 1}_{random.randrange(60)}",) if layer and number % 5 == 0 else ()
    return CrispRule(f"rule_{number}", f"c{layer}_{number % 60}", tuple(tests), absent, band=layer)


def timed_test(random: Random, key: str) -> Test:
    """Bounds, or mostly one code, as rules are written by hand."""
    if key.startswith("n"):
        return random_test(random, key)
    return Test(key, is_one_of=random.choice((("yes",), ("yes",), ("no",), ("yes", "not_sure"))))


def timed(evaluate: Evaluate, facts: dict[str, str | float]) -> list[float]:
    """Milliseconds of each of a number of runs."""
    milliseconds = []
    for _ in range(TIMED_RUNS):
        began = perf_counter()
        evaluate(facts)
        milliseconds.append((perf_counter() - began) * 1000)
    return milliseconds


if __name__ == "__main__":
    sys.exit(main())

"""The project's own findings, and random answers that they test for."""

from pathlib import Path
from random import Random

from assistant.engine.crisp import CrispRule
from assistant.interview.script import crisp_rules
from assistant.knowledge.load import load_knowledge

RULES = Path(__file__).parents[2] / "rules"
UNTESTED = ("not_sure", "skipped", "no", "something_untested")


def own_findings() -> tuple[CrispRule, ...]:
    return crisp_rules(load_knowledge(RULES, None))


def answers_for(rules: tuple[CrispRule, ...], random: Random) -> dict[str, str | float]:
    """For most keys a code that some rule tests for, or a number at, below or above a bound; some other answer else."""
    conclusions = {rule.concludes for rule in rules}
    answers: dict[str, str | float] = {}
    for rule in random.sample(rules, len(rules)):
        for test in rule.tests:
            if test.key in conclusions or test.key in answers or random.random() < 0.2:
                continue
            if test.bounds:
                answers[test.key] = random.choice(list(test.bounds.values())) + random.choice((-0.001, 0, 0.001, 5))
            else:
                answers[test.key] = random.choice(test.is_one_of if random.random() < 0.8 else UNTESTED)
    return answers

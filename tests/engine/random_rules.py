"""Random rule sets and answers for the comparison of the two evaluators.

Each conclusion belongs to a layer. A rule may test conclusions of its own layer and of those below, which
allows chains and harmless circles, and negates only what lies in lower layers.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from random import Random

from assistant.engine.crisp import CrispRule, Facts, Test, Trace

CODES = ("yes", "no", "not_sure", "skipped")
BOUNDS = (-40.0, -0.001, 0.0, 0.001, 2.5, 3.0, 60.0, 180.25, 999999999999.125)
OFFSETS = (0.0, 0.0, 0.0, 0.001, -0.001, 0.0004, -0.0004, 7.0, -7.0)

Evaluate = Callable[[Facts], Trace]


@dataclass(frozen=True)
class Disagreement:
    """Facts on which two evaluators gave different traces."""

    facts: dict[str, str | float]
    one: Trace
    other: Trace


def random_rules(random: Random) -> list[CrispRule]:
    """Up to 120 rules, few more often than many, over 4 to 20 keys and 4 layers, in random order."""
    most = random.choice((10, 30, 30, 120))
    keys = _keys(random.randint(2, 10), random.randint(2, 10))
    layers = [[f"c{layer}_{number}" for number in range(random.randint(1, 5))] for layer in range(4)]
    rules = [_random_rule(random, number, keys, layers) for number in range(random.randint(0, most))]
    random.shuffle(rules)
    return rules


def _keys(of_codes: int, of_numbers: int) -> list[str]:
    return [f"q{number}" for number in range(of_codes)] + [f"n{number}" for number in range(of_numbers)]


def _random_rule(random: Random, number: int, keys: list[str], layers: list[list[str]]) -> CrispRule:
    layer = random.randrange(len(layers))
    lower = [conclusion for below in layers[:layer] for conclusion in below]
    reachable = lower + layers[layer]
    tests = [random_test(random, random.choice(keys)) for _ in range(random.choice((1, 1, 1, 2, 3)))]
    if random.random() < 0.4:
        tests.append(Test(random.choice(reachable), is_one_of=("yes",)))
    absent = random.sample(lower, min(len(lower), random.choice((0, 0, 1, 2))))
    if absent and random.random() < 0.3:
        tests = []
    random.shuffle(tests)
    return CrispRule(
        id=f"rule_{number}",
        concludes=random.choice(layers[layer]),
        tests=tuple(tests),
        absent=tuple(absent),
        band=random.randint(0, 3),
        order=random.randint(0, 5),
    )


def random_test(random: Random, key: str) -> Test:
    """A test on this key: bounds if its name starts with n, else codes."""
    if not key.startswith("n"):
        return Test(key, is_one_of=tuple(random.sample(CODES, random.choice((1, 2, 3)))))
    bounds: dict[str, float] = {}
    low, high = sorted(random.choices(BOUNDS, k=2))
    shape = random.choice(("floor", "ceiling", "both"))
    if shape != "ceiling":
        bounds[random.choice(("at_least", "more_than"))] = low
    if shape != "floor":
        bounds[random.choice(("at_most", "less_than"))] = high
    return Test(key, **bounds)


def random_facts(random: Random, rules: list[CrispRule]) -> dict[str, str | float]:
    """Answers to most of the tested keys and to one that no rule tests; a few are of the wrong kind."""
    conclusions = {rule.concludes for rule in rules}
    keys = sorted({test.key for rule in rules for test in rule.tests} - conclusions)
    keys = [key for key in keys if not key.startswith("c")] + ["untested"]
    answered = [key for key in keys if random.random() < 0.85]
    random.shuffle(answered)
    facts: dict[str, str | float] = {}
    for key in answered:
        is_number = key.startswith("n") != (random.random() < 0.03)
        number = random.choice(BOUNDS) + random.choice(OFFSETS)
        facts[key] = number if is_number else random.choice(CODES)
    return facts


def shuffled(random: Random, facts: Facts) -> dict[str, str | float]:
    """The same facts in another order."""
    items = list(facts.items())
    random.shuffle(items)
    return dict(items)


def disagreements(
    one: Evaluate, other: Evaluate, random: Random, rules: list[CrispRule], sets: int
) -> Iterator[Disagreement]:
    """Compare two evaluators of these rules on this many sets of facts, given to each in its own order."""
    for _ in range(sets):
        facts = random_facts(random, rules)
        traces = one(facts), other(shuffled(random, facts))
        if traces[0] != traces[1]:
            yield Disagreement(facts, *traces)

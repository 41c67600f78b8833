"""What the rule engine can't be trusted with, refused when rules are loaded.

Beyond these limits durable-rules 2.0.28 crashes, hangs or answers wrongly. They hold for both evaluators,
so that rules mean the same wherever they run.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import prod

from assistant.engine.conditions import Condition, alternatives_by_key
from assistant.engine.crisp import ABSENT, CrispRule, is_id, rounded
from assistant.engine.strata import negation_cycles
from assistant.errors import RulesBroken

MOST_ANTECEDENTS = 12  # the engine refuses more than 16
MOST_KEYS = 400  # it hangs at 512 conditions side by side
MOST_CODES_OF_A_KEY = 400  # as above, below one key
MOST_COMPARISONS_OF_A_KEY = 60  # it fails once one fact passes 65, also those of bounds that fail as a whole
MOST_SHARING_A_CONDITION = 250  # it refuses more than 256
MOST_ALTERNATIVES = 64  # per rule; each becomes an engine rule
MOST_ENGINE_RULES = 1000  # the largest set that was tried at length
HIGHEST_BAND = 64  # band x 1000 + order must fit into 16 bits
HIGHEST_ORDER = 999

PRIME_RULE = "prime:rule"
PRIME = "prime:fact"
KEEPING_RULE = "keep:rule"
NEVER = "keep:never"
SESSION_IDS = tuple(f"s{number}" for number in range(64))  # more than 1024 alive at once exhaust the engine
ALIASES = tuple(f"f{number}" for number in range(MOST_ANTECEDENTS))
STATE_IDS = tuple(f"sid-{sid}" for sid in SESSION_IDS)  # the engine's own fact in each session
OWN_NAMES = (PRIME_RULE, PRIME, KEEPING_RULE, NEVER, *SESSION_IDS, *STATE_IDS)
PROPERTIES = ("sid", "id", "k", "c", "n", "any")

Details = dict[str, str | float]

Expansions = Sequence[Sequence[tuple[Condition, ...]]]
"""For each rule its antecedents, and for each of them the alternatives."""


@dataclass(frozen=True)
class LimitProblem:
    """One thing that can't be run. `rule_id` is empty if no single rule is to blame."""

    rule_id: str
    code: str
    details: Mapping[str, str | float]

    def __str__(self) -> str:
        details = ", ".join(f"{name} {value}" for name, value in self.details.items())
        return f"{self.rule_id or 'the rules together'}: {self.code} ({details})"


def refuse_beyond_limits(rules: Sequence[CrispRule], keys: Sequence[str]) -> None:
    """Raises RulesBroken, with every problem, if there is one."""
    problems = limit_problems(rules, keys)
    if problems:
        raise RulesBroken([str(problem) for problem in problems])


def limit_problems(rules: Sequence[CrispRule], keys: Sequence[str]) -> list[LimitProblem]:
    """Every problem of these rules. `keys` are those on which facts may be given, tested or not."""
    expansions = [alternatives_by_key(rule) for rule in rules]
    problems: list[LimitProblem] = []
    for rule, antecedents in zip(rules, expansions, strict=True):
        problems.extend(_malformed_in_rule(rule))
        problems.extend(_unusable_bounds(rule))
        problems.extend(_oversize(rule, antecedents))
    problems.extend(_malformed("", "key", keys))
    problems.extend(_repeated_ids(rules))
    problems.extend(_concluded_keys(rules, keys))
    problems.extend(
        LimitProblem(cycle.rule_id, "negation_cycle", {"through": " ".join(cycle.through)})
        for cycle in negation_cycles(rules)
    )
    problems.extend(_too_much_together(rules, keys, expansions))
    problems.extend(_hash_collisions(_engine_names(rules, keys, expansions)))
    return problems


def _malformed_in_rule(rule: CrispRule) -> Iterator[LimitProblem]:
    yield from _malformed(rule.id, "rule", [rule.id])
    yield from _malformed(rule.id, "conclusion", [rule.concludes, *rule.absent])
    yield from _malformed(rule.id, "key", [test.key for test in rule.tests])
    yield from _malformed(rule.id, "code", [code for test in rule.tests for code in test.is_one_of])


def _oversize(rule: CrispRule, antecedents: Sequence[tuple[Condition, ...]]) -> Iterator[LimitProblem]:
    sizes = [
        ("too_many_antecedents", len(antecedents), MOST_ANTECEDENTS),
        ("too_many_alternatives", _engine_rules_of(antecedents), MOST_ALTERNATIVES),
    ]
    for code, found, most in sizes:
        if found > most:
            yield LimitProblem(rule.id, code, {"found": found, "most": most})
    for name, number, highest in (("band", rule.band, HIGHEST_BAND), ("order", rule.order, HIGHEST_ORDER)):
        if not 0 <= number <= highest:
            yield LimitProblem(rule.id, f"{name}_out_of_range", {"found": number, "most": highest})


def _engine_rules_of(antecedents: Sequence[tuple[Condition, ...]]) -> int:
    """How many engine rules these become; none if the tests on one key contradict each other."""
    return prod(len(alternatives) for alternatives in antecedents)


def _malformed(rule_id: str, what: str, ids: Sequence[str]) -> Iterator[LimitProblem]:
    for text in dict.fromkeys(ids):
        if not is_id(text):
            yield LimitProblem(rule_id, "malformed_id", {"what": what, "id": text})


def _unusable_bounds(rule: CrispRule) -> Iterator[LimitProblem]:
    for test in rule.tests:
        for name, bound in test.bounds.items():
            comparable = rounded(bound)
            details: Details = {"key": test.key, "bound": name, "found": bound}
            if isinstance(bound, bool) or comparable is None:
                yield LimitProblem(rule.id, "bound_not_usable", details)
            elif comparable != bound:
                yield LimitProblem(rule.id, "bound_too_fine", details)


def _repeated_ids(rules: Sequence[CrispRule]) -> Iterator[LimitProblem]:
    seen: set[str] = set()
    for rule in rules:
        if rule.id in seen:
            yield LimitProblem(rule.id, "repeated_id", {"id": rule.id})
        seen.add(rule.id)


def _concluded_keys(rules: Sequence[CrispRule], keys: Sequence[str]) -> Iterator[LimitProblem]:
    given = set(keys)
    for rule in rules:
        if rule.concludes in given:
            yield LimitProblem(rule.id, "concludes_a_given_key", {"key": rule.concludes})


def _too_much_together(
    rules: Sequence[CrispRule], keys: Sequence[str], expansions: Expansions
) -> Iterator[LimitProblem]:
    every_key = _engine_keys(rules, keys)
    if len(every_key) > MOST_KEYS:
        yield LimitProblem("", "too_many_keys", {"found": len(every_key), "most": MOST_KEYS})
    total = sum(_engine_rules_of(antecedents) for antecedents in expansions)
    if total > MOST_ENGINE_RULES:
        yield LimitProblem("", "too_many_rules", {"found": total, "most": MOST_ENGINE_RULES})
    yield from _crowded_conditions(_uses_of_conditions(expansions))


def _crowded_conditions(uses: Mapping[Condition, int]) -> Iterator[LimitProblem]:
    """What too many rules share, and what stands too often below one key."""
    codes: Counter[str] = Counter()
    comparisons: Counter[str] = Counter()
    sharing: Counter[str] = Counter()
    for condition, found in uses.items():
        codes[condition.key] += condition.code is not None
        comparisons[condition.key] += len(condition.comparisons)
        sharing[condition.key] = max(sharing[condition.key], found)
    crowds = [
        ("condition_in_too_many_rules", sharing, MOST_SHARING_A_CONDITION),
        ("too_many_codes_of_key", codes, MOST_CODES_OF_A_KEY),
        ("too_many_comparisons_of_key", comparisons, MOST_COMPARISONS_OF_A_KEY),
    ]
    for code, found_by_key, most in crowds:
        for key, found in found_by_key.items():
            if found > most:
                yield LimitProblem("", code, {"key": key, "found": found, "most": most})


def _engine_keys(rules: Sequence[CrispRule], keys: Sequence[str]) -> list[str]:
    """Everything that can be the key of a fact, each once."""
    found = dict.fromkeys(keys)
    for rule in rules:
        found.update(dict.fromkeys([rule.concludes, *(test.key for test in rule.tests)]))
        found.update(dict.fromkeys(ABSENT + absent for absent in rule.absent))
    return list(found)


def _uses_of_conditions(expansions: Expansions) -> dict[Condition, int]:
    """In how many engine rules each condition stands; counted without expanding the rules."""
    uses: dict[Condition, int] = {}
    for antecedents in expansions:
        total = _engine_rules_of(antecedents)
        for alternatives in antecedents:
            for condition in alternatives:
                uses[condition] = uses.get(condition, 0) + total // len(alternatives)
    return uses


def _hash_collisions(names: Iterable[str]) -> Iterator[LimitProblem]:
    """The engine tells names apart by a hash of 32 bits only: two names with one hash are one to it."""
    first_with: dict[int, str] = {}
    for name in names:
        first = first_with.setdefault(fnv_1a_32(name), name)
        if first != name:
            yield LimitProblem("", "same_hash", {"first": first, "second": name})


def _engine_names(rules: Sequence[CrispRule], keys: Sequence[str], expansions: Expansions) -> list[str]:
    """Every text that the engine may compare, each once."""
    names = [*PROPERTIES, *ALIASES, *OWN_NAMES, *_engine_keys(rules, keys)]
    for rule, antecedents in zip(rules, expansions, strict=True):
        names.extend([rule.id, *(code for test in rule.tests for code in test.is_one_of)])
        alternatives = min(_engine_rules_of(antecedents), MOST_ALTERNATIVES)
        names.extend(engine_rule_name(rule, number) for number in range(alternatives))
    return list(dict.fromkeys(names))


def engine_rule_name(rule: CrispRule, number: int) -> str:
    """What the engine calls the alternative with this number, counted from 0."""
    return f"{rule.id}#{number}"


def fnv_1a_32(text: str) -> int:
    """The 32-bit FNV-1a hash of the text in UTF-8. Source: draft-eastlake-fnv, sections 2 and 5."""
    value = 0x811C9DC5
    for byte in text.encode():
        value = ((value ^ byte) * 0x01000193) & 0xFFFFFFFF
    return value

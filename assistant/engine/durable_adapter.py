"""Runs crisp rules in durable-rules 2.0.28. The only file that imports it.

The engine is only used in a way in which it was seen to be right: single-fact conditions against
constants, no threads, explicit ids, no negation of its own. Everything else is refused by limits.py.
An evaluation keeps nothing: a fresh session is filled, run once per stratum, read and deleted.
"""

from collections.abc import Callable, Sequence
from itertools import cycle
from threading import Lock
from typing import Any

from durable import engine

from assistant.engine.conditions import Condition, engine_rules
from assistant.engine.crisp import ABSENT, CONCLUDED, CrispRule, Facts, Fired, Trace, usable_facts
from assistant.engine.limits import (
    ALIASES,
    KEEPING_RULE,
    NEVER,
    PRIME,
    PRIME_RULE,
    SESSION_IDS,
    engine_rule_name,
    refuse_beyond_limits,
)
from assistant.engine.naive import NaiveEvaluator
from assistant.engine.strata import positions, strata_of_conclusions

RULESET = "crisp"
Action = Callable[[Any], None]


class QuietHost(engine.Host):  # type: ignore[misc]  # the engine ships no types
    """A host without the timer threads of the stock one, which crash when sessions are deleted."""

    def _run(self) -> None:
        pass


class EngineSession:
    """Compiled rules with one session at a time in them."""

    def __init__(self, rules: Sequence[CrispRule]) -> None:
        self._sid = ""
        self._fired: list[Fired] = []
        self._concluded: set[str] = set()
        self._raised: list[BaseException] = []
        self._primed = False
        self._host = QuietHost()
        self._host.set_rulesets({RULESET: self._definition(rules)})
        self._ruleset = self._host.get_ruleset(RULESET)

    @property
    def fired(self) -> list[Fired]:
        """What fired in this session so far."""
        return self._fired

    def has_concluded(self, conclusion: str) -> bool:
        """Whether a rule that fired in this session concluded it."""
        return conclusion in self._concluded

    def begin(self, sid: str) -> None:
        """Start an empty session."""
        self._sid = sid
        self._fired = []
        self._concluded = set()
        self._raised = []
        self._primed = False

    def run(self, facts: Facts) -> None:
        """Add facts, without firing anything between two of them, then fire all that can.

        Raises RuntimeError if the engine didn't finish, and whatever was raised while a rule fired.
        """
        messages = [self._message(key, value) for key, value in facts.items()]
        outcomes: list[tuple[object, dict[str, object] | None]] = []
        state = self._ruleset.assert_facts(messages)
        self._ruleset.do_actions(state, lambda error, result: outcomes.append((error, result)))
        if self._raised:
            raise self._raised[0]
        if not outcomes:
            raise RuntimeError("the run was dropped")
        error, result = outcomes[0]
        if error is not None:
            raise RuntimeError(str(error))
        if result is not None and "exception" in result:
            raise RuntimeError(str(result["exception"]))

    def end(self) -> None:
        """Delete the session. Raises RuntimeError where the engine would crash: if nothing ever fired."""
        if not self._primed:
            raise RuntimeError("the prime fact fired nothing")
        self._ruleset.delete_state(self._sid)

    def _message(self, key: str, value: str | float) -> dict[str, str | float]:
        """A fact; a code and a number never share a property, and `any` makes the engine keep it."""
        kind = "c" if isinstance(value, str) else "n"
        return {"sid": self._sid, "id": key, "k": key, "any": 1, kind: value}

    def _definition(self, rules: Sequence[CrispRule]) -> dict[str, object]:
        """The rules, with two more.

        A fact that matches no condition is thrown away, so one rule waits for any fact and for one that
        never comes. Deleting a session in which nothing fired crashes, so another fires on the prime fact.
        """
        never, anything = Condition(NEVER, code=CONCLUDED).pattern, {"any": 1}
        prime = Condition(PRIME, code=CONCLUDED).pattern
        definition: dict[str, object] = {
            PRIME_RULE: {"all": [{"f0": prime}], "run": self._note_prime},
            KEEPING_RULE: {"all": [{"f0": never}, {"f1": anything}], "dist": 0, "run": self._note_prime},
        }
        for rule in rules:
            for number, conditions in enumerate(engine_rules(rule)):
                definition[engine_rule_name(rule, number)] = self._engine_rule(rule, conditions)
        return definition

    def _engine_rule(self, rule: CrispRule, conditions: Sequence[Condition]) -> dict[str, object]:
        antecedents = [{alias: condition.pattern} for alias, condition in zip(ALIASES, conditions, strict=False)]
        priority = rule.band * 1000 + rule.order
        action = self._action(rule, len(antecedents))
        return {"all": antecedents, "dist": 0, "pri": priority, "run": action}

    def _note_prime(self, _: Any) -> None:
        self._primed = True

    def _action(self, rule: CrispRule, antecedents: int) -> Action:
        def fire(context: Any) -> None:
            try:
                self._fire(rule, antecedents, context)
            except BaseException as raised:  # noqa: BLE001  # the engine would swallow it; run() raises it
                self._raised.append(raised)

        return fire

    def _fire(self, rule: CrispRule, antecedents: int, context: Any) -> None:
        from_keys = tuple(context._m[alias]["k"] for alias in ALIASES[:antecedents])
        self._fired.append(Fired(rule.id, rule.concludes, from_keys))
        if rule.concludes not in self._concluded:
            self._concluded.add(rule.concludes)
            context.assert_fact(self._message(rule.concludes, CONCLUDED))


class DurableEvaluator:
    """Evaluates rules in durable-rules, one evaluation at a time.

    `keys` are those on which facts may be given; the tested ones are added.
    `fell_back` counts the evaluations that the engine failed and the naive evaluator answered. Raises
    RulesBroken, with every problem, for rules beyond the engine's limits.
    """

    name = "durable-rules"

    def __init__(self, rules: Sequence[CrispRule], keys: Sequence[str] = ()) -> None:
        refuse_beyond_limits(rules, keys)
        self.fell_back = 0
        self._rules = tuple(rules)
        self._naive = NaiveEvaluator(rules)
        self._positions = positions(rules)
        self._conclusions = frozenset(rule.concludes for rule in rules)
        self._tested = frozenset(test.key for rule in rules for test in rule.tests)
        self._negated = _negated_before(rules)
        self._lock = Lock()
        self._sids = cycle(SESSION_IDS)
        self._session: EngineSession | None = None

    def evaluate(self, facts: Facts) -> Trace:
        """What the facts lead to. Raises ValueError for a fact that can't be used."""
        given = usable_facts(facts, self._conclusions)
        with self._lock:
            try:
                return self._evaluate_in_engine(given)
            except BaseException as fault:
                self._session = None  # what is left in the engine after a fault can't be trusted
                if not isinstance(fault, Exception):
                    raise
                self.fell_back += 1
        return self._naive.evaluate(facts)

    def _evaluate_in_engine(self, given: dict[str, str | float]) -> Trace:
        if self._session is None:
            self._session = EngineSession(self._rules)
        session = self._session
        session.begin(next(self._sids))
        first: dict[str, str | float] = {PRIME: CONCLUDED}
        first.update((key, value) for key, value in given.items() if key in self._tested)
        first.update((ABSENT + negated, CONCLUDED) for negated in self._negated[0])
        session.run(first)
        for negated_here in self._negated[1:]:
            absent = [negated for negated in negated_here if not session.has_concluded(negated)]
            if absent:
                session.run({ABSENT + negated: CONCLUDED for negated in absent})
        session.end()
        return Trace(tuple(sorted(session.fired, key=lambda fired: self._positions[fired.rule_id])))


def _negated_before(rules: Sequence[CrispRule]) -> list[list[str]]:
    """For each stratum the negated conclusions that are decided once the strata below it have run."""
    levels = strata_of_conclusions(rules)
    decided_before = {negated: levels.get(negated, -1) + 1 for rule in rules for negated in rule.absent}
    strata = range(max([0, *decided_before.values()]) + 1)
    return [[negated for negated, at in decided_before.items() if at == stratum] for stratum in strata]

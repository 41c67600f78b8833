"""Crisp rules, the facts they are tested on, and the trace that explains what they concluded.

A rule holds or doesn't; nothing here weighs or ranks. Both evaluators read these types and nothing of
each other.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

Facts = Mapping[str, str | float]
"""What is known: a key (a question's id) to a code or to a finite number in the key's own unit."""

CONCLUDED = "yes"
"""The code of a conclusion, which other rules can test like any fact."""

ABSENT = "absent:"
"""Before a conclusion's id: the fact that it was not concluded."""

PLACES = 3
"""Decimal places that a number keeps; the evaluators compare nothing finer."""

NUMBER_LIMIT = 1e15
"""Numbers stay below this magnitude, so that three decimal places are still exact enough to compare."""

_ID = re.compile(r"[a-z0-9_]{1,64}")


def is_id(text: object) -> bool:
    """Whether `text` can name a rule, a key or a code: 1 to 64 of a-z, 0-9 and the underscore."""
    return isinstance(text, str) and _ID.fullmatch(text) is not None


@dataclass(frozen=True)
class Test:
    """One condition on one fact: a code out of a list, or a number within bounds.

    Bounds are in the unit of the key. Raises ValueError if both kinds are given, or neither.
    """

    __test__ = False  # the name would make pytest collect it

    key: str
    is_one_of: tuple[str, ...] = ()
    at_least: float | None = None
    more_than: float | None = None
    at_most: float | None = None
    less_than: float | None = None

    def __post_init__(self) -> None:
        if bool(self.is_one_of) == bool(self.bounds):
            raise ValueError(f"the test on {self.key!r} needs codes or bounds, and not both")

    @property
    def bounds(self) -> dict[str, float]:
        """The bounds that are given, by the name of their field."""
        every = {
            "at_least": self.at_least,
            "more_than": self.more_than,
            "at_most": self.at_most,
            "less_than": self.less_than,
        }
        return {name: bound for name, bound in every.items() if bound is not None}

    def holds(self, value: str | float) -> bool:
        """Whether a fact with this value passes. A code never passes bounds, nor a number a list of codes."""
        if isinstance(value, str):
            return value in self.is_one_of
        return not self.is_one_of and (
            (self.at_least is None or value >= self.at_least)
            and (self.more_than is None or value > self.more_than)
            and (self.at_most is None or value <= self.at_most)
            and (self.less_than is None or value < self.less_than)
        )


@dataclass(frozen=True)
class CrispRule:
    """If all tests hold and none of `absent` was concluded, then `concludes`.

    A test may name a given fact's key or another rule's conclusion. Rules with the same conclusion are
    alternatives. `band` and `order` place the rule in the trace: the lowest first. Raises ValueError if
    there is neither a test nor an absent conclusion.
    """

    id: str
    concludes: str
    tests: tuple[Test, ...]
    absent: tuple[str, ...] = ()
    band: int = 1
    order: int = 0

    def __post_init__(self) -> None:
        if not self.tests and not self.absent:
            raise ValueError(f"the rule {self.id!r} has no condition")


@dataclass(frozen=True)
class Fired:
    """A rule that held, and the keys that made it hold.

    `from_keys` are the tested keys in the order of the tests, each once, then `absent:<id>` for each
    conclusion that had to be missing.
    """

    rule_id: str
    concludes: str
    from_keys: tuple[str, ...]


@dataclass(frozen=True)
class Trace:
    """Every rule that held, ordered by stratum, band, order and rule id."""

    fired: tuple[Fired, ...]

    @cached_property
    def concluded(self) -> frozenset[str]:
        """All conclusions."""
        return frozenset(fired.concludes for fired in self.fired)

    def because(self, conclusion: str) -> tuple[Fired, ...]:
        """Every firing that `conclusion` rests on, the nearest first, down to given facts.

        Empty if it wasn't concluded.
        """
        chain: list[Fired] = []
        explained: set[str] = set()
        to_explain = [conclusion]
        while to_explain:
            key = to_explain.pop(0)
            if key in explained:
                continue
            explained.add(key)
            reasons = [fired for fired in self.fired if fired.concludes == key]
            chain.extend(reasons)
            to_explain.extend(key for fired in reasons for key in fired.from_keys)
        return tuple(chain)


def usable_facts(facts: Facts, conclusions: Iterable[str]) -> dict[str, str | float]:
    """The facts as both evaluators take them: codes as they are, numbers as floats of three places.

    Raises ValueError for a key or code that isn't an id, a key among `conclusions`, and a value that is
    neither a code nor a finite number of a magnitude below 1e15. True and False are neither.
    """
    reserved = frozenset(conclusions)
    usable: dict[str, str | float] = {}
    for key, value in facts.items():
        if not is_id(key):
            raise ValueError(f"{key!r} can't be the key of a fact")
        if key in reserved:
            raise ValueError(f"{key!r} is concluded by a rule and can't be given")
        usable[key] = _usable_value(key, value)
    return usable


def _usable_value(key: str, value: object) -> str | float:
    if isinstance(value, str) and is_id(value):
        return value
    if isinstance(value, int | float) and not isinstance(value, bool):
        number = rounded(value)
        if number is not None:
            return number
    raise ValueError(f"the fact {key!r} is neither a code nor a usable number")


def rounded(number: float) -> float | None:
    """`number` to three places and never minus zero; None if it isn't finite or too large to compare."""
    if not abs(number) < NUMBER_LIMIT:  # false for NaN as well
        return None
    return round(float(number), PLACES) + 0.0

"""Two folders of rules over the same cases: which entries differ, and which cases end otherwise."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from assistant.authoring.cases import begin_case, hold
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.knowledge.rules_folder import RulesFolder

LEAST_MOVE = 0.01
"""Of the first name's probability; a smaller one is nothing to look at."""

REMEDIES = ("act", "advice", "who", "urgency", "first", "little_known")
FIELDS = ("verdict", "first", "probability", "stop", "questions", "tests", "kit", "refused")


@dataclass(frozen=True)
class Differing:
    """The entries of one folder or file of the rules that were added, removed or changed."""

    kind: str
    added: tuple[str, ...]
    removed: tuple[str, ...]
    changed: tuple[str, ...]


@dataclass(frozen=True)
class Ending:
    """How a case ends: `verdict` is the action with what goes with it, `first` the likeliest name.

    `questions`: how many were asked. `refused`: those whose answer in the case these rules don't take.
    """

    verdict: tuple[str, ...]
    first: str
    probability: float
    stop: tuple[str, ...]
    questions: int
    tests: tuple[str, ...]
    kit: tuple[str, ...]
    refused: tuple[str, ...]


@dataclass(frozen=True)
class Moved:
    """A case that ends otherwise; `fields`: what of it differs."""

    case: str
    fields: tuple[str, ...]
    before: Ending
    after: Ending


def differing(before: RulesFolder, after: RulesFolder) -> Iterator[Differing]:
    """By folder, in the order of the rules; folders and files in which nothing differs are left out."""
    for kind in dict.fromkeys((*before.entries, *after.entries)):
        old, new = before.entries.get(kind, {}), after.entries.get(kind, {})
        found = Differing(
            kind,
            tuple(name for name in new if name not in old),
            tuple(name for name in old if name not in new),
            tuple(name for name in new if name in old and old[name] != new[name]),
        )
        if found.added or found.removed or found.changed:
            yield found


def ending(script: Script, case: Mapping[str, Any], region: str) -> Ending:
    """Hold the case's interview under these rules."""
    held = hold(begin_case(script, case, region), case["answers"])
    verdict = held.verdict
    first, probability = verdict.named[0]
    return Ending(
        verdict=(verdict.action, *_remedies(verdict)),
        first=first,
        probability=probability,
        stop=tuple(f"{stop.sign_id} ({stop.source})" for stop in verdict.stops),
        questions=len(held.asked),
        tests=_listed(verdict, "tests"),
        kit=_listed(verdict, "kit"),
        refused=held.refused,
    )


def _remedies(verdict: Verdict) -> Iterator[str]:
    for name in REMEDIES:
        value = verdict.details.get(name)
        if value:
            yield name if value is True else str(value)


def _listed(verdict: Verdict, name: str) -> tuple[str, ...]:
    found = verdict.details.get(name, ())
    return found if isinstance(found, tuple) else ()


def moved(
    before: Script, after: Script, cases: Mapping[str, Mapping[str, Any]], region: str, done: Callable[[], None]
) -> Iterator[Moved]:
    """The cases that end otherwise, in their order; `done` is called after each case."""
    for name, case in cases.items():
        old, new = (ending(script, case, region) for script in (before, after))
        fields = tuple(field for field in FIELDS if _differs(field, old, new))
        done()
        if fields:
            yield Moved(name, fields, old, new)


def _differs(field: str, old: Ending, new: Ending) -> bool:
    if field == "probability":
        return old.first == new.first and abs(old.probability - new.probability) >= LEAST_MOVE
    return bool(getattr(old, field) != getattr(new, field))

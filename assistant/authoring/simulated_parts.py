"""The parts of a drawn oven: of a kind that can have its causes, with ways of heating that show them."""

from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass

import numpy as np

from assistant.knowledge.model import Knowledge, Question

LEFT_OUT = 0.25
"""The share of ovens without a part of their ways of heating, where it can be missing."""
FEWEST_FUNCTIONS = 3


@dataclass(frozen=True)
class Parts:
    """`kind`: None where no kind can have all that is needed. `missing`: parts that it hasn't."""

    kind: str | None
    functions: tuple[str, ...]
    needed: frozenset[str]
    missing: frozenset[str]


def draw_parts(
    knowledge: Knowledge, needed: frozenset[str], missing: Iterable[str], chance: np.random.Generator
) -> Parts:
    """`missing`: what no oven of the region has."""
    kinds = [kind for kind, of_kind in knowledge.ovens.kinds.items() if needed.isdisjoint(of_kind.has_not)]
    kind = kinds[int(chance.integers(len(kinds)))] if kinds else None
    lacking = {*missing, *(knowledge.ovens.kinds[kind].has_not if kind else ())}
    uses = {function: frozenset(knowledge.ovens.uses(function, kind)) for function in knowledge.ovens.functions}
    functions = _functions(uses, needed, lacking, chance)
    shown = _parts_of(uses, functions)
    return Parts(kind, functions, needed, frozenset(lacking | (_parts_of(uses, uses) - shown)) - needed)


def _parts_of(uses: Mapping[str, frozenset[str]], functions: Iterable[str]) -> frozenset[str]:
    return frozenset(part for function in functions for part in uses[function])


def _functions(
    uses: Mapping[str, frozenset[str]], needed: Set[str], lacking: Set[str], chance: np.random.Generator
) -> tuple[str, ...]:
    """All of them, but those with a part that is left out; what is needed stays in one of them at least."""
    offered = [function for function, parts in uses.items() if parts.isdisjoint(lacking)]
    wanted = needed & _parts_of(uses, offered)
    every = sorted(_parts_of(uses, offered))
    for number in chance.permutation(len(every)):
        fewer = [function for function in offered if every[number] not in uses[function]]
        enough = len(fewer) >= FEWEST_FUNCTIONS and wanted <= _parts_of(uses, fewer)
        if chance.random() < LEFT_OUT and enough:
            offered = fewer
    return tuple(offered)


def answer_by_parts(question: Question, parts: Parts, chance: np.random.Generator) -> str | None:
    """'Mine hasn't one' of a part that is missing; and where the question reports nothing, an answer that fits the
    parts. None where they have no say.
    """
    choices = question.choices
    if question.kind != "choice" or not any(choice.has or choice.has_not for choice in choices.values()):
        return None
    for code, choice in choices.items():
        if choice.has_not and parts.missing.issuperset(choice.has_not):
            return code
    if question.observable is not None:
        return None
    fitting = [
        code
        for code, choice in choices.items()
        if not choice.says_nothing and parts.needed.isdisjoint(choice.has_not) and parts.missing.isdisjoint(choice.has)
    ]
    return fitting[int(chance.integers(len(fitting)))] if fitting else None

"""Every name by which one rule file speaks of another, and whether it exists."""

from collections.abc import Iterable, Iterator
from typing import Any

from assistant.knowledge import danger_questions as danger
from assistant.knowledge.learned import LEARNED_FILE
from assistant.knowledge.model import Condition
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.rules_folder import ANY, RulesFolder
from assistant.knowledge.yaml_text import PathInFile

Reference = tuple[str, str, PathInFile, str]  # file, kind, path, the id named


def references_exist(read: RulesFolder) -> None:
    for file, kind, path, named in _references(read):
        known = _known_ids(read, kind)
        if named not in known and ANY not in known:
            read.add_problem(file, path, f"no_{kind}", nearest_name(named, known), found=named)


def _known_ids(read: RulesFolder, kind: str) -> set[str]:
    if kind in _OF_OVENS:
        if not read.entries["ovens.yaml"]:
            return {ANY}
        return set(getattr(read.entries["ovens.yaml"][""], _OF_OVENS[kind]))
    if kind == "question":
        derived = {
            danger.DANGER_NOW,
            danger.DANGER_PLAINLY,
            *map(danger.sign_question_id, read.ids["danger"]),
        }
        return read.ids["questions"] | derived
    return read.ids[_FOLDER_OF[kind]]


_OF_OVENS = {"part": "parts", "function": "functions"}

_FOLDER_OF = {
    "observable": "observables",
    "cause": "causes",
    "effect": "effects",
    "finding": "findings",
    "sign": "danger",
    "act": "acts.yaml",
    "advice": "advice.yaml",
    "step": "steps.yaml",
}


def _references(read: RulesFolder) -> Iterator[Reference]:
    for kind, walk in (
        ("questions", _question_references),
        ("findings", _finding_references),
        ("causes", _cause_references),
        ("effects", _effect_references),
        ("pairs", _pair_references),
        ("danger", _sign_references),
        ("regions", _region_references),
    ):
        for entry_id, entry in read.entries[kind].items():
            for reference_kind, path, named in walk(entry):
                yield f"{kind}/{entry_id}.yaml", reference_kind, path, named
    for file, kind, key in (("acts.yaml", "finding", "only_when"), ("steps.yaml", "step", "rules_out")):
        for entry_id, entry in read.entries[file].items():
            for reference_kind, path, named in _each(kind, (entry_id, key), getattr(entry, key)):
                yield file, reference_kind, path, named
    yield from _learned_references(read)
    for ovens in read.entries["ovens.yaml"].values():
        for reference_kind, path, named in _oven_references(ovens):
            yield "ovens.yaml", reference_kind, path, named


def _oven_references(ovens: Any) -> Iterator[tuple[str, PathInFile, str]]:
    for name, function in ovens.functions.items():
        yield from _each("part", ("functions", name, "uses"), function.uses)
    for kind_id, oven_kind in ovens.kinds.items():
        yield from _each("part", ("kinds", kind_id, "has_not"), oven_kind.has_not)
        for function_id, parts in oven_kind.functions.items():
            yield "function", ("kinds", kind_id, "functions", function_id), function_id
            yield from _each("part", ("kinds", kind_id, "functions", function_id), parts)


def _learned_references(read: RulesFolder) -> Iterator[Reference]:
    for learned in read.entries[LEARNED_FILE].values():
        for group, counts in learned.counts.items():
            for cause_id in counts:
                yield LEARNED_FILE, "cause", ("counts", group, cause_id), cause_id


def _each(kind: str, path: PathInFile, names: Iterable[str]) -> Iterator[tuple[str, PathInFile, str]]:
    for index, name in enumerate(names):
        yield kind, (*path, index), name


def _one(kind: str, path: PathInFile, name: str | None) -> Iterator[tuple[str, PathInFile, str]]:
    if name is not None:
        yield kind, path, name


def _question_references(question: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _one("observable", ("observable",), question.observable)
    yield from _each("finding", ("ask_when",), question.ask_when)
    yield from _each("finding", ("not_when",), question.not_when)
    yield from _each("part", ("needs",), question.needs)
    yield from _each("observable", ("measures",), question.measures)
    if question.speaks_of is not None:
        yield "function", ("speaks_of", "way"), question.speaks_of.way
    if question.fixed_point is not None:
        yield "question", ("fixed_point", "checks"), question.fixed_point.checks
        yield from _one("question", ("fixed_point", "height_from"), question.fixed_point.height_from)
        for other in question.fixed_point.counts_while:
            yield "question", ("fixed_point", "counts_while", other), other
    for name, choice in question.choices.items():
        path: PathInFile = ("choices", name)
        yield from _each("part", (*path, "has"), choice.has)
        yield from _each("part", (*path, "has_not"), choice.has_not)
        for observable in choice.said_when:
            yield "observable", (*path, "said_when", observable), observable
        yield from _one("sign", (*path, "signals"), choice.signals)
        yield from _one("question", (*path, "withdraws"), choice.withdraws)
        if question.tells == "functions":
            yield "function", path, name


def _finding_references(finding: Any) -> Iterator[tuple[str, PathInFile, str]]:
    for path, condition in conditions_of(finding):
        yield from _one("question", (*path, "question"), condition.question)
        yield from _one("finding", (*path, "finding"), condition.finding)
    yield from _each("finding", ("unless",), finding.unless)
    yield from _one("sign", ("then", "stops"), finding.then.stops)
    yield from _one("question", ("then", "asks"), finding.then.asks)
    yield from _each("advice", ("then", "advises"), finding.then.advises)
    yield from _each("question", ("then", "tests_first"), finding.then.tests_first)
    for kind in ("fires", "stays_quiet"):
        for index, example in enumerate(getattr(finding.examples, kind)):
            for question_id in example:
                yield "question", ("examples", kind, index, question_id), question_id


def conditions_of(finding: Any) -> Iterator[tuple[PathInFile, Condition]]:
    for index, condition in enumerate(finding.when):
        yield ("when", index), condition
    for group_index, group in enumerate(finding.any_of):
        for index, condition in enumerate(group):
            yield ("any_of", group_index, index), condition


def _cause_references(cause: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _one("effect", ("effect",), cause.effect)
    yield from _each("part", ("needs",), cause.needs)
    yield from _one("part", ("part",), cause.part)
    yield from _one("act", ("act",), cause.act)
    yield from _one("advice", ("advice",), cause.advice)
    yield from _each("cause", ("look_alikes",), cause.look_alikes)
    yield from _one("sign", ("danger",), cause.danger)
    yield from _each("observable", ("masks",), cause.masks)
    yield from _each("cause", ("excludes",), cause.excludes)
    for name in cause.shows:
        yield "observable", ("shows", name), name


def _effect_references(effect: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _each("observable", ("masks",), effect.masks)
    for name in effect.shows:
        yield "observable", ("shows", name), name


def _pair_references(pair: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _each("cause", ("causes",), pair.causes)
    for name in pair.shows:
        yield "observable", ("shows", name), name


def _region_references(region: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _each("part", ("has_not",), region.has_not)


def _sign_references(sign: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _each("step", ("steps",), sign.steps)
    yield from _each("question", ("tests_first",), sign.tests_first)
    for name in sign.told_when:
        yield "observable", ("told_when", name), name

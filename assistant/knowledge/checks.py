"""What must hold between the files of a rules folder. One check, one function, one kind of mistake.

A check looks only at sound entries, and takes an id whose own file is broken for existing: a mistake that
follows from another isn't said twice.
"""

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from assistant.knowledge import danger_questions as danger
from assistant.knowledge.likelihoods import NotADistribution, shares
from assistant.knowledge.model import (
    RESERVED_CODES,
    BeliefSettings,
    Condition,
    Distribution,
    Figure,
    Question,
)
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.rules_folder import ANY, RulesFolder
from assistant.knowledge.yaml_text import PathInFile

Check = Callable[[RulesFolder], None]
Reference = tuple[str, str, PathInFile, str]  # file, kind, path, the id named

REQUIRED = {"roles.yaml": ("householder", "agent", "engineer"), "danger": (danger.UNSURE,)}


def check_all(read: RulesFolder) -> None:
    """Run every check; what they find is added to `read.problems`."""
    for check in CHECKS:
        check(read)
    read.problems.sort()


def references_exist(read: RulesFolder) -> None:
    for file, kind, path, named in _references(read):
        known = _known_ids(read, kind)
        if named not in known and ANY not in known:
            read.add_problem(file, path, f"no_{kind}", nearest_name(named, known), found=named)


def _known_ids(read: RulesFolder, kind: str) -> set[str]:
    if kind in ("part", "function"):
        if not read.entries["ovens.yaml"]:
            return {ANY}
        ovens = read.entries["ovens.yaml"][""]
        return set(ovens.parts if kind == "part" else ovens.functions)
    if kind == "question":
        derived = {
            danger.DANGER_NOW,
            danger.DANGER_PLAINLY,
            *map(danger.sign_question_id, read.ids["danger"]),
        }
        return read.ids["questions"] | derived
    return read.ids[_FOLDER_OF[kind]]


_FOLDER_OF = {
    "observable": "observables",
    "cause": "causes",
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
        ("danger", _sign_references),
    ):
        for entry_id, entry in read.entries[kind].items():
            for reference_kind, path, named in walk(entry):
                yield f"{kind}/{entry_id}.yaml", reference_kind, path, named
    for ovens in read.entries["ovens.yaml"].values():
        for name, function in ovens.functions.items():
            for index, part in enumerate(function.uses):
                yield "ovens.yaml", "part", ("functions", name, "uses", index), part


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
    for name, choice in question.choices.items():
        path: PathInFile = ("choices", name)
        yield from _each("part", (*path, "has"), choice.has)
        yield from _each("part", (*path, "has_not"), choice.has_not)
        yield from _one("sign", (*path, "signals"), choice.signals)
        yield from _one("question", (*path, "withdraws"), choice.withdraws)
        if question.tells == "functions":
            yield "function", path, name


def _finding_references(finding: Any) -> Iterator[tuple[str, PathInFile, str]]:
    for path, condition in _conditions(finding):
        yield from _one("question", (*path, "question"), condition.question)
        yield from _one("finding", (*path, "finding"), condition.finding)
    yield from _each("finding", ("unless",), finding.unless)
    yield from _one("sign", ("then", "stops"), finding.then.stops)
    yield from _one("question", ("then", "asks"), finding.then.asks)
    yield from _each("advice", ("then", "advises"), finding.then.advises)
    for kind in ("fires", "stays_quiet"):
        for index, example in enumerate(getattr(finding.examples, kind)):
            for question_id in example:
                yield "question", ("examples", kind, index, question_id), question_id


def _conditions(finding: Any) -> Iterator[tuple[PathInFile, Condition]]:
    for index, condition in enumerate(finding.when):
        yield ("when", index), condition
    for group_index, group in enumerate(finding.any_of):
        for index, condition in enumerate(group):
            yield ("any_of", group_index, index), condition


def _cause_references(cause: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _each("part", ("needs",), cause.needs)
    yield from _one("part", ("part",), cause.part)
    yield from _one("act", ("act",), cause.act)
    yield from _one("advice", ("advice",), cause.advice)
    yield from _each("cause", ("look_alikes",), cause.look_alikes)
    for name in cause.shows:
        yield "observable", ("shows", name), name


def _sign_references(sign: Any) -> Iterator[tuple[str, PathInFile, str]]:
    yield from _each("step", ("steps",), sign.steps)


def distributions_are_whole(read: RulesFolder) -> None:
    for file, path, distribution, states in _distributions(read):
        unknown = [name for name in distribution if name not in states]
        for name in unknown:
            read.add_problem(file, (*path, name), "no_state", nearest_name(name, states), found=name)
        missing = [name for name in states if name not in distribution]
        if missing and not unknown:
            read.add_problem(file, path, "states_missing", missing=", ".join(missing))
        settings = _settings(read)
        if missing or unknown or settings is None:
            continue
        try:
            shares(distribution, states, settings.words)
        except NotADistribution as error:
            read.add_problem(file, path, error.code, total=f"{error.total:.0f}")


def _settings(read: RulesFolder) -> BeliefSettings | None:
    found = read.entries["belief.yaml"].get("")
    return found if isinstance(found, BeliefSettings) else None


def _distributions(read: RulesFolder) -> Iterator[tuple[str, PathInFile, Distribution, tuple[str, ...]]]:
    observables = read.entries["observables"]
    for name, observable in observables.items():
        yield f"observables/{name}.yaml", ("normal",), observable.normal, observable.states
    for cause_id, cause in read.entries["causes"].items():
        for name, distribution in cause.shows.items():
            if name in observables:
                yield f"causes/{cause_id}.yaml", ("shows", name), distribution, observables[name].states
    for question_id, question in read.entries["questions"].items():
        for state, distribution in (question.table or {}).items():
            yield f"questions/{question_id}.yaml", ("table", state), distribution, tuple(_codes(question))


def _codes(question: Question) -> list[str]:
    """The codes an answer can have, in order: choices, or the bands of a number."""
    return list(question.choices) or list(question.number.bands if question.number else ())


def reports_say_how_they_err(read: RulesFolder) -> None:
    for question_id, question in read.entries["questions"].items():
        file = f"questions/{question_id}.yaml"
        if question.observable is None:
            for key in ("mistakes", "table"):
                if getattr(question, key) is not None:
                    read.add_problem(file, (key,), "report_of_nothing", key=key)
        elif (question.mistakes is None) == (question.table is None):
            read.add_problem(file, ("observable",), "mistakes_or_table")
        elif isinstance(question.mistakes, Figure) and not 0 < question.mistakes.value < 50:
            read.add_problem(file, ("mistakes",), "mistakes_out_of_range", found=f"{question.mistakes.value:g}")
        elif question.mistakes in ("almost always", "often", "rest"):
            read.add_problem(file, ("mistakes",), "mistakes_out_of_range", found=str(question.mistakes))


def answers_mean_states(read: RulesFolder) -> None:
    """Each choice means states of the observable, and each state is meant by a choice (or has a table row)."""
    for question_id, question in read.entries["questions"].items():
        observable = read.entries["observables"].get(question.observable)
        if observable is None:
            continue
        file = f"questions/{question_id}.yaml"
        for path, means in _meanings(question):
            for index, state in enumerate(means):
                if state not in observable.states:
                    near = nearest_name(state, observable.states)
                    read.add_problem(file, (*path, "means", index), "no_state", near, found=state)
            if not means and question.table is None:
                read.add_problem(file, path, "answer_means_nothing", found=str(path[-1]))
        if question.table is None:
            unsaid = set(observable.states) - {s for _, means in _meanings(question) for s in means}
        else:
            unsaid = set(observable.states) - set(question.table)
            for state in set(question.table) - set(observable.states):
                near = nearest_name(state, observable.states)
                read.add_problem(file, ("table", state), "no_state", near, found=state)
        if unsaid:
            read.add_problem(file, ("observable",), "state_never_meant", missing=", ".join(sorted(unsaid)))


def _meanings(question: Question) -> Iterator[tuple[PathInFile, tuple[str, ...]]]:
    for name, choice in question.choices.items():
        yield ("choices", name), choice.means
    for name, band in (question.number.bands if question.number else {}).items():
        yield ("number", "bands", name), band.means


def bands_rise(read: RulesFolder) -> None:
    for question_id, question in read.entries["questions"].items():
        if question.number is None:
            continue
        file = f"questions/{question_id}.yaml"
        bounds = [band.below for band in question.number.bands.values()]
        if bounds and bounds[-1] is not None:
            read.add_problem(file, ("number", "bands"), "last_band_open")
        inner = bounds[:-1]
        if None in inner or inner != sorted(set(inner), key=lambda b: b or 0):
            read.add_problem(file, ("number", "bands"), "bands_not_rising")
        if question.number.least >= question.number.most:
            read.add_problem(file, ("number", "least"), "least_above_most")


def conditions_can_hold(read: RulesFolder) -> None:
    """A condition names an answer that its question has."""
    questions: dict[str, Question] = read.entries["questions"] | danger.danger_questions(read.entries["danger"])
    for finding_id, finding in read.entries["findings"].items():
        file = f"findings/{finding_id}.yaml"
        for path, condition in _conditions(finding):
            question = questions.get(condition.question or "")
            if question is not None:
                _check_condition(read, file, path, condition, question)
        for kind in ("fires", "stays_quiet"):
            for index, example in enumerate(getattr(finding.examples, kind)):
                for question_id, value in example.items():
                    question = questions.get(question_id)
                    if question is not None:
                        path = ("examples", kind, index, question_id)
                        _check_example(read, file, path, question, value)


def _check_condition(read: RulesFolder, file: str, path: PathInFile, condition: Condition, question: Question) -> None:
    if condition.bounded and question.kind != "number":
        read.add_problem(file, path, "bounds_on_no_number", question=str(condition.question))
    if condition.includes is not None and question.kind != "choices":
        read.add_problem(file, (*path, "includes"), "includes_on_one_choice", question=str(condition.question))
    single = question.kind == "choice" or question.kind == "number"
    valid = {*RESERVED_CODES - {"none"}, *(_codes(question) if single else ())}
    said: list[tuple[PathInFile, str]] = [((*path, "is_one_of", i), c) for i, c in enumerate(condition.is_one_of)]
    if condition.equals is not None:
        said.append(((*path, "is"), condition.equals))
    for place, code in said:
        if code not in valid:
            read.add_problem(file, place, "no_answer", nearest_name(code, valid), found=code)
    if condition.includes is not None and condition.includes not in question.choices:
        near = nearest_name(condition.includes, question.choices)
        read.add_problem(file, (*path, "includes"), "no_answer", near, found=condition.includes)


def _check_example(
    read: RulesFolder, file: str, path: PathInFile, question: Question, value: str | tuple[str, ...]
) -> None:
    for code in (value,) if isinstance(value, str) else value:
        if question.kind in ("number", "text") or code in RESERVED_CODES - {"none"}:
            continue
        if code not in question.choices:
            read.add_problem(file, path, "no_answer", nearest_name(code, question.choices), found=code)


def names_do_not_meet(read: RulesFolder) -> None:
    """Questions and findings share one space of names; some names are the program's own."""
    for finding_id in sorted(read.ids["findings"] & read.ids["questions"]):
        read.add_problem(f"findings/{finding_id}.yaml", (), "name_taken_by_question", found=finding_id)
    for question_id in read.ids["questions"]:
        if danger.is_danger_question(question_id):
            read.add_problem(f"questions/{question_id}.yaml", (), "name_reserved", found=question_id)
    for question_id, question in read.entries["questions"].items():
        for code in [c for c in _codes(question) if c in RESERVED_CODES - {"none"}]:
            read.add_problem(f"questions/{question_id}.yaml", ("choices", code), "name_reserved", found=code)


def required_entries_exist(read: RulesFolder) -> None:
    for kind, names in REQUIRED.items():
        for name in names:
            if name not in read.ids[kind] and ANY not in read.ids[kind]:
                read.add_problem(kind, (), "required_missing", found=name)
    if danger.OVEN_IS_OFF not in read.ids["questions"]:
        read.add_problem("questions", (), "required_missing", found=danger.OVEN_IS_OFF)
    for kind in ("regions", "causes"):
        if not read.ids[kind]:
            read.add_problem(kind, (), "none_at_all")


def observables_are_reported(read: RulesFolder) -> None:
    """An observable that no question reports, or that no cause changes, can't matter."""
    if any(len(read.ids[kind]) > len(read.entries[kind]) for kind in ("questions", "causes")):
        return
    reported = {question.observable for question in read.entries["questions"].values()}
    shown = {name for cause in read.entries["causes"].values() for name in cause.shows}
    for name in read.entries["observables"]:
        if name not in reported:
            read.add_problem(f"observables/{name}.yaml", (), "never_reported", found=name)
        if name not in shown:
            read.add_problem(f"observables/{name}.yaml", (), "never_shown", found=name)


CHECKS: tuple[Check, ...] = (
    references_exist,
    distributions_are_whole,
    reports_say_how_they_err,
    answers_mean_states,
    bands_rise,
    conditions_can_hold,
    names_do_not_meet,
    required_entries_exist,
    observables_are_reported,
)

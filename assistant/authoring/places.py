"""Where the figures of the rules stand, and the knowledge with another figure there.

What several entries show or say in common is written once, and taken over by them when the rules are loaded: an
effect's rows by its causes, what a danger sign tells by every answer that signals it. Such a figure stands where it is
written, and with another figure there all that take it over have it too.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from assistant.knowledge.danger_questions import danger_questions, is_danger_question
from assistant.knowledge.figures import Entry, Figure
from assistant.knowledge.model import Cause, Choice, Effect, Knowledge, Question, Sign

Path = tuple[str, ...]

FOLDER_OF: Mapping[str, str] = {"signs": "danger"}
"""Kind, as a field of Knowledge -> its folder, where it is called otherwise."""


def figures_of(knowledge: Knowledge, kind: str) -> Iterator[tuple[str, Path, Figure]]:
    """(entry, path, figure) of every figure with a range that is written in an entry of that kind."""
    entries: Mapping[str, Entry] = getattr(knowledge, kind)
    for entry_id, entry in entries.items():
        if kind == "questions" and is_danger_question(entry_id):
            continue
        for path, figure in figures_within(entry):
            if not _taken_over(knowledge, kind, entry_id, path):
                yield entry_id, path, figure


def file_of(kind: str, entry_id: str) -> str:
    return f"{FOLDER_OF.get(kind, kind)}/{entry_id}.yaml"


def observables_shown(kind: str, entry_id: str, path: Path) -> tuple[str, ...]:
    """Those of which causes show something else with another figure there; reports aside."""
    if kind == "observables":
        return (entry_id,)
    return (path[1],) if kind in ("causes", "effects", "pairs") and path[0] == "shows" else ()


def with_figure_at(knowledge: Knowledge, kind: str, entry_id: str, path: Path, figure: Figure) -> Knowledge:
    """The knowledge with that figure there, and in all that take it over; nothing is checked."""
    entries: Mapping[str, Any] = getattr(knowledge, kind)
    entry = with_figure(entries[entry_id], path, figure)
    changed: dict[str, Any] = {kind: {**entries, entry_id: entry}}
    if kind == "effects" and path[0] == "shows":
        changed["causes"] = _causes_with(knowledge, entry_id, entry, path[1])
    if kind == "signs" and path[0] == "told_when":
        changed["questions"] = _questions_with(knowledge, entry_id, entry, path[1])
    return knowledge.model_copy(update=changed)


def _taken_over(knowledge: Knowledge, kind: str, entry_id: str, path: Path) -> bool:
    if kind == "causes" and path[0] == "shows":
        return from_effect(knowledge, entry_id, path[1])
    if kind == "questions" and path[0] == "choices" and path[2] == "said_when":
        question = knowledge.questions[entry_id]
        return from_sign(knowledge, question.choices[path[1]], path[3])
    return False


def from_effect(knowledge: Knowledge, cause_id: str, name: str) -> bool:
    """Whether what the cause shows of the observable is what its effect shows."""
    cause = knowledge.causes[cause_id]
    return cause.effect is not None and cause.shows_as(knowledge.effects[cause.effect], name)


def from_sign(knowledge: Knowledge, choice: Choice, name: str) -> bool:
    """Whether what the answer says of the observable is what the sign says that it signals."""
    if choice.signals is None:
        return False
    told = knowledge.signs[choice.signals].told_when
    return name in told and choice.said_when.get(name) == told[name]


def _causes_with(knowledge: Knowledge, effect_id: str, effect: Effect, name: str) -> dict[str, Cause]:
    """All causes, of which those with that effect show the observable as it does now."""
    return {
        cause_id: cause.model_copy(update={"shows": {**cause.shows, name: effect.shows[name]}})
        if cause.effect == effect_id and from_effect(knowledge, cause_id, name)
        else cause
        for cause_id, cause in knowledge.causes.items()
    }


def _questions_with(knowledge: Knowledge, sign_id: str, sign: Sign, name: str) -> dict[str, Question]:
    """All questions: those about danger made anew, in the others the answers that say what that sign says."""
    about_danger = danger_questions({**knowledge.signs, sign_id: sign})
    return {
        question_id: about_danger.get(question_id) or _question_with(knowledge, question, sign_id, sign, name)
        for question_id, question in knowledge.questions.items()
    }


def _question_with(knowledge: Knowledge, question: Question, sign_id: str, sign: Sign, name: str) -> Question:
    told = {
        code: choice.model_copy(update={"said_when": {**choice.said_when, name: sign.told_when[name]}})
        for code, choice in question.choices.items()
        if choice.signals == sign_id and from_sign(knowledge, choice, name)
    }
    return question.model_copy(update={"choices": {**question.choices, **told}}) if told else question


def figures_within(thing: object, path: Path = ()) -> Iterator[tuple[Path, Figure]]:
    """Every figure with a range in an entry, and where in it."""
    if isinstance(thing, Figure):
        if thing.range is not None:
            yield path, thing
    elif isinstance(thing, Entry):
        for name in type(thing).model_fields:
            yield from figures_within(getattr(thing, name), (*path, name))
    elif isinstance(thing, dict):
        for name, inner in thing.items():
            yield from figures_within(inner, (*path, str(name)))


def with_figure(thing: Any, path: Path, figure: Figure) -> Any:
    """The same with that figure at the path."""
    if not path:
        return figure
    first, *rest = path
    if isinstance(thing, Entry):
        return thing.model_copy(update={first: with_figure(getattr(thing, first), tuple(rest), figure)})
    return {name: with_figure(i, tuple(rest), figure) if str(name) == first else i for name, i in thing.items()}

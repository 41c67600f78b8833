"""Cases: whole interviews, one YAML file each, named by what happened to the oven. Reading them, and holding them.

A case has `answers`, question -> what is said to it, and may have a `note`, a `role` and a `region`; what else it holds
(such as what a test expects of it) is left alone. What a case doesn't answer is answered with 'not sure', as is what
it answers so.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from assistant.errors import OvensideError, Refused
from assistant.interview.commands import Command, GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import DANGER_NOW, NONE
from assistant.knowledge.model import Question
from assistant.store.memory import MemoryStore

HOUSEHOLDER = "householder"
LANG = "en-GB"
MOST_QUESTIONS = 120
NOT_SURE = "not_sure"

Answers = Mapping[str, Any]


class NotACase(OvensideError):
    """A file that can't be read as a case: `code` is worded as `cases-CODE`."""

    def __init__(self, where: str, code: str, reason: str = "") -> None:
        super().__init__(f"{where}: {code} {reason}".rstrip())
        self.where = where
        self.code = code
        self.reason = reason


@dataclass(frozen=True)
class Held:
    """An interview that was held: its first verdict, what was asked, and the questions whose answer wasn't taken."""

    verdict: Verdict
    asked: tuple[str, ...]
    refused: tuple[str, ...]


def read_cases(folder: Path) -> dict[str, dict[str, Any]]:
    """Name -> case, in the order of the names. Raises NotACase, also where there is none."""
    if not folder.is_dir():
        raise NotACase(str(folder), "no_folder")
    paths = sorted(folder.glob("*.yaml"))
    if not paths:
        raise NotACase(str(folder), "none")
    return {path.stem: read_case(path) for path in paths}


def read_case(path: Path) -> dict[str, Any]:
    """Scalars stay text, as in the rules; numbers are made of it where a question wants one. Raises NotACase."""
    try:
        case = yaml.load(path.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 - text only
    except OSError as error:
        raise NotACase(str(path), "unreadable", error.strerror or str(error)) from error
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        raise NotACase(str(path), "not_yaml") from error
    if not isinstance(case, dict) or not _are_answers(case.get("answers")):
        raise NotACase(str(path), "no_answers")
    return dict(case)


def _are_answers(answers: object) -> bool:
    return isinstance(answers, dict) and all(
        isinstance(value, str) or (isinstance(value, list) and all(isinstance(item, str) for item in value))
        for value in answers.values()
    )


def answers_of(case: Mapping[str, Any]) -> dict[str, Any]:
    """Its answers; to the first screen there is no danger where the case doesn't speak of it."""
    return {DANGER_NOW: [NONE], **case["answers"]}


def begin(script: Script, region: str, role: str = HOUSEHOLDER) -> Conversation:
    """A conversation that nobody keeps. Raises Refused for a region or a role that the rules don't know."""
    record = SessionRecord(session_id="0" * 32, code_hash="0" * 64, name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start(role, region, LANG, "single"))
    return conversation


def begin_case(script: Script, case: Mapping[str, Any], region: str) -> Conversation:
    """In the case's own region and role, or in this region, as a householder."""
    return begin(script, str(case.get("region", region)), str(case.get("role", HOUSEHOLDER)))


def hold(conversation: Conversation, answers: Answers) -> Held:
    """Answer what the case answers when it is asked, 'not sure' to all else and to what wouldn't be taken.

    Raises OvensideError for an interview that doesn't come to an end.
    """
    answers = answers_of({"answers": answers})
    asked: list[str] = []
    refused: list[str] = []
    while True:
        view = conversation.view()
        question_id = view.id if isinstance(view, QuestionView) else str(view.details.get("then", ""))
        if isinstance(view, Verdict) and (question_id not in answers or question_id in asked):
            return Held(view, tuple(asked), tuple(refused))
        asked.append(question_id)
        if len(asked) > MOST_QUESTIONS:
            raise OvensideError(f"no verdict after {MOST_QUESTIONS} questions: {', '.join(asked[-4:])}")
        question = conversation.script.knowledge.questions[question_id]
        try:
            conversation.do(command_for(question_id, question, answers))
        except Refused:
            refused.append(question_id)
            conversation.do(SayNotSure(question_id))


def command_for(question_id: str, question: Question, answers: Answers) -> Command:
    """What is said to the question; 'not sure' where nothing is."""
    value = answers.get(question_id)
    if value in (None, NOT_SURE):
        return SayNotSure(question_id)
    return GiveAnswer(question_id, _as_number(value) if question.number else value)


def _as_number(value: Any) -> Any:
    """The number that is written, or what is written, which is then refused."""
    try:
        return float(value)
    except (TypeError, ValueError):
        return value

"""Sessions that tell what a case tells, or what is given here."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from assistant.authoring.cases import begin_case, hold, read_case
from assistant.interview.commands import GiveAnswer, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Pairs, Paragraph, Section, Summary, Table
from assistant.store.memory import MemoryStore
from assistant.wording.sentences import Sentences

CASES = Path(__file__).parents[2] / "cases"


def told_case(script: Script, sentences: Sentences, name: str) -> Told:
    """The whole interview of that case, to its verdict."""
    case = read_case(CASES / f"{name}.yaml")
    conversation = begin_case(script, case, "great_britain")
    hold(conversation, case["answers"])
    return _told(conversation, sentences)


def told_with(
    script: Script,
    sentences: Sentences,
    answers: Mapping[str, Any],
    *,
    then: Mapping[str, Any] | None = None,
    region: str = "great_britain",
    role: str = "householder",
) -> Told:
    """These answers alone, in their order; and then those."""
    record = SessionRecord(session_id="b2c4" * 8, code_hash="b" * 64, name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start(role, region, "en-GB", "single"))
    for question_id, value in (*{"danger_now": ["none"], **answers}.items(), *(then or {}).items()):
        conversation.do(GiveAnswer(question_id, value))
    return _told(conversation, sentences)


def _told(conversation: Conversation, sentences: Sentences) -> Told:
    return Told(conversation.script, sentences, conversation._log.read(conversation.record.session_id))


def section(summary: Summary, name: str) -> Section:
    return next(each for page in summary.pages for each in page.sections if each.name == name)


def names(summary: Summary) -> list[list[str]]:
    return [[each.name for each in page.sections] for page in summary.pages]


def paragraphs(of: Section) -> list[str]:
    return [block.words for block in of.blocks if isinstance(block, Paragraph)]


def pairs(of: Section) -> dict[str, str]:
    return {label: value for block in of.blocks if isinstance(block, Pairs) for label, value in block.rows}


def table(of: Section) -> Table:
    return next(block for block in of.blocks if isinstance(block, Table))

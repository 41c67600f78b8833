"""Conversations, and summaries made of them."""

from dataclasses import replace

from assistant.interview.commands import Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.events import TextAnswered
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.household import household_summary
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Summary
from assistant.store.memory import MemoryStore
from assistant.wording.sentences import Sentences


def begun(script: Script, region: str = "great_britain") -> Conversation:
    record = SessionRecord(session_id="a3f9" * 8, code_hash="b" * 64, name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start("householder", region, "en-GB", "single"))
    return conversation


def told_of(conversation: Conversation, sentences: Sentences) -> Told:
    return Told(conversation.script, sentences, conversation._log.read(conversation.record.session_id))


def with_text(told: Told, question_id: str, text: str) -> Told:
    """As though that text had been stored, whatever would refuse or clean it on the way in."""
    happening = TextAnswered(question_id=question_id, text=text)
    latest = told.events[-1]
    return replace(told, events=(*told.events, replace(latest, sequence=latest.sequence + 1, happening=happening)))


def both(told: Told) -> tuple[Summary, Summary]:
    return engineer_summary(told), household_summary(told)

"""Invented sessions and events."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any
from uuid import uuid4

from assistant.interview.access_code import hash_code, new_code
from assistant.interview.events import (
    SCHEMA_VERSION,
    Event,
    Happening,
    QuestionAnswered,
    SessionStarted,
    TextAnswered,
)
from assistant.interview.log import EventLog, SessionRecord

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
STARTED = SessionStarted(region="eu", lang="en", cavity="single")


def numbered_code(number: int) -> str:
    return new_code(lambda count: number.to_bytes(count, "big"))


def record(**changes: Any) -> SessionRecord:
    session_id = changes.pop("session_id", uuid4().hex)
    values: dict[str, Any] = {
        "session_id": session_id,
        "code_hash": hash_code(numbered_code(uuid4().int >> 48)),
        "name": None,
        "created_at": NOON,
    }
    return SessionRecord(**(values | changes))


def event(session_id: str, sequence: int, happening: Happening | None = None, **changes: Any) -> Event:
    values: dict[str, Any] = {
        "event_id": uuid4().hex,
        "session_id": session_id,
        "sequence": sequence,
        "schema_version": SCHEMA_VERSION,
        "rules_fingerprint": "f" * 64,
        "recorded_at": NOON + timedelta(seconds=sequence),
        "actor": "person",
        "role": "owner",
        "message_id": None,
        "happening": happening or QuestionAnswered(question_id="preheat_minutes", value=float(sequence)),
    }
    return Event(**(values | changes))


def text_event(session_id: str, sequence: int, text: str | None, **changes: Any) -> Event:
    return event(session_id, sequence, TextAnswered(question_id="anything_else", text=text), **changes)


def started(log: EventLog, **changes: Any) -> SessionRecord:
    """A session with its first event, kept in the log."""
    session = record(**changes)
    log.create(session, [event(session.session_id, 1, STARTED)])
    return session


def without_text(event: Event) -> Event:
    """The same event after its free text was erased."""
    if isinstance(event.happening, TextAnswered):
        return replace(event, happening=replace(event.happening, text=None))
    return event

"""Events as the flat rows that every store keeps, and back."""

import hashlib
import json
from collections.abc import Sequence
from datetime import UTC, datetime
from typing import NamedTuple

from assistant.errors import Refused, StoreUnreadable
from assistant.interview.events import SCHEMA_VERSION, Event, happening_from, payload_of, text_of
from assistant.interview.log import SessionRecord


class EventRow(NamedTuple):
    """One event. `opens_message` marks the first event of its message; `text` is kept apart."""

    session_id: str
    sequence: int
    event_id: str
    schema_version: int
    rules_fingerprint: str
    recorded_at: str
    actor: str
    role: str
    message_id: str | None
    opens_message: bool
    type: str
    payload: str
    text: str | None


class SessionRow(NamedTuple):
    """One session; `created_at` is written as `stored_time` does."""

    session_id: str
    code_hash: str
    name: str | None
    created_at: str


def rows_of(session_id: str, expected_sequence: int, events: Sequence[Event]) -> list[EventRow]:
    """The rows of events that follow `expected_sequence`.

    Raises ValueError if they don't follow it or are of another session; Refused with `not_unicode`,
    `not_finite` or `event_repeated` for what no store keeps.
    """
    rows: list[EventRow] = []
    messages: set[str | None] = {None}
    for sequence, event in enumerate(events, start=expected_sequence + 1):
        if event.session_id != session_id or event.sequence != sequence:
            raise ValueError(f"event {event.sequence} of {event.session_id} where {sequence} of {session_id} belongs")
        if any(event.event_id == row.event_id for row in rows):
            raise Refused("event_repeated", {"event_id": event.event_id})
        rows.append(_row_of(event, opens_message=event.message_id not in messages))
        messages.add(event.message_id)
    return rows


def session_row_of(session: SessionRecord) -> SessionRow:
    """The row of a session. Raises Refused with `not_unicode`, ValueError for a naive time."""
    row = SessionRow(session.session_id, session.code_hash, session.name, stored_time(session.created_at))
    _refuse_lone_surrogates(row)
    return row


def fingerprint_after(before: str, rows: Sequence[EventRow]) -> str:
    """The fingerprint of a session with these rows behind those that have the fingerprint `before`, empty for none.

    A chain of SHA-256 in hex (FIPS 180-4), each over the one before and a row without its free text, which may be
    erased. It shows what was changed, lost or added by accident or by hand, not by somebody who reckons it anew.
    """
    for row in rows:
        told = json.dumps(
            [*row._replace(opens_message=bool(row.opens_message))[:-1]], ensure_ascii=True, separators=(",", ":")
        )
        before = hashlib.sha256(f"{before}\n{told}".encode("ascii")).hexdigest()
    return before


def event_from(row: EventRow, where: str) -> Event:
    """The event of a row. Raises StoreUnreadable if this program doesn't know its form."""
    if row.schema_version > SCHEMA_VERSION:
        raise StoreUnreadable(where, "later_form", f"{_place_of(row)}, {row.schema_version}")
    try:
        happening = happening_from(row.type, json.loads(row.payload), row.text)
        recorded_at = datetime.fromisoformat(row.recorded_at)
    except (KeyError, TypeError, ValueError, AttributeError, RecursionError) as error:
        raise StoreUnreadable(where, "unknown_form", _place_of(row)) from error
    return Event(
        event_id=row.event_id,
        session_id=row.session_id,
        sequence=row.sequence,
        schema_version=row.schema_version,
        rules_fingerprint=row.rules_fingerprint,
        recorded_at=recorded_at,
        actor=row.actor,
        role=row.role,
        message_id=row.message_id,
        happening=happening,
    )


def session_from(row: SessionRow, where: str) -> SessionRecord:
    """The session of a row. Raises StoreUnreadable if its time can't be read."""
    return SessionRecord(
        session_id=row.session_id,
        code_hash=row.code_hash,
        name=row.name,
        created_at=time_from(row.created_at, where),
    )


def stored_time(moment: datetime) -> str:
    """An aware moment in ISO 8601, in UTC, to the microsecond, so that texts sort as times do."""
    if moment.utcoffset() is None:
        raise ValueError("a time without a zone can't be stored")
    return moment.astimezone(UTC).isoformat(timespec="microseconds")


def time_from(text: str, where: str) -> datetime:
    """The moment `stored_time` wrote. Raises StoreUnreadable if it isn't one."""
    try:
        return datetime.fromisoformat(text)
    except (TypeError, ValueError) as error:
        raise StoreUnreadable(where, "not_a_time", repr(text)) from error


def _row_of(event: Event, *, opens_message: bool) -> EventRow:
    try:
        payload = json.dumps(payload_of(event.happening), ensure_ascii=False, allow_nan=False)
    except ValueError as error:
        raise Refused("not_finite", {"sequence": event.sequence}) from error
    row = EventRow(
        session_id=event.session_id,
        sequence=event.sequence,
        event_id=event.event_id,
        schema_version=event.schema_version,
        rules_fingerprint=event.rules_fingerprint,
        recorded_at=stored_time(event.recorded_at),
        actor=event.actor,
        role=event.role,
        message_id=event.message_id,
        opens_message=opens_message,
        type=type(event.happening).__name__,
        payload=payload,
        text=text_of(event.happening),
    )
    _refuse_lone_surrogates(row)
    return row


def _refuse_lone_surrogates(row: tuple[object, ...]) -> None:
    for value in row:
        if isinstance(value, str):
            try:
                value.encode()
            except UnicodeEncodeError as error:
                raise Refused("not_unicode") from error


def _place_of(row: EventRow) -> str:
    return f"event {row.sequence} of session {row.session_id} ({row.type})"

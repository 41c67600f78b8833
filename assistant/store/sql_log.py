"""What the logs in SQL tables have in common: the statements that both databases take, and all of the reading.

A question mark stands for a value. It is always passed apart from the statement.
"""

from abc import ABC, abstractmethod
from collections.abc import Sequence
from datetime import datetime
from typing import Any, ClassVar

from assistant.errors import SessionMovedOn, SessionUnknown
from assistant.interview.access_code import hash_code
from assistant.interview.events import Event, Happening, InterviewFinished, OutcomeRecorded
from assistant.interview.log import SessionRecord, SessionSummary
from assistant.store.rows import (
    EventRow,
    SessionRow,
    event_from,
    fingerprint_after,
    session_from,
    stored_time,
    time_from,
)

Value = str | int | bytes | None

INSERT_SESSION = """
    INSERT INTO sessions (session_id, code_hash, name, created_at, fingerprint) VALUES (?, ?, ?, ?, ?)
"""
INSERT_EVENT = """
    INSERT INTO events (session_id, sequence, event_id, schema_version, rules_fingerprint, recorded_at,
        actor, role, message_id, opens_message, type, payload)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
"""
INSERT_TEXT = "INSERT INTO texts (session_id, sequence, text) VALUES (?, ?, ?)"
EVENTS = """
    SELECT session_id, sequence, event_id, schema_version, rules_fingerprint, recorded_at,
        actor, role, message_id, opens_message, type, payload, text
    FROM events LEFT JOIN texts USING (session_id, sequence)
"""
SELECT_EVENTS = f"{EVENTS} WHERE session_id = ? ORDER BY sequence"
SELECT_KIND = f"{EVENTS} WHERE type = ? ORDER BY recorded_at, session_id, sequence"
SELECT_KIND_OF_SESSION = f"{EVENTS} WHERE type = ? AND session_id = ? ORDER BY sequence"
SELECT_LAST_SEQUENCE = "SELECT max(sequence) FROM events WHERE session_id = ?"
SESSIONS = "SELECT session_id, code_hash, name, created_at FROM sessions"
SELECT_SESSION = "SELECT 1 FROM sessions WHERE session_id = ?"
SELECT_BY_CODE = f"{SESSIONS} WHERE code_hash = ?"
SELECT_BY_PREFIX = f"{SESSIONS} WHERE session_id >= ? ORDER BY session_id LIMIT 2"
SELECT_IDS = "SELECT session_id FROM sessions WHERE session_id > ? ORDER BY session_id LIMIT ?"
SELECT_TEXTS = """
    SELECT session_id, sequence, text FROM texts
    WHERE (session_id, sequence) > (?, ?) ORDER BY session_id, sequence LIMIT ?
"""
SELECT_NAMES = """
    SELECT session_id, name FROM sessions WHERE name IS NOT NULL AND session_id > ? ORDER BY session_id LIMIT ?
"""
SELECT_UNTOUCHED = """
    SELECT session_id FROM sessions
    WHERE created_at < ? AND NOT EXISTS (
        SELECT 1 FROM events WHERE events.session_id = sessions.session_id AND recorded_at >= ?
    )
    ORDER BY session_id LIMIT ?
"""
SELECT_FINGERPRINT = "SELECT fingerprint FROM sessions WHERE session_id = ?"
UPDATE_FINGERPRINT = "UPDATE sessions SET fingerprint = ? WHERE session_id = ?"
DELETE_TRIES_BEFORE = "DELETE FROM failed_tries WHERE tried_at < ?"
DELETE_TEXT = "DELETE FROM texts WHERE session_id = ?"
DELETE_SESSION = (
    DELETE_TEXT,
    "DELETE FROM events WHERE session_id = ?",
    "DELETE FROM sessions WHERE session_id = ?",
)
MOST_SESSIONS = 2**31 - 1
ENDED = (OutcomeRecorded.__name__, InterviewFinished.__name__)


class SqlLog(ABC):
    """The reading half of an EventLog. The way to the tables, and all writing, are the database's own."""

    SELECT_BY_NAME: ClassVar[str]
    SELECT_MESSAGE: ClassVar[str]
    SELECT_SUMMARIES: ClassVar[str]
    """Its values are ENDED and the limit."""
    COUNT_FAILED_TRIES: ClassVar[str]

    _where: str

    @abstractmethod
    def _select(self, sql: str, *values: Value) -> list[tuple[Any, ...]]:
        """The rows that were found. Raises StoreUnreadable."""

    @abstractmethod
    def _erase_by(self, deletions: Sequence[str], session_id: str) -> None:
        """Do the deletions, each for the session. Raises as `EventLog.erase` does."""

    def _kept(self, typed: str) -> str | bytes:
        """A client's name or message id as its column has it."""
        return typed

    def _text(self, kept: Any) -> str | None:
        """The text of a column that has a name, a message id or free text."""
        text: str | None = kept
        return text

    def read(self, session_id: str) -> tuple[Event, ...]:
        rows = self._select(SELECT_EVENTS, session_id)
        if not rows:
            raise SessionUnknown(session_id)
        return self._events(rows)

    def last_sequence(self, session_id: str) -> int:
        last = self._last(session_id)
        if last is None:
            raise SessionUnknown(session_id)
        return last

    def events_of(self, kind: type[Happening], session_id: str | None = None) -> tuple[Event, ...]:
        if session_id is None:
            return self._events(self._select(SELECT_KIND, kind.__name__))
        return self._events(self._select(SELECT_KIND_OF_SESSION, kind.__name__, session_id))

    def ids_after(self, session_id: str, limit: int) -> list[str]:
        return [each for (each,) in self._select(SELECT_IDS, session_id, limit)]

    def texts_after(self, session_id: str, sequence: int, limit: int) -> list[tuple[str, int, str]]:
        rows = self._select(SELECT_TEXTS, session_id, sequence, limit)
        return [(id_, at, self._text(kept) or "") for id_, at, kept in rows]

    def names_after(self, session_id: str, limit: int) -> list[tuple[str, str]]:
        return [(each, self._text(name) or "") for each, name in self._select(SELECT_NAMES, session_id, limit)]

    def untouched_since(self, moment: datetime, limit: int) -> list[str]:
        before = stored_time(moment)
        return [each for (each,) in self._select(SELECT_UNTOUCHED, before, before, limit)]

    def kept_fingerprint(self, session_id: str) -> str | None:
        rows = self._select(SELECT_FINGERPRINT, session_id)
        if not rows:
            raise SessionUnknown(session_id)
        kept: str | None = rows[0][0]
        return kept

    def reckoned_fingerprint(self, session_id: str) -> str:
        self.last_sequence(session_id)
        return fingerprint_after("", list(map(self._row, self._select(SELECT_EVENTS, session_id))))

    def find_by_code(self, code: str) -> SessionRecord:
        found = self._sessions(SELECT_BY_CODE, hash_code(code))
        if not found:
            raise SessionUnknown("no session with that code")
        return found[0]

    def failed_tries(self, since: datetime, until: datetime) -> int:
        [(count,)] = self._select(self.COUNT_FAILED_TRIES, stored_time(since), stored_time(until))
        return int(count)

    def find_by_name(self, name: str) -> SessionRecord | None:
        found = self._sessions(self.SELECT_BY_NAME, self._kept(name))
        return found[0] if found else None

    def find_by_id_prefix(self, prefix: str) -> SessionRecord:
        found = [row for row in self._select(SELECT_BY_PREFIX, prefix) if row[0].startswith(prefix)]
        if not prefix or len(found) != 1:
            raise SessionUnknown(prefix)
        return self._session(found[0])

    def sessions(self, limit: int = 50) -> list[SessionSummary]:
        rows = self._select(self.SELECT_SUMMARIES, *ENDED, min(max(0, limit), MOST_SESSIONS))
        return [
            SessionSummary(
                session_id=session_id,
                name=self._text(name),
                created_at=time_from(created_at, self._where),
                last_at=time_from(last_at, self._where),
                events=events,
                finished=bool(finished),
            )
            for session_id, name, created_at, last_at, events, finished in rows
        ]

    def seen_message(self, session_id: str, message_id: str) -> bool:
        return bool(self._select(self.SELECT_MESSAGE, session_id, self._kept(message_id)))

    def erase(self, session_id: str) -> None:
        self._erase_by(DELETE_SESSION, session_id)

    def erase_text(self, session_id: str) -> None:
        self._erase_by((DELETE_TEXT,), session_id)

    def _last(self, session_id: str) -> int | None:
        rows = self._select(SELECT_LAST_SEQUENCE, session_id)
        return int(rows[0][0]) if rows and rows[0][0] is not None else None

    def _fingerprint_to_go_on_from(self, session_id: str, expected_sequence: int) -> str:
        """As it is kept; of a session that an earlier version wrote, of what is there.

        Raises SessionUnknown, SessionMovedOn.
        """
        found = self.last_sequence(session_id)
        if found != expected_sequence:
            raise SessionMovedOn(session_id, expected_sequence, found)
        kept = self.kept_fingerprint(session_id)
        return self.reckoned_fingerprint(session_id) if kept is None else kept

    def _sessions(self, sql: str, *values: Value) -> list[SessionRecord]:
        return [self._session(values) for values in self._select(sql, *values)]

    def _session(self, values: tuple[Any, ...]) -> SessionRecord:
        row = SessionRow(*values)
        return session_from(row._replace(name=self._text(row.name)), self._where)

    def _events(self, rows: Sequence[tuple[Any, ...]]) -> tuple[Event, ...]:
        return tuple(event_from(self._row(values), self._where) for values in rows)

    def _row(self, values: tuple[Any, ...]) -> EventRow:
        row = EventRow(*values)
        return row._replace(message_id=self._text(row.message_id), text=self._text(row.text))

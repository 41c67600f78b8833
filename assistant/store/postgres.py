"""The log in PostgreSQL, for desks that share one store: a row for every event, free text in a table of its own."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from datetime import datetime
from threading import RLock
from typing import Any

import psycopg
from psycopg import errors

from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.access_code import hash_code
from assistant.interview.events import Event, Happening, InterviewFinished, OutcomeRecorded
from assistant.interview.log import Appending, SessionRecord, SessionSummary
from assistant.store.postgres_opening import Connection, named_place, open_connection
from assistant.store.postgres_reasons import NOT_REACHED, is_lost, named_failures
from assistant.store.rows import (
    EventRow,
    SessionRow,
    event_from,
    fingerprint_after,
    rows_of,
    session_from,
    session_row_of,
    stored_time,
    time_from,
)

INSERT_SESSION = """
    INSERT INTO sessions (session_id, code_hash, name, created_at, fingerprint) VALUES (%s, %s, %s, %s, %s)
"""
INSERT_EVENT = """
    INSERT INTO events (session_id, sequence, event_id, schema_version, rules_fingerprint, recorded_at,
        actor, role, message_id, opens_message, type, payload)
    VALUES (%s, %s, %s, %s, %s, %s, %s, %s, %s, %s, %s, %s)
"""
INSERT_TEXT = "INSERT INTO texts (session_id, sequence, text) VALUES (%s, %s, %s)"
EVENTS = """
    SELECT session_id, sequence, event_id, schema_version, rules_fingerprint, recorded_at,
        actor, role, message_id, opens_message, type, payload, text
    FROM events LEFT JOIN texts USING (session_id, sequence)
"""
SELECT_EVENTS = f"{EVENTS} WHERE session_id = %s ORDER BY sequence"
SELECT_KIND = f"{EVENTS} WHERE type = %s ORDER BY recorded_at, session_id, sequence"
SELECT_KIND_OF_SESSION = f"{EVENTS} WHERE type = %s AND session_id = %s ORDER BY sequence"
SELECT_LAST_SEQUENCE = "SELECT max(sequence) FROM events WHERE session_id = %s"
SELECT_ALREADY = "SELECT session_id, sequence FROM events WHERE event_id = %s"
SELECT_MESSAGE = """
    SELECT 1 FROM events
    WHERE session_id = %s AND sha256(message_id) = sha256(%s) AND opens_message AND message_id IS NOT NULL
"""
SESSIONS = "SELECT session_id, code_hash, name, created_at FROM sessions"
SELECT_BY_CODE = f"{SESSIONS} WHERE code_hash = %s"
SELECT_BY_NAME = f"{SESSIONS} WHERE sha256(name) = sha256(%s)"
SELECT_BY_PREFIX = f"{SESSIONS} WHERE session_id >= %s ORDER BY session_id LIMIT 2"
SELECT_SUMMARIES = """
    SELECT listed.session_id, name, created_at, recorded_at, sequence,
        (SELECT type FROM events AS e WHERE e.session_id = listed.session_id AND type <> %s
            ORDER BY e.sequence DESC LIMIT 1) = %s
    FROM (SELECT * FROM sessions ORDER BY created_at DESC, number DESC LIMIT %s) AS listed
    CROSS JOIN LATERAL (
        SELECT recorded_at, sequence FROM events AS e WHERE e.session_id = listed.session_id
        ORDER BY sequence DESC LIMIT 1
    ) AS last
    ORDER BY created_at DESC, number DESC
"""
LOCK_SESSION = "SELECT 1 FROM sessions WHERE session_id = %s FOR NO KEY UPDATE"
LOCK_OUT_WRITERS = "LOCK TABLE sessions IN EXCLUSIVE MODE"
"""Every writer locks its session's row first, or adds one."""
SELECT_IDS = "SELECT session_id FROM sessions WHERE session_id > %s ORDER BY session_id LIMIT %s"
SELECT_UNTOUCHED = """
    SELECT session_id FROM sessions
    WHERE created_at < %s AND NOT EXISTS (
        SELECT 1 FROM events WHERE events.session_id = sessions.session_id AND recorded_at >= %s
    )
    ORDER BY session_id LIMIT %s
"""
SELECT_FINGERPRINT = "SELECT fingerprint FROM sessions WHERE session_id = %s"
UPDATE_FINGERPRINT = "UPDATE sessions SET fingerprint = %s WHERE session_id = %s"
DELETE_TEXT = "DELETE FROM texts WHERE session_id = %s"
DELETE_SESSION = (
    DELETE_TEXT,
    "DELETE FROM events WHERE session_id = %s",
    "DELETE FROM sessions WHERE session_id = %s",
)
MOST_SESSIONS = 2**31 - 1
_ENDED = (OutcomeRecorded.__name__, InterviewFinished.__name__)
MOST_LOSSES = 5
"""Of the connection within one call, until it is given up."""


class PostgresStore:
    """An EventLog on the server at `url`. Many may be open on one server.

    `busy_seconds` is how long a call waits for another writer, and for a server that went away, before it fails.
    A call that returns was committed and synced by the server. Where the connection is lost, the call is made again
    on a new one, unless the events turn out to be there: nothing is lost, and nothing is kept twice.

    An erasure deletes the rows and lets the server clean its tables; what the server's own write-ahead log and
    backups hold of them until they are recycled is beyond this program.
    """

    def __init__(self, url: str, busy_seconds: float = 5.0) -> None:
        self._url = url
        self._where = named_place(url)
        self._busy_seconds = busy_seconds
        self._lock = RLock()
        self._closed = False
        self._inside = False
        self._connection = open_connection(url, self._where, busy_seconds)

    def create(self, session: SessionRecord, events: Sequence[Event]) -> None:
        if not events:
            raise ValueError("a session starts with an event")
        row, rows = session_row_of(session), rows_of(session.session_id, 0, events)

        def keep() -> None:
            found = self._last(row.session_id)
            if found is not None:
                raise SessionMovedOn(row.session_id, 0, found)
            self._insert_session(row, fingerprint_after("", rows))
            self._insert(rows)

        self._transact(keep, lambda: self._holds(rows))

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        rows = rows_of(session_id, expected_sequence, events)
        self._transact(lambda: self._append(session_id, expected_sequence, rows), lambda: self._holds(rows))

    def append_all(self, appendings: Iterable[Appending]) -> None:
        latest: list[EventRow] = []

        def keep() -> None:
            self._run(LOCK_OUT_WRITERS)
            for session_id, expected_sequence, events in appendings:
                rows = rows_of(session_id, expected_sequence, events)
                self._append(session_id, expected_sequence, rows)
                latest.extend(rows)

        self._transact(keep, lambda: self._holds(latest), again=False)

    def read(self, session_id: str) -> tuple[Event, ...]:
        rows = self._select(SELECT_EVENTS, session_id)
        if not rows:
            raise SessionUnknown(session_id)
        return tuple(map(self._event, rows))

    def last_sequence(self, session_id: str) -> int:
        last = self._last(session_id)
        if last is None:
            raise SessionUnknown(session_id)
        return last

    def events_of(self, kind: type[Happening], session_id: str | None = None) -> tuple[Event, ...]:
        if session_id is None:
            rows = self._select(SELECT_KIND, kind.__name__)
        else:
            rows = self._select(SELECT_KIND_OF_SESSION, kind.__name__, session_id)
        return tuple(map(self._event, rows))

    def ids_after(self, session_id: str, limit: int) -> list[str]:
        return [each for (each,) in self._select(SELECT_IDS, session_id, limit)]

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
        return fingerprint_after("", list(map(_row, self._select(SELECT_EVENTS, session_id))))

    def find_by_code(self, code: str) -> SessionRecord:
        found = self._find(SELECT_BY_CODE, hash_code(code))
        if not found:
            raise SessionUnknown("no session with that code")
        return found[0]

    def find_by_name(self, name: str) -> SessionRecord | None:
        found = self._find(SELECT_BY_NAME, _bytes(name))
        return found[0] if found else None

    def find_by_id_prefix(self, prefix: str) -> SessionRecord:
        found = [each for each in self._find(SELECT_BY_PREFIX, prefix) if each.session_id.startswith(prefix)]
        if not prefix or len(found) != 1:
            raise SessionUnknown(prefix)
        return found[0]

    def sessions(self, limit: int = 50) -> list[SessionSummary]:
        rows = self._select(SELECT_SUMMARIES, *_ENDED, min(max(0, limit), MOST_SESSIONS))
        return [
            SessionSummary(
                session_id=session_id,
                name=_text(name),
                created_at=time_from(created_at, self._where),
                last_at=time_from(last_at, self._where),
                events=events,
                finished=bool(finished),
            )
            for session_id, name, created_at, last_at, events, finished in rows
        ]

    def seen_message(self, session_id: str, message_id: str) -> bool:
        return bool(self._select(SELECT_MESSAGE, session_id, _bytes(message_id)))

    def erase(self, session_id: str) -> None:
        self._erase_by(DELETE_SESSION, session_id)

    def erase_text(self, session_id: str) -> None:
        self._erase_by((DELETE_TEXT,), session_id)

    def close(self) -> None:
        with self._lock:
            self._closed = True
            self._connection.close()

    def _append(self, session_id: str, expected_sequence: int, rows: Sequence[EventRow]) -> None:
        self._select(LOCK_SESSION, session_id)
        found = self.last_sequence(session_id)
        if found != expected_sequence:
            raise SessionMovedOn(session_id, expected_sequence, found)
        before = str(self.kept_fingerprint(session_id))
        self._insert(rows)
        self._run(UPDATE_FINGERPRINT, fingerprint_after(before, rows), session_id)

    def _insert_session(self, row: SessionRow, fingerprint: str) -> None:
        try:
            self._run(INSERT_SESSION, row.session_id, row.code_hash, _bytes(row.name), row.created_at, fingerprint)
        except errors.UniqueViolation as error:
            if error.diag.constraint_name == "name_once":
                raise Refused("name_taken", {"name": row.name or ""}) from error
            if error.diag.constraint_name == "code_once":
                raise Refused("code_taken") from error
            raise SessionMovedOn(row.session_id, 0, 1) from error

    def _insert(self, rows: Sequence[EventRow]) -> None:
        for row in rows:
            try:
                self._run(INSERT_EVENT, *row[:8], _bytes(row.message_id), *row[9:12])
            except errors.UniqueViolation as error:
                raise _refused(error, row) from error
            if row.text is not None:
                self._run(INSERT_TEXT, row.session_id, row.sequence, _bytes(row.text))

    def _erase_by(self, deletions: Sequence[str], session_id: str) -> None:
        def remove() -> None:
            self._select(LOCK_SESSION, session_id)
            self.last_sequence(session_id)
            for deletion in deletions:
                self._run(deletion, session_id)

        self._transact(remove, lambda: self._last(session_id) is None)
        with suppress(StoreUnreadable):  # the rows are gone; the server cleans its tables by itself too
            self._select("VACUUM texts, events, sessions")

    def _transact(self, work: Callable[[], None], done: Callable[[], bool], *, again: bool = True) -> None:
        """Do all of the work or nothing. Where the connection is lost on the way it is looked on a new one whether it
        is `done`, and if not it is done again, or given up with what was the matter.
        """
        with self._lock:
            for _ in range(MOST_LOSSES):
                try:
                    with self._open().transaction(), self._within():
                        work()
                except psycopg.Error as error:
                    if not is_lost(error, self._connection):
                        with named_failures(self._where):
                            raise
                    self._renew()
                    if done():
                        return
                    if not again:
                        raise StoreUnreadable(self._where, NOT_REACHED) from error
                else:
                    return
            raise StoreUnreadable(self._where, NOT_REACHED)

    @contextmanager
    def _within(self) -> Iterator[None]:
        self._inside = True
        try:
            yield
        finally:
            self._inside = False

    def _select(self, sql: str, *values: str | int | bytes | None) -> list[tuple[Any, ...]]:
        """The rows; none where a value is nothing that any store keeps."""
        if not all(map(_is_kept, values)):
            return []
        with self._lock:
            for _ in range(MOST_LOSSES):
                try:
                    found = self._run(sql, *values)
                    return found.fetchall() if found.description else []
                except psycopg.Error as error:
                    if self._inside:
                        raise
                    if not is_lost(error, self._connection):
                        with named_failures(self._where):
                            raise
                    self._renew()
            raise StoreUnreadable(self._where, NOT_REACHED)

    def _run(self, sql: str, *values: str | int | bytes | bool | None) -> psycopg.Cursor[tuple[Any, ...]]:
        return self._open().execute(sql, values)

    def _open(self) -> Connection:
        if self._closed:
            raise StoreUnreadable(self._where, "closed")
        return self._connection

    def _renew(self) -> None:
        self._connection.close()
        self._connection = open_connection(self._url, self._where, self._busy_seconds)

    def _find(self, sql: str, *values: str | bytes | None) -> list[SessionRecord]:
        rows = self._select(sql, *values)
        return [session_from(SessionRow(id_, code, _text(name), at), self._where) for id_, code, name, at in rows]

    def _last(self, session_id: str) -> int | None:
        rows = self._select(SELECT_LAST_SEQUENCE, session_id)
        return None if not rows or rows[0][0] is None else int(rows[0][0])

    def _event(self, values: tuple[Any, ...]) -> Event:
        return event_from(_row(values), self._where)

    def _holds(self, rows: Sequence[EventRow]) -> bool:
        """Whether these very events are there: each id is a random number of its own."""
        return bool(rows) and self._select(SELECT_ALREADY, rows[-1].event_id) == [
            (rows[-1].session_id, rows[-1].sequence)
        ]


def _row(values: tuple[Any, ...]) -> EventRow:
    row = EventRow(*values)
    return row._replace(message_id=_text(values[8]), text=_text(values[12]))


def _refused(error: errors.UniqueViolation, row: EventRow) -> Exception:
    constraint = error.diag.constraint_name
    if constraint == "event_once":
        return Refused("event_repeated", {"event_id": row.event_id})
    if constraint == "message_once":
        return Refused("message_repeated", {"message_id": row.message_id or ""})
    return error


def _bytes(text: str | None) -> bytes | None:
    return None if text is None else text.encode("utf-8", "surrogatepass")


def _text(kept: bytes | None) -> str | None:
    return None if kept is None else kept.decode("utf-8", "surrogatepass")


def _is_kept(value: str | int | bytes | None) -> bool:
    """Whether a row may hold the value: a text with lone surrogates or the character with number 0 is in none."""
    if not isinstance(value, str):
        return True
    return "\0" not in value and not any("\ud800" <= char <= "\udfff" for char in value)

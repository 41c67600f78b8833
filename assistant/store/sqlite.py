"""The log in one SQLite file: a row for every event, free text in a table of its own."""

import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path
from threading import RLock
from typing import Any

from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.access_code import hash_code
from assistant.interview.events import Event, Happening, InterviewFinished, OutcomeRecorded
from assistant.interview.log import Appending, SessionRecord, SessionSummary
from assistant.store.opening import open_connection, resolved
from assistant.store.reasons import LOCKED, named_failures
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
from assistant.store.waiting import attempts

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
SELECT_MESSAGE = "SELECT 1 FROM events WHERE session_id = ? AND message_id = ? AND opens_message"
SELECT_BY_CODE = "SELECT session_id, code_hash, name, created_at FROM sessions WHERE code_hash = ?"
SELECT_BY_NAME = "SELECT session_id, code_hash, name, created_at FROM sessions WHERE name = ?"
SELECT_BY_PREFIX = """
    SELECT session_id, code_hash, name, created_at FROM sessions
    WHERE session_id >= ? ORDER BY session_id LIMIT 2
"""
SELECT_SUMMARIES = """
    SELECT listed.session_id, name, created_at, recorded_at, sequence,
        (SELECT type FROM events AS e WHERE e.session_id = listed.session_id AND type != ?
            ORDER BY e.sequence DESC LIMIT 1) = ?
    FROM (SELECT * FROM sessions ORDER BY created_at DESC, number DESC LIMIT ?) AS listed
    JOIN events AS last ON last.session_id = listed.session_id
        AND sequence = (SELECT max(e.sequence) FROM events AS e WHERE e.session_id = listed.session_id)
    ORDER BY created_at DESC, number DESC
"""
SELECT_IDS = "SELECT session_id FROM sessions WHERE session_id > ? ORDER BY session_id LIMIT ?"
SELECT_UNTOUCHED = """
    SELECT session_id FROM sessions
    WHERE created_at < ? AND NOT EXISTS (
        SELECT 1 FROM events WHERE events.session_id = sessions.session_id AND recorded_at >= ?
    )
    ORDER BY session_id LIMIT ?
"""
SELECT_FINGERPRINT = "SELECT fingerprint FROM sessions WHERE session_id = ?"
UPDATE_FINGERPRINT = "UPDATE sessions SET fingerprint = ? WHERE session_id = ?"
DELETE_TEXT = "DELETE FROM texts WHERE session_id = ?"
DELETE_SESSION = (
    DELETE_TEXT,
    "DELETE FROM events WHERE session_id = ?",
    "DELETE FROM sessions WHERE session_id = ?",
)
MOST_SESSIONS = 2**31 - 1
_ENDED = (OutcomeRecorded.__name__, InterviewFinished.__name__)


class SqliteStore:
    """An EventLog in the file at `path`. Several may be open on one file, also in several programs.

    `busy_seconds` is how long a call waits for another writer before it fails as locked. A commit is
    synced to the disk before the call returns. An erasure rewrites the file, because the space that
    SQLite frees inside a page may hold traces of a row even when it is told to overwrite what it
    deletes; what a disk keeps of its own below its files is beyond reach.
    """

    def __init__(self, path: Path, busy_seconds: float = 5.0) -> None:
        self._path = resolved(path)
        self._where = str(self._path)
        self._busy_seconds = busy_seconds
        self._lock = RLock()
        self._connection = open_connection(self._path, busy_seconds)
        with suppress(StoreUnreadable):  # a sweep that has to wait stays due
            self._sweep()

    def create(self, session: SessionRecord, events: Sequence[Event]) -> None:
        if not events:
            raise ValueError("a session starts with an event")
        row, rows = session_row_of(session), rows_of(session.session_id, 0, events)
        with self._writing():
            [(found,)] = self._select(SELECT_LAST_SEQUENCE, row.session_id)
            if found is not None:
                raise SessionMovedOn(row.session_id, 0, found)
            if row.name is not None and self._select(SELECT_BY_NAME, row.name):
                raise Refused("name_taken", {"name": row.name})
            if self._select(SELECT_BY_CODE, row.code_hash):
                raise Refused("code_taken")
            self._connection.execute(INSERT_SESSION, (*row, fingerprint_after("", rows)))
            self._insert(rows)

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        rows = rows_of(session_id, expected_sequence, events)
        with self._writing():
            self._append(session_id, expected_sequence, rows)

    def append_all(self, appendings: Iterable[Appending]) -> None:
        with self._writing():
            for session_id, expected_sequence, events in appendings:
                self._append(session_id, expected_sequence, rows_of(session_id, expected_sequence, events))

    def read(self, session_id: str) -> tuple[Event, ...]:
        rows = self._select(SELECT_EVENTS, session_id)
        if not rows:
            raise SessionUnknown(session_id)
        return tuple(event_from(EventRow(*row), self._where) for row in rows)

    def last_sequence(self, session_id: str) -> int:
        [(last,)] = self._select(SELECT_LAST_SEQUENCE, session_id)
        if last is None:
            raise SessionUnknown(session_id)
        return int(last)

    def events_of(self, kind: type[Happening], session_id: str | None = None) -> tuple[Event, ...]:
        if session_id is None:
            rows = self._select(SELECT_KIND, kind.__name__)
        else:
            rows = self._select(SELECT_KIND_OF_SESSION, kind.__name__, session_id)
        return tuple(event_from(EventRow(*row), self._where) for row in rows)

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
        return fingerprint_after("", [EventRow(*row) for row in self._select(SELECT_EVENTS, session_id)])

    def find_by_code(self, code: str) -> SessionRecord:
        found = self._find(SELECT_BY_CODE, hash_code(code))
        if not found:
            raise SessionUnknown("no session with that code")
        return found[0]

    def find_by_name(self, name: str) -> SessionRecord | None:
        found = self._find(SELECT_BY_NAME, name)
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
                name=name,
                created_at=time_from(created_at, self._where),
                last_at=time_from(last_at, self._where),
                events=events,
                finished=bool(finished),
            )
            for session_id, name, created_at, last_at, events, finished in rows
        ]

    def seen_message(self, session_id: str, message_id: str) -> bool:
        return bool(self._select(SELECT_MESSAGE, session_id, message_id))

    def erase(self, session_id: str) -> None:
        self._erase_by(DELETE_SESSION, session_id)

    def erase_text(self, session_id: str) -> None:
        self._erase_by((DELETE_TEXT,), session_id)

    def close(self) -> None:
        with self._lock, named_failures(self._path):
            self._connection.close()

    @contextmanager
    def _writing(self) -> Iterator[None]:
        """One transaction that holds the write lock from its start; left by an error, it never was."""
        with self._lock, named_failures(self._path):
            try:
                self._connection.execute("BEGIN IMMEDIATE")
                yield
                self._connection.execute("COMMIT")
            except BaseException:
                if self._connection.in_transaction:
                    with suppress(sqlite3.Error):  # the first error says more
                        self._connection.execute("ROLLBACK")
                raise

    def _select(self, sql: str, *values: str | int) -> list[tuple[Any, ...]]:
        with self._lock, named_failures(self._path):
            return self._connection.execute(sql, [_bindable(value) for value in values]).fetchall()

    def _find(self, sql: str, *values: str | int) -> list[SessionRecord]:
        return [session_from(SessionRow(*row), self._where) for row in self._select(sql, *values)]

    def _append(self, session_id: str, expected_sequence: int, rows: Sequence[EventRow]) -> None:
        found = self.last_sequence(session_id)
        if found != expected_sequence:
            raise SessionMovedOn(session_id, expected_sequence, found)
        before = self._fingerprint(session_id)
        self._insert(rows)
        self._connection.execute(UPDATE_FINGERPRINT, (fingerprint_after(before, rows), session_id))

    def _fingerprint(self, session_id: str) -> str:
        """As it is kept; of a session that an earlier version wrote, of what is there."""
        kept = self.kept_fingerprint(session_id)
        return self.reckoned_fingerprint(session_id) if kept is None else kept

    def _insert(self, rows: Sequence[EventRow]) -> None:
        for row in rows:
            self._refuse_repeats(row)
            self._connection.execute(INSERT_EVENT, row[:-1])
            if row.text is not None:
                self._connection.execute(INSERT_TEXT, (row.session_id, row.sequence, row.text))

    def _refuse_repeats(self, row: EventRow) -> None:
        if self._select("SELECT 1 FROM events WHERE event_id = ?", row.event_id):
            raise Refused("event_repeated", {"event_id": row.event_id})
        if row.message_id is None or not row.opens_message:
            return
        if self.seen_message(row.session_id, row.message_id):
            raise Refused("message_repeated", {"message_id": row.message_id})

    def _erase_by(self, deletions: Sequence[str], session_id: str) -> None:
        with self._lock:
            with self._writing():
                self.last_sequence(session_id)
                for deletion in deletions:
                    self._connection.execute(deletion, (session_id,))
                self._connection.execute("INSERT INTO sweeps_due DEFAULT VALUES")
            try:
                self._sweep()
            except StoreUnreadable as error:
                raise StoreUnreadable(self._where, "traces_left", error.code) from error

    def _sweep(self) -> None:
        """Rewrite the file without what was erased, empty the write-ahead log, and take the mark away.

        Erasures that are committed meanwhile leave marks of their own.
        """
        with self._lock, named_failures(self._path):
            [(last_due,)] = self._select("SELECT max(number) FROM sweeps_due")
            if last_due is None:
                return
            self._connection.execute("VACUUM")
            self._empty_the_write_ahead_log()
            self._connection.execute("DELETE FROM sweeps_due WHERE number <= ?", (last_due,))

    def _empty_the_write_ahead_log(self) -> None:
        for _ in attempts(self._busy_seconds):
            [(busy, *_)] = self._select("PRAGMA wal_checkpoint(TRUNCATE)")
            if not busy:
                return
        raise StoreUnreadable(self._where, LOCKED)


def _bindable(value: str | int) -> str | int | bytes:
    """The value for a lookup; text with lone surrogates becomes bytes, which equal no stored text."""
    if isinstance(value, str):
        try:
            value.encode()
        except UnicodeEncodeError:
            return value.encode("utf-8", "surrogatepass")
    return value

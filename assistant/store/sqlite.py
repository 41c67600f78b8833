"""The log in one SQLite file: a row for every event, free text in a table of its own."""

import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path
from threading import RLock
from typing import Any

from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.events import Event
from assistant.interview.log import Appending, SessionRecord
from assistant.store.opening import copied_in_a_file, open_connection, resolved
from assistant.store.reasons import LOCKED, named_failures
from assistant.store.rows import EventRow, fingerprint_after, rows_of, session_row_of, stored_time
from assistant.store.sql_log import (
    DELETE_SESSION,
    DELETE_TRIES_BEFORE,
    INSERT_EVENT,
    INSERT_SESSION,
    INSERT_TEXT,
    SELECT_BY_CODE,
    SELECT_SESSION,
    SESSIONS,
    UPDATE_FINGERPRINT,
    SqlLog,
    Value,
)
from assistant.store.waiting import BUSY_SECONDS, attempts


class SqliteStore(SqlLog):
    """An EventLog in the file at `path`. Several may be open on one file, also in several programs.

    `busy_seconds` is how long a call waits for another writer before it fails as locked. A commit is
    synced to the disk before the call returns. An erasure rewrites the file, because the space that
    SQLite frees inside a page may hold traces of a row even when it is told to overwrite what it
    deletes; what a disk keeps of its own below its files is beyond reach.
    """

    SELECT_BY_NAME = f"{SESSIONS} WHERE name = ?"
    SELECT_MESSAGE = "SELECT 1 FROM events WHERE session_id = ? AND message_id = ? AND opens_message"
    SELECT_SUMMARIES = """
        SELECT listed.session_id, name, created_at, recorded_at, sequence,
            (SELECT type FROM events AS e WHERE e.session_id = listed.session_id AND type != ?
                ORDER BY e.sequence DESC LIMIT 1) = ?
        FROM (SELECT * FROM sessions ORDER BY created_at DESC, number DESC LIMIT ?) AS listed
        JOIN events AS last ON last.session_id = listed.session_id
            AND sequence = (SELECT max(e.sequence) FROM events AS e WHERE e.session_id = listed.session_id)
        ORDER BY created_at DESC, number DESC
    """
    COUNT_FAILED_TRIES = "SELECT count(*) FROM failed_tries WHERE tried_at BETWEEN ? AND ?"

    def __init__(self, path: Path, busy_seconds: float = BUSY_SECONDS) -> None:
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
            found = self._last(row.session_id)
            if found is not None:
                raise SessionMovedOn(row.session_id, 0, found)
            if row.name is not None and self._select(self.SELECT_BY_NAME, row.name):
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

    def note_failed_try(self, moment: datetime, keep_since: datetime) -> None:
        kept = (stored_time(keep_since), stored_time(moment))
        with self._writing():
            self._connection.execute("DELETE FROM failed_tries WHERE tried_at NOT BETWEEN ? AND ?", kept)
            self._connection.execute("INSERT INTO failed_tries (tried_at) VALUES (?)", kept[1:])

    def forget_tries(self, before: datetime) -> None:
        with self._writing():
            self._connection.execute(DELETE_TRIES_BEFORE, (stored_time(before),))

    def erase_untouched(self, moment: datetime, limit: int) -> list[str]:
        with self._writing():
            ids = self.untouched_since(moment, limit)
            for session_id in ids:
                self._delete(DELETE_SESSION, session_id)
            return ids

    def sweep(self) -> None:
        try:
            self._sweep()
        except StoreUnreadable as error:
            raise StoreUnreadable(self._where, "traces_left", error.code) from error

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

    def _select(self, sql: str, *values: Value) -> list[tuple[Any, ...]]:
        with self._lock, named_failures(self._path):
            return self._connection.execute(sql, [_bindable(value) for value in values]).fetchall()

    def _append(self, session_id: str, expected_sequence: int, rows: Sequence[EventRow]) -> None:
        before = self._fingerprint_to_go_on_from(session_id, expected_sequence)
        self._insert(rows)
        self._connection.execute(UPDATE_FINGERPRINT, (fingerprint_after(before, rows), session_id))

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
                if not self._select(SELECT_SESSION, session_id):
                    raise SessionUnknown(session_id)
                self._delete(deletions, session_id)
            self.sweep()

    def _delete(self, deletions: Sequence[str], session_id: str) -> None:
        for deletion in deletions:
            self._connection.execute(deletion, (session_id,))
        self._connection.execute("INSERT INTO sweeps_due DEFAULT VALUES")

    def _sweep(self) -> None:
        """Rewrite the file without what was erased, empty the write-ahead log, and take the mark away.

        Erasures that are committed meanwhile leave marks of their own.
        """
        with self._lock, named_failures(self._path):
            [(last_due,)] = self._select("SELECT max(number) FROM sweeps_due")
            if last_due is None:
                return
            with copied_in_a_file(self._connection, self._path.parent):
                self._connection.execute("VACUUM")
            self._empty_the_write_ahead_log()
            self._connection.execute("DELETE FROM sweeps_due WHERE number <= ?", (last_due,))

    def _empty_the_write_ahead_log(self) -> None:
        for _ in attempts(self._busy_seconds):
            [(busy, *_)] = self._select("PRAGMA wal_checkpoint(TRUNCATE)")
            if not busy:
                return
        raise StoreUnreadable(self._where, LOCKED)


def _bindable(value: Value) -> Value:
    """The value for a lookup; text with lone surrogates becomes bytes, which equal no stored text."""
    if isinstance(value, str):
        try:
            value.encode()
        except UnicodeEncodeError:
            return value.encode("utf-8", "surrogatepass")
    return value

"""The log in PostgreSQL, for desks that share one store: a row for every event, free text in a table of its own."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager, nullcontext
from datetime import datetime
from threading import RLock
from typing import Any

import psycopg
from psycopg import errors

from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.events import Event
from assistant.interview.log import Appending, SessionRecord
from assistant.store.postgres_opening import ANSWER_SECONDS, Connection, cut_off_after, named_place, open_connection
from assistant.store.postgres_reasons import NOT_REACHED, is_lost, named_failures
from assistant.store.postgres_sweep import write_anew
from assistant.store.rows import EventRow, SessionRow, fingerprint_after, rows_of, session_row_of, stored_time
from assistant.store.sql_log import (
    DELETE_SESSION,
    DELETE_TRIES_BEFORE,
    INSERT_EVENT,
    INSERT_SESSION,
    INSERT_TEXT,
    SELECT_SESSION,
    SELECT_UNTOUCHED,
    SESSIONS,
    UPDATE_FINGERPRINT,
    SqlLog,
    Value,
)
from assistant.store.waiting import BUSY_SECONDS

SELECT_ALREADY = "SELECT session_id, sequence FROM events WHERE event_id = ?"
LOCK_SESSION = "SELECT 1 FROM sessions WHERE session_id = ? FOR NO KEY UPDATE"
LOCK_UNTOUCHED = f"{SELECT_UNTOUCHED} FOR UPDATE SKIP LOCKED"
"""Whoever holds a session's row is about to touch it, or erases it too."""
SELECT_TOUCHED = "SELECT 1 FROM events WHERE session_id = ? AND recorded_at >= ? LIMIT 1"
"""Asked once the row is held, for it sees what was committed while it was waited for."""
LOCK_OUT_WRITERS = "LOCK TABLE sessions IN EXCLUSIVE MODE"
"""Every writer locks its session's row first, or adds one."""
DELETE_TRIES = """
    DELETE FROM failed_tries
    WHERE place = coalesce(host(inet_client_addr()), '') AND tried_at NOT BETWEEN ? AND ?
"""
INSERT_TRY = "INSERT INTO failed_tries (place, tried_at) VALUES (coalesce(host(inet_client_addr()), ''), ?)"
MOST_LOSSES = 5
"""Of the connection within one call, until it is given up."""


class PostgresStore(SqlLog):
    """An EventLog on the server at `url`. Many may be open on one server.

    `busy_seconds` is how long a call waits for another writer, and for a server that went away, before it fails;
    `answer_seconds` how long for one that doesn't answer at all.
    A call that returns was committed and synced by the server. Where the connection is lost, the call is made again
    on a new one, unless the events turn out to be there: nothing is lost, and nothing is kept twice.

    An erasure deletes the rows and has the server write the tables with free text and clients' names anew, which keeps
    others out of them meanwhile. While both together are large (`postgres_sweep.MOST_BYTES_ANEW`), or where somebody
    reads on with an older view, that isn't done, and `traces_left` is raised. The table of events is never written
    anew: of chosen answers, figures, times and clients' message ids bytes may stay in its unused space. What the
    server's own write-ahead log, copies and backups hold until they are recycled is beyond this program.
    """

    SELECT_BY_NAME = f"{SESSIONS} WHERE sha256(name) = sha256(?)"
    SELECT_MESSAGE = """
        SELECT 1 FROM events
        WHERE session_id = ? AND sha256(message_id) = sha256(?) AND opens_message AND message_id IS NOT NULL
    """
    SELECT_SUMMARIES = """
        SELECT listed.session_id, name, created_at, recorded_at, sequence,
            (SELECT type FROM events AS e WHERE e.session_id = listed.session_id AND type <> ?
                ORDER BY e.sequence DESC LIMIT 1) = ?
        FROM (SELECT * FROM sessions ORDER BY created_at DESC, number DESC LIMIT ?) AS listed
        CROSS JOIN LATERAL (
            SELECT recorded_at, sequence FROM events AS e WHERE e.session_id = listed.session_id
            ORDER BY sequence DESC LIMIT 1
        ) AS last
        ORDER BY created_at DESC, number DESC
    """
    COUNT_FAILED_TRIES = """
        SELECT count(*) FROM failed_tries
        WHERE place = coalesce(host(inet_client_addr()), '') AND tried_at BETWEEN ? AND ?
    """

    def __init__(self, url: str, busy_seconds: float = BUSY_SECONDS, answer_seconds: float = ANSWER_SECONDS) -> None:
        self._url = url
        self._where = named_place(url)
        self._busy_seconds = busy_seconds
        self._answer_seconds = answer_seconds
        self._lock = RLock()
        self._closed = False
        self._inside = False
        self._connection = open_connection(url, self._where, busy_seconds, answer_seconds)

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

    def note_failed_try(self, moment: datetime, keep_since: datetime) -> None:
        kept = (stored_time(keep_since), stored_time(moment))

        def note() -> None:
            self._run(DELETE_TRIES, *kept)
            self._run(INSERT_TRY, kept[1])

        self._transact(note, lambda: False)

    def forget_tries(self, before: datetime) -> None:
        self._select(DELETE_TRIES_BEFORE, stored_time(before))

    def erase_untouched(self, moment: datetime, limit: int) -> list[str]:
        before = stored_time(moment)
        erased: list[str] = []

        def remove() -> None:
            erased.clear()
            for (session_id,) in self._select(LOCK_UNTOUCHED, before, before, limit):
                if not self._select(SELECT_TOUCHED, session_id, before):
                    self._delete(DELETE_SESSION, session_id)
                    erased.append(session_id)

        self._transact(remove, lambda: bool(erased) and not self._select(SELECT_SESSION, erased[0]))
        return erased

    def sweep(self) -> None:
        try:
            write_anew(self._select, self._where, self._busy_seconds)
        except StoreUnreadable as error:
            raise StoreUnreadable(self._where, "traces_left", error.code) from error

    def close(self) -> None:
        with self._lock:
            self._closed = True
            self._connection.close()

    def _append(self, session_id: str, expected_sequence: int, rows: Sequence[EventRow]) -> None:
        self._select(LOCK_SESSION, session_id)
        before = self._fingerprint_to_go_on_from(session_id, expected_sequence)
        self._insert(rows)
        self._run(UPDATE_FINGERPRINT, fingerprint_after(before, rows), session_id)

    def _insert_session(self, row: SessionRow, fingerprint: str) -> None:
        try:
            self._run(INSERT_SESSION, row.session_id, row.code_hash, self._bytes(row.name), row.created_at, fingerprint)
        except errors.UniqueViolation as error:
            if error.diag.constraint_name == "name_once":
                raise Refused("name_taken", {"name": row.name or ""}) from error
            if error.diag.constraint_name == "code_once":
                raise Refused("code_taken") from error
            raise SessionMovedOn(row.session_id, 0, 1) from error

    def _insert(self, rows: Sequence[EventRow]) -> None:
        for row in rows:
            try:
                self._run(INSERT_EVENT, *row[:8], self._bytes(row.message_id), *row[9:12])
            except errors.UniqueViolation as error:
                raise _refused(error, row) from error
            if row.text is not None:
                self._run(INSERT_TEXT, row.session_id, row.sequence, self._bytes(row.text))

    def _erase_by(self, deletions: Sequence[str], session_id: str) -> None:
        def remove() -> None:
            if not self._select(LOCK_SESSION, session_id):
                raise SessionUnknown(session_id)
            self._delete(deletions, session_id)

        self._transact(remove, lambda: not self._select(SELECT_SESSION, session_id))
        self.sweep()

    def _delete(self, deletions: Sequence[str], session_id: str) -> None:
        for deletion in deletions:
            self._run(deletion, session_id)

    def _transact(self, work: Callable[[], None], done: Callable[[], bool], *, again: bool = True) -> None:
        """Do all of the work or nothing. Where the connection is lost on the way it is looked on a new one whether it
        is `done`, and if not it is done again, or given up with what was the matter.
        """
        with self._lock:
            for losses in range(MOST_LOSSES):
                try:
                    with self._answered() if again else nullcontext(), self._open().transaction(), self._within():
                        work()
                except SessionMovedOn:
                    if losses and done():  # by the very call whose answer never came
                        return
                    raise
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
    def _answered(self) -> Iterator[None]:
        """Inside a transaction it is the transaction that has to be answered in time."""
        if self._inside:
            yield
            return
        with cut_off_after(self._open(), self._answer_seconds):
            yield

    @contextmanager
    def _within(self) -> Iterator[None]:
        self._inside = True
        try:
            yield
        finally:
            self._inside = False

    def _select(self, sql: str, *values: Value) -> list[tuple[Any, ...]]:
        """The rows; none where a value is nothing that any store keeps."""
        if not all(map(_is_kept, values)):
            return []
        with self._lock:
            for _ in range(MOST_LOSSES):
                try:
                    with self._answered():
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

    def _run(self, sql: str, *values: Value) -> psycopg.Cursor[tuple[Any, ...]]:
        return self._open().execute(sql.replace("?", "%s"), values)

    def _open(self) -> Connection:
        if self._closed:
            raise StoreUnreadable(self._where, "closed")
        return self._connection

    def _renew(self) -> None:
        self._connection.close()
        self._connection = open_connection(self._url, self._where, self._busy_seconds, self._answer_seconds)

    def _bytes(self, text: str | None) -> bytes | None:
        return None if text is None else self._kept(text)

    def _kept(self, typed: str) -> bytes:
        return typed.encode("utf-8", "surrogatepass")

    def _text(self, kept: bytes | None) -> str | None:
        return None if kept is None else kept.decode("utf-8", "surrogatepass")

    def _holds(self, rows: Sequence[EventRow]) -> bool:
        """Whether these very events are there: each id is a random number of its own."""
        return bool(rows) and self._select(SELECT_ALREADY, rows[-1].event_id) == [
            (rows[-1].session_id, rows[-1].sequence)
        ]


def _refused(error: errors.UniqueViolation, row: EventRow) -> Exception:
    constraint = error.diag.constraint_name
    if constraint == "event_once":
        return Refused("event_repeated", {"event_id": row.event_id})
    if constraint == "message_once":
        return Refused("message_repeated", {"message_id": row.message_id or ""})
    return error


def _is_kept(value: Value) -> bool:
    """Whether a row may hold the value: a text with lone surrogates or the character with number 0 is in none."""
    if not isinstance(value, str):
        return True
    return "\0" not in value and not any("\ud800" <= char <= "\udfff" for char in value)

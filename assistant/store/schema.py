"""The tables of the store's file, and the steps that bring an older file up to date."""

import sqlite3
from collections.abc import Sequence
from pathlib import Path

from assistant.errors import StoreUnreadable

APPLICATION_ID = 0x4F76_656E
"""Marks the file as this program's own, in the place SQLite has for it."""

Step = Sequence[str]

FIRST_TABLES: Step = (
    """
    CREATE TABLE sessions (
        number INTEGER PRIMARY KEY,
        session_id TEXT NOT NULL UNIQUE,
        code_hash TEXT NOT NULL UNIQUE,
        name TEXT UNIQUE,
        created_at TEXT NOT NULL
    )
    """,
    """
    CREATE TABLE events (
        session_id TEXT NOT NULL REFERENCES sessions (session_id),
        sequence INTEGER NOT NULL CHECK (sequence >= 1),
        event_id TEXT NOT NULL UNIQUE,
        schema_version INTEGER NOT NULL,
        rules_fingerprint TEXT NOT NULL,
        recorded_at TEXT NOT NULL,
        actor TEXT NOT NULL,
        role TEXT NOT NULL,
        message_id TEXT,
        opens_message INTEGER NOT NULL,
        type TEXT NOT NULL,
        payload TEXT NOT NULL,
        PRIMARY KEY (session_id, sequence)
    ) WITHOUT ROWID
    """,
    """
    CREATE UNIQUE INDEX opening_of_message ON events (session_id, message_id)
    WHERE opens_message AND message_id IS NOT NULL
    """,
    """
    CREATE TABLE texts (
        session_id TEXT NOT NULL,
        sequence INTEGER NOT NULL,
        text TEXT NOT NULL,
        PRIMARY KEY (session_id, sequence),
        FOREIGN KEY (session_id, sequence) REFERENCES events (session_id, sequence)
    ) WITHOUT ROWID
    """,
    # A row for every erasure whose traces may still be in the files.
    "CREATE TABLE sweeps_due (number INTEGER PRIMARY KEY)",
)

SHORT_WAYS: Step = (
    "CREATE INDEX latest_created ON sessions (created_at DESC, number DESC)",
    "CREATE INDEX events_by_kind ON events (type, recorded_at, session_id, sequence)",
)
"""Sessions are listed, and events of one kind gathered, without reading all there are."""

FINGERPRINTS: Step = ("ALTER TABLE sessions ADD COLUMN fingerprint TEXT",)
"""Of sessions that are there already none is known until they go on."""

FAILED_TRIES: Step = ("CREATE TABLE failed_tries (number INTEGER PRIMARY KEY, tried_at TEXT NOT NULL)",)
"""When codes were tried that no session has."""

STEPS: tuple[Step, ...] = (FIRST_TABLES, SHORT_WAYS, FINGERPRINTS, FAILED_TRIES)
"""Step n brings a file from version n to n + 1. Steps are only ever added, never changed."""


def refuse_unknown(connection: sqlite3.Connection, path: Path, steps: Sequence[Step] = STEPS) -> int:
    """The version of the file, 0 for an empty one; nothing is written.

    Raises StoreUnreadable for a file of another program, or of a later version of this one.
    """
    version, application_id, tables = _marks(connection)
    empty = (version, application_id, tables) == (0, 0, 0)
    if application_id != APPLICATION_ID and not empty:
        raise StoreUnreadable(str(path), "another_program")
    if version > len(steps):
        raise StoreUnreadable(str(path), "later_version", f"{version} > {len(steps)}")
    return version


def _marks(connection: sqlite3.Connection) -> tuple[int, int, int]:
    """The version, the application's id and the number of tables, all of one moment.

    Another program may be making the file just now: read one by one, they could be half before and half after.
    """
    own = not connection.in_transaction
    if own:
        connection.execute("BEGIN")
    try:
        version, application_id, tables = (
            int(connection.execute(question).fetchone()[0])
            for question in ("PRAGMA user_version", "PRAGMA application_id", "SELECT count(*) FROM sqlite_schema")
        )
    finally:
        if own and connection.in_transaction:
            connection.execute("COMMIT")
    return version, application_id, tables


def migrate(connection: sqlite3.Connection, path: Path, steps: Sequence[Step] = STEPS) -> None:
    """Take every step the file lacks, all or nothing. Raises as `refuse_unknown`, and sqlite3.Error."""
    if refuse_unknown(connection, path, steps) == len(steps):
        return
    try:
        connection.execute("BEGIN IMMEDIATE")
        version = refuse_unknown(connection, path, steps)  # another program may have been quicker
        for step in steps[version:]:
            for statement in step:
                connection.execute(statement)
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute(f"PRAGMA user_version = {len(steps)}")
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise

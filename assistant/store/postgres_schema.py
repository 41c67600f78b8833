"""The tables of a shared store in PostgreSQL, and the steps that bring older ones up to date.

They stand in a schema of their own, so that the database may serve other programs too. Times are texts as everywhere
in the stores. What people or their programs type is kept as bytes in UTF-8, for a text of the server can't hold the
character with number 0; it is looked up by its SHA-256, for an index can't hold a long one.
"""

from collections.abc import Sequence
from typing import Any

import psycopg

from assistant.errors import StoreUnreadable

SCHEMA = "ovenside"
ONE_AT_A_TIME = 0x4F76_656E
"""The advisory lock that programs take turns with when they bring the tables up to date."""

Step = Sequence[str]

FIRST_TABLES: Step = (
    """
    CREATE TABLE sessions (
        number bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
        session_id text COLLATE "C" NOT NULL CONSTRAINT session_once UNIQUE,
        code_hash text COLLATE "C" NOT NULL CONSTRAINT code_once UNIQUE,
        name bytea,
        created_at text COLLATE "C" NOT NULL,
        fingerprint text NOT NULL
    )
    """,
    "CREATE UNIQUE INDEX name_once ON sessions (sha256(name))",
    "CREATE INDEX latest_created ON sessions (created_at DESC, number DESC)",
    """
    CREATE TABLE events (
        session_id text COLLATE "C" NOT NULL REFERENCES sessions (session_id),
        sequence integer NOT NULL CHECK (sequence >= 1),
        event_id text COLLATE "C" NOT NULL CONSTRAINT event_once UNIQUE,
        schema_version integer NOT NULL,
        rules_fingerprint text NOT NULL,
        recorded_at text COLLATE "C" NOT NULL,
        actor text NOT NULL,
        role text NOT NULL,
        message_id bytea,
        opens_message boolean NOT NULL,
        type text COLLATE "C" NOT NULL,
        payload text NOT NULL,
        CONSTRAINT sequence_once PRIMARY KEY (session_id, sequence)
    )
    """,
    """
    CREATE UNIQUE INDEX message_once ON events (session_id, sha256(message_id))
    WHERE opens_message AND message_id IS NOT NULL
    """,
    "CREATE INDEX events_by_kind ON events (type, recorded_at, session_id, sequence)",
    """
    CREATE TABLE texts (
        session_id text COLLATE "C" NOT NULL,
        sequence integer NOT NULL,
        text bytea NOT NULL,
        PRIMARY KEY (session_id, sequence),
        FOREIGN KEY (session_id, sequence) REFERENCES events (session_id, sequence)
    )
    """,
)

FAILED_TRIES: Step = (
    """
    CREATE TABLE failed_tries (
        number bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
        place text NOT NULL,
        tried_at text COLLATE "C" NOT NULL
    )
    """,
    "CREATE INDEX tries_of_place ON failed_tries (place, tried_at)",
)
"""When codes were tried that no session has, and from which address."""

STEPS: tuple[Step, ...] = (FIRST_TABLES, FAILED_TRIES)
"""Step n brings the tables from version n to n + 1. Steps are only ever added, never changed."""


def migrate(connection: psycopg.Connection[tuple[Any, ...]], where: str, steps: Sequence[Step] = STEPS) -> None:
    """Take every step the tables lack, all or nothing.

    Raises StoreUnreadable for tables of a later version of this program, and psycopg.Error.
    """
    if _version(connection, where, steps) == len(steps):
        return
    with connection.transaction():
        connection.execute("SELECT pg_advisory_xact_lock(%s)", [ONE_AT_A_TIME])
        version = _version(connection, where, steps)  # another program may have been quicker
        if version == 0:
            connection.execute(f"CREATE SCHEMA IF NOT EXISTS {SCHEMA}")
            connection.execute("CREATE TABLE IF NOT EXISTS version (steps_taken integer NOT NULL)")
            connection.execute("INSERT INTO version SELECT 0 WHERE NOT EXISTS (SELECT FROM version)")
        for step in steps[version:]:
            for statement in step:
                connection.execute(statement)
        connection.execute("UPDATE version SET steps_taken = %s", [len(steps)])


def _version(connection: psycopg.Connection[tuple[Any, ...]], where: str, steps: Sequence[Step]) -> int:
    found = connection.execute("SELECT to_regclass(%s) IS NOT NULL", [f"{SCHEMA}.version"]).fetchone()
    if found is None or not found[0]:
        return 0
    row = connection.execute("SELECT steps_taken FROM version").fetchone()
    version = row[0] if row is not None and isinstance(row[0], int) else 0
    if version > len(steps):
        raise StoreUnreadable(where, "later_version", f"{version} > {len(steps)}")
    return version

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from assistant.errors import StoreUnreadable
from assistant.store.rows import rows_of, session_row_of
from assistant.store.schema import APPLICATION_ID, STEPS, migrate, refuse_unknown
from assistant.store.sql_log import INSERT_EVENT
from assistant.store.sqlite import SqliteStore
from tests.store.samples import event, record, started

PLACE = Path("somewhere")
LISTED = ("SCAN sessions USING INDEX latest_created", "SCAN listed", "SCAN (subquery-1)")
"""A scan along an index that ends with the limit, and of what it gave."""
NEXT = ("ALTER TABLE sessions ADD COLUMN colour TEXT", "UPDATE sessions SET colour = 'blue'")
BROKEN = ("ALTER TABLE sessions ADD COLUMN size TEXT", "UPDATE nothing SET size = 'big'")


@pytest.fixture
def connection(path: Path) -> Iterator[sqlite3.Connection]:
    with closing(SqliteStore(path)) as store:
        started(store)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        yield connection


def _columns(connection: sqlite3.Connection) -> list[str]:
    return [row[1] for row in connection.execute("PRAGMA table_info (sessions)")]


def test_a_new_file_gets_every_step_and_the_programs_mark() -> None:
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as connection:
        assert refuse_unknown(connection, PLACE) == 0
        migrate(connection, PLACE)
        assert refuse_unknown(connection, PLACE) == len(STEPS)
        assert connection.execute("PRAGMA application_id").fetchone() == (APPLICATION_ID,)


def test_an_older_file_takes_the_steps_it_lacks_and_keeps_its_rows(connection: sqlite3.Connection) -> None:
    migrate(connection, PLACE, (*STEPS, NEXT))
    assert refuse_unknown(connection, PLACE, (*STEPS, NEXT)) == len(STEPS) + 1
    assert connection.execute("SELECT colour FROM sessions").fetchall() == [("blue",)]


def test_a_file_of_the_first_version_is_brought_up_to_date_when_it_is_opened(path: Path) -> None:
    path.parent.mkdir(mode=0o700)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        migrate(connection, PLACE, STEPS[:1])
        session = record()
        connection.execute("INSERT INTO sessions VALUES (NULL, ?, ?, ?, ?)", session_row_of(session))
        [row] = rows_of(session.session_id, 0, [event(session.session_id, 1)])
        connection.execute(INSERT_EVENT, row[:-1])
    with closing(SqliteStore(path)) as store:
        store.append(session.session_id, 1, [event(session.session_id, 2)])
        assert [each.sequence for each in store.read(session.session_id)] == [1, 2]
        assert store.kept_fingerprint(session.session_id) == store.reckoned_fingerprint(session.session_id)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        assert refuse_unknown(connection, PLACE) == len(STEPS)


def test_a_step_is_taken_once(connection: sqlite3.Connection) -> None:
    for _ in range(2):
        migrate(connection, PLACE, (*STEPS, NEXT))
    assert _columns(connection).count("colour") == 1


def test_a_step_that_fails_leaves_the_file_as_it_was(connection: sqlite3.Connection) -> None:
    before = _columns(connection)
    with pytest.raises(sqlite3.OperationalError):
        migrate(connection, PLACE, (*STEPS, NEXT, BROKEN))
    assert not connection.in_transaction
    assert _columns(connection) == before
    assert refuse_unknown(connection, PLACE) == len(STEPS)


def test_the_program_of_before_refuses_the_file_of_after(connection: sqlite3.Connection) -> None:
    migrate(connection, PLACE, (*STEPS, NEXT))
    with pytest.raises(StoreUnreadable, match="later_version"):
        migrate(connection, PLACE)


@pytest.mark.parametrize("column", ["session_id", "code_hash", "name"])
def test_sessions_are_unique_by_the_database_too(connection: sqlite3.Connection, column: str) -> None:
    values = {"session_id": "'s'", "code_hash": "'c'", "name": "'n'", "created_at": "''"}
    insert = "INSERT INTO sessions (session_id, code_hash, name, created_at) VALUES ({})"
    connection.execute(insert.format(", ".join(values.values())))
    others = {key: value if key == column else f"'other {key}'" for key, value in values.items()}
    with pytest.raises(sqlite3.IntegrityError, match=column):
        connection.execute(insert.format(", ".join(others.values())))


@pytest.mark.parametrize(
    ("change", "clash"),
    [
        ("sequence = 1", "events.sequence"),
        ("event_id = (SELECT event_id FROM events WHERE sequence = 1)", "events.event_id"),
        ("message_id = 'm'", "events.message_id"),
        ("session_id = 'nobody'", "FOREIGN KEY"),
    ],
)
def test_events_are_unique_by_the_database_too(connection: sqlite3.Connection, change: str, clash: str) -> None:
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("UPDATE events SET message_id = 'm', opens_message = 1")
    connection.execute(
        """
        INSERT INTO events SELECT session_id, 2, 'other', schema_version, rules_fingerprint, recorded_at,
            actor, role, 'other', 1, type, payload FROM events
        """
    )
    with pytest.raises(sqlite3.IntegrityError, match=clash):
        connection.execute(f"UPDATE events SET {change} WHERE sequence = 2")  # noqa: S608


def test_looking_for_an_event_or_message_never_reads_the_whole_table(connection: sqlite3.Connection) -> None:
    from assistant.store import sql_log as statements

    for sql, values in (
        (SqliteStore.SELECT_MESSAGE, ("s", "m")),
        (statements.SELECT_LAST_SEQUENCE, ("s",)),
        (statements.SELECT_EVENTS, ("s",)),
        (statements.SELECT_BY_CODE, ("c",)),
        (SqliteStore.SELECT_BY_NAME, ("n",)),
        (statements.SELECT_KIND, ("OutcomeRecorded",)),
        (SqliteStore.SELECT_SUMMARIES, ("OutcomeRecorded", "InterviewFinished", 50)),
    ):
        plan = [row[3] for row in connection.execute(f"EXPLAIN QUERY PLAN {sql}", values)]
        assert plan
        assert not [line for line in plan if line.startswith("SCAN") and line not in LISTED]


class _Overtaken(sqlite3.Connection):
    """Between the looks of this connection at a new file, another program makes its tables."""

    other: sqlite3.Connection | None = None

    def execute(self, sql: str, *parameters: object) -> sqlite3.Cursor:
        if "sqlite_schema" in sql and self.other is not None:
            other, self.other = self.other, None
            migrate(other, PLACE)
        return super().execute(sql, *parameters)


def test_a_file_that_another_program_is_just_making_is_not_taken_for_a_strangers(tmp_path: Path) -> None:
    file = tmp_path / "new.db"
    with (
        closing(sqlite3.connect(file, isolation_level=None)) as other,
        closing(sqlite3.connect(file, isolation_level=None, factory=_Overtaken)) as connection,
    ):
        other.execute("PRAGMA journal_mode = WAL")
        connection.other = other
        assert refuse_unknown(connection, PLACE) == 0
        assert connection.other is None
        assert refuse_unknown(connection, PLACE) == len(STEPS)

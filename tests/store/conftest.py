import os
from collections.abc import Callable, Iterator
from pathlib import Path

import psycopg
import pytest
from psycopg import conninfo

from assistant.interview.log import EventLog
from assistant.store.memory import MemoryStore
from assistant.store.postgres import PostgresStore
from assistant.store.sqlite import SqliteStore

Opening = Callable[[], EventLog]
SERVER = "OVENSIDE_TEST_SERVER"
"""Names the server on which the tests may make databases of their own."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kept" / "sessions.db"


@pytest.fixture(params=["memory", "sqlite", "postgres"])
def opening(request: pytest.FixtureRequest, path: Path) -> Iterator[Opening]:
    """Opens the same log again and again: one more connection, or the one there is in memory."""
    opened: list[EventLog] = []
    memory = MemoryStore()
    server = request.getfixturevalue("empty_server") if request.param == "postgres" else ""

    def opened_once_more() -> EventLog:
        if request.param == "memory":
            opened.append(memory)
        else:
            opened.append(SqliteStore(path) if request.param == "sqlite" else PostgresStore(server))
        return opened[-1]

    yield opened_once_more
    for log in opened:
        log.close()


@pytest.fixture
def log(opening: Opening) -> EventLog:
    return opening()


@pytest.fixture
def sqlite_store(path: Path) -> Iterator[SqliteStore]:
    store = SqliteStore(path, busy_seconds=0.05)
    yield store
    store.close()


@pytest.fixture(scope="session")
def own_database() -> Iterator[str]:
    """A database of this process's own on the server of the tests; what needs one is left out where none is told of."""
    server = os.environ.get(SERVER)
    if not server:
        pytest.skip(f"{SERVER} names no server")
    name = f"ovenside_{os.getpid()}"
    with psycopg.connect(server, autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}"')
        try:
            yield conninfo.make_conninfo(server, dbname=name)
        finally:
            connection.execute(f'DROP DATABASE "{name}" WITH (FORCE)')


@pytest.fixture
def empty_server(own_database: str) -> str:
    """The URL of a shared store without any table yet."""
    with psycopg.connect(own_database, autocommit=True) as connection:
        connection.execute("DROP SCHEMA IF EXISTS ovenside CASCADE")
    told = conninfo.conninfo_to_dict(own_database)
    return f"postgresql://{told.get('user', '')}@{told['host']}:{told.get('port', 5432)}/{told['dbname']}"

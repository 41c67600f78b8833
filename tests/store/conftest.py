from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from assistant.interview.log import EventLog
from assistant.store.memory import MemoryStore
from assistant.store.postgres import PostgresStore
from assistant.store.sqlite import SqliteStore

Opening = Callable[[], EventLog]


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

"""A store that fails at the desk: each time a plain sentence, an exit status, and nothing lost."""

import io
import re
import socket
import sqlite3
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from datetime import timedelta
from pathlib import Path

import psycopg
import pytest
from psycopg import conninfo

from assistant import cli
from assistant.desk.begin import StoredCalls
from assistant.desk.desk import Desk
from assistant.desk.panels import left_behind
from assistant.errors import StoreUnreadable
from assistant.interview.script import Script
from assistant.store.memory import MemoryStore
from assistant.store.postgres import PostgresStore
from assistant.store.sqlite import SqliteStore
from assistant.wording.languages import Languages
from tests.desk.conftest import typed
from tests.desk.test_desk import WELL
from tests.store.samples import NOON, started


def _said(desk: Desk) -> str:
    return " ".join(each.text for each in desk.notices)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "sessions.db"


@contextmanager
def full(store: SqliteStore, path: Path) -> Iterator[None]:
    """The database may take no more pages (https://www.sqlite.org/pragma.html#pragma_max_page_count)."""
    connection = store._connection
    [(pages,)] = connection.execute("PRAGMA page_count").fetchall()
    connection.execute(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(StoreUnreadable, match="disk_full"):
        _fill(store)
    yield
    connection.execute("PRAGMA max_page_count = 1000000")


def _fill(store: SqliteStore) -> None:
    while True:
        started(store)


@contextmanager
def read_only(store: SqliteStore, path: Path) -> Iterator[None]:
    """Writing is refused with SQLITE_READONLY (https://www.sqlite.org/pragma.html#pragma_query_only)."""
    store._connection.execute("PRAGMA query_only = ON")
    yield
    store._connection.execute("PRAGMA query_only = OFF")


@contextmanager
def locked(store: SqliteStore, path: Path) -> Iterator[None]:
    """Another program writes for longer than the desk waits."""
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield
        other.execute("ROLLBACK")


@pytest.mark.parametrize("failing", [full, read_only, locked])
def test_what_a_failing_file_does_not_take_waits_at_the_desk_and_is_saved_later(
    script: Script,
    languages: Languages,
    path: Path,
    failing: Callable[[SqliteStore, Path], "contextmanager[None]"],  # type: ignore[valid-type]
) -> None:
    with closing(SqliteStore(path, busy_seconds=0.05)) as store:
        calls = StoredCalls(script, store, languages, "en-GB", "en-GB", "great_britain")
        desk = Desk(calls, languages.sentences("en-GB", "great_britain"))
        call = typed(desk, *WELL)
        kept = store.last_sequence(call.conversation.record.session_id)
        with failing(store, path):
            typed(desk, "5", ".note " + "a long story. " * 30)
            assert "not saved yet" in _said(desk)
            desk.take(".leave")
            assert ".leave all leaves it behind" in _said(desk)
            assert "could not be saved" in left_behind(desk)[0].text
            assert store.last_sequence(call.conversation.record.session_id) == kept
        typed(desk, ".save")
        assert "Everything is saved" in _said(desk)
        assert left_behind(desk) == []
        with closing(SqliteStore(path)) as again:
            told = again.read(call.conversation.record.session_id)
        assert [event.sequence for event in told] == list(range(1, call.conversation.state.sequence + 1))


@pytest.fixture
def away(empty_server: str) -> Iterator[Callable[[bool], None]]:
    """Lets nobody into the database any more and breaks every connection to it off; or lets them in again."""
    name = empty_server.rpartition("/")[2]
    server = empty_server.rpartition("/")[0] + "/postgres"

    def switch(gone: bool) -> None:
        with psycopg.connect(server, autocommit=True) as connection:
            connection.execute(f'ALTER DATABASE "{name}" WITH ALLOW_CONNECTIONS {str(not gone).lower()}')
            if gone:
                connection.execute("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = %s", [name])

    yield switch
    switch(False)


def test_a_server_gone_in_the_middle_of_a_call_is_said_and_what_was_typed_is_there_when_it_is_back(
    script: Script, languages: Languages, empty_server: str, away: Callable[[bool], None]
) -> None:
    with closing(PostgresStore(empty_server, busy_seconds=0.05)) as store:
        calls = StoredCalls(script, store, languages, "en-GB", "en-GB", "great_britain", pause_s=0)
        desk = Desk(calls, languages.sentences("en-GB", "great_britain"))
        call = typed(desk, *WELL)
        away(True)
        typed(desk, "5")
        assert "not saved yet" in _said(desk)
        desk.take(".take 7K3M-QX8D-0ZRT-5WAB")
        assert "The store can't be used" in _said(desk)
        away(False)
        typed(desk, "2")
        assert not call.conversation.unsaved
        told = store.read(call.conversation.record.session_id)
        assert [event.sequence for event in told] == list(range(1, call.conversation.state.sequence + 1))


@pytest.mark.parametrize("place", ["not_a_database", "a_folder", "nobody_there"])
def test_a_store_that_cannot_be_opened_is_said_in_a_sentence_with_status_1(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], place: str
) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO(".new\n"))
    (tmp_path / "not_a_database").write_bytes(b"something else, and long enough to be looked at " * 40)
    (tmp_path / "a_folder").mkdir()
    store = str(tmp_path / place) if place != "nobody_there" else "postgresql://ovenside@127.0.0.1:9/ovens"
    monkeypatch.setattr("assistant.desk.begin.BUSY_SECONDS", 0.05)
    assert cli.run(["desk", "--plain", "--store", store]) == 1
    told = capsys.readouterr()
    assert "can't be used" in told.err
    assert "Traceback" not in told.out + told.err


def test_what_was_left_unsaved_is_said_at_the_end_with_status_1(
    path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    SqliteStore(path).close()
    monkeypatch.setattr("assistant.desk.begin.BUSY_SECONDS", 0.05)
    monkeypatch.setattr(sys, "stdin", io.StringIO(".new\nnobody\n.leave\n.leave all\n"))

    class Locked(SqliteStore):
        def __init__(self, *arguments: object) -> None:
            super().__init__(*arguments)  # type: ignore[arg-type]
            self._connection.execute("PRAGMA query_only = ON")

    monkeypatch.setattr("assistant.store.sqlite.SqliteStore", Locked)
    assert cli.run(["desk", "--plain", "--store", str(path)]) == 1
    assert "could not be saved" in capsys.readouterr().out


def test_a_clock_that_goes_back_is_said_once_and_the_order_is_kept(script: Script, languages: Languages) -> None:
    log, clock = MemoryStore(), [NOON]
    calls = StoredCalls(script, log, languages, "en-GB", "en-GB", "great_britain", lambda: clock[0])
    desk = Desk(calls, languages.sentences("en-GB", "great_britain"))
    call = typed(desk, ".new", "nobody", "none of these", "Ada")
    said = []
    for line, hours in (("0700", 0), ("none of these", -2), ("5", -2), ("2", 1), ("1", -1)):
        clock[0] = NOON + timedelta(hours=hours)
        typed(desk, line)
        said.append("went back: it stands 120 minutes before" in _said(desk))
    assert said == [False, True, False, False, True]
    told = log.read(call.conversation.record.session_id)
    assert [event.sequence for event in told] == list(range(1, len(told) + 1))


def test_a_server_that_hangs_keeps_nobody_waiting_and_danger_is_told(
    script: Script, languages: Languages, empty_server: str
) -> None:
    told = conninfo.conninfo_to_dict(empty_server)
    with wire_to(str(told["host"]), int(told["port"] or 0)) as (port, hangs):
        url = f"postgresql://ovenside@127.0.0.1:{port}/{told['dbname']}"
        with closing(PostgresStore(url, busy_seconds=0.05, answer_seconds=0.3)) as store:
            calls = StoredCalls(script, store, languages, "en-GB", "en-GB", "great_britain", pause_s=60)
            desk = Desk(calls, languages.sentences("en-GB", "great_britain"))
            call = typed(desk, *WELL)
            hangs.set()
            typed(desk, "there are sparks")
            assert call.conversation.assessment.danger.open
            assert "not saved yet" in _said(desk)
            hangs.clear()
            typed(desk, "yes now", ".save")
            assert "Everything is saved" in _said(desk)
            kept = store.read(call.conversation.record.session_id)
            assert [event.sequence for event in kept] == list(range(1, call.conversation.state.sequence + 1))


@contextmanager
def wire_to(host: str, port: int) -> Iterator[tuple[int, threading.Event]]:
    """A port that passes on to the server what it is sent, and back; nothing at all while the event is set."""
    hangs, over = threading.Event(), threading.Event()
    with socket.create_server(("127.0.0.1", 0)) as listening:

        def pass_on(one: socket.socket, other: socket.socket) -> None:
            with one, other, suppress(OSError):
                while sent := one.recv(65536):
                    while hangs.is_set() and not over.is_set():
                        time.sleep(0.01)
                    other.sendall(sent)

        def accept() -> None:
            with suppress(OSError):
                while True:
                    client, _ = listening.accept()
                    server = socket.create_connection((host, port))
                    for each in ((client, server), (server, client)):
                        threading.Thread(target=pass_on, args=each, daemon=True).start()

        threading.Thread(target=accept, daemon=True).start()
        yield listening.getsockname()[1], hangs
        over.set()


def test_a_store_that_failed_is_left_alone_for_a_while(script: Script, languages: Languages, path: Path) -> None:
    with closing(SqliteStore(path, busy_seconds=0.05)) as store:
        calls = StoredCalls(script, store, languages, "en-GB", "en-GB", "great_britain", pause_s=60)
        desk = Desk(calls, languages.sentences("en-GB", "great_britain"))
        call = typed(desk, *WELL)
        with read_only(store, path):
            typed(desk, "5")
        typed(desk, "2")
        assert len(call.conversation.unsaved) == 2
        typed(desk, ".save")
        assert not call.conversation.unsaved


@pytest.mark.parametrize("ended", [KeyboardInterrupt, None])
def test_whoever_is_ended_from_outside_is_told_the_codes_and_nothing_is_left_behind(
    path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], ended: type[BaseException] | None
) -> None:
    def lines() -> Iterator[str]:
        yield from (f"{line}\n" for line in WELL)
        if ended is not None:
            raise ended

    monkeypatch.setattr(
        sys, "stdin", type("Typed", (), {"__iter__": lambda self: lines(), "isatty": lambda self: False})()
    )
    assert cli.run(["desk", "--plain", "--store", str(path)]) == (130 if ended else 0)
    told = capsys.readouterr().out
    (code,) = re.findall(r"([0-9A-Z-]{19})  Ada", told)
    with closing(SqliteStore(path)) as store:
        assert store.last_sequence(store.find_by_code(code).session_id) >= len(WELL) - 1

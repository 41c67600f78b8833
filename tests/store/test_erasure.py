"""What is erased is in none of the files any more."""

import os
import random
import sqlite3
import subprocess
import sys
from contextlib import closing, suppress
from datetime import timedelta
from pathlib import Path
from threading import Thread

import pytest

from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.log import SessionRecord
from assistant.store.rows import rows_of
from assistant.store.sqlite import SqliteStore
from tests.interview.told import told
from tests.store.samples import NOON, event, started, text_event

SECRET = "the door was painted by Aunt Ödwine".encode()


def _traces(folder: Path, secret: bytes) -> int:
    return sum(file.read_bytes().count(secret) for file in folder.iterdir())


def _with_secret(store: SqliteStore, name: str | None = "name of Ödwine") -> SessionRecord:
    session = started(store, name=name)
    store.append(
        session.session_id,
        1,
        [text_event(session.session_id, 2, SECRET.decode(), message_id="message of Ödwine")],
    )
    return session


def test_an_erased_session_leaves_no_byte_in_the_files(path: Path, sqlite_store: SqliteStore) -> None:
    session = _with_secret(sqlite_store)
    marks = [SECRET, "Ödwine".encode(), session.session_id.encode(), session.code_hash.encode()]
    assert all(_traces(path.parent, mark) for mark in marks)
    sqlite_store.erase(session.session_id)
    assert [_traces(path.parent, mark) for mark in marks] == [0] * len(marks)
    sqlite_store.close()
    assert [_traces(path.parent, mark) for mark in marks] == [0] * len(marks)


def test_erased_text_leaves_no_byte_in_the_files(path: Path, sqlite_store: SqliteStore) -> None:
    session = _with_secret(sqlite_store)
    assert _traces(path.parent, SECRET)
    sqlite_store.erase_text(session.session_id)
    assert _traces(path.parent, SECRET) == 0
    assert len(sqlite_store.read(session.session_id)) == 2


def test_an_erased_session_leaves_no_byte_of_the_note_on_its_outcome(path: Path, sqlite_store: SqliteStore) -> None:
    session = started(sqlite_store)
    sqlite_store.append(session.session_id, 1, [event(session.session_id, 2, told(text=SECRET.decode()))])
    assert _traces(path.parent, SECRET)
    sqlite_store.erase(session.session_id)
    assert _traces(path.parent, SECRET) == 0


@pytest.mark.parametrize("seed", range(6))
def test_no_byte_is_left_where_pages_were_split_and_joined(path: Path, seed: int) -> None:
    chance = random.Random(seed)
    with closing(SqliteStore(path)) as store:
        sessions = [started(store) for _ in range(5)]
        sequences = dict.fromkeys(sessions, 1)
        for _ in range(120):
            session = chance.choice(sessions)
            text = f"mark of {session.session_id[:8]}" + "x" * chance.choice([3, 80, 700, 9000])
            sequence = sequences[session] = sequences[session] + 1
            store.append(session.session_id, sequence - 1, [text_event(session.session_id, sequence, text)])
            if chance.random() < 0.1:
                store._connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        marks = [f"mark of {session.session_id[:8]}".encode() for session in sessions]
        assert all(_traces(path.parent, mark) for mark in marks)
        store.erase(sessions[0].session_id)
        store.erase_text(sessions[1].session_id)
        assert [_traces(path.parent, mark) > 0 for mark in marks] == [False, False, True, True, True]


def test_text_that_could_not_be_committed_is_swept_out_too(path: Path, sqlite_store: SqliteStore) -> None:
    session = _with_secret(sqlite_store)
    sqlite_store._connection.execute("PRAGMA cache_size = 1")  # makes a transaction spill into the log
    batch = [text_event(session.session_id, n, SECRET.decode() * 400) for n in range(3, 10)]
    with suppress(ArithmeticError), sqlite_store._writing():
        sqlite_store._insert(rows_of(session.session_id, 2, batch))
        raise ArithmeticError
    assert len(sqlite_store.read(session.session_id)) == 2
    assert _traces(path.parent, SECRET) > 100
    sqlite_store.erase_text(session.session_id)
    assert _traces(path.parent, SECRET) == 0


def test_an_erasure_that_cannot_be_finished_says_so_and_is_finished_by_the_next_opening(
    path: Path, sqlite_store: SqliteStore
) -> None:
    session, other = _with_secret(sqlite_store), started(sqlite_store)
    with closing(sqlite3.connect(path, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM sessions").fetchall()
        with pytest.raises(StoreUnreadable, match="traces_left"):
            sqlite_store.erase(session.session_id)
        with pytest.raises(SessionUnknown):
            sqlite_store.read(session.session_id)
        with closing(SqliteStore(path, busy_seconds=0.05)) as meanwhile:
            assert len(meanwhile.read(other.session_id)) == 1
        assert _traces(path.parent, SECRET)
        reader.execute("COMMIT")
    with closing(SqliteStore(path)):
        assert _traces(path.parent, SECRET) == 0
        assert sqlite_store._select("SELECT * FROM sweeps_due") == []


def test_an_erasure_leaves_the_file_sound_and_the_store_in_use(path: Path, sqlite_store: SqliteStore) -> None:
    session = _with_secret(sqlite_store)
    with closing(SqliteStore(path)) as other:
        kept = started(other)
        sqlite_store.erase(session.session_id)
        other.append(kept.session_id, 1, [event(kept.session_id, 2)])
        assert len(sqlite_store.read(kept.session_id)) == 2
    assert sqlite_store._select("PRAGMA integrity_check") == [("ok",)]
    assert sqlite_store._select("PRAGMA foreign_key_check") == []


def test_two_programs_that_erase_at_once_wait_for_each_other(path: Path) -> None:
    failures: list[Exception] = []

    def erase_some(store: SqliteStore) -> None:
        try:
            for _ in range(12):
                store.erase(_with_secret(store, name=None).session_id)
        except Exception as error:  # noqa: BLE001 - whatever it is, the test shows it
            failures.append(error)

    with closing(SqliteStore(path)) as one, closing(SqliteStore(path)) as other:
        threads = [Thread(target=erase_some, args=(store,)) for store in (one, other)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        assert failures == []
        assert one.sessions() == []
        assert _traces(path.parent, SECRET) == 0


@pytest.mark.skipif(os.name != "posix", reason="the lock is taken as SQLite does on POSIX systems")
def test_an_erasure_waits_for_a_program_that_is_emptying_the_write_ahead_log(path: Path) -> None:
    checkpoint_lock = 121  # the byte of the -shm file that whoever empties the log holds locked
    holding = (
        "import fcntl, sys, time; file = open(sys.argv[1], 'r+b');"
        f" fcntl.lockf(file, fcntl.LOCK_EX, 1, {checkpoint_lock}); print('held', flush=True); time.sleep(0.3)"
    )
    with closing(SqliteStore(path)) as store:
        session = _with_secret(store)
        shared = path.with_name(f"{path.name}-shm")
        command = [sys.executable, "-c", holding, str(shared)]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as other:
            assert other.stdout is not None
            assert other.stdout.readline() == "held\n"
            store.erase(session.session_id)
            assert other.wait() == 0
        assert _traces(path.parent, SECRET) == 0


def test_what_was_erased_at_once_is_swept_out_at_once(path: Path, sqlite_store: SqliteStore) -> None:
    sessions = [_with_secret(sqlite_store, name=f"name of Ödwine {n}") for n in range(5)]
    swept: list[str] = []
    sqlite_store._connection.set_trace_callback(lambda said: swept.append(said) if said == "VACUUM" else None)
    erased = sqlite_store.erase_untouched(NOON + timedelta(days=1), 9)
    assert erased == sorted(session.session_id for session in sessions)
    sqlite_store.sweep()
    assert swept == ["VACUUM"]
    assert _traces(path.parent, SECRET) == _traces(path.parent, "Ödwine".encode()) == 0


def test_what_was_erased_and_not_swept_is_swept_by_the_next_opening(path: Path, sqlite_store: SqliteStore) -> None:
    _with_secret(sqlite_store)
    sqlite_store.erase_untouched(NOON + timedelta(days=1), 9)
    with closing(SqliteStore(path)):
        assert _traces(path.parent, SECRET) == 0


def test_a_sweep_that_cannot_be_finished_says_so(path: Path, sqlite_store: SqliteStore) -> None:
    _with_secret(sqlite_store)
    with closing(sqlite3.connect(path, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM sessions").fetchall()
        sqlite_store.erase_untouched(NOON + timedelta(days=1), 9)
        with pytest.raises(StoreUnreadable, match="traces_left"):
            sqlite_store.sweep()
        reader.execute("COMMIT")
    sqlite_store.sweep()
    assert _traces(path.parent, SECRET) == 0


@pytest.mark.skipif(not Path("/proc/self/fd").is_dir(), reason="open files are told of as Linux does")
def test_a_sweep_copies_the_store_into_a_file_beside_it_and_not_into_memory(path: Path, tmp_path: Path) -> None:
    path = tmp_path / "it's kept" / "sessions.db"
    copies: set[str] = set()

    def look() -> int:
        for each in Path("/proc/self/fd").iterdir():
            with suppress(OSError):
                copies.add(str(each.readlink()))
        return 0

    with closing(SqliteStore(path)) as store:
        session = _with_secret(store)
        kept = started(store)
        store.append(kept.session_id, 1, [text_event(kept.session_id, n, "x" * 50_000) for n in range(2, 200)])
        store._connection.set_progress_handler(look, 20)
        store.erase(session.session_id)
        store._connection.set_progress_handler(None, 0)
        assert store._select("PRAGMA temp_store") == [(2,)]
    assert [each for each in copies if each.startswith(f"{path.parent}/") and "sessions.db" not in each]
    assert list(path.parent.iterdir()) == [path]


def test_a_session_without_any_entry_can_be_erased(path: Path, sqlite_store: SqliteStore) -> None:
    session = started(sqlite_store)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("DELETE FROM events")
    sqlite_store.erase(session.session_id)
    assert sqlite_store.ids_after("", 9) == []

"""What only a store with files can promise: privacy, plain failures, and files of other times."""

import os
import sqlite3
import stat
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from threading import Timer

import pytest

from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.events import OutcomeRecorded
from assistant.store.schema import FIRST_TABLES, STEPS, migrate
from assistant.store.sqlite import SqliteStore
from tests.interview.told import told
from tests.store.samples import event, started, text_event


@pytest.fixture
def bound_by_modes(tmp_path_factory: pytest.TempPathFactory) -> None:
    folder = tmp_path_factory.mktemp("readable")
    folder.chmod(0o500)
    try:
        (folder / "file").touch()
    except PermissionError:
        return
    pytest.skip("whoever runs this may write everywhere, whatever the modes say, as root may")


@contextmanager
def _umask(mask: int) -> Iterator[None]:
    before = os.umask(mask)
    try:
        yield
    finally:
        os.umask(before)


def _mode(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


def _beside(path: Path) -> list[Path]:
    return [path, path.with_name(f"{path.name}-wal"), path.with_name(f"{path.name}-shm")]


def _change(path: Path, *statements: str) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        for statement in statements:
            connection.execute(statement)


@pytest.mark.parametrize("mask", [0, 0o022, 0o777])
def test_files_and_new_folders_are_the_owners_alone_whatever_the_umask(tmp_path: Path, mask: int) -> None:
    path = tmp_path / "new" / "newer" / "sessions.db"
    with _umask(mask), closing(SqliteStore(path)) as store:
        session = started(store)
        assert [_mode(file) for file in _beside(path)] == [0o600] * 3
        assert [_mode(path.parent), _mode(path.parent.parent)] == [0o700] * 2
        store.erase_text(session.session_id)
        assert {_mode(file) for file in path.parent.iterdir()} == {0o600}


def test_a_folder_that_was_there_keeps_its_mode(tmp_path: Path) -> None:
    tmp_path.chmod(0o755)
    SqliteStore(tmp_path / "sessions.db").close()
    assert _mode(tmp_path) == 0o755
    assert _mode(tmp_path / "sessions.db") == 0o600


def test_a_file_left_open_to_others_is_closed_to_them(path: Path) -> None:
    SqliteStore(path).close()
    path.chmod(0o664)
    with closing(SqliteStore(path)):
        assert [_mode(file) for file in _beside(path)] == [0o600] * 3


def test_commits_are_synced_and_written_ahead(sqlite_store: SqliteStore) -> None:
    def pragma(name: str) -> object:
        return sqlite_store._connection.execute(f"PRAGMA {name}").fetchone()[0]

    full, on, memory = 2, 1, 2
    assert pragma("journal_mode") == "wal"
    assert pragma("synchronous") == full
    assert pragma("secure_delete") == on
    assert pragma("foreign_keys") == on
    assert pragma("temp_store") == memory


def test_the_log_outlives_the_store(path: Path) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store, name="kept")
        before = store.read(session.session_id)
    with closing(SqliteStore(path)) as store:
        assert store.read(session.session_id) == before
        assert store.find_by_name("kept") == session


def test_a_path_of_odd_characters_is_taken_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "50% off?mode=memory#1 печь" / ":memory:"
    with closing(SqliteStore(path)) as store:
        started(store)
    assert path.stat().st_size > 0
    assert sorted(tmp_path.iterdir()) == [path.parent]


def test_a_link_leads_to_the_file_it_names(tmp_path: Path) -> None:
    link, target = tmp_path / "link.db", tmp_path / "private" / "sessions.db"
    link.symlink_to(target)
    with closing(SqliteStore(link)) as store:
        started(store)
    assert link.is_symlink()
    assert _mode(target) == 0o600


def test_links_in_a_ring_are_refused_plainly(tmp_path: Path) -> None:
    (tmp_path / "a").symlink_to(tmp_path / "b")
    (tmp_path / "b").symlink_to(tmp_path / "a")
    with pytest.raises(StoreUnreadable):
        SqliteStore(tmp_path / "a")


def test_a_file_that_is_no_database_is_refused_and_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "notes.txt"
    path.write_text("buy flour\n" * 1000)
    path.chmod(0o644)
    before = path.read_bytes()
    with pytest.raises(StoreUnreadable) as caught:
        SqliteStore(path)
    assert (caught.value.where, caught.value.code) == (str(path), "not_a_database")
    assert (path.read_bytes(), _mode(path)) == (before, 0o644)
    assert list(tmp_path.iterdir()) == [path]


def test_a_folder_is_no_store(tmp_path: Path) -> None:
    with pytest.raises(StoreUnreadable, match="a_folder"):
        SqliteStore(tmp_path)


def test_a_database_of_another_program_is_refused_and_left_alone(tmp_path: Path) -> None:
    path = tmp_path / "recipes.db"
    _change(path, "CREATE TABLE recipes (name TEXT)")
    before = path.read_bytes()
    with pytest.raises(StoreUnreadable, match="another_program"):
        SqliteStore(path)
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


def test_a_file_of_a_later_version_is_refused_and_left_alone(path: Path) -> None:
    SqliteStore(path).close()
    _change(path, "PRAGMA user_version = 99")
    path.chmod(0o640)
    before = (path.read_bytes(), path.stat().st_mtime_ns, _mode(path))
    with pytest.raises(StoreUnreadable, match=f"later_version 99 > {len(STEPS)}"):
        SqliteStore(path)
    assert (path.read_bytes(), path.stat().st_mtime_ns, _mode(path)) == before
    assert list(path.parent.iterdir()) == [path]


def test_a_damaged_file_is_named_as_such(path: Path) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store)
    content = bytearray(path.read_bytes())
    content[4096:] = b"\xff" * (len(content) - 4096)
    path.write_bytes(content)
    with pytest.raises(StoreUnreadable, match="damaged"):
        SqliteStore(path).read(session.session_id)


@pytest.mark.parametrize(
    "change",
    [
        "type = 'DoorPainted'",
        "type = 'QuestionAnswered'",
        "payload = '{'",
        "payload = '[1]'",
        "payload = '{\"later\": 1}'",
        "schema_version = 2",
        "recorded_at = 'yesterday'",
        "recorded_at = 5",
    ],
)
def test_an_event_of_an_unknown_form_is_named_plainly(path: Path, change: str) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store)
        store.append(session.session_id, 1, [text_event(session.session_id, 2, "it hums")])
        _change(path, f"UPDATE events SET {change} WHERE sequence = 2")  # noqa: S608
        with pytest.raises(StoreUnreadable, match=f"event 2 of session {session.session_id}"):
            store.read(session.session_id)


def test_a_time_that_is_none_is_named_plainly(path: Path) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store)
        _change(path, "UPDATE sessions SET created_at = 'long ago'")
        for search in (store.find_by_id_prefix, lambda _: store.sessions()):
            with pytest.raises(StoreUnreadable, match="not_a_time 'long ago'"):
                search(session.session_id)


def test_a_full_disk_is_said_and_loses_nothing(sqlite_store: SqliteStore) -> None:
    session = started(sqlite_store)
    pages = sqlite_store._connection.execute("PRAGMA page_count").fetchone()[0]
    sqlite_store._connection.execute(f"PRAGMA max_page_count = {pages + 2}")
    before = sqlite_store.read(session.session_id)
    batch = [event(session.session_id, 2), text_event(session.session_id, 3, "x" * 50_000)]
    with pytest.raises(StoreUnreadable, match="disk_full"):
        sqlite_store.append(session.session_id, 1, batch)
    assert sqlite_store.read(session.session_id) == before
    sqlite_store._connection.execute("PRAGMA max_page_count = 100000")
    sqlite_store.append(session.session_id, 1, batch)
    assert sqlite_store.read(session.session_id) == (*before, *batch)


def test_a_store_locked_by_another_writer_is_said_and_works_afterwards(path: Path, sqlite_store: SqliteStore) -> None:
    session = started(sqlite_store)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreUnreadable, match="locked"):
            sqlite_store.append(session.session_id, 1, [event(session.session_id, 2)])
        assert len(sqlite_store.read(session.session_id)) == 1
        other.execute("ROLLBACK")
    sqlite_store.append(session.session_id, 1, [event(session.session_id, 2)])
    assert len(sqlite_store.read(session.session_id)) == 2


def test_a_file_locked_from_the_start_is_said(path: Path) -> None:
    path.parent.mkdir()
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(StoreUnreadable, match="locked"):
            SqliteStore(path, busy_seconds=0.05)


def test_a_store_that_may_only_be_read_says_so(sqlite_store: SqliteStore) -> None:
    session = started(sqlite_store)
    sqlite_store._connection.execute("PRAGMA query_only = ON")
    with pytest.raises(StoreUnreadable, match="read_only"):
        sqlite_store.append(session.session_id, 1, [event(session.session_id, 2)])
    sqlite_store._connection.execute("PRAGMA query_only = OFF")
    assert len(sqlite_store.read(session.session_id)) == 1


@pytest.mark.usefixtures("bound_by_modes")
def test_a_folder_that_may_only_be_read_holds_no_new_store(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    with pytest.raises(StoreUnreadable, match="Permission denied"):
        SqliteStore(tmp_path / "sessions.db")


@pytest.mark.usefixtures("bound_by_modes")
def test_a_store_in_a_folder_that_may_only_be_read_is_read_only(path: Path) -> None:
    SqliteStore(path).close()
    path.parent.chmod(0o500)
    try:
        with pytest.raises(StoreUnreadable, match="read_only"):
            SqliteStore(path)
    finally:
        path.parent.chmod(0o700)


@pytest.mark.usefixtures("bound_by_modes")
def test_a_file_that_may_only_be_read_stays_so(path: Path) -> None:
    SqliteStore(path).close()
    path.chmod(0o444)
    with pytest.raises(StoreUnreadable, match="read_only"), closing(SqliteStore(path)) as store:
        started(store)
    assert _mode(path) in (0o400, 0o444)


def test_a_folder_where_a_file_stands_is_said(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(StoreUnreadable) as caught:
        SqliteStore(tmp_path / "file" / "sessions.db")
    assert caught.value.where == str(tmp_path / "file" / "sessions.db")


def test_an_interrupted_append_never_was(sqlite_store: SqliteStore, monkeypatch: pytest.MonkeyPatch) -> None:
    session = started(sqlite_store)
    batch = [event(session.session_id, 2), event(session.session_id, 3)]
    insert = sqlite_store._insert

    def interrupted(rows: list[object]) -> None:
        insert(rows)  # type: ignore[arg-type]
        raise KeyboardInterrupt

    monkeypatch.setattr(sqlite_store, "_insert", interrupted)
    with pytest.raises(KeyboardInterrupt):
        sqlite_store.append(session.session_id, 1, batch)
    monkeypatch.undo()
    assert len(sqlite_store.read(session.session_id)) == 1
    sqlite_store.append(session.session_id, 1, batch)


def test_programs_that_open_a_new_store_at_once_all_succeed(path: Path) -> None:
    opening = (
        "import sys; from pathlib import Path; from assistant.store.sqlite import SqliteStore;"
        " sys.stdin.readline(); SqliteStore(Path(sys.argv[1])).close()"
    )
    programs = [
        subprocess.Popen(
            [sys.executable, "-c", opening, str(path)],
            stdin=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        for _ in range(6)
    ]
    for program in programs:
        assert program.stdin is not None
        program.stdin.write("go\n")
        program.stdin.flush()
    failures = [program.communicate()[1] for program in programs]
    assert failures == [""] * len(programs)
    with closing(SqliteStore(path)) as store, pytest.raises(SessionUnknown):
        store.read("nobody")


@pytest.mark.parametrize("begin", ["BEGIN", "BEGIN IMMEDIATE", "BEGIN EXCLUSIVE"])
def test_a_new_file_that_is_in_use_for_a_moment_is_waited_for(path: Path, begin: str) -> None:
    path.parent.mkdir()
    with closing(sqlite3.connect(path, isolation_level=None, check_same_thread=False)) as other:
        other.execute(begin)
        other.execute("SELECT count(*) FROM sqlite_schema").fetchall()
        release = Timer(0.2, other.execute, ["ROLLBACK"])
        release.start()
        SqliteStore(path).close()
        release.join()


def test_a_file_from_before_there_were_outcomes_takes_one(path: Path) -> None:
    """Its rows are written out here as they stood then."""
    path.parent.mkdir()
    with closing(sqlite3.connect(path, isolation_level=None)) as old:
        migrate(old, path, (FIRST_TABLES,))
        old.execute("INSERT INTO sessions VALUES (1, 'ab12', 'hash', NULL, '2025-11-05T09:00:00.000000+00:00')")
        for sequence, kind, payload in (
            (1, "SessionStarted", '{"region": "eu", "lang": "en", "cavity": "single"}'),
            (2, "InterviewFinished", "{}"),
        ):
            row = ("ab12", sequence, f"e{sequence}", 1, "f" * 64, "2025-11-05T09:00:00.000000+00:00", "owner", "owner")
            old.execute("INSERT INTO events VALUES (?, ?, ?, ?, ?, ?, ?, ?, NULL, 1, ?, ?)", (*row, kind, payload))
    with closing(SqliteStore(path)) as store:
        assert store.events_of(OutcomeRecorded) == ()
        store.append("ab12", 2, [event("ab12", 3, told())])
        assert store.events_of(OutcomeRecorded) == store.read("ab12")[2:]
        assert store.sessions()[0].finished

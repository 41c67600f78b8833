"""A backup, and its restoring."""

import io
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from assistant.authoring import store_copy
from assistant.authoring.session_file import FileUnusable
from assistant.authoring.store_copy import back_up, copy_all, refuse_unless_backup, restore
from assistant.errors import StoreUnreadable
from assistant.interview.events import Event
from assistant.interview.log import EventLog
from assistant.store.memory import MemoryStore
from assistant.store.sqlite import SqliteStore
from assistant.wording.sentences import Sentences
from tests.store.samples import event, started, text_event


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "sessions.db"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "copies" / "backup.db"


def _change(path: Path, statement: str) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(statement)


def _backed_up(log: EventLog, file: Path, sentences: Sentences) -> tuple[int, str]:
    out = io.StringIO()
    return back_up(log, file, sentences.wording, out), out.getvalue()


def _restored(file: Path, log: EventLog, sentences: Sentences) -> tuple[int, str]:
    out = io.StringIO()
    return restore(file, log, sentences.wording, out), out.getvalue()


def test_a_backup_holds_every_session_and_brings_it_back(path: Path, sentences: Sentences, tmp_path: Path) -> None:
    out = io.StringIO()
    with closing(SqliteStore(path)) as store, closing(SqliteStore(tmp_path / "copy.db")) as backup:
        made = [started(store) for _ in range(3)]
        store.append(made[0].session_id, 1, [text_event(made[0].session_id, 2, "it hums")])
        assert copy_all(store, backup, sentences.wording, out) == 0
        store.erase(made[0].session_id)
        store.append(made[1].session_id, 1, [event(made[1].session_id, 2)])
        assert copy_all(backup, store, sentences.wording, out) == 0
        assert len(store.read(made[0].session_id)) == 2
        assert len(store.read(made[1].session_id)) == 2
    assert out.getvalue() == (
        "3 sessions are there, of which 3 were new; 4 entries were new.\n"
        "3 sessions are there, of which one was new; 2 entries were new.\n"
    )


def test_a_session_that_differs_is_told_and_the_others_are_copied(sentences: Sentences) -> None:
    source, target, out = MemoryStore(), MemoryStore(), io.StringIO()
    first, second = started(source, name="kitchen"), started(source)
    started(target, name="kitchen")
    assert copy_all(source, target, sentences.wording, out) == 1
    assert f"Session {first.session_id[:8]}: another session has its name." in out.getvalue()
    assert target.read(second.session_id) == source.read(second.session_id)


def test_a_backup_is_one_file_for_its_owner_alone_that_can_be_restored(file: Path, sentences: Sentences) -> None:
    log, other = MemoryStore(), MemoryStore()
    made = [started(log) for _ in range(3)]
    assert _backed_up(log, file, sentences)[0] == 0
    assert list(file.parent.iterdir()) == [file]
    assert file.stat().st_mode & 0o077 == 0
    refuse_unless_backup(file)
    assert _restored(file, other, sentences)[0] == 0
    assert [other.read(each.session_id) for each in made] == [log.read(each.session_id) for each in made]
    assert list(file.parent.iterdir()) == [file]


def test_sessions_that_cannot_be_read_are_told_and_all_others_are_in_the_backup(
    path: Path, file: Path, sentences: Sentences
) -> None:
    with closing(SqliteStore(path)) as store:
        made = sorted(started(store).session_id for _ in range(6))
        for session_id in made:
            store.append(session_id, 1, [event(session_id, n) for n in (2, 3)])
        _change(path, f"UPDATE events SET payload = '{{' WHERE session_id = '{made[1]}' AND sequence = 2")  # noqa: S608
        _change(path, f"DELETE FROM events WHERE session_id = '{made[2]}'")  # noqa: S608
        _change(path, f"DELETE FROM events WHERE session_id = '{made[3]}' AND sequence = 2")  # noqa: S608
        _change(path, f"UPDATE sessions SET created_at = 'x' WHERE session_id = '{made[5]}'")  # noqa: S608
        status, told = _backed_up(store, file, sentences)
    assert status == 1
    assert [each[:8] in told for each in made] == [False, True, True, True, False, True]
    assert "2 sessions are there, of which 2 were new" in told
    with closing(SqliteStore(file)) as copy:
        assert copy.ids_after("", 9) == [made[0], made[4]]


@pytest.mark.parametrize(
    "failure", [KeyboardInterrupt(), StoreUnreadable("elsewhere", "not_reached"), OSError(28, "no")]
)
def test_a_backup_that_is_cut_off_leaves_nothing_behind(
    file: Path, sentences: Sentences, failure: BaseException
) -> None:
    class Failing(MemoryStore):
        def read(self, session_id: str) -> tuple[Event, ...]:
            if session_id == max(self.ids_after("", 9)):
                raise failure
            return super().read(session_id)

    log = Failing()
    for _ in range(3):
        started(log)
    with pytest.raises(type(failure)) as caught:
        _backed_up(log, file, sentences)
    assert list(file.parent.iterdir()) == []
    if isinstance(failure, StoreUnreadable):
        assert caught.value.where == "elsewhere"  # type: ignore[attr-defined]


def test_a_disk_too_full_for_the_backup_is_said_of_its_file_and_leaves_nothing(
    file: Path, sentences: Sentences, monkeypatch: pytest.MonkeyPatch
) -> None:
    class OnASmallDisk(SqliteStore):
        def __init__(self, path: Path) -> None:
            super().__init__(path)
            self._connection.execute("PRAGMA max_page_count = 30")

    monkeypatch.setattr(store_copy, "SqliteStore", OnASmallDisk)
    log = MemoryStore()
    session_id = started(log).session_id
    log.append(session_id, 1, [text_event(session_id, 2, "x" * 200_000)])
    with pytest.raises(StoreUnreadable, match="disk_full") as caught:
        _backed_up(log, file, sentences)
    assert caught.value.where == str(file)
    assert list(file.parent.iterdir()) == []


def test_a_backup_is_never_written_over_another_file(file: Path, sentences: Sentences) -> None:
    file.parent.mkdir()
    file.write_bytes(b"mine")
    with pytest.raises(FileUnusable, match="backup_there"):
        _backed_up(MemoryStore(), file, sentences)
    assert file.read_bytes() == b"mine"


def test_only_a_backup_is_restored_and_any_other_file_stays_as_it_is(tmp_path: Path) -> None:
    empty, words, theirs, bare = (tmp_path / each for each in ("empty", "words", "theirs", "bare"))
    empty.touch()
    words.write_text("buy flour\n" * 100)
    _change(theirs, "CREATE TABLE recipes (name TEXT)")
    _change(bare, "PRAGMA user_version = 0")
    _change(bare, "VACUUM")
    for file in (empty, words, theirs, bare):
        before = file.read_bytes()
        with pytest.raises(FileUnusable, match="not_a_backup"):
            refuse_unless_backup(file)
        assert file.read_bytes() == before
    with pytest.raises(FileUnusable, match="backup_gone"):
        refuse_unless_backup(tmp_path / "gone")


def test_a_store_that_was_left_without_being_closed_counts_as_one(path: Path, tmp_path: Path) -> None:
    copied = tmp_path / "copied.db"
    with closing(SqliteStore(path)) as store:
        started(store)
        for end in ("", "-wal"):
            (tmp_path / f"copied.db{end}").write_bytes(path.with_name(f"{path.name}{end}").read_bytes())
    refuse_unless_backup(copied)


def test_what_was_damaged_since_the_backup_is_told(path: Path, file: Path, sentences: Sentences) -> None:
    with closing(SqliteStore(path)) as store:
        made = sorted(started(store).session_id for _ in range(4))
        for session_id in made:
            store.append(session_id, 1, [event(session_id, 2)])
        _backed_up(store, file, sentences)
        _change(path, f"UPDATE events SET actor = 'x' WHERE session_id = '{made[0]}'")  # noqa: S608
        _change(path, f"DELETE FROM events WHERE session_id = '{made[1]}'")  # noqa: S608
        _change(path, f"UPDATE events SET payload = '{{' WHERE session_id = '{made[2]}'")  # noqa: S608
        store.erase(made[3])
        status, told = _restored(file, store, sentences)
        assert store.last_sequence(made[3]) == 2
    assert status == 1
    assert f"Session {made[0][:8]}: the session is there already and went another way." in told
    assert f"Session {made[1][:8]}: it has no entries at all." in told
    assert f"Session {made[2][:8]}: an entry is in a form" in told
    assert "One session is there, of which one was new; 2 entries were new." in told


def test_text_that_was_erased_since_the_backup_stays_erased(path: Path, file: Path, sentences: Sentences) -> None:
    with closing(SqliteStore(path)) as store:
        session_id = started(store).session_id
        store.append(session_id, 1, [text_event(session_id, 2, "it hums")])
        _backed_up(store, file, sentences)
        store.erase_text(session_id)
        told = _restored(file, store, sentences)
        assert told == (0, "One session is there, of which none was new; nothing of them was new.\n")
        assert store.texts_after("", 0, 9) == []

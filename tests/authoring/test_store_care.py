"""Looking after a store."""

import io
import json
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from assistant.authoring import session_file, store_care
from assistant.authoring.session_file import FileUnusable
from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.events import Event
from assistant.store.memory import MemoryStore
from assistant.store.sqlite import SqliteStore
from assistant.wording.sentences import Sentences
from tests.store.samples import NOON, event, started, text_event

KEY = b"k" * 32


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "sessions.db"


def _change(path: Path, statement: str) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(statement)


def _checked(log: MemoryStore | SqliteStore, sentences: Sentences) -> tuple[int, str]:
    out = io.StringIO()
    return store_care.check(log, sentences.wording, out), out.getvalue()


def test_a_store_as_it_was_written_is_told_to_be_so(path: Path, sentences: Sentences) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store)
        store.append(session.session_id, 1, [text_event(session.session_id, 2, "it hums")])
        started(store)
        store.erase_text(session.session_id)
        assert _checked(store, sentences) == (0, "2 sessions looked at, each as it was written.\n")


@pytest.mark.parametrize(
    ("damage", "said"),
    [
        ("UPDATE events SET actor = 'somebody' WHERE sequence = 2", "isn't as it was written"),
        ("DELETE FROM events WHERE sequence = 2", "aren't in their order"),
        ("DELETE FROM events WHERE sequence = 3", "isn't as it was written"),
        ("UPDATE events SET payload = '{' WHERE sequence = 2", "form that this program doesn't know"),
        ("UPDATE events SET sequence = 9 WHERE sequence = 3", "aren't in their order"),
    ],
)
def test_what_was_changed_behind_the_stores_back_is_told(
    path: Path, sentences: Sentences, damage: str, said: str
) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store)
        store.append(session.session_id, 1, [event(session.session_id, n) for n in (2, 3)])
        with closing(sqlite3.connect(path, isolation_level=None)) as connection:
            connection.execute(damage)
        status, told = _checked(store, sentences)
    assert status == 1
    assert said in told
    assert session.session_id[:8] in told


def test_a_session_without_any_entry_is_told_and_can_be_erased(path: Path, sentences: Sentences) -> None:
    with closing(SqliteStore(path)) as store:
        session = started(store)
        _change(path, "DELETE FROM events")
        assert _checked(store, sentences) == (
            1,
            f"Session {session.session_id[:8]}: it has no entries at all.\n"
            "One session looked at, 1 not as they should be.\n",
        )
        store.erase(session.session_id)
        assert _checked(store, sentences)[0] == 0


def test_one_whose_time_cannot_be_read_is_told_and_the_one_before_it_is_sound(path: Path, sentences: Sentences) -> None:
    with closing(SqliteStore(path)) as store:
        first, second = sorted(started(store).session_id for _ in range(2))
        _change(path, f"UPDATE sessions SET created_at = 'x' WHERE session_id = '{second}'")  # noqa: S608
        status, told = _checked(store, sentences)
    assert status == 1
    assert second[:8] in told
    assert first[:8] not in told


def test_a_store_that_cannot_be_read_at_all_is_not_told_of_session_by_session(sentences: Sentences) -> None:
    class Away(MemoryStore):
        def read(self, session_id: str) -> tuple[Event, ...]:
            raise StoreUnreadable("somewhere", "not_reached")

    log = Away()
    started(log)
    with pytest.raises(StoreUnreadable, match="not_reached"):
        _checked(log, sentences)


def test_a_session_without_a_fingerprint_is_counted_apart(path: Path, sentences: Sentences) -> None:
    with closing(SqliteStore(path)) as store:
        started(store)
        with closing(sqlite3.connect(path, isolation_level=None)) as connection:
            connection.execute("UPDATE sessions SET fingerprint = NULL")
        status, told = _checked(store, sentences)
    assert status == 0
    assert "earlier version" in told


def test_what_nobody_touched_is_purged_and_the_rest_stays(sentences: Sentences) -> None:
    log, out = MemoryStore(), io.StringIO()
    old, lately = started(log), started(log)
    log.append(lately.session_id, 1, [event(lately.session_id, 2, recorded_at=NOON + timedelta(days=20))])
    now = NOON + timedelta(days=31)
    store_care.count_untouched(log, sentences.wording, 30, now, out)
    assert "One session was left alone for 30 days or longer. Nothing was erased." in out.getvalue()
    store_care.purge(log, sentences.wording, 30, now, out)
    assert log.ids_after("", 10) == [lately.session_id]
    with pytest.raises(SessionUnknown):
        log.read(old.session_id)


def test_what_is_gone_on_with_while_old_sessions_are_erased_stays(sentences: Sentences, path: Path) -> None:
    now = NOON + timedelta(days=60)

    class GoneOnWith(SqliteStore):
        """Where the second page is asked for, somebody has gone on with the sessions that are left."""

        def erase_untouched(self, moment: datetime, limit: int) -> list[str]:
            erased = super().erase_untouched(moment, 2)
            for session_id in self.ids_after("", 9):
                if self.last_sequence(session_id) == 1:
                    self.append(session_id, 1, [event(session_id, 2, recorded_at=now)])
            return erased

    with closing(GoneOnWith(path)) as store:
        made = sorted(started(store).session_id for _ in range(3))
        assert store_care.purge(store, sentences.wording, 30, now, io.StringIO()) == 0
        assert store.ids_after("", 9) == made[2:]


def test_however_many_are_purged_the_file_is_written_anew_once(sentences: Sentences, path: Path) -> None:
    swept: list[str] = []
    with closing(SqliteStore(path)) as store:
        for _ in range(7):
            started(store)
        store._connection.set_trace_callback(lambda said: swept.append(said) if said == "VACUUM" else None)
        out = io.StringIO()
        store_care.purge(store, sentences.wording, 30, NOON + timedelta(days=60), out)
        store._connection.set_trace_callback(None)
        assert store.ids_after("", 9) == []
    assert swept == ["VACUUM"]
    assert "7 sessions were left alone for 30 days or longer and erased." in out.getvalue()


def test_a_purge_forgets_tries_that_are_older_than_an_hour(sentences: Sentences) -> None:
    log = MemoryStore()
    for minute in (0, 70):
        log.note_failed_try(NOON + timedelta(minutes=minute), NOON)
    store_care.purge(log, sentences.wording, 30, NOON + timedelta(minutes=90), io.StringIO())
    assert log.failed_tries(NOON - timedelta(days=1), NOON + timedelta(days=1)) == 1


def test_a_session_goes_by_file_from_one_store_to_another_without_loss() -> None:
    here, there = MemoryStore(), MemoryStore()
    session = started(here, name="their own")
    here.append(
        session.session_id, 1, [text_event(session.session_id, 2, "ä\0\u202e'); --"), event(session.session_id, 3)]
    )
    kept, events = session_file.unpacked(session_file.packed(here, session.session_id, KEY), KEY, "a file")
    assert session_file.take_in(there, kept, events) == 3
    assert there.read(session.session_id) == here.read(session.session_id)
    assert there.find_by_name("their own") == session
    assert there.kept_fingerprint(session.session_id) == here.kept_fingerprint(session.session_id)


def test_a_session_that_went_on_elsewhere_comes_back_with_what_is_new() -> None:
    here, there = MemoryStore(), MemoryStore()
    session = started(here)
    copy = session_file.unpacked(session_file.packed(here, session.session_id, KEY), KEY, "a file")
    session_file.take_in(there, *copy)
    there.append(session.session_id, 1, [event(session.session_id, 2)])
    back = session_file.unpacked(session_file.packed(there, session.session_id, KEY), KEY, "a file")
    assert [session_file.take_in(here, *back) for _ in range(2)] == [1, 0]
    assert session_file.take_in(here, *copy) == 0
    assert here.read(session.session_id) == there.read(session.session_id)


def test_two_ways_that_a_session_went_are_never_mixed() -> None:
    here, there = MemoryStore(), MemoryStore()
    session = started(here)
    session_file.take_in(there, session, here.read(session.session_id))
    for log in (here, there):
        log.append(session.session_id, 1, [event(session.session_id, 2)])
    other = session_file.unpacked(session_file.packed(there, session.session_id, KEY), KEY, "a file")
    before = here.read(session.session_id)
    with pytest.raises(FileUnusable, match="goes_another_way"):
        session_file.take_in(here, *other)
    assert here.read(session.session_id) == before


def test_an_event_that_differs_in_anything_makes_it_another_way() -> None:
    here, there = MemoryStore(), MemoryStore()
    session = started(here)
    one = text_event(session.session_id, 2, "it hums")
    here.append(session.session_id, 1, [one])
    session_file.take_in(there, session, [*here.read(session.session_id)[:1], replace(one, actor="somebody")])
    for other in (
        replace(one, recorded_at=NOON),
        text_event(session.session_id, 2, "it rattles", event_id=one.event_id),
    ):
        with pytest.raises(FileUnusable, match="goes_another_way"):
            session_file.take_in(here, session, [*here.read(session.session_id)[:1], other])
    with pytest.raises(FileUnusable, match="goes_another_way"):
        session_file.take_in(there, session, here.read(session.session_id))


def test_text_that_was_erased_on_one_side_is_no_other_way_and_stays_erased() -> None:
    here, there = MemoryStore(), MemoryStore()
    session = started(here)
    here.append(session.session_id, 1, [text_event(session.session_id, 2, "it hums")])
    session_file.take_in(there, session, here.read(session.session_id))
    there.erase_text(session.session_id)
    before = there.read(session.session_id)
    assert session_file.take_in(there, session, here.read(session.session_id)) == 0
    assert session_file.take_in(here, session, before) == 0
    assert there.read(session.session_id) == before


def _changed(content: bytes, path: tuple[str | int, ...], value: object) -> bytes:
    told = json.loads(content)
    place = told
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    return json.dumps(told).encode()


@pytest.mark.parametrize(
    "change",
    [
        (("events", 0, "role"), "engineer"),
        (("session", "code_hash"), "0" * 64),
        (("fingerprint",), "0" * 64),
        (("version",), 2),
        (("signature",), "0" * 64),
        (("signature",), "ä"),
    ],
    ids=str,
)
def test_a_file_that_was_changed_is_not_taken_in(change: tuple[tuple[str | int, ...], object]) -> None:
    log = MemoryStore()
    session = started(log)
    content = _changed(session_file.packed(log, session.session_id, KEY), *change)
    with pytest.raises(FileUnusable, match="signature_differs"):
        session_file.unpacked(content, KEY, "a file")


def test_another_key_opens_nothing() -> None:
    log = MemoryStore()
    content = session_file.packed(log, started(log).session_id, KEY)
    with pytest.raises(FileUnusable, match="signature_differs"):
        session_file.unpacked(content, b"o" * 32, "a file")


@pytest.mark.parametrize("content", [b"", b"\xff", b"[]", b"{}", b"null", b'{"signature": 1, "form": 2, "version": 3}'])
def test_any_other_file_is_refused(content: bytes) -> None:
    with pytest.raises(FileUnusable, match="not_a_session_file"):
        session_file.unpacked(content, KEY, "a file")


def test_a_key_is_for_its_owner_alone_and_never_overwritten(tmp_path: Path) -> None:
    file = tmp_path / "key"
    session_file.new_key(file)
    assert file.stat().st_mode & 0o077 == 0
    assert len(session_file.read_key(file)) == 32
    with pytest.raises(FileUnusable, match="key_there"):
        session_file.new_key(file)


@pytest.mark.parametrize("text", ["", "no hex", "00ff", "ä"])
def test_what_is_no_key_is_said(tmp_path: Path, text: str) -> None:
    file = tmp_path / "key"
    file.write_text(text, "utf-8")
    with pytest.raises(FileUnusable, match="not_a_key"):
        session_file.read_key(file)

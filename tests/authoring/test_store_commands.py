"""The commands of whoever looks after a store, as they are typed."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from assistant import cli
from assistant.store.sqlite import SqliteStore
from tests.store.samples import event, started, text_event


@pytest.fixture
def place(tmp_path: Path) -> Path:
    return tmp_path / "s.db"


@pytest.fixture
def session_id(place: Path) -> str:
    with closing(SqliteStore(place)) as store:
        made = started(store).session_id
        store.append(made, 1, [text_event(made, 2, "Olive Wren")])
        return made


@pytest.fixture
def key(tmp_path: Path, session_id: str) -> Path:
    made = tmp_path / "key"
    assert cli.run(["sessions", "key", str(made)]) == 0
    return made


def _said(capsys: pytest.CaptureFixture[str], place: Path, *words: object) -> tuple[int, str]:
    capsys.readouterr()
    status = cli.run(["sessions", *map(str, words), "--store", str(place)])
    told = capsys.readouterr()
    return status, told.out + told.err


def test_an_export_never_takes_the_place_of_a_file(
    place: Path, session_id: str, key: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for file in (key, place):
        before = file.read_bytes()
        status, said = _said(capsys, place, "export", session_id[:8], file, "--key", key)
        assert (status, file.read_bytes()) == (1, before)
        assert f"There is a file {file} already" in said
        status, said = _said(capsys, place, "person", "Olive", "--copy", file)
        assert (status, file.read_bytes()) == (1, before)
        assert f"There is a file {file} already" in said


@pytest.mark.parametrize("days", ["x", "0", "-1", "1.5", "36501", "\u00b2", ""])
def test_days_that_are_none_are_refused_in_a_sentence(
    place: Path, days: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as left:
        cli.run(["sessions", "purge", f"--days={days}", "--store", str(place)])
    assert left.value.code == 2
    assert "please give a whole number of days from 1 to 36500" in capsys.readouterr().err


def test_a_file_that_cannot_be_used_is_named(
    tmp_path: Path, place: Path, session_id: str, key: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    gone, new = tmp_path / "gone", tmp_path / "new"
    for words, named in (
        (("import", tmp_path, "--key", key), f"The file {tmp_path} can't be used: Is a directory."),
        (("import", gone, "--key", key), f"The file {gone} can't be used: No such file or directory."),
        (("export", session_id[:8], tmp_path, "--key", key), f"The file {tmp_path} can't be used: Is a directory."),
        (("export", session_id[:8], gone / "x", "--key", key), f"The file {gone / 'x'} can't be used: No such file"),
        (("export", session_id[:8], new, "--key", tmp_path), f"The file {tmp_path} can't be used: Is a directory."),
        (("export", session_id[:8], new, "--key", gone), f"The file {gone} can't be used: No such file"),
        (("person", "Olive", "--copy", tmp_path), f"The file {tmp_path} can't be used: Is a directory."),
        (("key", gone / "x"), f"The file {gone / 'x'} can't be used: No such file"),
        (("key", key), f"There is a file {key} already"),
        (("backup", tmp_path), f"There is a file {tmp_path} already"),
        (("restore", tmp_path), f"The file {tmp_path} can't be used: Is a directory."),
        (("restore", gone), f"There is no file {gone}."),
        (("restore", key), f"{key} is no backup of sessions. Nothing was taken in."),
    ):
        status, said = _said(capsys, place, *words)
        assert status == 1, words
        assert named in said, words
    assert not new.exists()


def test_an_empty_file_is_not_restored_and_stays_empty(
    tmp_path: Path, place: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    empty = tmp_path / "empty"
    empty.touch()
    assert _said(capsys, place, "restore", empty) == (1, f"{empty} is no backup of sessions. Nothing was taken in.\n")
    assert empty.read_bytes() == b""
    assert not place.exists()


def test_a_session_that_cannot_be_taken_in_is_told_by_its_id(
    tmp_path: Path, place: Path, session_id: str, key: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file, other = tmp_path / "file", tmp_path / "other.db"
    assert _said(capsys, place, "export", session_id, file, "--key", key)[0] == 0
    assert _said(capsys, other, "import", file, "--key", key)[0] == 0
    with closing(sqlite3.connect(other, isolation_level=None)) as connection:
        connection.execute("UPDATE events SET actor = 'x'")
    status, said = _said(capsys, other, "import", file, "--key", key)
    assert (status, said) == (
        1,
        f"Session {session_id[:8]}: the session is there already and went another way.\n",
    )


def test_a_purge_whose_traces_could_not_be_removed_says_what_was_erased_and_that(
    place: Path, session_id: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with closing(sqlite3.connect(place, isolation_level=None)) as reader:
        reader.execute("BEGIN")
        reader.execute("SELECT * FROM sessions").fetchall()
        status, said = _said(capsys, place, "purge", "--days", "1")
        reader.execute("COMMIT")
    assert status == 1
    assert f"Session {session_id[:8]} and everything in it was erased." in said
    assert "One session was left alone for a day or longer and erased." in said
    assert "traces of it may be left in its files: another program has locked it." in said


def test_a_backup_goes_by_a_full_round(
    tmp_path: Path, place: Path, session_id: str, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "backup.db"
    assert _said(capsys, place, "backup", file)[0] == 0
    with closing(SqliteStore(place)) as store:
        store.append(session_id, 2, [event(session_id, 3)])
    assert _said(capsys, place, "erase", session_id)[0] == 0
    assert _said(capsys, place, "restore", file) == (
        0,
        "One session is there, of which one was new; 2 entries were new.\n",
    )
    assert _said(capsys, place, "restore", file)[1].endswith("of which none was new; nothing of them was new.\n")

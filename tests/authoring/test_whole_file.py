"""Files that are there as a whole or not at all."""

import errno
import os
import stat
from pathlib import Path

import pytest

from assistant.authoring.whole_file import file_or_here, write_whole


def test_a_file_that_was_there_is_replaced_as_a_whole(tmp_path: Path) -> None:
    (tmp_path / "o.csv").write_text("a longer content than what comes")
    write_whole(tmp_path / "o.csv", b"new")
    assert (tmp_path / "o.csv").read_bytes() == b"new"


def test_a_new_file_is_for_its_owner_alone_from_its_first_moment(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen, sync = [], os.fsync

    def looking(descriptor: int) -> None:
        seen.append(stat.S_IMODE(os.fstat(descriptor).st_mode))
        sync(descriptor)

    monkeypatch.setattr(os, "fsync", looking)
    before = os.umask(0)
    try:
        write_whole(tmp_path / "summary.txt", b"new")
    finally:
        os.umask(before)
    assert [*seen, stat.S_IMODE((tmp_path / "summary.txt").stat().st_mode)] == [0o600, 0o600]


def test_what_was_there_is_replaced_and_keeps_its_rights(tmp_path: Path) -> None:
    target = tmp_path / "summary.pdf"
    target.write_bytes(b"old")
    target.chmod(0o640)
    write_whole(target, b"new")
    assert target.read_bytes() == b"new"
    assert stat.S_IMODE(target.stat().st_mode) == 0o640
    assert os.listdir(tmp_path) == ["summary.pdf"]  # noqa: PTH208 - hidden ones too


def test_a_write_that_fails_leaves_what_was_there_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "summary.pdf"
    target.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        write_whole(target, b"new")
    assert target.read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["summary.pdf"]


def test_where_there_is_no_folder_nothing_is_written(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        write_whole(tmp_path / "none" / "summary.pdf", b"new")


def test_a_link_goes_on_leading_to_the_file(tmp_path: Path) -> None:
    target, link = tmp_path / "a.pdf", tmp_path / "b.pdf"
    target.write_bytes(b"old")
    link.symlink_to(target)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert target.read_bytes() == b"new"


def test_a_link_may_lead_to_what_is_not_there_yet(tmp_path: Path) -> None:
    (tmp_path / "b.pdf").symlink_to(tmp_path / "a.pdf")
    write_whole(tmp_path / "b.pdf", b"new")
    assert (tmp_path / "b.pdf").is_symlink()
    assert (tmp_path / "a.pdf").read_bytes() == b"new"


def test_links_in_a_circle_are_an_error_of_the_system(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").symlink_to(tmp_path / "b.pdf")
    (tmp_path / "b.pdf").symlink_to(tmp_path / "a.pdf")
    with pytest.raises(OSError) as caught:  # noqa: PT011 - its number is what counts
        write_whole(tmp_path / "a.pdf", b"new")
    assert caught.value.errno == errno.ELOOP


def test_a_pipe_takes_what_is_written(tmp_path: Path) -> None:
    reading, writing = os.pipe()
    try:
        write_whole(Path(f"/dev/fd/{writing}"), b"new")
        assert os.read(reading, 9) == b"new"
    finally:
        os.close(reading)
        os.close(writing)


def test_a_dash_is_no_file_and_a_file_of_that_name_can_still_be_named() -> None:
    assert file_or_here("-") is None
    assert file_or_here("./-") == Path("-")


def test_a_device_is_written_to_and_stays_one() -> None:
    write_whole(Path(os.devnull), b"new")
    assert not Path(os.devnull).is_file()


def test_a_folder_is_not_replaced(tmp_path: Path) -> None:
    with pytest.raises(OSError):  # noqa: PT011 - what it says differs between systems
        write_whole(tmp_path, b"new")
    assert tmp_path.is_dir()

"""Files that are there as a whole or not at all."""

import os
import stat
from pathlib import Path

import pytest

from assistant.authoring.whole_file import write_whole


def test_what_was_there_is_replaced_and_keeps_its_rights(tmp_path: Path) -> None:
    target = tmp_path / "summary.pdf"
    target.write_bytes(b"old")
    target.chmod(0o600)
    write_whole(target, b"new")
    assert target.read_bytes() == b"new"
    assert stat.S_IMODE(target.stat().st_mode) == 0o600
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


def test_a_device_is_written_to_and_stays_one() -> None:
    write_whole(Path(os.devnull), b"new")
    assert not Path(os.devnull).is_file()


def test_a_folder_is_not_replaced(tmp_path: Path) -> None:
    with pytest.raises(OSError):  # noqa: PT011 - what it says differs between systems
        write_whole(tmp_path, b"new")
    assert tmp_path.is_dir()

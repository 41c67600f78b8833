"""Opening the store's file so that commits last and nobody else can read it."""

import os
import sqlite3
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from threading import Lock

from assistant.errors import StoreUnreadable
from assistant.store.reasons import LOCKED, is_locked, named_failures
from assistant.store.schema import APPLICATION_ID, migrate, refuse_unknown
from assistant.store.waiting import attempts

PRIVATE_FILE = 0o600
PRIVATE_FOLDER = 0o700
OTHERS = 0o077
SQLITE_MARK = b"SQLite format 3\0"
MARKED_BYTES = 72
"""The last four of them are the application's id."""

# Closing a file, however it was opened, gives up all the locks that the process holds on it, SQLite's
# too. So a file is only made by hand while no other thread can be opening it, and never read by hand.
_opening = Lock()


def open_connection(path: Path, busy_seconds: float) -> sqlite3.Connection:
    """A connection to the file at an absolute path, made if missing, its tables up to date.

    Waits up to `busy_seconds` for other writers, here and later. New folders get mode 0700; the file
    and those SQLite puts beside it are closed to everyone but their owner. Folders that are there
    already stay as they are. A file of a later version or of another program isn't touched.
    Raises StoreUnreadable.
    """
    with _opening, named_failures(path):
        make_folder(path.parent)
        make_file(path)
        connection = sqlite3.connect(
            f"{path.as_uri()}?mode=rw",
            uri=True,
            timeout=busy_seconds,
            isolation_level=None,
            check_same_thread=False,
        )
        try:
            refuse_unknown(connection, path)
            close_to_others(path)
            _make_lasting(connection, path, busy_seconds)
            migrate(connection, path)
        except BaseException:
            connection.close()
            raise
        return connection


@contextmanager
def copied_in_a_file(connection: sqlite3.Connection, folder: Path) -> Iterator[None]:
    """Whatever SQLite copies in the block stands in a nameless file, not in memory, which a large store would fill.

    The file is in that folder, so that it comes to no other disk than the store, where this SQLite can be told so.
    """
    with suppress(UnicodeEncodeError):  # a folder whose name is no text
        connection.execute(f"PRAGMA temp_store_directory = {_quoted(str(folder))}")
    connection.execute("PRAGMA temp_store = FILE")
    try:
        yield
    finally:
        connection.execute("PRAGMA temp_store = MEMORY")
        connection.execute("PRAGMA temp_store_directory = ''")


def _quoted(text: str) -> str:
    return "'" + text.replace("'", "''") + "'"


def resolved(path: Path) -> Path:
    """The absolute path behind all links. Raises StoreUnreadable."""
    try:
        with named_failures(path):
            return path.resolve()
    except (RuntimeError, ValueError) as error:  # links in a ring; no path at all
        raise StoreUnreadable(str(path), "system_says", str(error)) from error


def holds_sessions(path: Path) -> bool:
    """Whether the file is a store of this program, by the marks in its first bytes (SQLite's file format, 1.3).

    It is read by hand: only for a file that isn't open anywhere in this process. One whose first bytes still stand in
    the write-ahead log counts as one. Raises OSError.
    """
    ahead = path.with_name(f"{path.name}-wal")
    if ahead.exists() and ahead.stat().st_size:
        return True
    with path.open("rb") as file:
        first = file.read(MARKED_BYTES)
    return first.startswith(SQLITE_MARK) and first[-4:] == APPLICATION_ID.to_bytes(4, "big")


def make_folder(folder: Path) -> None:
    """Make the missing folders of a path, each for its owner alone. Raises OSError."""
    if folder.is_dir():
        return
    make_folder(folder.parent)
    folder.mkdir(PRIVATE_FOLDER, exist_ok=True)
    folder.chmod(PRIVATE_FOLDER)
    _sync_folder(folder.parent)


def make_file(path: Path) -> None:
    """Make an empty file for its owner alone, unless there is one. Raises OSError."""
    try:
        descriptor = os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, PRIVATE_FILE)
    except FileExistsError:
        return
    os.close(descriptor)
    path.chmod(PRIVATE_FILE)
    _sync_folder(path.parent)


def close_to_others(path: Path) -> None:
    """Take away what group and others may do with the database and the files beside it. Raises OSError."""
    for file in (path, path.with_name(f"{path.name}-wal"), path.with_name(f"{path.name}-shm")):
        try:
            mode = stat.S_IMODE(file.stat().st_mode)
            if mode & OTHERS:
                file.chmod(mode & ~OTHERS)
        except FileNotFoundError:
            continue


def _make_lasting(connection: sqlite3.Connection, path: Path, busy_seconds: float) -> None:
    _write_ahead(connection, path, busy_seconds)
    for pragma in (
        "synchronous = FULL",
        "fullfsync = ON",  # only macOS tells the two kinds apart
        "checkpoint_fullfsync = ON",
        "foreign_keys = ON",
        "secure_delete = ON",
        "temp_store = MEMORY",
    ):
        connection.execute(f"PRAGMA {pragma}")


def _write_ahead(connection: sqlite3.Connection, path: Path, busy_seconds: float) -> None:
    for _ in attempts(busy_seconds):
        try:
            mode = connection.execute("PRAGMA journal_mode = WAL").fetchone()[0]
        except sqlite3.OperationalError as error:
            if not is_locked(error):
                raise
        else:
            if mode != "wal":
                raise StoreUnreadable(str(path), "no_write_ahead_log")
            return
    raise StoreUnreadable(str(path), LOCKED)


def _sync_folder(folder: Path) -> None:
    if os.name != "posix":
        return
    try:
        descriptor = os.open(folder, os.O_RDONLY)
    except PermissionError:  # a folder that may be entered but not listed
        return
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)

"""What went wrong with a file: the codes of the reasons, which the front ends word."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from assistant.errors import StoreUnreadable

LOCKED = "locked"

_PRIMARY_CODE = 0xFF

_PLAIN_REASONS = {
    sqlite3.SQLITE_AUTH: "access_denied",
    sqlite3.SQLITE_BUSY: LOCKED,
    sqlite3.SQLITE_CORRUPT: "damaged",
    sqlite3.SQLITE_FULL: "disk_full",
    sqlite3.SQLITE_IOERR: "disk_error",
    sqlite3.SQLITE_LOCKED: LOCKED,
    sqlite3.SQLITE_NOTADB: "not_a_database",
    sqlite3.SQLITE_PERM: "access_denied",
    sqlite3.SQLITE_READONLY: "read_only",
}


@contextmanager
def named_failures(path: Path) -> Iterator[None]:
    """Turn every error of SQLite or the system in the block into StoreUnreadable with the reason's code."""
    try:
        yield
    except sqlite3.Error as error:
        raise StoreUnreadable(str(path), *_reason_of(error, path)) from error
    except OSError as error:
        raise StoreUnreadable(str(path), "system_says", error.strerror or str(error)) from error


def is_locked(error: sqlite3.Error) -> bool:
    """Whether waiting may help."""
    return _code_of(error) in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


def _reason_of(error: sqlite3.Error, path: Path) -> tuple[str, str]:
    code = _code_of(error)
    if code == sqlite3.SQLITE_CANTOPEN:
        return _why_not_opened(path), ""
    return (_PLAIN_REASONS[code], "") if code in _PLAIN_REASONS else ("system_says", str(error))


def _code_of(error: sqlite3.Error) -> int:
    code = getattr(error, "sqlite_errorcode", None)  # errors of the Python module itself carry none
    return code & _PRIMARY_CODE if isinstance(code, int) else 0


def _why_not_opened(path: Path) -> str:
    if path.is_dir():
        return "a_folder"
    if not path.exists():
        return "gone"
    if not os.access(path, os.R_OK):
        return "access_denied"
    if not os.access(path, os.W_OK) or not os.access(path.parent, os.W_OK):
        return "read_only"
    return "not_opened"

"""What went wrong with a server: the codes of the reasons, which the front ends word."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager

import psycopg
from psycopg import errors

from assistant.errors import StoreUnreadable
from assistant.store.reasons import LOCKED

NOT_REACHED = "not_reached"

# The names of SQLSTATE, ISO/IEC 9075 and PostgreSQL's own, as psycopg spells them.
_PLAIN_REASONS: Mapping[type[psycopg.Error], str] = {
    errors.DeadlockDetected: LOCKED,
    errors.DiskFull: "disk_full",
    errors.InsufficientPrivilege: "access_denied",
    errors.InvalidAuthorizationSpecification: "access_denied",
    errors.InvalidCatalogName: "no_such_database",
    errors.InvalidPassword: "access_denied",
    errors.IoError: "disk_error",
    errors.LockNotAvailable: LOCKED,
    errors.DataCorrupted: "damaged",
    errors.IndexCorrupted: "damaged",
    errors.QueryCanceled: "took_too_long",
    errors.ReadOnlySqlTransaction: "read_only",
    errors.TooManyConnections: "too_many_at_once",
}


@contextmanager
def named_failures(where: str) -> Iterator[None]:
    """Turn every error of the server or of the way to it in the block into StoreUnreadable with the reason's code."""
    try:
        yield
    except psycopg.Error as error:
        raise StoreUnreadable(where, *_reason_of(error)) from error


def is_lost(error: psycopg.Error, connection: psycopg.Connection[object]) -> bool:
    """Whether the server or the way to it went away, so that another connection may do."""
    return connection.closed or isinstance(
        error,
        errors.AdminShutdown | errors.CrashShutdown | errors.CannotConnectNow | errors.IdleInTransactionSessionTimeout,
    )


def may_come_back(error: psycopg.Error) -> bool:
    """Whether a connection that couldn't be made may be made a moment later: the server is away, or starts just now."""
    return _reason_of(error)[0] in (NOT_REACHED, "too_many_at_once")


def _reason_of(error: psycopg.Error) -> tuple[str, str]:
    for kind, code in _PLAIN_REASONS.items():
        if isinstance(error, kind):
            return code, ""
    refused = _refused_at_the_door(error)
    if refused is not None:
        return refused, ""
    if isinstance(error, psycopg.OperationalError):
        return NOT_REACHED, ""
    return "system_says", str(error).splitlines()[0] if str(error) else type(error).__name__


def _refused_at_the_door(error: psycopg.Error) -> str | None:
    """Of a connection that isn't there yet the library passes the server's words on, but no SQLSTATE."""
    if error.sqlstate is not None:
        return None
    words = str(error)
    if "password" in words or "authentication" in words or "pg_hba" in words:
        return "access_denied"
    if "database" in words and "does not exist" in words:
        return "no_such_database"
    if "too many clients" in words or "connection slots" in words:
        return "too_many_at_once"
    return None

"""A connection to the server of a shared store, set so that commits last."""

import os
import socket
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from threading import Timer
from typing import Any

import psycopg
from psycopg.conninfo import conninfo_to_dict

from assistant.errors import StoreUnreadable
from assistant.store.postgres_reasons import may_come_back, named_failures
from assistant.store.postgres_schema import SCHEMA, migrate
from assistant.store.waiting import attempts

Connection = psycopg.Connection[tuple[Any, ...]]

MOST_SECONDS_A_STATEMENT = 60
ANSWER_SECONDS = MOST_SECONDS_A_STATEMENT + 5.0
"""How long a server may leave a call without an answer where nobody said; then it is given up as gone."""
LEAST_CONNECT_SECONDS, MOST_CONNECT_SECONDS = 2, 5


def named_place(url: str) -> str:
    """The store's URL without its password, as people may see it. Raises StoreUnreadable if it can't be read."""
    try:
        told = conninfo_to_dict(url)
    except psycopg.ProgrammingError as error:
        raise StoreUnreadable("postgresql:", "not_a_server") from error
    user = f"{told['user']}@" if told.get("user") else ""
    port = f":{told['port']}" if told.get("port") else ""
    return f"postgresql://{user}{told.get('host') or ''}{port}/{told.get('dbname') or ''}"


@contextmanager
def cut_off_after(connection: Connection, seconds: float) -> Iterator[None]:
    """Break the connection off, as if it were lost, where the block takes longer.

    A server that hangs, or a cable that was pulled, answers nothing at all, not even that it is away.
    """
    timer = Timer(seconds, _cut_off, [connection])
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()


def _cut_off(connection: Connection) -> None:
    with suppress(psycopg.Error, OSError), socket.socket(fileno=os.dup(connection.fileno())) as wire:
        wire.shutdown(socket.SHUT_RDWR)


def open_connection(url: str, where: str, busy_seconds: float, answer_seconds: float = ANSWER_SECONDS) -> Connection:
    """A connection with the store's tables up to date.

    Waits up to `busy_seconds` for a server that is away or just starting, and here and later as long for other
    writers; up to `answer_seconds` for a server that doesn't answer. Raises StoreUnreadable, also with `not_durable`
    where the server was told not to sync its commits.
    """
    connection = _connected(url, where, busy_seconds)
    try:
        with named_failures(where), cut_off_after(connection, answer_seconds):
            connection.execute("SELECT set_config('lock_timeout', %s, false)", [f"{round(1000 * busy_seconds)}ms"])
            _refuse_unsynced(connection, where)
            migrate(connection, where)
    except BaseException:
        connection.close()
        raise
    return connection


def _connected(url: str, where: str, busy_seconds: float) -> Connection:
    latest: psycopg.Error | None = None
    for _ in attempts(busy_seconds):
        try:
            return psycopg.connect(
                url,
                autocommit=True,
                connect_timeout=round(min(max(busy_seconds, LEAST_CONNECT_SECONDS), MOST_CONNECT_SECONDS)),
                application_name="ovenside",
                options=f"-c search_path={SCHEMA} -c synchronous_commit=on -c timezone=UTC "
                f"-c statement_timeout={MOST_SECONDS_A_STATEMENT}s -c client_encoding=UTF8 "
                "-c log_parameter_max_length_on_error=0",
                keepalives_idle=10,
                keepalives_interval=5,
                keepalives_count=3,
            )
        except psycopg.Error as error:
            latest = error
            if not may_come_back(error):
                break
    with named_failures(where):
        raise latest or psycopg.OperationalError("no attempt was made")


def _refuse_unsynced(connection: Connection, where: str) -> None:
    row = connection.execute("SHOW fsync").fetchone()
    if row != ("on",):
        raise StoreUnreadable(where, "not_durable")

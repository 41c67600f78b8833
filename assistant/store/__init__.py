"""Where sessions are kept. `open_store` is the way in."""

import re
from pathlib import Path

from assistant.errors import StoreUnreadable
from assistant.interview.log import EventLog
from assistant.store.waiting import BUSY_SECONDS

APPLICATION = "ovenside"
FILE_NAME = "sessions.db"
SERVERS = ("postgresql", "postgres")

_SCHEME = re.compile(r"([A-Za-z][A-Za-z0-9+.-]+):(.*)", re.DOTALL)  # one letter is a drive, not a scheme


def open_store(url: str | None, busy_seconds: float = BUSY_SECONDS, answer_seconds: float | None = None) -> EventLog:
    """The log at `sqlite:PATH`, at a plain path, on the server at a `postgresql:` URL, or at `memory:`, which ends with
    the process.

    None stands for `sessions.db` in the user's data folder. `busy_seconds` is how long each call waits for other
    writers, or for a server that is away, before it fails; `answer_seconds`, how long for a server that hangs.
    Raises StoreUnreadable.
    """
    if url is None:
        return _open_file(_own_file(), busy_seconds)
    scheme, rest = _split(url)
    if scheme == "memory" and not rest:
        from assistant.store.memory import MemoryStore

        return MemoryStore()
    if scheme in SERVERS:
        from assistant.store.postgres import PostgresStore
        from assistant.store.postgres_opening import ANSWER_SECONDS

        return PostgresStore(url, busy_seconds, answer_seconds or ANSWER_SECONDS)
    if scheme != "sqlite":
        raise StoreUnreadable(_without_password(url), "not_a_kind_of_store")
    return _open_file(_path_of(url, rest), busy_seconds)


def is_shared(url: str | None) -> bool:
    """Whether others keep their sessions in it too."""
    return url is not None and _split(url)[0] in SERVERS


def _without_password(url: str) -> str:
    return re.sub(r"//[^/@]*@", "//", url)


def _split(url: str) -> tuple[str, str]:
    found = _SCHEME.fullmatch(url)
    return (found[1].lower(), found[2]) if found else ("sqlite", url)


def _path_of(url: str, rest: str) -> Path:
    if not rest or "\0" in rest:
        raise StoreUnreadable(url, "not_a_path")
    if rest.startswith("//"):
        raise StoreUnreadable(url, "slashes_after_scheme")
    try:
        return Path(rest).expanduser()
    except RuntimeError as error:
        raise StoreUnreadable(url, "system_says", str(error)) from error


def _open_file(path: Path, busy_seconds: float) -> EventLog:
    from assistant.store.sqlite import SqliteStore

    return SqliteStore(path, busy_seconds)


def _own_file() -> Path:
    from platformdirs import user_data_path

    from assistant.store.opening import close_to_others, make_folder
    from assistant.store.reasons import named_failures

    try:
        path = user_data_path(APPLICATION, appauthor=False) / FILE_NAME
    except RuntimeError as error:  # a user without a home
        raise StoreUnreadable("~", "system_says", str(error)) from error
    with named_failures(path):
        make_folder(path.parent)
        close_to_others(path.parent)
    return path

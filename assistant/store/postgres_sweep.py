"""Removing what deleted rows leave in the files of a server's tables.

Where a row was deleted its bytes stay in the table's file until others take their place, VACUUM or not. They are gone
once the table is written anew, which keeps everybody out of it meanwhile.
"""

from collections.abc import Callable
from typing import Any

from assistant.errors import StoreUnreadable
from assistant.store.reasons import LOCKED
from assistant.store.waiting import attempts

Select = Callable[..., list[tuple[Any, ...]]]
"""Takes a statement and its values, and gives the rows. Raises StoreUnreadable."""

MOST_BYTES_ANEW = 128 * 1024**2
"""Of the tables that are written anew, with their indexes: a matter of seconds."""
SIZE_AND_FILES = """
    SELECT sum(pg_total_relation_size(name)), array_agg(pg_relation_filenode(name))
    FROM unnest(ARRAY['texts'::regclass, 'sessions'::regclass]) AS name
"""
SELECT_OLDER_READERS = """
    SELECT 1 FROM pg_stat_activity
    WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_type = 'client backend'
        AND age(backend_xmin) > age(?::xid)
"""


def write_anew(select: Select, where: str, busy_seconds: float) -> None:
    """The tables that hold free text and clients' names, without what was deleted from them.

    Raises StoreUnreadable where that couldn't be: `too_large_to_write_anew`, `access_denied` for whoever doesn't own
    the tables, `locked` where others were in the way for so many seconds.
    """
    select("VACUUM texts, events, sessions, failed_tries")
    [(size, before)] = select(SIZE_AND_FILES)
    if size > MOST_BYTES_ANEW:
        raise StoreUnreadable(where, "too_large_to_write_anew")
    _await_older_readers(select, where, busy_seconds)
    select("VACUUM (FULL) texts, sessions")
    [(_, after)] = select(SIZE_AND_FILES)
    if set(before) & set(after):  # whoever doesn't own a table gets no error, only a notice
        raise StoreUnreadable(where, "access_denied")


def _await_older_readers(select: Select, where: str, busy_seconds: float) -> None:
    """Until nobody reads as things stood before the latest deletion: a table written anew holds for them what was
    deleted since. Of those who came by another role's right the server doesn't tell, and prepared transactions and
    followers that hold old rows back aren't looked for.
    """
    [(latest,)] = select("SELECT pg_snapshot_xmax(pg_current_snapshot())::xid::text")
    for _ in attempts(busy_seconds):
        if not select(SELECT_OLDER_READERS, latest):
            return
    raise StoreUnreadable(where, LOCKED)

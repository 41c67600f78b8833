"""How long a store takes for what desks do, from a thousand sessions to a million.

    python -m tests.benchmarks.growing_store --store sqlite --sizes 1000,10000,100000,1000000

Sessions are generated straight into the tables, each with the same few events. At each size the listing of the latest,
taking up by code with the folding of what is there, appending one event, and other ways to find sessions are timed,
each many times at random sessions, and the plans of the queries are printed once at the largest size. Exit status: 1 if
anything takes more than twice as long and more than a tenth of what it would if it grew as the sessions do.
"""

import argparse
import random
import statistics
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import timedelta
from pathlib import Path

from assistant.interview.access_code import hash_code, new_code
from assistant.interview.events import OutcomeRecorded
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.state import fold
from assistant.store import sql_log
from assistant.store.postgres import PostgresStore
from assistant.store.rows import EventRow, SessionRow, fingerprint_after, rows_of, session_row_of
from assistant.store.sqlite import SqliteStore
from tests.benchmarks.killed_writers import NOON, expected_event
from tests.benchmarks.own_server import OwnServer

EVENTS = 5
TIMES = 200
BATCH = 5_000


def session_id_of(number: int) -> str:
    """Spread over the whole range of ids, as random ones are."""
    return f"{number * 0x9E3779B97F4A7C15 % 2**64:016x}{number:016x}"


def code_of(number: int) -> str:
    return new_code(lambda count: number.to_bytes(count, "big"))


def generated(first: int, last: int) -> Iterator[tuple[SessionRow, list[EventRow]]]:
    for number in range(first, last):
        session_id = session_id_of(number)
        record = SessionRecord(
            session_id=session_id,
            code_hash=hash_code(code_of(number)),
            name=None,
            created_at=NOON + timedelta(seconds=number),
        )
        yield (
            session_row_of(record),
            rows_of(session_id, 0, [expected_event(session_id, n) for n in range(1, EVENTS + 1)]),
        )


def fill_file(store: SqliteStore, first: int, last: int) -> None:
    connection = store._connection
    connection.execute("BEGIN IMMEDIATE")
    for session, rows in generated(first, last):
        connection.execute(sql_log.INSERT_SESSION, (*session, fingerprint_after("", rows)))
        connection.executemany(sql_log.INSERT_EVENT, [row[:-1] for row in rows])
        texts = [(row.session_id, row.sequence, row.text) for row in rows if row.text is not None]
        connection.executemany(sql_log.INSERT_TEXT, texts)
    connection.execute("COMMIT")


def fill_server(store: PostgresStore, first: int, last: int) -> None:
    connection = store._connection
    with connection.transaction(), connection.cursor() as cursor:
        made = list(generated(first, last))
        with cursor.copy("COPY sessions (session_id, code_hash, name, created_at, fingerprint) FROM STDIN") as copy:
            for session, rows in made:
                copy.write_row((*session, fingerprint_after("", rows)))
        with cursor.copy(
            "COPY events (session_id, sequence, event_id, schema_version, rules_fingerprint, recorded_at, actor, role,"
            " message_id, opens_message, type, payload) FROM STDIN"
        ) as copy:
            for _, rows in made:
                for row in rows:
                    copy.write_row((*row[:8], (row.message_id or "").encode(), *row[9:12]))
        with cursor.copy("COPY texts (session_id, sequence, text) FROM STDIN") as copy:
            for row in (row for _, rows in made for row in rows if row.text is not None):
                copy.write_row((row.session_id, row.sequence, row.text.encode()))


def timed(doing: Callable[[int], object], numbers: list[int]) -> float:
    """The median, in milliseconds."""
    took = []
    for number in numbers:
        begun = time.perf_counter()
        doing(number)
        took.append((time.perf_counter() - begun) * 1000)
    return statistics.median(took)


def measured(store: EventLog, size: int, chance: random.Random) -> dict[str, float]:
    numbers = chance.sample(range(size), TIMES)

    def append(number: int) -> None:
        session_id = session_id_of(number)
        last = store.last_sequence(session_id)
        store.append(session_id, last, [expected_event(session_id, last + 1)])

    def take_up(number: int) -> None:
        fold(store.read(store.find_by_code(code_of(number)).session_id))

    return {
        "list the latest 50": timed(lambda _: store.sessions(50), numbers[:50]),
        "take up by code": timed(take_up, numbers),
        "append one event": timed(append, numbers),
        "find by its beginning": timed(lambda n: store.find_by_id_prefix(session_id_of(n)[:12]), numbers),
        "outcomes of all": timed(lambda _: store.events_of(OutcomeRecorded), numbers[:50]),
        "page of ids": timed(lambda n: store.ids_after(session_id_of(n), 500), numbers[:50]),
    }


def plans(store: SqliteStore | PostgresStore) -> Iterator[str]:
    queries = {
        store.SELECT_SUMMARIES: (*sql_log.ENDED, 50),
        sql_log.SELECT_BY_CODE: ("c",),
        sql_log.SELECT_EVENTS: ("s",),
        sql_log.SELECT_LAST_SEQUENCE: ("s",),
        sql_log.SELECT_KIND: ("OutcomeRecorded",),
    }
    for query, values in queries.items():
        yield " ".join(query.split())
        if isinstance(store, SqliteStore):
            rows = store._connection.execute(f"EXPLAIN QUERY PLAN {query}", values)
            yield from (f"    {row[3]}" for row in rows)
        else:
            found = store._connection.execute(f"EXPLAIN {query.replace('?', '%s')}", values)
            yield from (f"    {row[0]}" for row in found)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--store", choices=("sqlite", "postgresql"), default="sqlite")
    parser.add_argument("--sizes", default="1000,10000,100000,1000000")
    told = parser.parse_args()
    server = OwnServer() if told.store == "postgresql" else None
    folder = tempfile.TemporaryDirectory(prefix="store")
    try:
        store = PostgresStore(server.url) if server else SqliteStore(Path(folder.name) / "sessions.db")
        with closing(store):
            grew_too_much = grow(store, [int(size) for size in told.sizes.split(",")])
    finally:
        folder.cleanup()
        if server is not None:
            server.remove()
    print("grew too much: " + (", ".join(grew_too_much) or "nothing"))
    return 1 if grew_too_much else 0


def grow(store: SqliteStore | PostgresStore, sizes: list[int]) -> list[str]:
    """Prints the figures and the plans, and gives what grew too much."""
    chance = random.Random(1)
    there = 0
    first: dict[str, float] = {}
    figures: dict[str, float] = {}
    for size in sizes:
        while there < size:
            last = min(size, there + BATCH)
            (fill_file if isinstance(store, SqliteStore) else fill_server)(store, there, last)  # type: ignore[arg-type]
            there = last
        if isinstance(store, PostgresStore):
            store._connection.execute("ANALYZE")
        figures = measured(store, size, chance)
        first = first or figures
        for name, median in figures.items():
            print(f"{size:>9} sessions  {name:<24}{median:8.3f} ms  x {median / first[name]:.2f}", flush=True)
    print("\n".join(plans(store)))
    most = max(2.0, sizes[-1] / sizes[0] / 10)
    return [name for name, median in figures.items() if median / first[name] > most]


if __name__ == "__main__":
    raise SystemExit(main())

"""Edits of one session from many sides at once: every conflict is told, and both stores end with one log.

    python -m tests.benchmarks.edits_at_once --edits 1000

Each side appends behind what it has seen; where another was quicker it is told so, and tries behind what it then sees.
What was written is then appended in the same order to a store of the other kind, and both logs and their fingerprints
are compared. Exit status: 1 if an edit is lost, doubled, or was taken without being behind what its side had seen.
"""

import argparse
import tempfile
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from uuid import uuid4

from assistant.errors import SessionMovedOn
from assistant.interview.log import EventLog
from assistant.store.postgres import PostgresStore
from assistant.store.sqlite import SqliteStore
from tests.benchmarks.own_server import OwnServer
from tests.store.samples import event, started

SIDES = 20
PATIENCE_S = 120.0


@dataclass
class Side:
    """`taken`: the ids of its edits that the store took, with the sequence they had; `told`: how often it was told that
    the session had moved on.
    """

    taken: dict[str, int] = field(default_factory=dict)
    told: int = 0

    def edit(self, store: EventLog, session_id: str, edits: int) -> None:
        for _ in range(edits):
            event_id = uuid4().hex
            seen = store.last_sequence(session_id)
            while True:
                try:
                    store.append(session_id, seen, [event(session_id, seen + 1, event_id=event_id)])
                except SessionMovedOn as moved:
                    self.told += 1
                    seen = moved.found_sequence
                else:
                    self.taken[event_id] = seen + 1
                    break


def edited(opened: list[EventLog], edits: int) -> tuple[str, list[Side]]:
    session_id = started(opened[0]).session_id
    sides = [Side() for _ in opened]
    with ThreadPoolExecutor(len(opened)) as pool:
        editing = [
            pool.submit(side.edit, store, session_id, edits // len(opened))
            for side, store in zip(sides, opened, strict=True)
        ]
    for each in editing:
        each.result()
    return session_id, sides


def wrong(log: EventLog, other: EventLog, session_id: str, sides: list[Side]) -> list[str]:
    """What isn't as it should be; and the session is kept a second time in `other`."""
    events = log.read(session_id)
    taken = {event_id: at for side in sides for event_id, at in side.taken.items()}
    found = {each.event_id: each.sequence for each in events[1:]}
    problems = [] if found == taken else ["what was taken isn't what is there"]
    if [each.sequence for each in events] != list(range(1, len(events) + 1)):
        problems.append("the order has gaps")
    other.create(log.find_by_id_prefix(session_id), events[:1])
    for each in events[1:]:
        other.append(session_id, each.sequence - 1, [each])
    if other.read(session_id) != events:
        problems.append("the logs differ")
    if other.kept_fingerprint(session_id) != log.kept_fingerprint(session_id):
        problems.append("the fingerprints differ")
    return problems


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--edits", type=int, default=1000)
    told = parser.parse_args()
    server = OwnServer()
    status = 0
    try:
        with tempfile.TemporaryDirectory(prefix="store") as folder:
            path = Path(folder) / "sessions.db"
            for kind in ("sqlite", "postgresql"):
                opened: list[EventLog] = [
                    SqliteStore(path, PATIENCE_S) if kind == "sqlite" else PostgresStore(server.url, PATIENCE_S)
                    for _ in range(SIDES)
                ]
                session_id, sides = edited(opened, told.edits)
                other: EventLog = PostgresStore(server.url) if kind == "sqlite" else SqliteStore(path)
                with closing(other):
                    problems = wrong(opened[0], other, session_id, sides)
                conflicts = sum(side.told for side in sides)
                taken = sum(len(side.taken) for side in sides)
                if taken != told.edits // SIDES * SIDES:
                    problems.append("not every edit was taken")
                print(f"{kind}: {taken} edits from {SIDES} sides taken, {conflicts} times told of another", end="; ")
                print("; ".join(problems) or "no problem")
                status |= bool(problems)
                for each in opened:
                    each.close()
    finally:
        server.remove()
    return status


if __name__ == "__main__":
    raise SystemExit(main())

"""Kills programs while they write, then looks whether anything they had acknowledged is lost.

    python tests/benchmarks/killed_writers.py --kills 200

Two programs at a time append to one store, each to a session of its own, and print what they did only
after the store returned; now and then they erase their session's text. Each is killed with SIGKILL at a
seeded moment, between its start and about a second later. Then the store is opened and compared
with what was printed. A killed program doesn't show what a power cut does: the system's own buffers
survive it. Exit status: 0 if nothing was lost and the store could always be read, else 1.
"""

import argparse
import random
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections import Counter
from contextlib import closing
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

import assistant
from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.access_code import hash_code, new_code
from assistant.interview.events import SCHEMA_VERSION, Event, SessionStarted, TextAnswered
from assistant.interview.log import SessionRecord
from assistant.store.sqlite import SqliteStore
from tests.store.samples import without_text

WRITERS = 2
LATEST_SECONDS = 1.0
BATCHES = (1, 2, 3)
BATCHES_BETWEEN_ERASURES = 40
NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


@dataclass
class Acknowledged:
    """What a program printed before it was killed."""

    session_id: str
    appended: int = 0
    erased: int = 0
    milliseconds: list[float] = field(default_factory=list)


@dataclass
class Outcome:
    kills: int = 0
    before_the_first: int = 0
    acknowledged: int = 0
    erasures: int = 0
    unacknowledged: int = 0
    lost: int = 0
    unreadable: int = 0
    milliseconds: list[float] = field(default_factory=list)


def expected_event(session_id: str, sequence: int) -> Event:
    """The event that a writer puts at this place; nothing about it is left to chance."""
    said = TextAnswered(question_id="anything_else", text=f"{sequence} of {session_id} " + "ö" * (sequence % 900))
    return Event(
        event_id=f"{session_id}-{sequence}",
        session_id=session_id,
        sequence=sequence,
        schema_version=SCHEMA_VERSION,
        rules_fingerprint="f" * 64,
        recorded_at=NOON + timedelta(seconds=sequence),
        actor="person",
        role="owner",
        message_id=f"m{sequence}",
        happening=SessionStarted(region="eu", lang="en", cavity="single") if sequence == 1 else said,
    )


def write_until_killed(path: Path, session_id: str) -> None:
    """Append for ever; one printed line for every call that returned."""
    code = new_code(lambda count: int(session_id, 16).to_bytes(count, "big"))
    store = SqliteStore(path, busy_seconds=60)
    store.create(
        SessionRecord(session_id=session_id, code_hash=hash_code(code), name=session_id, created_at=NOON),
        [expected_event(session_id, 1)],
    )
    print("appended 1 0", flush=True)
    last, batches = 1, 0
    while True:
        batches += 1
        size = BATCHES[batches % len(BATCHES)]
        events = [expected_event(session_id, n) for n in range(last + 1, last + size + 1)]
        begun = time.perf_counter()
        store.append(session_id, last, events)
        last += size
        print(f"appended {last} {(time.perf_counter() - begun) * 1000:.3f}", flush=True)
        if batches % BATCHES_BETWEEN_ERASURES == 0:
            store.erase_text(session_id)
            print(f"erased {last} 0", flush=True)


def kill_writers(path: Path, session_ids: list[str], chance: random.Random) -> list[Acknowledged]:
    """Start a writer for each session, kill each at its moment, and say what it had printed."""
    command = [sys.executable, __file__, "--write", str(path)]
    root = str(Path(assistant.__file__).parents[1])
    writers = [
        subprocess.Popen([*command, one], stdout=subprocess.PIPE, text=True, env={"PYTHONPATH": root})
        for one in session_ids
    ]
    begun = time.monotonic()
    moments = sorted((chance.uniform(0, LATEST_SECONDS), number) for number in range(len(writers)))
    try:
        for moment, number in moments:
            time.sleep(max(0.0, begun + moment - time.monotonic()))
            if writers[number].poll() is not None:
                raise RuntimeError(f"a writer ended by itself with status {writers[number].returncode}")
            writers[number].kill()
    finally:
        for writer in writers:
            writer.kill()
        lines = [writer.communicate()[0] for writer in writers]
    return [_acknowledged(one, printed) for one, printed in zip(session_ids, lines, strict=True)]


def lost_events(store: SqliteStore, known: Acknowledged) -> tuple[int, int]:
    """How many acknowledged events of a session aren't as they were, and how many nobody acknowledged.

    An erasure of the text that was begun may have been committed without being acknowledged.
    """
    try:
        kept = store.read(known.session_id)
    except SessionUnknown:
        kept = ()
    lost = max(0, known.appended - len(kept))
    for sequence, event in enumerate(kept, start=1):
        expected = expected_event(known.session_id, sequence)
        right = [without_text(expected)] if sequence <= known.erased else [expected, without_text(expected)]
        lost += event not in right
    return lost, max(0, len(kept) - known.appended)


def run(folder: Path, kills: int, seed: int) -> Outcome:
    """Kill until `kills` programs were killed; all of them write to one store in the folder."""
    chance = random.Random(seed)
    path, outcome = folder / "sessions.db", Outcome()
    everything: list[Acknowledged] = []
    while outcome.kills < kills:
        count = min(WRITERS, kills - outcome.kills)
        session_ids = [f"{outcome.kills + number + 1:032x}" for number in range(count)]
        killed = kill_writers(path, session_ids, chance)
        outcome.kills += count
        everything += killed
        _count(outcome, killed)
        _look(path, killed, outcome)
    finally_lost = Outcome()
    _look(path, everything, finally_lost)
    outcome.lost = max(outcome.lost, finally_lost.lost)
    outcome.unreadable += finally_lost.unreadable
    return outcome


def _count(outcome: Outcome, killed: list[Acknowledged]) -> None:
    for one in killed:
        outcome.acknowledged += one.appended
        outcome.erasures += one.erased > 0
        outcome.before_the_first += one.appended == 0
        outcome.milliseconds += one.milliseconds


def _look(path: Path, killed: list[Acknowledged], outcome: Outcome) -> None:
    try:
        with closing(SqliteStore(path)) as store:
            for one in killed:
                lost, unacknowledged = lost_events(store, one)
                outcome.lost += lost
                outcome.unacknowledged += unacknowledged
        with closing(sqlite3.connect(path)) as connection:
            sound = connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
            related = connection.execute("PRAGMA foreign_key_check").fetchall() == []
            outcome.unreadable += not (sound and related)
    except (StoreUnreadable, sqlite3.Error) as error:
        print(f"unreadable: {error}", file=sys.stderr)
        outcome.unreadable += 1


def _acknowledged(session_id: str, printed: str) -> Acknowledged:
    known = Acknowledged(session_id)
    counts: Counter[str] = Counter()
    for line in printed.splitlines(keepends=True):
        if not line.endswith("\n"):  # it was killed while it printed
            continue
        what, sequence, milliseconds = line.split()
        counts[what] = int(sequence)
        if float(milliseconds):
            known.milliseconds.append(float(milliseconds))
    known.appended, known.erased = counts["appended"], counts["erased"]
    return known


def _print_outcome(outcome: Outcome) -> None:
    print(f"kills           {outcome.kills}")
    print(f"  too early     {outcome.before_the_first}  (nothing acknowledged yet)")
    print(f"acknowledged    {outcome.acknowledged}  events")
    print(f"erased text     {outcome.erasures}  sessions")
    print(f"unacknowledged  {outcome.unacknowledged}  events that were committed all the same")
    print(f"lost            {outcome.lost}")
    print(f"unreadable      {outcome.unreadable}")
    if outcome.milliseconds:
        print(f"append          {statistics.median(outcome.milliseconds):.2f} ms, median, two programs at once")


def main() -> int:
    parser = argparse.ArgumentParser(description="Kill writers and look for lost events.")
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--write", nargs=2, metavar=("PATH", "SESSION"), help=argparse.SUPPRESS)
    wanted = parser.parse_args()
    if wanted.write:
        write_until_killed(Path(wanted.write[0]), wanted.write[1])
    with tempfile.TemporaryDirectory() as folder:
        outcome = run(Path(folder), wanted.kills, wanted.seed)
    _print_outcome(outcome)
    return 1 if outcome.lost or outcome.unreadable else 0


if __name__ == "__main__":
    sys.exit(main())

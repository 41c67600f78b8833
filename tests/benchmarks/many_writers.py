"""Many writers on one store: what it acknowledges in a second, and that nothing acknowledged is lost or doubled.

    python -m tests.benchmarks.many_writers --store sqlite
    python -m tests.benchmarks.many_writers --store postgresql --server-kills 10 --writer-kills 20

Each writer is a program of its own that begins its sessions one after the other and appends to each. It prints a call
only after the call returned. The server is killed with SIGKILL and started again at seeded moments, writers are killed
and replaced. Then every session is read and compared with what was printed. A killed program doesn't show what a power
cut does. Exit status: 1 if anything is lost, doubled or unreadable.
"""

import argparse
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from assistant.errors import SessionUnknown
from assistant.interview.access_code import hash_code, new_code
from assistant.interview.log import EventLog, SessionRecord
from assistant.store.postgres import PostgresStore
from assistant.store.sqlite import SqliteStore
from tests.benchmarks.killed_writers import NOON, expected_event
from tests.benchmarks.own_server import OwnServer

APPENDS = 4
"""To each session, after its first event."""
PATIENCE_S = 120.0


@dataclass
class Writer:
    """What one program printed: sessions with the events that were acknowledged, and how long each call took."""

    acknowledged: dict[str, int] = field(default_factory=dict)
    milliseconds: list[float] = field(default_factory=list)

    def read(self, lines: Sequence[str]) -> None:
        for line in lines:
            session_id, sequence, took = line.split()
            self.acknowledged[session_id] = int(sequence)
            self.milliseconds.append(float(took))


def opened(where: str) -> EventLog:
    if where.startswith("postgresql"):
        return PostgresStore(where, busy_seconds=PATIENCE_S)
    return SqliteStore(Path(where), busy_seconds=PATIENCE_S)


def write(where: str, first: int, sessions: int) -> None:
    """The sessions of the numbers from `first` on; a line for every call that returned."""
    store = opened(where)
    for number in range(first, first + sessions):
        session_id = f"{number:032x}"
        code = new_code(lambda count, number=number: number.to_bytes(count, "big"))
        record = SessionRecord(session_id=session_id, code_hash=hash_code(code), name=None, created_at=NOON)
        for sequence in range(1, APPENDS + 2):
            event = expected_event(session_id, sequence)
            begun = time.perf_counter()
            if sequence == 1:
                store.create(record, [event])
            else:
                store.append(session_id, sequence - 1, [event])
            print(session_id, sequence, f"{(time.perf_counter() - begun) * 1000:.3f}", flush=True)


class Crowd:
    """Writers that run at the same time; one that is killed is replaced by one that begins behind where it was."""

    def __init__(self, where: str, writers: int, sessions: int) -> None:
        self.where = where
        self.sessions = sessions
        self.told = [Writer() for _ in range(writers)]
        self.running: list[tuple[int, subprocess.Popen[str]]] = []
        self.killed = 0
        self._next = 1
        self._files: dict[int, Path] = {}
        self._folder = Path(tempfile.mkdtemp(prefix="writers"))

    @property
    def is_writing(self) -> bool:
        return any(process.poll() is None for _, process in self.running)

    def begin(self, writer: int, sessions: int) -> None:
        file = self._folder / f"{self._next}"
        command = [sys.executable, "-m", "tests.benchmarks.many_writers", "--write", self.where]
        with file.open("w") as out:
            process = subprocess.Popen(
                [*command, "--first", str(self._next), "--sessions", str(sessions)], stdout=out, text=True
            )
        self._next += sessions
        self._files[process.pid] = file
        self.running.append((writer, process))

    def kill_one(self, chance: random.Random) -> None:
        """Any that still runs; what it hadn't begun is done by another."""
        alive = [each for each in self.running if each[1].poll() is None]
        if not alive:
            return
        writer, process = chance.choice(alive)
        process.kill()
        process.wait()
        self.killed += 1
        self._settle(writer, process)
        done = len(
            {line.split()[0] for line in self._files[process.pid].read_text().splitlines() if line.count(" ") == 2}
        )
        left = self.sessions // 2 - done // 2
        if left > 0:
            self.begin(writer, left)

    def finish(self) -> None:
        """Wait for all. Raises RuntimeError for one that ended otherwise than by being done."""
        while self.running:
            writer, process = self.running[0]
            if process.wait() != 0:
                raise RuntimeError(f"a writer ended with status {process.returncode}")
            self._settle(writer, process)

    def _settle(self, writer: int, process: subprocess.Popen[str]) -> None:
        self.running.remove((writer, process))
        whole = self._files[process.pid].read_text()
        self.told[writer].read(whole[: whole.rfind("\n") + 1].splitlines())


def compared(where: str, told: Sequence[Writer]) -> tuple[int, int, int, int]:
    """Acknowledged events, those of them that are lost or changed, events that are there twice, and events that are
    there though nobody had acknowledged them yet.
    """
    acknowledged = lost = doubled = more = 0
    with closing(opened(where)) as store:
        for writer in told:
            for session_id, sequence in writer.acknowledged.items():
                acknowledged += sequence
                try:
                    events = store.read(session_id)
                except SessionUnknown:
                    lost += sequence
                    continue
                lost += max(0, sequence - len(events))
                lost += sum(event != expected_event(session_id, n) for n, event in enumerate(events, start=1))
                doubled += len(events) - len({event.happening for event in events})
                more += max(0, len(events) - sequence)
    return acknowledged, lost, doubled, more


def disturb(crowd: Crowd, server: OwnServer | None, server_kills: int, writer_kills: int, chance: random.Random) -> int:
    """Kills spread over the time in which the writers run, and how often the server was killed by then.

    Raises RuntimeError where the writers were done before all of them.
    """
    kinds = ["server"] * server_kills + ["writer"] * writer_kills
    chance.shuffle(kinds)
    killed = 0
    for kind in kinds:
        time.sleep(chance.uniform(0.5, 2.0))
        if not crowd.is_writing:
            raise RuntimeError(f"the writers were done when the server had been killed {killed} times")
        if kind == "server" and server is not None:
            server.kill()
            killed += 1
            time.sleep(chance.uniform(0.0, 1.0))
            server.start()
        elif kind == "writer":
            crowd.kill_one(chance)
    return killed


def run(kind: str, writers: int, sessions: int, server_kills: int, writer_kills: int, seed: int) -> int:
    """Prints a table; the exit status."""
    server = OwnServer() if kind == "postgresql" else None
    folder = tempfile.TemporaryDirectory(prefix="store")
    where = server.url if server is not None else str(Path(folder.name) / "sessions.db")
    try:
        opened(where).close()
        crowd = Crowd(where, writers, sessions)
        begun = time.monotonic()
        for writer in range(writers):
            crowd.begin(writer, sessions)
        killed = disturb(crowd, server, server_kills, writer_kills, random.Random(seed))
        crowd.finish()
        took = time.monotonic() - begun
        acknowledged, lost, doubled, more = compared(where, crowd.told)
    finally:
        if server is not None:
            server.remove()
        folder.cleanup()
    times = np.array([each for writer in crowd.told for each in writer.milliseconds])
    print(f"{kind}: {writers} writers x {sessions} sessions, server killed {killed}, writers killed {crowd.killed}")
    print(f"  acknowledged {acknowledged} in {took:.1f} s: {acknowledged / took:.0f}/s (programs' starts included)")
    print("  ms a call: p50 {:.1f}, p99 {:.1f}, longest {:.0f}".format(*np.percentile(times, [50, 99, 100])))
    print(f"  lost {lost}, doubled {doubled}, written without being acknowledged {more}")
    return 1 if lost or doubled else 0


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--store", choices=("sqlite", "postgresql"), default="sqlite")
    parser.add_argument("--writers", type=int, default=50)
    parser.add_argument("--sessions", type=int, default=200)
    parser.add_argument("--server-kills", type=int, default=0)
    parser.add_argument("--writer-kills", type=int, default=0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--write", help=argparse.SUPPRESS)
    parser.add_argument("--first", type=int, help=argparse.SUPPRESS)
    told = parser.parse_args()
    if told.server_kills and told.store != "postgresql":
        parser.error("a file has no server to kill")
    if told.write:
        write(told.write, told.first, told.sessions)
        return 0
    return run(told.store, told.writers, told.sessions, told.server_kills, told.writer_kills, told.seed)


if __name__ == "__main__":
    raise SystemExit(main())

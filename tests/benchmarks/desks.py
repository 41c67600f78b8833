"""What whole desks sustain on one shared store: answers a second, how long one takes, and what limits it.

    python -m tests.benchmarks.desks --desks 1,2,4,10 --seconds 30

Each desk is a program of its own that takes call after call without a pause and answers whatever is asked with one of
its choices, seeded. A person takes seconds for an answer; the figures say how many people two cores would serve.
"""

import argparse
import os
import random
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

import numpy as np

from assistant.desk.begin import StoredCalls
from assistant.desk.desk import Desk
from assistant.desk.layout import laid_desk
from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge
from assistant.store import open_store
from assistant.wording.languages import Languages
from tests.benchmarks.own_server import OwnServer

ROOT = Path(__file__).parents[2]
MOST_LINES = 60
"""A call that isn't over by then is left for the next one."""
DANGEROUS = 0.03
"""So often a call tells of danger."""


def answer(desk: Desk, chance: random.Random) -> str:
    question = desk.call.question if desk.call is not None else None
    if question is None:
        return ".new"
    if question.id in ("danger_now", "danger_plainly") and chance.random() > DANGEROUS:
        return str(len(question.choices))
    if question.choices:
        return str(chance.randint(1, len(question.choices)))
    if question.id == "anyone_hurt" and chance.random() > DANGEROUS:
        return "1"
    if question.id == "call_back_number":
        return "0700 900 100"
    return str(chance.randint(1, 9)) if question.kind == "number" else "as usual"


def run_desk(store: str, seconds: float, seed: int) -> None:
    """Prints the milliseconds of each line that told something, with the screen that follows it."""
    chance = random.Random(seed)
    knowledge = load_knowledge(ROOT / "rules", None)
    languages = Languages(ROOT / "locales", knowledge)
    with closing(open_store(store)) as log:
        source = StoredCalls(script_of(knowledge), log, languages, "en-GB", "en-GB", "great_britain")
        desk = Desk(source, languages.sentences("en-GB", "great_britain"))
        desk.take(".new")
        laid_desk(desk, 80, 22)
        print("ready", flush=True)
        sys.stdin.readline()
        ends, lines = time.monotonic() + seconds, 0
        while time.monotonic() < ends:
            before = desk.call.conversation.state.sequence if desk.call is not None else 0
            begun = time.perf_counter()
            over = lines > MOST_LINES or desk.call is None or desk.call.ended
            desk.take(".new" if over else answer(desk, chance))
            laid_desk(desk, 80, 22)
            lines = 0 if over else lines + 1
            if over:
                desk.calls = desk.calls[-1:]
                desk.on_line = 0
            elif desk.call is not None and desk.call.conversation.state.sequence > before:
                print(f"{(time.perf_counter() - begun) * 1000:.2f}")
            else:
                raise RuntimeError(f"refused: {desk.notices}")


def run(store: str, desks: int, seconds: float) -> None:
    command = [sys.executable, "-m", "tests.benchmarks.desks", "--run", store, "--seconds", str(seconds), "--seed"]
    running = [
        subprocess.Popen([*command, str(seed)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        for seed in range(desks)
    ]
    for each in running:
        assert each.stdout is not None
        each.stdout.readline()
    before = os.times()
    printed = []
    for each in running:
        assert each.stdin is not None
        each.stdin.write("go\n")
        each.stdin.flush()
    for each in running:
        printed.append(each.communicate()[0])
    after = os.times()
    took = np.array([float(line) for text in printed for line in text.split()])
    busy = after.children_user + after.children_system - before.children_user - before.children_system
    p50, p99 = np.percentile(took, [50, 99])
    print(
        f"{desks:>3} desks: {len(took) / seconds:6.1f} answers/s, ms p50 {p50:.0f}, p99 {p99:.0f}; "
        f"their own processor time {1000 * busy / len(took):.1f} ms an answer",
        flush=True,
    )


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--desks", default="1,2,4,10")
    parser.add_argument("--seconds", type=float, default=30)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--run", help=argparse.SUPPRESS)
    told = parser.parse_args()
    if told.run:
        run_desk(told.run, told.seconds, told.seed)
        return 0
    server = OwnServer()
    try:
        for desks in map(int, told.desks.split(",")):
            run(server.url, desks, told.seconds)
    finally:
        server.remove()
    return 0


if __name__ == "__main__":
    raise SystemExit(main())

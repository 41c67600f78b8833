"""A million random paths through the whole script, with every invariant of safety checked after every step.

    python -m tests.benchmarks.random_paths --paths 1000000 --seed 1 --processes 2
    python -m tests.benchmarks.random_paths --paths 0 --triples
    python -m tests.benchmarks.random_paths --paths 0 --led 500

Each next question is drawn from all that could come next under any belief, so the result rests on no policy; belief
itself is drawn too. `--triples` also tries every three gate answers, in every order, before every hot question.
`--led` counts the questions that the project's own choice of questions puts to random people; else no posterior is
computed here: that no belief outranks a stop is tested on the project's own verdicts. Exits with 1 if any invariant
is broken, what is still open in the rules included, or if any path was cut.
"""

import argparse
import sys
from collections.abc import Iterator
from multiprocessing import get_context
from statistics import median
from time import perf_counter

from assistant.knowledge.load import load_knowledge
from tests.conftest import ROOT
from tests.safety import still_open
from tests.safety.exhaustive import broken_by_gate_answers
from tests.safety.fast import Fast
from tests.safety.led import NO_END, questions_put
from tests.safety.real import naive_script
from tests.safety.walk import MANY_QUESTIONS, MOST_STEPS, Found, Walk
from tests.safety.watch import INVARIANTS

SHARE = 20_000
"""Paths that a process walks before it reports."""

Task = tuple[str, int, int]
"""Role, paths, seed."""


def main() -> int:
    arguments = argparse.ArgumentParser(description="Random paths through the script, watched.")
    arguments.add_argument("--paths", type=int, default=1_000_000)
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--processes", type=int, default=2)
    arguments.add_argument("--triples", action="store_true", help="also every three gate answers in every order")
    arguments.add_argument("--led", type=int, default=0, help="conversations led by the project's own policy")
    chosen = arguments.parse_args()
    began, found = perf_counter(), Found()
    for number, part in enumerate(_walked(list(_tasks(chosen.paths, chosen.seed)), chosen.processes), 1):
        found.add(part)
        _progress(found, chosen.paths, number)
    if chosen.paths:
        print_table(found, perf_counter() - began)
    broken = bool(found.broken) or found.cut > 0
    if chosen.triples:
        broken |= _triples()
    if chosen.led:
        broken |= _led(chosen.led, chosen.seed)
    return 1 if broken else 0


def _tasks(paths: int, seed: int) -> Iterator[Task]:
    """The paths in shares, the roles by turns; each share has a seed of its own."""
    roles = tuple(load_knowledge(ROOT / "rules", None).roles)
    for number, begun in enumerate(range(0, paths, SHARE)):
        yield roles[number % len(roles)], min(SHARE, paths - begun), seed * 1_000_003 + number


def _walked(tasks: list[Task], processes: int) -> Iterator[Found]:
    if processes < 2:
        yield from map(walk, tasks)
        return
    with get_context("spawn").Pool(processes) as pool:
        yield from pool.imap_unordered(walk, tasks)


def walk(task: Task) -> Found:
    """One share of the paths, by one role."""
    role, paths, seed = task
    return Walk(Fast(load_knowledge(ROOT / "rules", None), role), paths, seed).run()


def _progress(found: Found, paths: int, number: int) -> None:
    if sys.stderr.isatty():
        print(f"\r{found.paths} of {paths} paths, {number} shares", end="", file=sys.stderr, flush=True)


def print_table(found: Found, seconds: float) -> None:
    """What was walked, what was broken, and where it led."""
    if sys.stderr.isatty():
        print(file=sys.stderr)
    rows: list[tuple[str, object]] = [
        ("paths", found.paths),
        ("steps", found.steps),
        ("questions offered", found.offered),
        ("questions put, most on one path", found.longest),
        (f"paths with {MANY_QUESTIONS} questions or more", found.many),
        (f"paths cut at {MOST_STEPS} steps", found.cut),
        ("paths on which something hot was offered", found.hot),
        ("paths on which something hot was measured", found.measured),
        ("seconds", round(seconds, 1)),
        ("milliseconds a path", round(1000 * seconds / max(found.paths, 1), 3)),
    ]
    for name, figure in rows:
        print(f"{name:45} {figure:>14}")
    print("\nbroken")
    for invariant in INVARIANTS:
        print(f"  {invariant:43} {sum(n for name, n in found.broken.items() if name.startswith(invariant)):>14}")
    print("\nhow paths ended")
    for ending, times in sorted(found.endings.items(), key=lambda each: -each[1]):
        print(f"  {ending:43} {times:>14}")
    print(f"\n{'sign':30} {'raised on paths':>15} {'stopped':>15}")
    for sign_id, times in sorted(found.raised.items(), key=lambda each: -each[1]):
        print(f"{sign_id:30} {times:>15} {found.stopped[sign_id]:>15}")
    _print_breaches(found)


def _print_breaches(found: Found) -> None:
    for name, path in found.shortest.items():
        known = still_open.HOT.get(name)
        print(f"\n{name}: {found.broken[name]} times" + (f"\n  still open: {known}" if known else ""))
        print("  the shortest path seen:")
        print("".join(f"    {said}\n" for said in path), end="")


def _triples() -> bool:
    """Whether three gate answers, one after another, lead to something hot that they forbid."""
    began = perf_counter()
    broken, tried = broken_by_gate_answers(Fast(load_knowledge(ROOT / "rules", None)), 3)
    print(f"\n{tried} triples of gate answers in {perf_counter() - began:.0f} s; broken: {dict(broken) or 'nothing'}")
    return bool(broken)


def _led(number: int, seed: int) -> bool:
    """Whether a conversation led by the project's own choice of questions came to no end."""
    knowledge = load_knowledge(ROOT / "rules", None)
    put = []
    for each in questions_put(naive_script(knowledge), Fast(knowledge), number, seed):
        put.append(each)
        if sys.stderr.isatty():
            print(f"\r{len(put)} of {number} conversations", end="", file=sys.stderr, flush=True)
    many, endless = sum(each >= MANY_QUESTIONS for each in put), sum(each >= NO_END for each in put)
    print(f"\n{number} conversations led by the project: questions put, median {median(put):g}, most {max(put)};")
    print(f"{many} with {MANY_QUESTIONS} or more, {endless} without an end after {NO_END}")
    return endless > 0


if __name__ == "__main__":
    sys.exit(main())

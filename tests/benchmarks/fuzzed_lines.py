"""Feeds seeded lines, sound and broken, to a real `ovenside drive`, and counts what comes back.

    python -m tests.benchmarks.fuzzed_lines --lines 20000 --seed 1

Ends with status 1 unless every line was answered by exactly one sound line, nothing was said on standard
error, and nothing hung.
"""

import argparse
import json
import random
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from pathlib import Path

from jsonschema import Draft202012Validator

from assistant.drive.schema import protocol_schema
from tests.drive.driven import COMMAND, catalogue
from tests.drive.random_talk import fuzzed_line

HANG_S = 30


def out_validator() -> Draft202012Validator:
    schema = protocol_schema()
    return Draft202012Validator({"$defs": schema["$defs"], "$ref": "#/$defs/out"})


def fuzz(lines: int, seed: int, store: Path) -> Counter[str]:
    """Send the lines one by one, each after the answer to the one before. Counts by what came back."""
    chance = random.Random(seed)
    questions = catalogue()
    validator = out_validator()
    counts: Counter[str] = Counter()
    with tempfile.TemporaryFile() as said:
        process = subprocess.Popen(
            [*COMMAND, "--store", str(store)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=said
        )
        assert process.stdin is not None
        assert process.stdout is not None
        for _ in range(lines):
            watchdog = threading.Timer(HANG_S, process.kill)
            watchdog.start()
            process.stdin.write(fuzzed_line(questions, chance) + b"\n")
            process.stdin.flush()
            answer = process.stdout.readline()
            watchdog.cancel()
            if not answer:
                counts["gone or hung"] += 1
                break
            counts["answered"] += 1
            _count_answer(answer, validator, counts)
        process.stdin.close()
        counts["lines too many"] += len(process.stdout.read().splitlines())
        process.stdout.close()
        counts["exit status not 0"] += process.wait(HANG_S) != 0
        said.seek(0)
        errors = said.read().decode(errors="replace")
    counts["tracebacks"] += errors.count("Traceback")
    counts["lines on standard error"] += len(errors.splitlines())
    sys.stderr.write(errors[-3000:])
    return counts


def _count_answer(answer: bytes, validator: Draft202012Validator, counts: Counter[str]) -> None:
    line = json.loads(answer)
    problems = list(validator.iter_errors(line))
    counts["not by the schema"] += bool(problems)
    counts[f"type {line.get('type')}"] += 1


FAILURES = (
    "gone or hung",
    "lines too many",
    "exit status not 0",
    "tracebacks",
    "lines on standard error",
    "not by the schema",
)


def main() -> int:
    options = argparse.ArgumentParser()
    options.add_argument("--lines", type=int, default=20_000)
    options.add_argument("--seed", type=int, default=1)
    given = options.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        began = time.perf_counter()
        counts = fuzz(given.lines, given.seed, Path(folder) / "sessions.db")
    print(f"sent {given.lines} lines in {time.perf_counter() - began:.0f} s")
    for name, count in sorted(counts.items()):
        print(f"{name:>26}: {count}")
    return int(counts["answered"] != given.lines or any(counts[name] for name in FAILURES))


if __name__ == "__main__":
    sys.exit(main())

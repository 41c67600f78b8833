"""Puts randomly damaged files into a folder of rules and counts what the check must never do.

    python -m tests.benchmarks.mutated_rules --files 2000 --seed 1 [--rules FOLDER]

Counted: tracebacks, checks of more than five seconds, printed lines of another form, wrong exit statuses.
Every hundredth folder is also checked by the real command. The exit status is 1 if anything was counted.
"""

import argparse
import io
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from assistant.authoring.check import check
from tests.knowledge.broken import SOUND, english

ROOT = Path(__file__).parent.parent.parent
MOST_SECONDS = 5
REAL_COMMAND_EVERY = 100
LINE = re.compile(r"[^\n]+:\d+:\d+: [^\n]+: found [^\n]+, expected [^\n]+")
LAST_LINE = re.compile(r"1 mistake\.|[\d,]+ mistakes\.|[\d,]+ rule files read, no mistakes\.")

Mutation = Callable[[bytes, random.Random], bytes]

STRANGE = [
    *(
        "on",
        "off",
        "yes",
        "~",
        "null",
        "1:30",
        "010",
        "0x1F",
        "1_000",
        ".inf",
        "-.nan",
        "1e999",
        "9" * 400,
        "2001-01-01",
    ),
    *("{}", "[]", "{a: b}", "[a, [b, {c: d}]]", "", "''", "!!python/object:os.system x", "*a", "&a b", "<<", "|", ">"),
    *(
        "\u00a0",
        "\u200b",
        "\u2028",
        "\ufeff",
        "\x00",
        "\x07",
        "\x1b[31m",
        "\ud7ff",
        "\U0001f525",
        "ｆｕｌｌ",
        "e\u0301",
    ),
    *("%d", "{0}", "${x}", "none", "answered", "something_else", "danger_now", "rest", "percent", "-1", "1e-9", "---"),
]


class TooSlow(Exception):
    """A check took longer than it may."""


def _lines(text: bytes) -> list[bytes]:
    return text.splitlines(keepends=True) or [b""]


def flip_bytes(text: bytes, chance: random.Random) -> bytes:
    flipped = bytearray(text or b"x")
    for _ in range(chance.randint(1, 4)):
        flipped[chance.randrange(len(flipped))] ^= 1 << chance.randrange(8)
    return bytes(flipped)


def delete_line(text: bytes, chance: random.Random) -> bytes:
    lines = _lines(text)
    del lines[chance.randrange(len(lines))]
    return b"".join(lines)


def repeat_line(text: bytes, chance: random.Random) -> bytes:
    lines = _lines(text)
    lines.insert(chance.randrange(len(lines) + 1), chance.choice(lines))
    return b"".join(lines)


def swap_lines(text: bytes, chance: random.Random) -> bytes:
    lines = _lines(text)
    first, second = chance.randrange(len(lines)), chance.randrange(len(lines))
    lines[first], lines[second] = lines[second], lines[first]
    return b"".join(lines)


def indent_line(text: bytes, chance: random.Random) -> bytes:
    lines = _lines(text)
    at = chance.randrange(len(lines))
    lines[at] = (
        chance.choice([b" ", b"  ", b"\t", b"    "]) + lines[at] if chance.random() < 0.7 else lines[at].lstrip()
    )
    return b"".join(lines)


def rename_key(text: bytes, chance: random.Random) -> bytes:
    keys = list(re.finditer(rb"[\w ]+(?=:)", text))
    if not keys:
        return text
    key = chance.choice(keys)
    other = chance.choice([chance.choice(keys)[0], key[0][::-1], key[0][:-1], key[0] + b"s", key[0].upper()])
    return text[: key.start()] + other + text[key.end() :]


def replace_value(text: bytes, chance: random.Random) -> bytes:
    values = list(re.finditer(rb"(?<=[:\[,] )[^\s,\]}{]+", text))
    if not values:
        return text
    value = chance.choice(values)
    strange = chance.choice(STRANGE).encode("utf-8", "surrogatepass")
    other = chance.choice([strange, strange, chance.choice(values)[0]])
    return text[: value.start()] + other + text[value.end() :]


def truncate(text: bytes, chance: random.Random) -> bytes:
    return text[: chance.randrange(len(text) + 1)]


def insert_strange(text: bytes, chance: random.Random) -> bytes:
    at = chance.randrange(len(text) + 1)
    characters = "".join(chr(chance.choice([chance.randrange(32), chance.randrange(0x2FFF)])) for _ in range(3))
    inserted = chance.choice([*STRANGE, characters, characters]).encode("utf-8", "surrogatepass")
    return text[:at] + inserted + text[at:]


def nest_deeply(text: bytes, chance: random.Random) -> bytes:
    lines = _lines(text)
    opened = chance.choice([b"[", b"{", b"{a: ", b"- ", b"? ", b"[{"]) * chance.choice([3, 23, 24, 25, 200, 5000])
    lines.insert(chance.randrange(len(lines) + 1), chance.choice([b"", b"deep: "]) + opened + b"\n")
    return b"".join(lines)


def random_bytes(text: bytes, chance: random.Random) -> bytes:
    return chance.randbytes(chance.choice([0, 1, 50, 2000]))


MUTATIONS: tuple[Mutation, ...] = (
    flip_bytes,
    delete_line,
    repeat_line,
    swap_lines,
    indent_line,
    rename_key,
    rename_key,
    replace_value,
    replace_value,
    replace_value,
    truncate,
    insert_strange,
    nest_deeply,
    random_bytes,
)


def mutated(text: bytes, chance: random.Random) -> bytes:
    """The text after one to three mutations."""
    for _ in range(chance.choice([1, 1, 2, 3])):
        text = chance.choice(MUTATIONS)(text, chance)
    return text


@contextmanager
def time_limit(seconds: int) -> Iterator[None]:
    """Raises TooSlow within the block once the time is over; without effect where there are no such signals."""

    def over(*_: object) -> None:
        raise TooSlow

    if not hasattr(signal, "SIGALRM"):
        yield
        return
    before = signal.signal(signal.SIGALRM, over)
    signal.alarm(seconds)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


def faults_of_output(output: str, status: int) -> list[str]:
    *lines, last = output.splitlines() or [""]
    faults = [f"form: {line[:200]!r}" for line in lines if not LINE.fullmatch(line)]
    if not LAST_LINE.fullmatch(last):
        faults.append(f"form: {last[:200]!r}")
    if status != (0 if not lines and last.endswith("no mistakes.") else 1):
        faults.append(f"status: {status} after {last[:200]!r}")
    return faults


def faults_in_process(folder: Path) -> tuple[list[str], bool]:
    """What the check did to this folder that it must never do, and whether it refused the folder."""
    out = io.StringIO()
    try:
        with time_limit(MOST_SECONDS):
            status = check(folder, english(), out)
    except TooSlow:
        return ["hang: in process"], False
    except Exception:  # noqa: BLE001 - whatever it raises is what is counted
        return [f"traceback: {traceback.format_exc()}"], False
    return faults_of_output(out.getvalue(), status), status == 1


def faults_of_command(folder: Path) -> list[str]:
    command = [sys.executable, "-m", "assistant", "rules", "check", str(folder)]
    environment = os.environ | {"PYTHONIOENCODING": "utf-8"}
    try:
        done = subprocess.run(
            command, cwd=ROOT, capture_output=True, encoding="utf-8", timeout=30, check=False, env=environment
        )
    except subprocess.TimeoutExpired:
        return ["hang: the command"]
    if done.stderr:
        return [f"traceback: {done.stderr}"]
    return faults_of_output(done.stdout, done.returncode)


def run(rules: Path, files: int, seed: int, command_every: int = REAL_COMMAND_EVERY) -> Counter[str]:
    """Check so many damaged folders; faults by kind, 'changed' and 'refused'. Faults are printed."""
    chance = random.Random(seed)
    counts: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as place:
        folder = Path(shutil.copytree(rules, Path(place) / "rules"))
        paths = sorted(folder.rglob("*.yaml"))
        for number in range(1, files + 1):
            path = paths[number % len(paths)]
            whole = path.read_bytes()
            path.write_bytes(mutated(whole, chance))
            faults, refused = faults_in_process(folder)
            if command_every and number % command_every == 0:
                counts["real commands"] += 1
                faults += faults_of_command(folder)
            for fault in faults:
                counts[fault.split(":")[0]] += 1
                print(f"{path.relative_to(folder)}, number {number}: {fault}")
            counts["changed"] += path.read_bytes() != whole
            counts["refused"] += refused
            path.write_bytes(whole)
    return counts


FAULTS = ("traceback", "hang", "form", "status")


def main(words: list[str] | None = None) -> int:
    parser = argparse.ArgumentParser(description=str(__doc__).splitlines()[0])
    parser.add_argument("--files", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--rules", type=Path, default=SOUND)
    arguments = parser.parse_args(words)
    begun = time.perf_counter()
    counts = run(arguments.rules, arguments.files, arguments.seed)
    print(
        f"damaged files {arguments.files}, of which {counts['changed']} changed and {counts['refused']} refused; "
        f"real commands {counts['real commands']}"
    )
    print(", ".join(f"{fault} {counts[fault]}" for fault in FAULTS), f"in {time.perf_counter() - begun:.0f} s")
    return 1 if any(counts[fault] for fault in FAULTS) else 0


if __name__ == "__main__":
    sys.exit(main())

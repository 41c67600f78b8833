"""`ovenside drive` as another program starts it."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

COMMAND = [sys.executable, "-m", "assistant", "drive"]


class Driven:
    """A running driver on a store."""

    def __init__(self, store: Path, *words: str) -> None:
        self.process = subprocess.Popen(
            [*COMMAND, "--store", str(store), *words],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
        )

    def send(self, message: dict[str, Any]) -> None:
        assert self.process.stdin is not None
        self.process.stdin.write(json.dumps(message).encode() + b"\n")
        self.process.stdin.flush()

    def receive(self) -> dict[str, Any] | None:
        """The next line out, or None if the program is gone."""
        assert self.process.stdout is not None
        line = self.process.stdout.readline()
        return json.loads(line) if line.endswith(b"\n") else None

    def ask(self, message: dict[str, Any]) -> dict[str, Any]:
        self.send(message)
        answer = self.receive()
        assert answer is not None
        return answer

    def end(self) -> str:
        """Close its input and wait; what it said on standard error."""
        _, said = self.process.communicate(timeout=60)
        return said.decode()


def catalogue() -> dict[str, Any]:
    done = subprocess.run([*COMMAND, "--catalogue"], capture_output=True, check=True, timeout=60)
    found: dict[str, Any] = json.loads(done.stdout)
    return found

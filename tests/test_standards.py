"""The project's standards, run like tests: style, types, layers, and what stands at the top."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent

TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "CHANGELOG.md",
    "LICENSE",
    "pyproject.toml",
    "requirements.lock",
    "assistant",
    "rules",
    "tests",
    "locales",
}


@pytest.mark.parametrize(
    "command",
    [
        ["-m", "ruff", "check", "--no-cache", "."],
        ["-m", "ruff", "format", "--no-cache", "--check", "."],
        ["-m", "mypy", "--no-error-summary"],
        ["-c", "from importlinter.cli import lint_imports_command; lint_imports_command()", "--no-cache"],
    ],
    ids=["style", "format", "types", "layers"],
)
def test_the_code_keeps_the_standard(command: list[str]) -> None:
    done = subprocess.run([sys.executable, *command], cwd=ROOT, capture_output=True, text=True, timeout=280)
    assert done.returncode == 0, done.stdout + done.stderr


def test_nothing_unexpected_stands_at_the_top() -> None:
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    top = {name.split("/")[0] for name in listed.split("\0") if name}
    assert {name for name in top if not name.startswith(".")} == TOP_LEVEL


def test_every_locked_package_is_pinned() -> None:
    lines = (ROOT / "requirements.lock").read_text().splitlines()
    assert lines
    assert all("==" in line and "/" not in line for line in lines)

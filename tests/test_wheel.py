"""The built wheel carries rules and locales, and runs a conversation outside the checkout, of which it makes a PDF."""

import os
import re
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).parent.parent


def test_the_wheel_runs_a_conversation_in_an_empty_environment(tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(ROOT)],
        check=True,
        capture_output=True,
        timeout=200,
    )
    (wheel,) = tmp_path.glob("*.whl")
    environment = tmp_path / "environment"
    venv.create(environment)
    python = environment / "bin" / "python"
    locked = ROOT / "requirements.lock"
    install = ["install", "-q", "--no-compile", "--disable-pip-version-check", "-c", locked, wheel]
    subprocess.run(
        [sys.executable, "-m", "pip", "--python", python, *install],
        check=True,
        capture_output=True,
        timeout=280,
    )
    done = subprocess.run(
        [environment / "bin" / "ovenside", "--store", tmp_path / "s.db"],
        input="none\n5\ngas\n\n",
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={**os.environ, "XDG_CACHE_HOME": str(tmp_path / "cache"), "PYTHONPATH": ""},
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    assert "a registered gas engineer" in done.stdout
    assert "ovenside resume" in done.stdout
    code = re.search(r"ovenside resume (\S+)", done.stdout)
    assert code
    asked = ["summary", code[1], "--form", "pdf", "--to", tmp_path / "summary.pdf"]
    made = subprocess.run(
        [environment / "bin" / "ovenside", "--store", tmp_path / "s.db", *asked],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={**os.environ, "XDG_CACHE_HOME": str(tmp_path / "cache"), "PYTHONPATH": ""},
        timeout=60,
    )
    assert made.returncode == 0, made.stdout + made.stderr
    assert (tmp_path / "summary.pdf").read_bytes().startswith(b"%PDF-")

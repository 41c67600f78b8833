"""What tools print, for README.md: each run as it is typed, in a process of its own."""

import os
import re
import shutil
import subprocess
import sys
import tempfile
import textwrap
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parent.parent
SMALL = ROOT / "tests" / "knowledge" / "sound_rules"
"""Three causes: what is shown of them stays as it is when the project's rules grow."""
CUT = "…"
WIDTH = 118

MINUTES = "minutes: {value: 0.2, unit: minutes, source: assumed, range: [0.1, 0.5]}"
"""Questions that cost little, so that the small folder's are asked."""

CASES = {
    "came_out_pale": "answers: {browning_seen: hardly, temperature_reached: 120}\n",
    "one_side_dark": "answers: {browning_seen: on_one_side, seal_seen: looks_whole}\n",
}


@dataclass(frozen=True)
class Run:
    """One command. `typed` goes in; of what comes out, `first` to `last` lines are shown, all without them."""

    words: tuple[str, ...]
    typed: str = ""
    first: int = 0
    last: int | None = None


TOOLS: Mapping[str, Run] = {
    "reckon element": Run(("reckon", "element", "--watts", "2000", "--volts", "230")),
    "reckon oven": Run(
        ("reckon", "oven", "--way", "conventional", "--base", "1150", "--top", "900", "--celsius", "180")
    ),
    "reckon heat": Run(("reckon", "heat", "350", "f")),
    "coverage": Run(
        ("rules", "coverage", "rules", "--ovens", "5", "--cause", "clock_not_set", "--cause", "door_seal_worn"), last=18
    ),
    "compare": Run(("rules", "compare", "before", "after", "--cases", "cases", "--region", "north_isle")),
    "explain": Run(("rules", "explain", "hot_gate_passed", "rules")),
    "try": Run(("rules", "try", "rules"), typed="none\npale_below\nelectric\n", first=26, last=63),
    "assumed": Run(("rules", "assumed", "after", "--cases", "cases", "--most", "2", "--region", "north_isle")),
}


def recorded_tool(tool: str, cache: Path | None = None) -> str:
    """The command and what it printed, its lines folded. `cache`: its cache folder, an empty one without."""
    run = TOOLS[tool]
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        _lay_out(place)
        environment = {**os.environ, "PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(cache or place / "cache")}
        done = subprocess.run(
            [sys.executable, "-m", "assistant", *run.words],
            input=run.typed,
            capture_output=True,
            text=True,
            check=True,
            cwd=place,
            env=environment,
            timeout=120,
        )
    lines = done.stdout.splitlines()
    shown = lines[run.first : run.last]
    if run.first:
        shown = [CUT, *shown]
    if run.last is not None and run.last < len(lines):
        shown = [*shown, CUT]
    return "\n".join(["$ ovenside " + " ".join(run.words), *(part for line in shown for part in _folded(line))]) + "\n"


def _folded(line: str) -> list[str]:
    """The line in pieces that fit, the later ones set in."""
    inset = " " * (len(line) - len(line.lstrip()))
    return textwrap.wrap(line, WIDTH, subsequent_indent=f"{inset}  ", break_on_hyphens=False) or [""]


def _lay_out(place: Path) -> None:
    """The project's rules, a small folder before and after a change, and two cases."""
    (place / "rules").symlink_to(ROOT / "rules")
    for name, percent in (("before", 6), ("after", 18)):
        folder = place / name
        shutil.copytree(SMALL, folder)
        for path in (folder / "questions").glob("*.yaml"):
            _rewrite(path, {r"^care: \w+": "care: talk", r"^ask_when: .*\n": "", r"^minutes: .*": MINUTES})
        rate = f"base_rate: {{value: {percent}, unit: percent, source: assumed, range: [2, 24]}}"
        _rewrite(folder / "causes" / "weak_element.yaml", {r"^base_rate: .*": rate})
    (place / "cases").mkdir()
    for name, content in CASES.items():
        (place / "cases" / f"{name}.yaml").write_text(content, "utf-8")


def _rewrite(path: Path, changes: Mapping[str, str]) -> None:
    text = path.read_text("utf-8")
    for old, new in changes.items():
        text = re.sub(old, new, text, flags=re.MULTILINE)
    path.write_text(text, "utf-8")

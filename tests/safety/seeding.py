"""How a defect is seeded: a small change of the rules, the words or the program, for one check to catch."""

import shutil
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml
from yaml.emitter import Emitter
from yaml.representer import SafeRepresenter
from yaml.resolver import BaseResolver
from yaml.serializer import Serializer

from tests.conftest import ROOT
from tests.safety.checks import CHECKS, Project

Change = Callable[[Path], None]


class _Plain(Emitter, Serializer, SafeRepresenter, BaseResolver):  # type: ignore[misc]
    """Writes YAML with every scalar as it stands: no number turns into a text."""

    def __init__(self, stream: Any, **wishes: Any) -> None:
        Emitter.__init__(self, stream, width=10_000)
        Serializer.__init__(self)
        SafeRepresenter.__init__(self, sort_keys=False)
        BaseResolver.__init__(self)


def in_rules(file: str, change: Callable[[Any], Any]) -> Change:
    """A change of one file's data; `change` alters it or returns it anew."""

    def make(folder: Path) -> None:
        path = folder / "rules" / file
        data = yaml.load(path.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 - it builds texts only
        data = change(data) or data
        with path.open("w", encoding="utf-8") as stream:
            dumper = _Plain(stream)
            dumper.open()
            dumper.represent(data)
            dumper.close()

    return make


def in_words(file: str, beginning: str, line: str) -> Change:
    """The line of a file that begins so is replaced."""

    def make(folder: Path) -> None:
        path = folder / "locales" / "en-GB" / file
        lines = path.read_text("utf-8").splitlines()
        (number,) = [n for n, each in enumerate(lines) if each.startswith(beginning)]
        lines[number] = line
        path.write_text("\n".join(lines) + "\n", "utf-8")

    return make


def both(*changes: Change) -> Change:
    def make(folder: Path) -> None:
        for change in changes:
            change(folder)

    return make


def nothing(_: Path) -> None:
    """Rules and words stay as they are."""


@dataclass(frozen=True)
class Defect:
    """What is wrong, how to seed it, and what the check that is there for it must find."""

    what: str
    check: str
    finds: str
    change: Change = nothing
    patched: Callable[[], AbstractContextManager[Any]] = nullcontext


def seeded(defect: Defect, folder: Path, unseeded: Project) -> Project:
    """A copy of the rules and words with the defect; the project itself where only the program is changed."""
    if defect.change is nothing:
        return unseeded
    for name in ("rules", "locales"):
        shutil.copytree(ROOT / name, folder / name)
    defect.change(folder)
    return Project(folder / "rules", folder / "locales", unseeded.simulated)


def found_by_its_check(defect: Defect, folder: Path, unseeded: Project) -> set[str]:
    """What the check that is there for the defect finds."""
    project = seeded(defect, folder, unseeded)
    with defect.patched():
        return CHECKS[defect.check](project)


def is_caught(defect: Defect, found: set[str]) -> bool:
    return any(each.startswith(defect.finds) for each in found)

"""A rules folder -> typed entries with their places, or every mistake in it."""

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from assistant.knowledge.foreseen import FORESEEN_FILE
from assistant.knowledge.kept_entries import KeptEntries
from assistant.knowledge.learned import LEARNED_DIFF, LEARNED_FILE
from assistant.knowledge.problems import Problem, nearest_name, where_in_file
from assistant.knowledge.validation import ENTRY_FOLDERS, SINGLE_FILES, is_entry_id, typed
from assistant.knowledge.yaml_text import PathInFile, YamlText, read_yaml, shortened

__all__ = ["ANY", "ENTRY_FOLDERS", "MOST_BYTES", "SINGLE_FILES", "RulesFolder", "read_folder"]

MOST_BYTES = 200_000

ANY = "*"
"""Among `ids`: what lists them couldn't be read, so any id may exist."""

MAY_BE_MISSING = frozenset({"effects", "pairs", LEARNED_FILE, FORESEEN_FILE})
"""What isn't there where there is nothing to say."""

OTHER_ENTRIES = frozenset({"schema", "README.md", LEARNED_DIFF})


@dataclass
class RulesFolder:
    """What was read. `entries[kind][id]` are the sound ones; `ids[kind]` also holds those with mistakes.

    Entries that were `kept` have no text, so their mistakes have no place.
    """

    shown_as: str
    entries: dict[str, dict[str, Any]] = field(default_factory=dict)
    ids: dict[str, set[str]] = field(default_factory=dict)
    texts: dict[str, YamlText] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    kept: KeptEntries | None = None

    def add_problem(
        self, file: str, path: PathInFile, code: str, nearest: str | None = None, **details: str | int
    ) -> None:
        text = self.texts.get(file)
        place = text.place_of(path) if text else None
        self.problems.append(
            Problem(
                self._shown(file),
                place.line if place else 1,
                place.column if place else 1,
                "folder" if file in ("", *ENTRY_FOLDERS) else where_in_file(path),
                code,
                details,
                nearest,
            )
        )

    def add_mistakes_in_text(self, file: str, text: YamlText) -> None:
        for mistake in text.mistakes:
            line, column = mistake.place.line, mistake.place.column
            self.problems.append(Problem(self._shown(file), line, column, "file", mistake.code, mistake.details))

    def _shown(self, file: str) -> str:
        return f"{self.shown_as}/{file}" if file else self.shown_as


def read_folder(folder: Path, kept: KeptEntries | None = None) -> RulesFolder:
    """Read every file of the folder. Mistakes are in `problems`; nothing is raised for what files say."""
    read = RulesFolder(str(folder), kept=kept)
    kinds = (*ENTRY_FOLDERS, *SINGLE_FILES)
    read.ids = {kind: set() for kind in kinds}
    read.entries = {kind: {} for kind in kinds}
    if not _is_folder(folder):
        read.add_problem("", (), "no_folder")
        read.ids = {kind: {ANY} for kind in kinds}
        return read
    entries = _listed(read, "", folder)
    for entry in entries:
        _read_top_entry(read, folder, entry)
    present = {entry.name for entry in entries}
    missing = (kind for kind in kinds if kind not in present and ANY not in read.ids[kind])
    _say_what_is_missing(read, (kind for kind in missing if kind not in MAY_BE_MISSING))
    return read


def _say_what_is_missing(read: RulesFolder, names: Iterable[str]) -> None:
    for name in names:
        read.add_problem(name, (), "folder_missing" if name in ENTRY_FOLDERS else "file_missing")
        read.ids[name].add(ANY)


def _listed(read: RulesFolder, shown: str, folder: Path) -> list[Path]:
    try:
        return sorted(folder.iterdir())
    except OSError as error:
        read.add_problem(shown, (), "folder_unreadable", reason=error.strerror or str(error))
        for kind in [shown] if shown else read.ids:
            read.ids[kind].add(ANY)
        return []


def _is_folder(path: Path) -> bool:
    with suppress(OSError, ValueError):
        return path.is_dir()
    return False


def _is_file(path: Path) -> bool:
    with suppress(OSError, ValueError):
        return path.is_file()
    return False


def _read_top_entry(read: RulesFolder, folder: Path, entry: Path) -> None:
    name = entry.name
    if name in OTHER_ENTRIES or name.startswith("."):
        return
    if name in ENTRY_FOLDERS:
        if _is_folder(entry):
            for path in _listed(read, name, entry):
                _read_entry_file(read, folder, name, path)
        else:
            read.add_problem(name, (), "not_a_folder")
            read.ids[name].add(ANY)
    elif name in SINGLE_FILES:
        _read_single_file(read, name, entry)
    else:
        valid = [*ENTRY_FOLDERS, *SINGLE_FILES]
        near = nearest_name(name, valid)
        read.add_problem(name, (), "unknown_entry", near, found=shortened(name), valid=", ".join(sorted(valid)))


def _content(read: RulesFolder, file: str, path: Path) -> bytes | None:
    """What the file holds, None if it can't be used any further."""
    if not _is_file(path):
        read.add_problem(file, (), "not_a_file")
        return None
    try:
        with path.open("rb") as opened:
            content = opened.read(MOST_BYTES + 1)
    except OSError as error:
        read.add_problem(file, (), "file_unreadable", reason=error.strerror or str(error))
        return None
    if len(content) > MOST_BYTES:
        read.add_problem(file, (), "file_too_large", most=MOST_BYTES)
        return None
    return content


def _read_entry_file(read: RulesFolder, folder: Path, kind: str, path: Path) -> None:
    file = path.relative_to(folder).as_posix()
    if path.name.startswith(".") or path.name == "README.md":
        return
    entry_id = path.stem
    read.ids[kind].add(entry_id)
    if path.suffix != ".yaml":
        read.add_problem(file, (), "not_a_yaml_file")
    elif not is_entry_id(entry_id):
        read.add_problem(file, (), "file_name_not_an_id", found=shortened(entry_id))
    else:
        entry = _entry(read, file, kind, path)
        if entry is not None:
            read.entries[kind][entry_id] = entry


def _read_single_file(read: RulesFolder, name: str, path: Path) -> None:
    entry = _entry(read, name, name, path)
    if isinstance(entry, dict):
        read.ids[name].update(entry)
        read.entries[name] = entry
    elif entry is not None:
        read.ids[name].update(entry.model_fields_set)
        read.entries[name] = {"": entry}
    else:
        data = read.texts[name].data if name in read.texts and not read.texts[name].mistakes else None
        read.ids[name].update(data if isinstance(data, dict) else [ANY])


def _entry(read: RulesFolder, file: str, kind: str, path: Path) -> Any | None:
    """The entry as it was kept or as it is read now, None where there is a mistake in it."""
    content = _content(read, file, path)
    if content is None:
        return None
    kept = read.kept.entry(kind, content) if read.kept is not None else None
    if kept is not None:
        return kept
    text = read.texts[file] = read_yaml(content)
    read.add_mistakes_in_text(file, text)
    if text.mistakes:
        return None
    entry, misfits = typed(kind, text.data)
    for misfit in misfits:
        read.add_problem(file, misfit.path, misfit.code, misfit.nearest, **misfit.details)
    if entry is not None and read.kept is not None:
        read.kept.add(kind, content, entry)
    return entry

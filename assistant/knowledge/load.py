"""A rules folder -> Knowledge, by way of a cache of its compiled form."""

import contextlib
from collections.abc import Mapping, Sequence
from pathlib import Path

from assistant.errors import OvensideError
from assistant.knowledge.checks import check_all
from assistant.knowledge.danger_questions import danger_questions, with_told_signs
from assistant.knowledge.fingerprint import combined, fingerprint, sealed, unsealed, write_beside
from assistant.knowledge.foreseen import FORESEEN_FILE
from assistant.knowledge.kept_entries import KeptEntries, kept_entries
from assistant.knowledge.learned import LEARNED_FILE
from assistant.knowledge.model import Cause, Effect, Knowledge
from assistant.knowledge.problems import Problem
from assistant.knowledge.rules_folder import RulesFolder, read_folder


def read_checked(folder: Path, kept: KeptEntries | None = None) -> RulesFolder:
    """Read and check the folder; look at `problems` before use."""
    read = read_folder(folder, kept)
    check_all(read)
    return read


def knowledge_of(read: RulesFolder, mark: str) -> Knowledge:
    """The knowledge of a folder read without problems; `mark` is its fingerprint."""
    entries = read.entries
    return Knowledge(
        fingerprint=mark,
        settings=entries["belief.yaml"][""],
        ovens=entries["ovens.yaml"][""],
        observables=entries["observables"],
        questions=danger_questions(entries["danger"])
        | {name: with_told_signs(question, entries["danger"]) for name, question in entries["questions"].items()},
        effects=entries["effects"],
        causes={cause_id: _whole(cause, entries["effects"]) for cause_id, cause in entries["causes"].items()},
        pairs=entries["pairs"],
        findings=entries["findings"],
        signs=entries["danger"],
        regions=entries["regions"],
        roles=entries["roles.yaml"],
        acts=entries["acts.yaml"],
        advice=entries["advice.yaml"],
        steps=entries["steps.yaml"],
        learned=entries[LEARNED_FILE].get(""),
        foreseen=entries[FORESEEN_FILE],
    )


def _whole(cause: Cause, effects: Mapping[str, Effect]) -> Cause:
    """The cause with what its physical effect shows."""
    return cause if cause.effect is None else cause.with_effect(effects[cause.effect])


class FolderBroken(OvensideError):
    """The folder holds mistakes: `problems`, in order of file and line; not worded yet."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(f"{len(problems)} mistakes")
        self.problems = tuple(problems)


def load_knowledge(folder: Path, cache: Path | None) -> Knowledge:
    """The folder's knowledge, from its compiled form if that is kept in `cache`, else from its files.

    Of those, what was read before and hasn't changed is kept too. Mistakes are looked for anew in every file, so that
    they are said with their places. Raises FolderBroken.
    """
    mark = fingerprint(folder)
    kept = cache / f"knowledge-{combined(mark)[:32]}.json" if cache is not None else None
    if kept is not None:
        with contextlib.suppress(OSError, ValueError):
            return Knowledge.model_validate_json(unsealed(kept.read_bytes()))
    entries = kept_entries(cache, folder) if cache is not None else None
    read = read_checked(folder, entries)
    if read.problems and entries is not None:
        read = read_checked(folder)
    if read.problems:
        raise FolderBroken(read.problems)
    if entries is not None:
        entries.keep()
    knowledge = knowledge_of(read, mark)
    if kept is not None and fingerprint(folder) == mark:
        write_beside(kept, sealed(knowledge.model_dump_json(by_alias=True).encode()))
    return knowledge

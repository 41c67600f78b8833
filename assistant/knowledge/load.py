"""A rules folder -> Knowledge, by way of a cache of its compiled form."""

from hashlib import sha256
from pathlib import Path

from assistant.knowledge.checks import check_all
from assistant.knowledge.danger_questions import danger_questions
from assistant.knowledge.model import Knowledge
from assistant.knowledge.rules_folder import RulesFolder, read_folder


def fingerprint(folder: Path) -> str:
    """A digest of every YAML file below the folder, by name and content; hex, 64 characters."""
    digest = sha256()
    for path in sorted(folder.rglob("*.yaml")):
        name = path.relative_to(folder).as_posix().encode("utf-8", "surrogateescape")
        content = path.read_bytes() if path.is_file() else b""
        digest.update(b"%d %s %d " % (len(name), name, len(content)))
        digest.update(content)
    return digest.hexdigest()


def read_checked(folder: Path) -> RulesFolder:
    """Read and check the folder; look at `problems` before use."""
    read = read_folder(folder)
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
        questions=danger_questions(entries["danger"]) | entries["questions"],
        causes=entries["causes"],
        findings=entries["findings"],
        signs=entries["danger"],
        regions=entries["regions"],
        roles=entries["roles.yaml"],
        acts=entries["acts.yaml"],
        advice=entries["advice.yaml"],
        steps=entries["steps.yaml"],
    )

"""What each broken folder prints, and which messages were used for it."""

import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from assistant.wording.locale import Wording
from tests.knowledge.broken import BROKEN, LOCALES, copy_of_sound_rules, lines_printed, make_changes, read_example
from tests.knowledge.generated import GENERATED


class RecordingWording(Wording):
    """The English wording, which remembers what was said since it was last asked."""

    def __init__(self) -> None:
        super().__init__("en-GB", [path.read_text("utf-8") for path in sorted((LOCALES / "en-GB").glob("*.ftl"))])
        self._said: set[str] = set()

    def say(self, message_id: str, attribute: str | None = None, /, **arguments: str | float) -> str:
        self._said.add(message_id)
        return super().say(message_id, attribute, **arguments)

    def newly_said(self) -> frozenset[str]:
        said = frozenset(self._said)
        self._said.clear()
        return said


@cache
def recording() -> RecordingWording:
    """Read once, for reading takes longer than anything that is done with it."""
    return RecordingWording()


@dataclass(frozen=True)
class Outcome:
    lines: tuple[str, ...]
    status: int
    messages: frozenset[str]


def _outcome(change: Callable[[Path], None]) -> Outcome:
    wording = recording()
    wording.newly_said()
    with tempfile.TemporaryDirectory() as folder:
        rules = copy_of_sound_rules(Path(folder))
        change(rules)
        lines, status = lines_printed(rules, wording)
    return Outcome(tuple(lines), status, wording.newly_said())


@cache
def outcome_of_example(name: str) -> Outcome:
    changes = read_example(BROKEN / f"{name}.yaml")["changes"]
    return _outcome(lambda rules: make_changes(rules, changes))


@cache
def outcome_of_generated(name: str) -> Outcome:
    return _outcome(GENERATED[name])

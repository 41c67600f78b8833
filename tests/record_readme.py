"""Writes the example conversation into README.md, from the program itself.

python -m tests.record_readme
"""

import io
import re
import sys
from collections.abc import Sequence
from pathlib import Path

from assistant.chat.pages import Pages
from assistant.chat.screen import Paragraph, write
from assistant.chat.talk import Talk
from assistant.interview.access_code import hash_code
from assistant.interview.commands import Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge
from assistant.store.memory import MemoryStore
from assistant.wording.languages import Languages

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
MARKS = ("<!-- recorded: begin -->", "<!-- recorded: end -->")
WIDTH = 72
CODE = "7K3M-QX8D-0ZRT-5WAB"

# The invented household: a built-in oven whose cakes stay raw underneath since the weekend.
LINES: tuple[str, ...] = ()


class RecordingTerminal:
    """Types prepared lines and keeps the whole screen."""

    def __init__(self, lines: Sequence[str]) -> None:
        self._lines = iter(lines)
        self.screen = io.StringIO()

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(self.screen, paragraphs, colour=False, width=WIDTH)

    def ask(self, completions: Sequence[str]) -> str:
        line = next(self._lines, None)
        if line is None:
            self.screen.write("> \n")
            raise EOFError
        self.screen.write(f"> {line}\n")
        return line


def recorded(lines: Sequence[str] = LINES) -> str:
    """The screen after those lines were typed."""
    knowledge = load_knowledge(ROOT / "rules", None)
    languages = Languages(ROOT / "locales", knowledge)
    sentences = languages.sentences("en-GB", "great_britain")
    record = SessionRecord(session_id="0" * 32, code_hash=hash_code(CODE), name=None, created_at=utc_now())
    conversation = Conversation(script_of(knowledge), MemoryStore(), record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"), keep_at_once=False)
    terminal = RecordingTerminal(lines)
    talk = Talk(conversation, sentences, languages.listener("en-GB"), terminal, CODE)
    terminal.write(Pages(sentences).opening().paragraphs())
    talk.run(terminal.ask(()))
    return terminal.screen.getvalue()


def with_recording(readme: str) -> str:
    """The README with the conversation between its marks."""
    begin, end = (re.escape(mark) for mark in MARKS)
    block = f"{MARKS[0]}\n```text\n$ ovenside\n{recorded()}```\n{MARKS[1]}"
    return re.sub(f"{begin}.*{end}", lambda _: block, readme, flags=re.DOTALL)


def main() -> None:
    README.write_text(with_recording(README.read_text("utf-8")), "utf-8")


if __name__ == "__main__":
    sys.exit(main())

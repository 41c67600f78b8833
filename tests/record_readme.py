"""Writes the example conversation and what the rule author's tools print into README.md, from the program itself.

python -m tests.record_readme
"""

import io
import re
import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from assistant.chat.alarm import Alarm
from assistant.chat.pages import Pages
from assistant.chat.talk import Talk
from assistant.interview.access_code import hash_code
from assistant.interview.commands import Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.view import QuestionView
from assistant.reports.screen import Paragraph, write
from assistant.reports.summary.as_text import as_text
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.footing import footing_of
from assistant.reports.summary.session import Told
from assistant.store.memory import MemoryStore
from tests.recorded_call import project, recorded_call
from tests.recorded_tools import TOOLS, recorded_tool
from tests.told_household import TYPED

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
MARKS = ("<!-- recorded: begin -->", "<!-- recorded: end -->")
WIDTH = 72
CODE = "7K3M-QX8D-0ZRT-5WAB"

CALL_MARKS = ("<!-- recorded call: begin -->", "<!-- recorded call: end -->")
SUMMARY_MARKS = ("<!-- recorded summary: begin -->", "<!-- recorded summary: end -->")


class RecordingTerminal:
    """Types prepared lines and keeps the whole screen."""

    plain = False

    def __init__(self, lines: Iterable[str]) -> None:
        self._lines = iter(lines)
        self.screen = io.StringIO()

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(self.screen, paragraphs, colour=False, width=WIDTH)

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        line = next(self._lines, None)
        if line is None:
            self.screen.write("> \n")
            raise EOFError
        self.screen.write(f"> {line}\n")
        return line


def typed_in(conversation: Conversation) -> Iterator[str]:
    """What the household types to the question that is open; Enter at the verdict."""
    left = {question_id: iter(lines) for question_id, lines in TYPED.items()}
    while isinstance(view := conversation.view(), QuestionView):
        yield next(left.get(view.id, iter(())), "skip")
    yield ""


def recorded() -> tuple[str, str]:
    """The screen of that conversation, and the first page of the summary that an engineer reads of it."""
    script, languages = project()
    sentences = languages.sentences("en-GB", "great_britain")
    record = SessionRecord(session_id="0" * 32, code_hash=hash_code(CODE), name=None, created_at=utc_now())
    store = MemoryStore()
    conversation = Conversation(script, store, record)
    conversation.start(Start("householder", "great_britain", "en-GB", "single"), keep_at_once=False)
    terminal = RecordingTerminal(typed_in(conversation))
    talk = Talk(conversation, sentences, languages.listener("en-GB"), terminal, f"ovenside resume {CODE}")
    terminal.write(Pages(sentences).opening().paragraphs())
    talk.run(terminal.ask(()))
    summary = engineer_summary(Told(conversation.script, sentences, store.read(record.session_id)))
    page_one, _, _ = as_text(summary, footing_of(summary, sentences.wording), WIDTH).partition(f"\n{'=' * WIDTH}\n")
    return terminal.screen.getvalue(), page_one


def with_recording(readme: str, call: str | None = None, cache: Path | None = None) -> str:
    """The README with the conversation, its summary, a call and each tool's output, between their marks.

    `call`: played already, for it takes a while. `cache`: the tools' cache folder, for each an empty one without.
    """
    screen, page_one = recorded()
    readme = _between(readme, MARKS, f"$ ovenside\n{screen}")
    readme = _between(readme, SUMMARY_MARKS, f"$ ovenside summary {CODE}\n{page_one}[page two is left out here]\n")
    readme = _between(readme, CALL_MARKS, f"$ ovenside desk\n{call if call is not None else recorded_call()}\n")
    for tool in TOOLS:
        marks = (f"<!-- recorded {tool}: begin -->", f"<!-- recorded {tool}: end -->")
        readme = _between(readme, marks, recorded_tool(tool, cache))
    return readme


def told_call(readme: str) -> str:
    """The call as it stands in the README."""
    begin, end = (re.escape(mark) for mark in CALL_MARKS)
    found = re.search(f"{begin}\n```text\n\\$ ovenside desk\n(.*)\n```\n{end}", readme, re.DOTALL)
    assert found is not None
    return found[1]


def _between(readme: str, marks: tuple[str, str], text: str) -> str:
    begin, end = (re.escape(mark) for mark in marks)
    block = f"{marks[0]}\n```text\n{text}```\n{marks[1]}"
    found, count = re.subn(f"{begin}.*{end}", lambda _: block, readme, flags=re.DOTALL)
    assert count == 1, marks
    return found


def main() -> None:
    README.write_text(with_recording(README.read_text("utf-8")), "utf-8")


if __name__ == "__main__":
    sys.exit(main())

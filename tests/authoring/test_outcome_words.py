"""Every sentence about outcomes is there, none is left over, and none is written into the code."""

import io
import re
from pathlib import Path

from assistant.authoring.outcome_form import FIELDS
from assistant.authoring.outcome_import import Import
from assistant.authoring.outcomes import Recording
from assistant.authoring.session_list import show
from assistant.belief.outcomes import RESULTS, misfit_of
from assistant.interview.commands import RecordOutcome
from assistant.store.memory import MemoryStore
from assistant.wording.pseudo import CLOSING, OPENING, PSEUDO_LANG
from tests.authoring.visited import NOW, Typed, keep_session
from tests.interview.told import told
from tests.wording.messages import message_names

ROOT = Path(__file__).parents[2]
SOURCES = [
    *(ROOT / "assistant/authoring").glob("*outcome*.py"),
    ROOT / "assistant/interview/visit_outcome.py",
    ROOT / "assistant/authoring/learn.py",
    ROOT / "assistant/authoring/calibration_report.py",
]
ID = "a1" * 16


def test_every_sentence_that_is_called_for_is_there_and_no_other() -> None:
    text = "".join(path.read_text("utf-8") for path in SOURCES if path.name != "outcome_file.py")
    codes = {misfit_of("mended", ()), misfit_of("cancelled", ("a",)), *re.findall(r'Misfit\("\w+", "(\w+)"', text)}
    codes |= {*re.findall(r'Mistake\([^,]+, [^,]+, "(\w+)"', text), *re.findall(r'"(\w+_unknown)"', text)}
    called = {f"outcomes-{code}" for code in codes} | set(re.findall(r'"(outcomes-\w+|outcome_form-\w+)"', text))
    called |= {f"outcome_form-{field}" for field in FIELDS} | {f"result-{result}" for result in RESULTS}
    written = message_names((ROOT / "locales/en-GB/outcomes.ftl").read_text("utf-8"))
    kinds = ("outcomes-", "outcome_form-", "result-")
    there = {name for name in written if name.startswith(kinds) and not name.startswith("outcomes-line_")}
    assert called == there


def test_no_sentence_is_written_into_the_code(knowledge, languages):  # type: ignore[no-untyped-def]
    marked, out, log = languages.wording(PSEUDO_LANG), io.StringIO(), MemoryStore()
    keep_session(log, ID, told())
    asked = Typed("1", "qq", "99", "drifted", "1", "", "", "x", "1", "4111111111111111", "")
    recording = Recording(log, knowledge, marked, out)
    recording.record("a1", RecordOutcome(), NOW, asked)
    recording.record("a1", RecordOutcome(result="no_such"), NOW, None)
    recording.record("a1", RecordOutcome(), NOW, Typed(KeyboardInterrupt()))
    for table in (b"session,result\na1,mended\n", b"session,result\na1,cancelled\n", b"\xff"):
        for dry in (True, False):
            Import(log, knowledge, marked, table).run(NOW, out, dry=dry)
    show(log, languages.sentences(PSEUDO_LANG, "great_britain"), "a1", out)
    text = out.getvalue()
    assert text.count(OPENING) == text.count(CLOSING) > 40
    innermost = re.compile(f"{OPENING}[^{OPENING}{CLOSING}]*{CLOSING}")
    while innermost.search(text):
        text = innermost.sub("", text)
    assert re.findall(r"[^\W\d_]+", text) == []

"""`ovenside summary` in every form: here, into a file, and where it can't be."""

import io
import json
import subprocess
import sys
from argparse import Namespace
from pathlib import Path

import jsonschema
import pytest

from assistant.authoring.summary_commands import summarise
from assistant.authoring.summary_forms import FORMS
from assistant.cli import parser
from assistant.interview.commands import GiveAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.wording.languages import Languages
from tests.reports.summary.read_pdf import opened
from tests.reports.summary.sessions import begun

BEGINNINGS = {"text": b"Before the visit\n", "markdown": b"# Before the visit\n", "html": b"<!DOCTYPE html>\n"}
BEGINNINGS |= {"pdf": b"%PDF-", "json": b"{\n"}


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.fixture(scope="module")
def conversation(script) -> Conversation:  # type: ignore[no-untyped-def]
    return begun(script)


def summarised(conversation: Conversation, languages: Languages, out: io.TextIOBase, *words: str) -> int:
    arguments: Namespace = parser().parse_args(["summary", conversation.record.session_id[:8], *words])
    return summarise(conversation._log, conversation.script, languages, arguments, out)  # type: ignore[arg-type]


@pytest.mark.parametrize("form", list(FORMS))
def test_every_form_is_written_into_a_file(
    form: str, conversation: Conversation, languages: Languages, tmp_path: Path
) -> None:
    out, target = io.StringIO(), tmp_path / "summary"
    assert summarised(conversation, languages, out, "--form", form, "--to", str(target)) == 0
    assert target.read_bytes().startswith(BEGINNINGS[form])
    assert str(target) in out.getvalue()
    assert list(tmp_path.iterdir()) == [target]
    assert target.stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("words", [(), ("--to", "-")])
@pytest.mark.parametrize("form", [form for form in FORMS if form != "pdf"])
def test_what_is_text_is_written_here(
    form: str,
    words: tuple[str, ...],
    conversation: Conversation,
    languages: Languages,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    out = Terminal()
    assert summarised(conversation, languages, out, "--form", form, *words) == 0
    assert out.getvalue().encode().startswith(BEGINNINGS[form])
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("form", [form for form in FORMS if form not in ("pdf", "json")])
def test_every_form_that_is_read_says_which_session_and_as_of_when(
    form: str, conversation: Conversation, languages: Languages
) -> None:
    out = Terminal()
    summarised(conversation, languages, out, "--form", form)
    shown = out.getvalue().replace("\\", "")
    assert shown.count("Before the visit, session a3f9a3f9, as of 20") == 1


def test_a_pdf_is_not_written_into_a_terminal(conversation: Conversation, languages: Languages) -> None:
    out = Terminal()
    assert summarised(conversation, languages, out, "--form", "pdf") == 1
    assert out.getvalue() == "A PDF can't be shown here. Please say where to write it: --to FILE.pdf\n"


def test_a_pdf_may_be_piped(conversation: Conversation, languages: Languages) -> None:
    piped = io.BytesIO()
    out = io.TextIOWrapper(piped, encoding="utf-8")
    assert summarised(conversation, languages, out, "--form", "pdf", "--reader", "household") == 0
    (page,) = opened(piped.getvalue()).pages
    lines = page.extract_text().splitlines()
    assert lines[0] == "About your oven"
    assert lines[-2].startswith("About your oven, session a3f9a3f9, as of 20")
    assert lines[-1] == "1 of 1"


def test_what_can_not_be_written_is_a_sentence(
    conversation: Conversation, languages: Languages, tmp_path: Path
) -> None:
    out = io.StringIO()
    target = tmp_path / "none" / "summary.html"
    assert summarised(conversation, languages, out, "--form", "html", "--to", str(target)) == 1
    assert out.getvalue() == "The summary could not be written: No such file or directory.\n"


def test_the_schema_is_printed_without_a_session(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        parser().parse_args(["summary", "--schema"])
    assert ended.value.code == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(capsys.readouterr().out))


def test_no_form_brings_the_pdf_library_but_the_one() -> None:
    code = "import sys, assistant.cli; assistant.cli.parser(); import assistant.authoring.summary_forms\n"
    code += "import assistant.reports.summary.as_html, assistant.reports.summary.as_json\n"
    code += "sys.exit('reportlab' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_the_numbers_to_call_are_those_where_the_oven_stands(script: Script, languages: Languages) -> None:
    conversation = begun(script, region="germany")
    conversation.do(GiveAnswer("danger_now", ["fire"]))
    out = io.StringIO()
    assert summarised(conversation, languages, out, "--reader", "household") == 0
    here, elsewhere = (script.region(name).lines["emergency"].number for name in ("germany", "great_britain"))
    assert f"Call {here}" in out.getvalue()
    assert elsewhere not in out.getvalue()

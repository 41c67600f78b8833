"""What the README shows is what the program does."""

import re
from pathlib import Path

import pytest

from assistant.authoring.outcome_table import COLUMNS, Row, rows_of_table
from assistant.belief.outcomes import GROUPS, RESULTS
from assistant.drive.protocol import FIELDS
from assistant.drive.schema import DETAILS, VALUES, protocol_schema
from tests.record_readme import README, told_call, with_recording
from tests.recorded_call import call, recorded_call, strokes_of_ones_own

ROOT = Path(__file__).parent.parent


def test_the_recorded_conversation_is_fresh(kept: Path) -> None:
    readme = README.read_text("utf-8")
    assert with_recording(readme, told_call(readme), kept) == readme, "run: python -m tests.record_readme"
    assert "Book a visit" in readme


def test_the_recorded_call_is_fresh_and_takes_few_keys(kept: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(kept))
    readme = README.read_text("utf-8")
    assert told_call(readme) == recorded_call(), "run: python -m tests.record_readme"
    assert strokes_of_ones_own(call()) < 25


def test_ci_runs_the_readmes_test_command() -> None:
    command = next(line for line in README.read_text("utf-8").splitlines() if "[tests]" in line)
    assert command in (ROOT / ".ci" / "run").read_text("utf-8").splitlines()


def test_the_protocol_is_documented_word_by_word() -> None:
    readme = README.read_text("utf-8")
    schema = protocol_schema()["$defs"]["out"]["oneOf"]
    fields = {name for form in schema for name in form["properties"]}
    words = {*FIELDS, *VALUES, *DETAILS, *fields, "message_id"}
    assert [word for word in sorted(words) if f"`{word}`" not in readme] == []


def test_every_problem_that_a_line_may_meet_is_documented() -> None:
    readme = README.read_text("utf-8")
    sources = [path for layer in ("interview", "drive") for path in (ROOT / "assistant" / layer).glob("*.py")]
    sources += [ROOT / "assistant/wording/languages.py", ROOT / "assistant/knowledge/readings.py"]
    text = "".join(path.read_text("utf-8") for path in sources)
    codes = set(re.findall(r'Refused\(\s*"(\w+)"', text)) | set(re.findall(r'return "(\w+)", \{', text))
    in_the_chat_alone = {"measuring_not_begun", "nothing_to_measure", "not_fit_to_measure"}
    codes -= {"unknown_sign", *in_the_chat_alone}
    assert len(codes) > 25
    assert [code for code in sorted(codes) if f"`{code}`" not in readme] == []


def test_every_result_and_group_of_an_outcome_is_documented() -> None:
    readme = README.read_text("utf-8")
    assert [word for word in (*GROUPS, *RESULTS) if f"`{word}`" not in readme] == []


def test_every_column_of_a_table_of_outcomes_is_documented_and_the_example_is_read() -> None:
    readme = README.read_text("utf-8")
    assert [column for column in COLUMNS if f"`{column}`" not in readme] == []
    (example,) = re.findall(r"```csv\n(.*?)```", readme, re.DOTALL)
    rows = list(rows_of_table(example.encode()))
    assert len(rows) == 2
    assert all(isinstance(row, Row) for row in rows)

import io
import json

import pytest

from assistant.authoring.outcome_file import lines_of, read_outcomes, say_bad_lines
from tests.belief.outcomes import add_to_file, outcome
from tests.knowledge.broken import english

SOUND_LINE = json.loads(outcome().model_dump_json())


def line(**changes):
    return json.dumps(SOUND_LINE | changes)


def test_outcomes_are_read_back_as_they_were_written(tmp_path):
    path = tmp_path / "o.jsonl"
    written = (outcome(1), outcome(2, result="no_access"), outcome(1, result="back_within_30_days"))
    path.write_bytes(lines_of(written))
    assert read_outcomes(path) == (written, ())


def test_a_line_that_was_cut_off_spoils_no_other(tmp_path):
    path = tmp_path / "o.jsonl"
    add_to_file(path, outcome(1))
    with path.open("ab") as file:
        file.write(b'{"session": "12\n')
    add_to_file(path, outcome(2))
    outcomes, bad = read_outcomes(path)
    assert outcomes == (outcome(1), outcome(2))
    assert [(one.number, one.code) for one in bad] == [(2, "not_json")]


@pytest.mark.parametrize(
    ("bad", "said"),
    [
        (b"{", "it isn't JSON."),
        (b"\xff", "it isn't JSON."),
        (b"[" * 100_000, "it isn't JSON."),
        (b"[]", "it isn't a JSON object."),
        (b"{}", "“session” is missing."),
        (line(name="Ann").encode(), "“name” is no part of an outcome."),
        (line(result="part_fitted").encode(), "“result” can't be that."),
        (line(recorded_on="2026-02-30").encode(), "“recorded_on” can't be that."),
        (line(recorded_on=3).encode(), "“recorded_on” can't be that."),
        (line(evidence={"a": 1}).encode(), "“evidence” can't be that."),
        (line(causes_found=[]).encode(), "its result needs a cause in “causes_found”."),
        (line(result="cancelled").encode(), "with its result no cause can be said to be found."),
        (line(**{"a\x1b\n": 1}).encode(), "“a\N{REPLACEMENT CHARACTER}\N{REPLACEMENT CHARACTER}” is no part"),
    ],
)
def test_a_bad_line_is_named_by_its_number_and_the_others_are_kept(tmp_path, bad, said):
    path = tmp_path / "o.jsonl"
    path.write_bytes(b"\n" + line().encode() + b"\r\n" + bad + b"\n\n" + line(session="2" * 32).encode())
    outcomes, left_out = read_outcomes(path)
    assert [one.session for one in outcomes] == [outcome().session, "2" * 32]
    out = io.StringIO()
    say_bad_lines(left_out, english(), out)
    assert out.getvalue().startswith(f"Line 3 is left out: {said}")
    assert out.getvalue().count("\n") == 1

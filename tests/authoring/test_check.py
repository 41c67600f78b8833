import io

import pytest

from assistant.authoring.check import check, example_answers, problem_line, problem_lines
from assistant.interview.assess import facts_of
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.problems import Problem
from tests.knowledge.broken import SOUND, copy_of_sound_rules, english


@pytest.fixture(scope="module")
def knowledge():
    return load_knowledge(SOUND, None)


def test_an_example_is_answered_as_a_session_would_hold_it(knowledge):
    example = {
        "oven_is_off": "yes",
        "temperature_reached": "49.9",
        "functions_fitted": ("fan_heat",),
        "seal_seen": "not_sure",
        "browning_seen": "skipped",
    }
    answers = example_answers(example, knowledge)
    assert {q: (a.status, a.value) for q, a in answers.items()} == {
        "oven_is_off": ("answered", "yes"),
        "temperature_reached": ("answered", 49.9),
        "functions_fitted": ("answered", ("fan_heat",)),
        "seal_seen": ("not_sure", None),
        "browning_seen": ("skipped", None),
    }
    assert facts_of(answers, knowledge) == {
        "oven_is_off": "yes",
        "temperature_reached": 49.9,
        "functions_fitted": "answered",
        "functions_fitted__conventional": "no",
        "functions_fitted__fan_heat": "yes",
        "seal_seen": "not_sure",
        "browning_seen": "skipped",
    }


def test_no_problems_are_no_lines():
    assert list(problem_lines([], english())) == []


def test_a_line_break_in_a_name_does_not_break_the_line():
    problem = Problem("a\nb.yaml", 3, 4, "note\x1b", "not_a_number", {"found": "x\r\ny\u2028z"})
    assert problem_line(problem, english()) == (
        "a\N{REPLACEMENT CHARACTER}b.yaml:3:4: note\N{REPLACEMENT CHARACTER}: "
        "found “x\N{REPLACEMENT CHARACTER}\N{REPLACEMENT CHARACTER}y\N{REPLACEMENT CHARACTER}z”, expected a number"
    )


@pytest.mark.parametrize(
    ("details", "said"),
    [
        ({"found": "", "shape": "nothing"}, "found nothing, expected a number"),
        ({"found": "", "shape": "block"}, "found a block of keys, expected a number"),
        ({"found": "", "shape": "list"}, "found a list, expected a number"),
        ({"found": "block"}, "found “block”, expected a number"),
    ],
)
def test_what_is_no_plain_value_is_named_by_its_shape(details, said):
    assert problem_line(Problem("f", 1, 1, "note", "not_a_number", details), english()) == f"f:1:1: note: {said}"


def test_checking_twice_prints_the_same(tmp_path):
    folder = copy_of_sound_rules(tmp_path)
    (folder / "acts.yaml").write_text("a: b\nc: d\n")
    (folder / "roles.yaml").write_text("x: {}\n")
    printed = set()
    for _ in range(3):
        out = io.StringIO()
        assert check(folder, english(), out) == 1
        printed.add(out.getvalue())
    assert len(printed) == 1


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_a_terminal_of_few_characters_is_no_reason_to_stop(tmp_path, encoding):
    folder = copy_of_sound_rules(tmp_path)
    (folder / "acts.yaml").write_text("\ud7fb: b\n", "utf-8")
    written = io.BytesIO()
    out = io.TextIOWrapper(written, encoding=encoding)
    assert check(folder, english(), out) == 1
    out.flush()
    assert written.getvalue().decode(encoding).endswith("2 mistakes.\n")


def test_what_the_language_has_no_words_for_is_a_mistake_of_the_file_that_needs_them():
    out = io.StringIO()
    assert check(SOUND, english(), out, with_words=True) == 1
    *lines, _ = out.getvalue().splitlines()
    said = f"{SOUND}/questions/seal_seen.yaml:1:1: file: found no words “question-seal_seen” in the language en-GB"
    assert any(line.startswith(said) for line in lines)

import io
from xml.etree import ElementTree as Xml

import pytest

from assistant.authoring.calibration_report import report
from assistant.authoring.gathered_outcomes import gather
from assistant.store.memory import MemoryStore
from tests.belief import tiny
from tests.belief.outcomes import add_to_file, outcome
from tests.knowledge.broken import english


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "o.jsonl"
    for number, evidence in enumerate(({"browning_seen": "hardly"}, {"seal_seen": "has_gaps"}, {})):
        add_to_file(path, outcome(number, evidence=evidence))
    return path


def said(file, svg=None):
    out = io.StringIO()
    knowledge = tiny.sound_knowledge()
    status = report(knowledge, gather(MemoryStore(), knowledge, file, english(), out), svg, english(), out)
    return status, out.getvalue()


def test_scores_stand_against_those_of_the_rates_alone(file):
    status, text = said(file)
    assert status == 0
    first, heading, *lines = text.splitlines()
    assert first == "3 outcomes, each forecast with what those before it had taught."
    columns = [heading.index("with the answers"), heading.index("from rates alone")]
    for line in lines[:4]:
        assert [line[column - 1] for column in columns] == [" ", " "]
        assert all(0 < float(figure) < 10 for figure in line.rsplit(maxsplit=2)[1:])
    assert lines[5] == "What was called most likely:"
    assert sum(int(line.split(":")[1].split()[0]) for line in lines if " times, said " in line) == 3 + 3 * 4


def test_bad_lines_are_named_and_the_rest_is_scored(file):
    with file.open("a") as lines:
        lines.write("oh\n")
    status, text = said(file)
    assert status == 0
    assert text.startswith("Line 4 is left out: it isn't JSON.\n3 outcomes, each")


def test_the_picture_says_the_same_in_words(file, tmp_path):
    svg = tmp_path / "picture.svg"
    status, text = said(file, svg)
    assert status == 0
    assert text.endswith(f"The picture is in {svg}.\n")
    description = Xml.parse(svg).find("{http://www.w3.org/2000/svg}desc").text  # noqa: S314 - written just now
    assert description.endswith(text.removesuffix(f"\nThe picture is in {svg}.\n"))


def test_nothing_to_score_and_nowhere_to_draw_are_sentences(file, tmp_path):
    empty = tmp_path / "empty.jsonl"
    empty.touch()
    assert said(empty) == (1, "There is no outcome that could be counted.\n")
    status, text = said(file, tmp_path)
    assert status == 1
    assert text.endswith(f"{tmp_path} can't be written: Is a directory.\n")

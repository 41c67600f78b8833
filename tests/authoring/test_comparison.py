"""Two folders of rules over the same cases."""

import io
import json
from dataclasses import replace

import pytest

from assistant.authoring.comparison import LEAST_MOVE, Ending, Moved, differing, ending, moved
from assistant.authoring.comparison_report import cases_beside, report
from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.rules_folder import read_folder
from tests.belief import tiny
from tests.knowledge.broken import SOUND, copy_of_sound_rules, english, make_changes

CASE = "note: It bakes unevenly.\nanswers: {danger_now: [none]}\n"


@pytest.fixture
def changed(tmp_path):
    """The sound folder with one base rate doubled and one pair gone, and one case beside it."""
    folder = copy_of_sound_rules(tmp_path)
    cause = (folder / "causes" / "weak_element.yaml").read_text()
    rate = next(line for line in cause.splitlines() if line.startswith("base_rate:"))
    other = "base_rate: {value: 20, unit: percent, source: assumed, range: [1, 40]}"
    pair = next(iter((folder / "pairs").iterdir()))
    make_changes(
        folder,
        [
            {"file": "causes/weak_element.yaml", "replace": rate, "with": other},
            {"file": f"pairs/{pair.name}"},
            {"file": "causes/newcomer.yaml", "content": cause},
        ],
    )
    cases = tmp_path / "tests" / "cases"
    cases.mkdir(parents=True)
    (cases / "uneven.yaml").write_text(CASE)
    return folder


def said(before, after, cases=None, as_json=False):
    scripts = tuple(script_of(load_knowledge(folder, None)) for folder in (before, after))
    region = next(iter(scripts[0].knowledge.regions))
    out = io.StringIO()
    status = report((before, after), scripts, cases, region, english(), out, as_json=as_json)
    return status, out.getvalue()


def test_entries_that_differ_are_named_by_folder(changed):
    found = {each.kind: each for each in differing(read_folder(SOUND), read_folder(changed))}
    assert found.keys() == {"causes", "pairs"}
    assert (found["causes"].added, found["causes"].changed) == (("newcomer",), ("weak_element",))
    assert len(found["pairs"].removed) == 1
    back = {each.kind: each for each in differing(read_folder(changed), read_folder(SOUND))}
    assert (back["causes"].removed, back["pairs"].added) == (("newcomer",), found["pairs"].removed)


def test_the_same_rules_move_nothing(changed):
    status, text = said(changed, changed)
    assert status == 0
    assert text.startswith("The rules say the same")
    assert text.endswith(f"0 of 1 cases in {cases_beside(changed)} move.\n")


def test_each_moved_case_is_a_block_of_what_moves(changed):
    status, text = said(SOUND, changed)
    assert status == 0
    entries, block, count = text.split("\n\n")
    assert "  causes: added newcomer; changed weak_element" in entries.splitlines()
    name, *fields = block.splitlines()
    assert name == "uneven"
    assert fields
    assert all(" → " in field for field in fields)
    assert count.startswith("1 of 1 cases")


def test_json_says_the_same(changed):
    data = json.loads(said(SOUND, changed, as_json=True)[1])
    assert data["cases"] == 1
    (case,) = data["moved"]
    assert case["case"] == "uneven"
    assert all(case["before"]["first" if f == "probability" else f] is not None for f in case["fields"])
    assert {each["kind"] for each in data["entries"]} == {"causes", "pairs"}


def test_without_cases_only_the_entries_are_compared(changed):
    assert cases_beside(SOUND) is None
    status, text = said(changed, SOUND)
    assert status == 0
    assert text.endswith(f"There are no cases beside {SOUND}; name a folder of them with --cases.\n")
    assert said(SOUND, changed, changed) == (
        1,
        f"{changed / 'acts.yaml'} is no case: it has no “answers”, each a word or a list of words.\n",
    )


def test_every_field_that_differs_is_named_and_small_moves_of_a_probability_are_not():
    script = script_of(tiny.easily_asked())
    region = next(iter(script.knowledge.regions))
    plain = ending(script, {"answers": {}}, region)
    assert isinstance(plain, Ending)
    steps = []
    assert list(moved(script, script, {"a": {"answers": {}}}, region, lambda: steps.append(1))) == []
    assert steps == [1]
    knowledge = script.knowledge
    causes = {c: x.model_copy(update={"base_rate": tiny.figure(24.9)}) for c, x in knowledge.causes.items()}
    nearly = script_of(knowledge.model_copy(update={"causes": causes}))
    other = ending(nearly, {"answers": {}}, region)
    assert 0 < abs(plain.probability - other.probability) < LEAST_MOVE
    assert list(moved(script, nearly, {"a": {"answers": {}}}, region, lambda: None)) == []
    assert replace(plain, probability=other.probability) == other


def test_an_answer_that_only_one_folder_takes_is_said():
    script = script_of(tiny.easily_asked())
    knowledge = script.knowledge
    question = knowledge.questions["browning_seen"]
    table = {state: {**row} for state, row in question.table.items()}
    less = {
        state: {**{code: share for code, share in row.items() if code != "hardly"}, "on_one_side": "rest"}
        for state, row in table.items()
    }
    choices = {code: choice for code, choice in question.choices.items() if code != "hardly"}
    narrower = question.model_copy(update={"table": less, "choices": choices})
    questions = {**knowledge.questions, "browning_seen": narrower}
    other = script_of(knowledge.model_copy(update={"questions": questions}))
    case = {"answers": {"temperature_reached": "120", "seal_seen": "looks_whole", "browning_seen": "hardly"}}
    found = list(moved(script, other, {"pale": case}, next(iter(knowledge.regions)), lambda: None))
    assert [type(each) for each in found] == [Moved]
    assert found[0].before.refused == ()
    assert found[0].after.refused == ("browning_seen",)
    assert "refused" in found[0].fields

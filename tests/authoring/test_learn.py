import io
import shutil
import subprocess
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.authoring.gathered_outcomes import gather
from assistant.authoring.learn import difference, learn, learned_text
from assistant.belief.learning import base_rates
from assistant.knowledge.fingerprint import fingerprint
from assistant.knowledge.learned import Count, Learned, Sessions
from assistant.knowledge.load import load_knowledge
from assistant.store.memory import MemoryStore
from tests.belief.outcomes import add_to_file, outcome
from tests.knowledge.broken import copy_of_sound_rules, english

PATCH = ["patch", "-p1", "-i"]
GIT = ["git", "apply"]


@pytest.fixture
def folder(tmp_path):
    return copy_of_sound_rules(tmp_path)


@pytest.fixture
def file(tmp_path):
    """Three visits and a call: the weak element found twice, and one case back again."""
    path = tmp_path / "o.jsonl"
    for one in (
        outcome(1),
        outcome(2),
        outcome(3, result="no_fault_found"),
        outcome(4, group="solved_by_phone", result="advised", causes_found=("high_shelf",)),
        outcome(5),
        outcome(5, result="back_within_30_days"),
    ):
        add_to_file(path, one)
    return path


def learning(folder, file, **sizes):
    out = io.StringIO()
    knowledge = load_knowledge(folder, None)
    outcomes = gather(MemoryStore(), knowledge, file, english(), out, with_evidence=False)
    status = learn(folder, knowledge, outcomes, sizes, english(), out)
    return status, out.getvalue()


def applied(folder, by):
    assert shutil.which(by[0]), by
    subprocess.run([*by, "learned.diff"], cwd=folder, check=True, capture_output=True)
    return load_knowledge(folder, None)


@pytest.mark.parametrize("by", [PATCH, GIT], ids=["patch", "git"])
def test_the_diff_makes_the_file_and_then_changes_it(folder, file, by):
    assert learning(folder, file, unknown=10)[0] == 0
    first = applied(folder, by)
    assert first.learned == Learned(
        until=date(2026, 3, 31),
        sessions=Sessions(visited=4, solved_by_phone=1, unknown=10),
        counts={
            "visited": {
                "high_shelf": Count(found=0, of=3),
                "weak_element": Count(found=2, of=3),
                "worn_seal": Count(found=0, of=3),
            },
            "solved_by_phone": {
                "high_shelf": Count(found=1, of=1),
                "weak_element": Count(found=0, of=1),
                "worn_seal": Count(found=0, of=1),
            },
        },
    )
    add_to_file(file, outcome(6, causes_found=("worn_seal",), recorded_on="2026-04-30"))
    assert learning(folder, file, unknown=10)[0] == 0
    assert (folder / "learned.diff").read_text().startswith("--- a/learned.yaml\n+++ b/learned.yaml\n@@ -")
    second = applied(folder, by)
    assert second.learned.until == date(2026, 4, 30)
    assert second.learned.count("visited", "worn_seal") == Count(found=1, of=4)


def test_the_diff_applies_in_a_folder_inside_a_repository(tmp_path, file):
    subprocess.run(["git", "init", "-q", str(tmp_path)], check=True, capture_output=True)
    folder = copy_of_sound_rules(tmp_path)
    learning(folder, file)
    assert applied(folder, GIT).learned is not None


def test_the_rules_stay_as_they_are_until_somebody_applies_the_diff(folder, file):
    before, known = fingerprint(folder), load_knowledge(folder, None)
    learning(folder, file)
    assert (folder / "learned.diff").read_text().startswith("--- /dev/null\n+++ b/learned.yaml\n@@ -0,0 ")
    assert fingerprint(folder) == before
    assert load_knowledge(folder, None) == known


def test_learning_twice_counts_nothing_twice(folder, file):
    learning(folder, file, unknown=10)
    applied(folder, PATCH)
    (folder / "learned.diff").write_text("of the time before")
    status, text = learning(folder, file, unknown=10)
    assert status == 0
    assert text.endswith("No rate changes by a tenth of a percent.\nThe rules hold all of this already.\n")
    assert not (folder / "learned.diff").exists()


def test_what_changes_is_printed_with_its_interval_and_counts(folder, file):
    status, text = learning(folder, file)
    first, *rows, last = text.splitlines()
    assert status == 0
    assert first == (
        "Outcomes until 2026-03-31. Sessions: 4 visited, 1 solved by phone, 0 of which nobody knows what came; "
        "these keep the expert's rates."
    )
    (weak,) = [row for row in rows if row.startswith("weak_element")]
    known = load_knowledge(folder, None)
    learned = applied(folder, PATCH)
    assert weak.startswith(f"weak_element   3.0 % → {base_rates(learned)['weak_element'] * 100:4.1f} %  (")
    assert weak.endswith(" %)  2 of 3 visited, 0 of 1 solved by phone")
    assert base_rates(known)["weak_element"] == pytest.approx(0.03)
    assert last == f"Nothing is changed yet. Look at {folder / 'learned.diff'}; then, in the folder of rules: " + (
        "patch -p1 < learned.diff"
    )


def test_a_group_without_an_outcome_that_counts_is_named(folder, tmp_path):
    path = tmp_path / "visits.jsonl"
    add_to_file(path, outcome(1))
    _, text = learning(folder, path, solved_by_phone=20)
    assert "Of the sessions “solved_by_phone” no outcome is counted." in text
    _, text = learning(folder, path)
    assert "no outcome is counted" not in text


def test_bad_lines_and_causes_that_are_gone_are_named_and_nothing_else_is_lost(folder, file):
    with file.open("a") as lines:
        lines.write("oh\n")
    add_to_file(file, outcome(7, causes_found=("gone_since", "something_else")))
    status, text = learning(folder, file)
    assert status == 0
    assert text.startswith(
        "Line 7 is left out: it isn't JSON.\n“gone_since” is no cause of these rules, and is counted"
    )
    assert applied(folder, PATCH).learned.count("visited", "weak_element") == Count(found=2, of=4)


@pytest.mark.parametrize("sizes", [{"unknown": -1}, {"visited": 3}, {"solved_by_phone": 10**30}])
def test_numbers_of_sessions_that_can_not_be_are_refused(folder, file, sizes):
    status, text = learning(folder, file, **sizes)
    ((group, size),) = sizes.items()
    assert status == 1
    assert text.startswith(f"The sessions “{group}” can't be {size}. Give a number from ")
    assert not (folder / "learned.diff").exists()


def test_without_an_outcome_that_counts_nothing_is_written(folder, tmp_path):
    path = tmp_path / "o.jsonl"
    add_to_file(path, outcome(result="cancelled"))
    assert learning(folder, path) == (1, "There is no outcome that could be counted.\n")
    assert not (folder / "learned.diff").exists()


def test_a_diff_that_can_not_be_written_is_a_sentence(folder, file):
    (folder / "learned.diff").mkdir()
    status, text = learning(folder, file)
    assert status == 1
    assert text.endswith(f"{folder / 'learned.diff'} can't be written: Is a directory.\n")


@given(old=some.text("ab\n\r\u2028", max_size=12), new=some.text("ab\n\r\u2028", min_size=1, max_size=12))
def test_any_text_is_made_of_any_other(tmp_path_factory, old, new):
    folder = tmp_path_factory.mktemp("texts")
    (folder / "learned.yaml").write_bytes(old.encode())
    change = difference(old, new)
    assert (change == "") == (old == new)
    (folder / "learned.diff").write_bytes(change.encode())
    if change:
        subprocess.run([*GIT, "--whitespace=nowarn", "learned.diff"], cwd=folder, check=True, capture_output=True)
    assert (folder / "learned.yaml").read_bytes() == new.encode()


def test_the_text_begins_with_what_it_is():
    learned = Learned(until=date(2026, 1, 2), sessions=Sessions(visited=1, solved_by_phone=0, unknown=0), counts={})
    first, *lines = learned_text(learned).splitlines()
    assert first.startswith("# What came of past sessions")
    assert lines == ["until: 2026-01-02", "sessions: {visited: 1, solved_by_phone: 0, unknown: 0}"]

"""Fingerprints, and the cache of the compiled form."""

import json
from datetime import date

import pytest

from assistant.knowledge import load
from assistant.knowledge.fingerprint import MOST_KEPT, combined, fingerprint, sealed, unsealed, write_beside
from assistant.knowledge.load import FolderBroken, load_knowledge
from tests.knowledge.broken import copy_of_sound_rules


@pytest.fixture
def folder(tmp_path):
    return copy_of_sound_rules(tmp_path)


@pytest.fixture
def cache(tmp_path):
    return tmp_path / "cache"


@pytest.fixture
def readings(monkeypatch):
    """The folders that were read and checked, rather than taken from the cache."""
    read = []
    real = load.read_checked

    def counting(folder, *kept):
        read.append(folder)
        return real(folder, *kept)

    monkeypatch.setattr(load, "read_checked", counting)
    return read


def compiled_form(cache):
    (kept,) = cache.glob("knowledge-*.json")
    return kept


def test_the_compiled_form_is_the_same_knowledge(folder, cache, readings):
    first = load_knowledge(folder, cache)
    second = load_knowledge(folder, cache)
    assert len(readings) == 1
    assert first == second
    assert [list(first.questions), list(first.causes)] == [list(second.questions), list(second.causes)]
    assert first == load_knowledge(folder, None)


def test_what_was_learned_is_part_of_the_knowledge_and_of_its_compiled_form(folder, cache, readings):
    assert load_knowledge(folder, cache).learned is None
    (folder / "learned.yaml").write_text(
        "until: 2026-03-31\nsessions: {visited: 9, solved_by_phone: 4, unknown: 0}\n"
        "counts: {visited: {weak_element: {found: 2, of: 7}}}\n"
    )
    first, second = load_knowledge(folder, cache), load_knowledge(folder, cache)
    assert len(readings) == 2
    assert first == second
    assert first.learned.until == date(2026, 3, 31)
    assert first.learned.sessions.total == 13
    assert (first.learned.count("visited", "weak_element").of, first.learned.count("visited", "worn_seal").of) == (7, 0)


def test_a_diff_that_waits_to_be_looked_at_is_no_mistake_and_no_rule(folder):
    before = load_knowledge(folder, None)
    (folder / "learned.diff").write_text("--- a/learned.yaml\n")
    assert load_knowledge(folder, None) == before


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [("causes/weak_element.yaml", "value: 3", "value: 4"), ("acts.yaml", "middle shelf\n", "middle shelf.\n")],
)
def test_a_changed_file_is_noticed(folder, cache, readings, file, old, new):
    before = load_knowledge(folder, cache)
    path = folder / file
    path.write_text(path.read_text().replace(old, new))
    after = load_knowledge(folder, cache)
    assert len(readings) == 2
    assert before.fingerprint != after.fingerprint
    assert before != after


def test_a_renamed_an_added_and_a_removed_file_are_noticed(folder):
    marks = [fingerprint(folder)]
    path = folder / "regions" / "north_isle.yaml"
    path = path.rename(path.with_name("south_isle.yaml"))
    marks.append(fingerprint(folder))
    (folder / "regions" / "east_isle.yaml").write_text("note: x\n")
    marks.append(fingerprint(folder))
    path.unlink()
    marks.append(fingerprint(folder))
    assert len(set(marks)) == 4


def test_content_that_moves_from_one_file_to_the_next_is_noticed(tmp_path):
    marks = set()
    for first, second in (("ab", "c"), ("a", "bc"), ("abc", "")):
        (tmp_path / "1.yaml").write_text(first)
        (tmp_path / "2.yaml").write_text(second)
        marks.add(fingerprint(tmp_path))
    assert len(marks) == 3


def test_other_files_and_times_are_no_change(folder):
    before = fingerprint(folder)
    (folder / "README.md").write_text("x")
    (folder / "acts.yaml").touch()
    assert fingerprint(folder) == before


def test_a_fingerprint_differs_from_its_parts_in_order():
    assert combined("a", "b") == combined("a", "b")
    assert len({combined("a", "b"), combined("b", "a"), combined("ab"), combined("a")}) == 4


@pytest.mark.parametrize(
    "damage",
    [
        lambda content: b"",
        lambda content: content[:-100],
        lambda content: b"\xff" + content,
        lambda content: content.replace(b"weakly", b"weakLy"),
        lambda content: b"{}",
        lambda content: sealed(b"{}"),
        lambda content: sealed(b"[" * 100_000),
        lambda content: sealed(json.dumps({**json.loads(unsealed(content)), "causes": 3}).encode()),
    ],
    ids=["empty", "cut", "byte", "letter", "unsealed", "sealed_nothing", "sealed_brackets", "sealed_other_type"],
)
def test_a_damaged_cache_file_is_made_again(folder, cache, readings, damage):
    whole = load_knowledge(folder, cache)
    kept = compiled_form(cache)
    content = kept.read_bytes()
    damaged = damage(content)
    assert damaged != content
    kept.write_bytes(damaged)
    assert load_knowledge(folder, cache) == whole
    assert len(readings) == 2
    assert kept.read_bytes() == content


def test_a_cache_that_can_not_be_written_is_no_mistake(folder, tmp_path):
    (tmp_path / "file").write_text("in the way")
    for cache in (tmp_path / "file", tmp_path / "file" / "below"):
        assert load_knowledge(folder, cache).causes.keys() == {"weak_element", "worn_seal", "high_shelf"}
    assert (tmp_path / "file").read_text() == "in the way"


def test_a_write_that_fails_leaves_nothing_behind(tmp_path):
    target = tmp_path / "kept.json"
    target.mkdir()
    (target / "full").touch()
    write_beside(target, b"x")
    assert list(tmp_path.iterdir()) == [target]


def test_only_the_latest_files_are_kept(tmp_path):
    for number in range(MOST_KEPT + 5):
        write_beside(tmp_path / f"{number:02}.json", b"x")
    kept = {path.name for path in tmp_path.iterdir()}
    assert len(kept) == MOST_KEPT
    assert f"{MOST_KEPT + 4:02}.json" in kept


def test_a_broken_folder_is_refused_with_its_problems_and_never_kept(folder, cache):
    (folder / "acts.yaml").write_text("")
    with pytest.raises(FolderBroken) as caught:
        load_knowledge(folder, cache)
    assert [problem.code for problem in caught.value.problems] == ["empty_file"]
    assert not cache.exists()


def test_a_missing_folder_is_refused(tmp_path, cache):
    with pytest.raises(FolderBroken) as caught:
        load_knowledge(tmp_path / "nowhere", cache)
    assert [problem.code for problem in caught.value.problems] == ["no_folder"]


def test_knowledge_can_not_be_changed(folder):
    knowledge = load_knowledge(folder, None)
    with pytest.raises(ValueError, match="frozen"):
        knowledge.causes["weak_element"].note = "other"


def test_the_danger_questions_come_first_and_name_every_sign(folder):
    knowledge = load_knowledge(folder, None)
    assert list(knowledge.questions)[:2] == ["danger_now", "danger_plainly"]
    assert list(knowledge.questions["danger_now"].choices) == ["gas_smell", "burning_smell", "tripping", "none"]
    assert list(knowledge.questions["danger_plainly"].choices) == ["burning_smell", "none"]
    assert {f"sign_{sign_id}" for sign_id in knowledge.signs} < set(knowledge.questions)
    assert knowledge.questions["sign_gas_smell"].choices["smells"].signals == "gas_smell"
    assert knowledge.questions["sign_gas_smell"].choices["not_now"].signals is None

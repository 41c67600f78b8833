"""Entries of unchanged files are kept; what is loaded is what the files say, and mistakes keep their places."""

import shutil

import pytest

from assistant.knowledge import rules_folder
from assistant.knowledge.load import FolderBroken, load_knowledge
from tests.knowledge.broken import SOUND


@pytest.fixture
def folders(tmp_path):
    shutil.copytree(SOUND, tmp_path / "rules")
    return tmp_path / "rules", tmp_path / "cache"


@pytest.fixture
def parsed(monkeypatch):
    """The texts that were parsed."""
    seen = []

    def read_yaml(content):
        seen.append(content)
        return real(content)

    real = rules_folder.read_yaml
    monkeypatch.setattr(rules_folder, "read_yaml", read_yaml)
    return seen


def edit(rules, old, new):
    file = next(path for path in sorted((rules / "causes").glob("*.yaml")) if old in path.read_text("utf-8"))
    file.write_text(file.read_text("utf-8").replace(old, new, 1), "utf-8")
    return file


def test_one_edited_file_costs_one_parse(folders, parsed):
    rules, cache = folders
    load_knowledge(rules, cache)
    assert len(parsed) > 5
    parsed.clear()
    file = edit(rules, "note: ", "note: Edited. ")
    edited = load_knowledge(rules, cache)
    assert parsed == [file.read_bytes()]
    assert edited == load_knowledge(rules, None)
    assert "Edited." in edited.causes[file.stem].note


def test_a_file_that_is_gone_is_gone(folders):
    rules, cache = folders
    before = load_knowledge(rules, cache)
    pairs = sorted((rules / "pairs").glob("*.yaml"))
    pairs[0].unlink()
    assert load_knowledge(rules, cache).pairs.keys() == before.pairs.keys() - {pairs[0].stem}


def test_mistakes_are_said_with_their_places_whatever_is_kept(folders):
    rules, cache = folders
    load_knowledge(rules, cache)
    edit(rules, "mended_by: ", "mended_by: no_")
    with pytest.raises(FolderBroken) as kept:
        load_knowledge(rules, cache)
    with pytest.raises(FolderBroken) as anew:
        load_knowledge(rules, None)
    assert kept.value.problems == anew.value.problems


def test_a_mistake_between_files_has_its_place_in_an_unchanged_one(folders):
    rules, cache = folders
    knowledge = load_knowledge(rules, cache)
    name = next(
        name for name, cause in knowledge.causes.items() if any(name in p.causes for p in knowledge.pairs.values())
    )
    (rules / "causes" / f"{name}.yaml").unlink()
    with pytest.raises(FolderBroken) as found:
        load_knowledge(rules, cache)
    assert any(problem.file.endswith(".yaml") and problem.line > 1 for problem in found.value.problems)


@pytest.mark.parametrize("damage", [b"", b"{}", b"x" * 65 + b"\n{}"])
def test_a_damaged_copy_is_read_over(folders, damage):
    rules, cache = folders
    load_knowledge(rules, cache)
    for kept in cache.iterdir():
        kept.write_bytes(damage)
    assert load_knowledge(rules, cache) == load_knowledge(rules, None)

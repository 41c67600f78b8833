"""Files that no editor would write, and disks that refuse."""

import os
from pathlib import Path

import pytest

from tests.knowledge.broken import copy_of_sound_rules, lines_printed
from tests.knowledge.generated import GENERATED
from tests.knowledge.recording import outcome_of_generated

EXPECTED = {
    "no_folder": ["RULES:1:1: folder: found no such folder, expected a folder of rules"],
    "too_large": [
        "RULES/causes/weak_element.yaml:1:1: file: found a file of more than 200,000 bytes, expected a small text file"
    ],
    "keys_within_keys": [
        "RULES/causes/weak_element.yaml:1:3: file: found a block or a list in the place of a key, expected a word"
    ],
    "folder_named_like_a_file": [
        "RULES/acts.yaml:1:1: file: found something that isn't a file, expected a text file",
        "RULES/causes/bent_door.yaml:1:1: file: found something that isn't a file, expected a text file",
    ],
    "links_in_a_circle": [
        "RULES/causes/bent_door.yaml:1:1: file: found something that isn't a file, expected a text file",
        "RULES/regions:1:1: folder: found something that isn't a folder, expected a folder of rule files",
        "RULES/roles.yaml:1:1: file: found something that isn't a file, expected a text file",
    ],
    "too_many_antecedents": ["RULES/findings/demanding.yaml:1:1: file: found 13 conditions, expected at most 12"],
    "too_many_alternatives": ["RULES/findings/broad.yaml:1:1: file: found 81 alternatives, expected at most 64"],
}


@pytest.mark.parametrize("name", EXPECTED)
def test_an_awkward_folder_prints_exactly(name):
    outcome = outcome_of_generated(name)
    assert list(outcome.lines[:-1]) == EXPECTED[name]
    assert outcome.status == 1


@pytest.mark.parametrize("name", ["square_brackets", "curly_brackets"])
def test_ten_thousand_open_brackets_are_one_mistake(name):
    line, count = outcome_of_generated(name).lines
    assert line.endswith("file: found blocks nested more than 24 deep, expected fewer")
    assert count == "1 mistake."


@pytest.mark.timeout(90)  # against hanging; how long it takes hangs on the machine
@pytest.mark.parametrize("name", GENERATED)
def test_a_generated_folder_is_refused(name):
    assert outcome_of_generated(name).status == 1


@pytest.mark.parametrize(
    "content",
    [
        "same: {}\n" * 20_000,
        "".join(f"k{n}:\n" for n in range(14_000)) * 2,
        "".join(f"key_{n}: 1\n" for n in range(12_000)),
        "states: [" + "same, " * 30_000 + "]\n",
        "states: [" + "{}, " * 40_000 + "]\n",
        "states: [" + ", ".join(f"s{n}" for n in range(25_000)) + "]\n",
        "note: " + "x" * 190_000 + "\nstates: " + "y" * 5_000 + "\n",
        "x" * 100_000 + ": 1\n",
    ],
    ids=["one_key_again", "all_keys_again", "unknown_keys", "states_again", "blocks", "states", "long", "long_key"],
)
@pytest.mark.timeout(90)
def test_the_largest_files_are_checked(tmp_path, content):
    folder = copy_of_sound_rules(tmp_path)
    (folder / "observables" / "heat.yaml").write_text(content)
    lines, status = lines_printed(folder)
    assert status == 1
    assert all(len(line) < 1000 for line in lines)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="nothing is unreadable here")
def test_a_file_without_permission_is_one_mistake(tmp_path):
    folder = copy_of_sound_rules(tmp_path)
    (folder / "acts.yaml").chmod(0)
    lines, _ = lines_printed(folder)
    assert lines == [
        "RULES/acts.yaml:1:1: file: found a file that can't be read (Permission denied), expected a text file",
        "1 mistake.",
    ]


def test_a_disk_that_refuses_a_file_is_one_mistake(tmp_path, monkeypatch):
    folder = copy_of_sound_rules(tmp_path)
    real_open = Path.open

    def refusing_open(path, *arguments, **options):
        if path.name == "worn_seal.yaml":
            raise PermissionError(13, "Permission denied")
        return real_open(path, *arguments, **options)

    monkeypatch.setattr(Path, "open", refusing_open)
    lines, _ = lines_printed(folder)
    assert lines == [
        "RULES/causes/worn_seal.yaml:1:1: file: found a file that can't be read (Permission denied), "
        "expected a text file",
        "1 mistake.",
    ]


@pytest.mark.parametrize("name", ["", "causes", "findings"])
def test_a_disk_that_refuses_a_folder_is_one_mistake(tmp_path, monkeypatch, name):
    folder = copy_of_sound_rules(tmp_path)
    real_listing = Path.iterdir

    def refusing_listing(path):
        if path == folder / name:
            raise PermissionError(13, "Permission denied")
        return real_listing(path)

    monkeypatch.setattr(Path, "iterdir", refusing_listing)
    lines, _ = lines_printed(folder)
    shown = f"RULES/{name}".rstrip("/")
    assert lines == [
        f"{shown}:1:1: folder: found a folder that can't be read (Permission denied), expected a folder of rule files",
        "1 mistake.",
    ]


def test_a_file_name_that_is_not_text_is_printable(tmp_path):
    folder = copy_of_sound_rules(tmp_path)
    try:
        Path(os.fsdecode(bytes(folder / "causes") + b"/b\xff\x07.yaml")).write_text("x: y\n")
    except OSError:
        pytest.skip("this disk only takes names that are text")
    lines, status = lines_printed(folder)
    assert status == 1
    assert lines[0].startswith("RULES/causes/b\N{REPLACEMENT CHARACTER}\N{REPLACEMENT CHARACTER}.yaml:1:1: file: ")
    assert all(line.isprintable() for line in lines)

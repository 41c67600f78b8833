"""The tools as they are typed, each in a process of its own."""

import os
import subprocess
import sys

import pytest

from assistant.authoring.rule_commands import OPTIONS
from assistant.cli import parser
from tests.conftest import ROOT
from tests.knowledge.broken import SOUND


@pytest.fixture
def run(tmp_path, kept):
    """Runs `ovenside rules` with its own data folder."""
    environment = {**os.environ, "XDG_DATA_HOME": str(tmp_path / "data"), "XDG_CACHE_HOME": str(kept)}

    def run(*words, typed=""):
        done = subprocess.run(
            [sys.executable, "-m", "assistant", "rules", *words],
            input=typed,
            capture_output=True,
            text=True,
            timeout=120,
            cwd=ROOT,
            env=environment,
        )
        assert "Traceback" not in done.stderr, done.stderr
        return done

    return run


@pytest.mark.parametrize("tool", OPTIONS)
def test_every_tool_has_help_and_says_what_it_is(tool, capsys):
    with pytest.raises(SystemExit) as left:
        parser().parse_args(["rules", tool, "--help"])
    assert left.value.code == 0
    said = capsys.readouterr().out
    assert f"usage: ovenside rules {tool}" in said
    named = [name for name, _ in OPTIONS[tool] if name.startswith("--")]
    assert all(name in said for name in named)


@pytest.mark.parametrize(
    ("words", "reason"),
    [
        (("coverage", "--ovens", "0"), "'0' isn't a whole number from 1 on"),
        (("coverage", "--ovens", "many"), "'many' isn't a whole number from 1 on"),
        (("coverage", "--seed", "-1"), "'-1' isn't a whole number of at most nine digits"),
        (("coverage", "--mistakes", "120%"), "'120%' isn't a share: write 0.05 or 5%"),
        (("coverage", "--mistakes", "nan"), "'nan' isn't a share: write 0.05 or 5%"),
        (("assumed", "--most", "0"), "'0' isn't a whole number from 1 on"),
        (("compare", "rules"), "required: AFTER"),
        (("explain",), "required: ID"),
    ],
)
def test_arguments_that_can_not_be_are_a_sentence_and_status_2(words, reason, capsys):
    with pytest.raises(SystemExit) as left:
        parser().parse_args(["rules", *words])
    assert left.value.code == 2
    assert reason in capsys.readouterr().err


@pytest.mark.parametrize(("written", "share"), [("0.05", 0.05), ("5%", 0.05), ("0", 0.0), ("100%", 1.0)])
def test_a_share_is_written_in_either_way(written, share):
    assert parser().parse_args(["rules", "coverage", "--mistakes", written]).mistakes == pytest.approx(share)


def test_a_folder_with_mistakes_is_told_as_rules_check_tells_it(run, tmp_path):
    for words in (("coverage",), ("compare", "rules")):
        done = run(*words, str(tmp_path / "gone"))
        assert done.returncode == 1
        assert "found no such folder" in done.stderr


def test_what_the_rules_do_not_know_is_a_sentence_and_status_1(run):
    for words, reason in (
        (("try", "--role", "cat"), "cat"),
        (("assumed", str(SOUND), "--region", "north_isle"), "There are no cases beside"),
        (("try", "--answers", "gone.yaml"), "gone.yaml can't be read"),
    ):
        done = run(*words)
        assert done.returncode == 1, words
        assert reason in done.stdout + done.stderr


def test_a_trial_is_piped_and_leaves_nothing_behind(run, tmp_path):
    done = run("try", "rules", typed="none\nnonsense that nobody means\n5\n")
    assert done.returncode == 0
    assert done.stderr == ""
    assert "isn't understood" in done.stdout
    assert done.stdout.endswith("The input ended before the verdict.\n")
    assert not (tmp_path / "data").exists()

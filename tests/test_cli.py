"""The commands as they are typed, each in a process of its own."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from assistant import __version__
from assistant.cli import parser

ROOT = Path(__file__).parent.parent


@pytest.fixture
def run(tmp_path: Path, kept: Path):  # type: ignore[no-untyped-def]
    """Runs `ovenside` with its own data folder; `cache`: with that one instead of the one that tests share."""

    def run(*words: str, typed: str = "", cache: Path = kept) -> subprocess.CompletedProcess[str]:
        environment = {**os.environ, "XDG_DATA_HOME": str(tmp_path / "data"), "XDG_CACHE_HOME": str(cache)}
        done = subprocess.run(
            [sys.executable, "-m", "assistant", *words],
            input=typed,
            capture_output=True,
            text=True,
            timeout=60,
            cwd=ROOT,
            env=environment,
        )
        assert "Traceback" not in done.stderr, done.stderr
        return done

    return run


def code_in(screen: str) -> str:
    found = re.search(r"resume ([0-9A-Z]{4}(?:-[0-9A-Z]{4}){3})", screen)
    assert found, screen
    return found[1]


def test_a_piped_conversation_is_saved_and_resumed_by_its_code(run) -> None:  # type: ignore[no-untyped-def]
    first = run(typed="none\n5\n")
    assert first.returncode == 0
    code = code_in(first.stdout)
    again = run("resume", code.lower().replace("-", " "), typed="electric\n")
    assert "Welcome back" in again.stdout
    assert "Which kind of oven is it?" in again.stdout
    latest = run("resume", typed="stop\n")
    assert "Which kind of oven is it?" not in latest.stdout
    assert latest.returncode == 0


def test_bytes_that_are_no_text_are_no_traceback(tmp_path: Path, kept: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "--store", str(tmp_path / "s.db")],
        input=b"\xff\xfe\x00\n16\n\x80\n",
        capture_output=True,
        cwd=ROOT,
        env={**os.environ, "PYTHONIOENCODING": "ascii:strict", "XDG_CACHE_HOME": str(kept)},
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr == b""
    assert b"What goes wrong" in done.stdout


def test_the_first_screen_is_the_same_from_the_kept_copy(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    nothing_kept = tmp_path / "cache"
    assert run(typed="", cache=nothing_kept).stdout == run(typed="", cache=nothing_kept).stdout


def test_nothing_is_saved_before_the_first_answer(run) -> None:  # type: ignore[no-untyped-def]
    assert "nothing was saved" in run(typed="").stdout
    assert "no saved sessions" in run("sessions", "list").stdout
    assert run("resume").returncode == 1


@pytest.mark.parametrize("words", [("resume", "AAAA"), ("sessions", "show", "zz"), ("sessions", "erase", "")])
def test_an_unknown_session_is_said_plainly(run, words: tuple[str, ...]) -> None:  # type: ignore[no-untyped-def]
    done = run(*words)
    assert done.returncode == 1
    assert (done.stdout + done.stderr).strip().endswith((".", "there.", "digits."))


def test_a_session_is_listed_shown_and_erased(run) -> None:  # type: ignore[no-untyped-def]
    run(typed="none\n5\nnot sure\n")
    listed = run("sessions", "list").stdout
    session = listed.split()[0]
    shown = run("sessions", "show", session).stdout
    assert "None of these" in shown
    assert "not sure" in shown
    assert run("sessions", "erase", session).returncode == 0
    assert "no saved sessions" in run("sessions", "list").stdout


@pytest.mark.parametrize(
    "words",
    [
        ("--lang", "tlh"),
        ("drive", "--lang", "xx"),
        ("--rules", "/no/such/folder"),
        ("--store", "ftp:x"),
        ("--store", "/"),
    ],
)
def test_arguments_that_cannot_be_used_are_a_sentence_and_status_1(run, words: tuple[str, ...]) -> None:  # type: ignore[no-untyped-def]
    done = run(*words, typed="none\n")
    assert done.returncode == 1
    assert re.search(r"(no language|no such folder|can't be saved)", done.stdout + done.stderr)


def test_an_option_counts_before_the_command_and_behind_it(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    store = str(tmp_path / "elsewhere.db")
    run("--store", store, "drive", typed='{"session":"k","type":"start"}\n')
    assert (tmp_path / "elsewhere.db").exists()
    for words in (("--store", store, "sessions", "list"), ("sessions", "list", "--store", store)):
        assert "1 entries" in run(*words).stdout
    assert (
        "u27e6" in run("--lang", "x-marked", "drive", "--store", store, typed='{"session":"m","type":"start"}').stdout
    )
    assert run("--rules", str(tmp_path), "rules", "check").returncode == 1


def test_a_full_disk_is_a_sentence(kept: Path) -> None:
    for words in (("drive", "--catalogue"), ("rules", "check"), ("drive", "--store", "memory:")):
        with Path("/dev/full").open("w") as full:
            done = subprocess.run(
                [sys.executable, "-m", "assistant", *words],
                input=b'{"session":"k","type":"start"}\n',
                stdout=full,
                stderr=subprocess.PIPE,
                cwd=ROOT,
                env={**os.environ, "XDG_CACHE_HOME": str(kept)},
                timeout=60,
            )
        assert done.returncode == 1
        assert done.stderr.decode() == "ovenside: No space left on device\n"


def test_without_a_home_the_conversation_is_held_but_not_kept(run) -> None:  # type: ignore[no-untyped-def]
    environment = {"PATH": os.environ["PATH"], "HOME": "/dev/null/nobody"}
    done = subprocess.run(
        [sys.executable, "-m", "assistant"],
        input="16\n5\ngas\n\n",
        capture_output=True,
        text=True,
        cwd=ROOT,
        env=environment,
        timeout=60,
    )
    assert "can't be saved" in done.stdout
    assert "registered gas engineer" in done.stdout
    assert done.stderr == ""


def test_the_closed_process_leaves_as_ctrl_c_does(tmp_path: Path, kept: Path) -> None:
    environment = {**os.environ, "XDG_DATA_HOME": str(tmp_path), "XDG_CACHE_HOME": str(kept)}
    with subprocess.Popen(
        [sys.executable, "-m", "assistant"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=ROOT,
        env=environment,
    ) as process:
        assert process.stdin is not None
        assert process.stdout is not None
        process.stdin.write("none\n")
        process.stdin.flush()
        while "What goes wrong" not in process.stdout.readline():
            pass
        process.terminate()
        screen, said = process.communicate(timeout=30)
    assert "ovenside resume" in screen
    assert said == ""


def test_an_unknown_region_is_a_sentence(run) -> None:  # type: ignore[no-untyped-def]
    assert run("--region", "atlantis", typed="none\n").returncode == 1


def test_the_projects_own_rules_have_no_mistakes(run) -> None:  # type: ignore[no-untyped-def]
    done = run("rules", "check", "rules")
    assert done.returncode == 0, done.stdout
    assert "no mistakes" in done.stdout


def test_mistakes_are_counted_and_the_status_is_1(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    (tmp_path / "empty").mkdir()
    done = run("rules", "check", str(tmp_path / "empty"))
    assert done.returncode == 1
    *problems, count = done.stdout.splitlines()
    assert all(re.match(r"^.+:\d+:\d+: \S+: found .+, expected .+", line) for line in problems)
    assert count == f"{len(problems)} mistakes."


def test_the_version_says_what_evaluates_the_rules(run) -> None:  # type: ignore[no-untyped-def]
    engine = "durable-rules" if sys.version_info < (3, 13) else "naive"
    assert run("--version").stdout == f"ovenside {__version__} ({engine})\n"


def test_every_command_is_in_the_readme() -> None:
    readme = (ROOT / "README.md").read_text("utf-8")
    top = parser()
    commands = next(action for action in top._actions if action.dest == "command").choices
    assert commands
    for name in commands:
        assert f"`ovenside {name}" in readme


def test_what_came_of_a_session_is_recorded_learned_from_and_scored(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    screen = run(typed="none\n5\nelectric\nyes\nnot sure\nwhite and soft\nyes\n").stdout
    record = ("outcome", code_in(screen), "--result", "mended")
    refused = run(*record)
    assert refused.returncode == 1
    assert refused.stdout.endswith("Nothing was recorded.\n")
    assert run(*record, "--cause-found", "base_element_open", "--note", "it hummed").returncode == 0
    session = run("sessions", "list").stdout.split()[0]
    assert run("sessions", "show", session).stdout.endswith("note: it hummed\n")
    rules = shutil.copytree(ROOT / "rules", tmp_path / "rules")
    learned = run("rules", "learn", str(rules), "--unknown", "3")
    assert learned.returncode == 0
    assert "1 visited, 0 solved by phone, 3 of which nobody knows" in learned.stdout
    subprocess.run(["patch", "-p1", "-i", "learned.diff"], cwd=rules, check=True, capture_output=True)
    assert run("rules", "check", str(rules)).returncode == 0
    scored = run("rules", "calibration", str(rules), "--svg", str(tmp_path / "picture.svg"))
    assert scored.returncode == 0
    assert "1 outcome, forecast" in scored.stdout
    assert (tmp_path / "picture.svg").read_text().startswith("<svg")


def test_outcomes_go_out_as_a_table_and_as_lines_and_come_in_again(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    code = code_in(run(typed="none\n5\nelectric\n").stdout)
    table, lines = tmp_path / "o.csv", tmp_path / "data" / "ovenside" / "outcomes.jsonl"
    table.write_text(f"session;result\n{code};no fault found\n")
    assert run("outcomes", "import", str(table), "--dry-run").stdout.startswith("1 outcome would be recorded;")
    assert run("outcomes", "import", str(table)).stdout.startswith("1 outcome was recorded;")
    assert run("outcomes", "export", "--to", str(table)).returncode == 0
    assert run("outcomes", "import", str(table)).stdout.startswith("0 outcomes were recorded; 1 was recorded before")
    assert run("outcomes", "export", "--to", "-").stdout == table.read_text("utf-8-sig")
    assert run("outcomes", "export", "--to", str(lines)).returncode == 0
    for tool in ("learn", "calibration"):
        rules = shutil.copytree(ROOT / "rules", tmp_path / tool)
        from_both, from_lines = run("rules", tool, str(rules)), run("rules", tool, str(rules), "--store", "memory:")
        assert from_both.returncode == from_lines.returncode == 0
        assert from_both.stdout == from_lines.stdout


def test_without_any_outcome_there_is_a_sentence(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    for tool in ("learn", "calibration"):
        done = run("rules", tool)
        assert done.returncode == 1
        assert done.stdout == "There is no outcome that could be counted.\n"
        gone = run("rules", tool, "--outcomes", str(tmp_path / "gone.jsonl"))
        assert (gone.returncode, gone.stdout) == (
            1,
            f"{tmp_path / 'gone.jsonl'} can't be read: No such file or directory.\n",
        )

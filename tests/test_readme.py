"""What the README shows is what the program does."""

from pathlib import Path

from tests.record_readme import README, with_recording

ROOT = Path(__file__).parent.parent


def test_the_recorded_conversation_is_fresh() -> None:
    readme = README.read_text("utf-8")
    assert with_recording(readme) == readme, "run: python -m tests.record_readme"
    assert "Book a visit" in readme


def test_ci_runs_the_readmes_test_command() -> None:
    command = next(line for line in README.read_text("utf-8").splitlines() if "[tests]" in line)
    assert command in (ROOT / ".ci" / "run").read_text("utf-8").splitlines()

"""What rules/README.md says holds: its worked example is sound and works, and its figure is the rules' own."""

import io
import re
import shutil
import textwrap
from pathlib import Path

import pytest

from assistant.authoring.cases import begin
from assistant.authoring.check import check
from assistant.interview.commands import GiveAnswer
from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import load_wording
from tests.conftest import ROOT

README = (ROOT / "rules" / "README.md").read_text("utf-8")
EXAMPLE = README[README.index("## Worked example") :]
FILE = re.compile(r"`((?:observables|questions|causes)/\w+\.yaml)`[^`]*?```yaml\n(.*?)```", re.DOTALL)
WORDS = re.compile(r"^   ```\n(   question-.*?)^   ```$", re.DOTALL | re.MULTILINE)
IN_TEN = {"two": 2, "three": 3, "four": 4, "five": 5}


@pytest.fixture
def followed(tmp_path: Path) -> tuple[Path, Path]:
    """The rules and the words after the example was followed to the letter."""
    rules = Path(shutil.copytree(ROOT / "rules", tmp_path / "rules"))
    locales = Path(shutil.copytree(ROOT / "locales", tmp_path / "locales"))
    files = FILE.findall(EXAMPLE)
    assert {name.split("/")[0] for name, _ in files} == {"observables", "questions", "causes"}
    for name, text in files:
        (rules / name).write_text(textwrap.dedent(text), "utf-8")
    (words,) = WORDS.findall(EXAMPLE)
    with (locales / "en-GB" / "questions.ftl").open("a", encoding="utf-8") as messages:
        messages.write("\n" + textwrap.dedent(words))
    return rules, locales


def test_the_worked_example_has_no_mistakes_and_lacks_no_words(followed: tuple[Path, Path]) -> None:
    rules, locales = followed
    out = io.StringIO()
    assert check(rules, load_wording(locales, "en-GB"), out, with_words=True) == 0, out.getvalue()


def test_the_worked_examples_answer_speaks_for_its_cause(followed: tuple[Path, Path]) -> None:
    script = script_of(load_knowledge(followed[0], None))
    conversation = begin(script, "great_britain", "householder")
    conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer("what_goes_wrong", ["one_side"]))
    before = conversation.assessment.posterior.of("tray_bent")
    conversation.do(GiveAnswer("tray_on_table", "rocks"))
    belief = conversation.assessment.posterior
    assert belief.of("tray_bent") > 5 * before
    assert next(iter(belief.causes()))[0] == "tray_bent"


def test_as_many_ovens_are_sound_as_the_readme_says(knowledge: Knowledge) -> None:
    (said,) = re.findall(r"here about (\w+)\s+in\s+ten have nothing wrong", README)
    rates = sum(cause.base_rate.value for cause in knowledge.causes.values())
    assert (100 - rates - knowledge.settings.something_else.value) / 10 == pytest.approx(IN_TEN[said], abs=0.5)

"""What measurements may come to, as it stands beside the rules."""

import io
import shutil
from pathlib import Path

import pytest

from assistant.authoring.check import check
from assistant.authoring.foresee import foresee_all
from assistant.belief.outcomes_ahead import OUTCOMES, foresee
from assistant.interview.script import Script
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Knowledge
from assistant.wording.sentences import Sentences
from tests.conftest import ROOT


@pytest.fixture
def edited(tmp_path: Path) -> Path:
    """A copy of the rules in which a thermostat drifts otherwise."""
    rules = tmp_path / "rules"
    shutil.copytree(ROOT / "rules", rules)
    effect = rules / "effects/opens_early.yaml"
    text = effect.read_text()
    assert "by: -55" in text
    effect.write_text(text.replace("by: -55", "by: -25"))
    return rules


def test_what_stands_beside_the_rules_is_what_is_simulated_anew(knowledge: Knowledge) -> None:
    question = knowledge.questions["lamp_watch"]
    assert question.run is not None
    assert foresee(knowledge, question.kind, question.run) == knowledge.foreseen["lamp_watch"]


def test_an_edited_effect_asks_for_it_to_be_simulated_again(edited: Path, sentences: Sentences) -> None:
    out = io.StringIO()
    assert check(edited, sentences.wording, out) == 1
    assert "rules foresee" in out.getvalue()
    assert foresee_all(load_knowledge(edited, None), edited, sentences.wording, io.StringIO()) == 0
    assert check(edited, sentences.wording, io.StringIO()) == 0


def test_a_drifted_thermostat_is_foreseen_to_go_out_early_and_a_dead_heater_never(knowledge: Knowledge) -> None:
    """Common practice: the lamp goes out early with a low thermostat, and stays lit with half the heat."""
    foreseen = knowledge.foreseen["lamp_watch"]
    share = {name: dict(zip(foreseen.outcomes, shares, strict=True)) for name, shares in foreseen.ways.items()}
    assert foreseen.outcomes == OUTCOMES["lamp_log"]
    assert share["thermostat_drifted_low"]["out_early"] > 60
    assert share["base_element_open"]["never_out"] > 60
    assert share["none"]["out_as_usual"] > 60


def test_every_measuring_question_is_foreseen_and_can_be_chosen(script: Script) -> None:
    measuring = {q for q, question in script.knowledge.questions.items() if question.run is not None}
    assert len(measuring) >= 5
    assert measuring == set(script.evidence_model.instruments)
    assert measuring <= script.evidence_model.report_given.keys()

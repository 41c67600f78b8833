"""Where entries name one another."""

import pytest

from assistant.authoring.mentions import mentions
from assistant.knowledge.rules_folder import read_folder
from tests.knowledge.broken import SOUND

ENTRIES = read_folder(SOUND).entries


@pytest.mark.parametrize("kind", ["observables", "findings"])
def test_whoever_names_an_entry_is_found_by_the_text_of_its_file(kind):
    """Read as text: a file that holds the name as a word outside notes and examples names it."""
    named = 0
    for entry_id in ENTRIES[kind]:
        found = {name for names in mentions(ENTRIES, kind, entry_id).values() for name in names}
        for name in found:
            (path,) = SOUND.rglob(f"{name}.yaml")
            assert entry_id in path.read_text()
            named += 1
    assert named


def test_the_key_says_in_what_way_it_is_named():
    causes = ENTRIES["causes"]
    name, cause = next(iter(causes.items()))
    shown = next(iter(cause.shows))
    assert name in mentions(ENTRIES, "observables", shown)["causes", "shows"]
    reporting = [q for q, question in ENTRIES["questions"].items() if question.observable == shown]
    assert mentions(ENTRIES, "observables", shown)["questions", "observable"] == reporting


def test_examples_of_a_finding_name_nothing():
    finding = next(f for f in ENTRIES["findings"].values() if f.examples.stays_quiet[0])
    only = {"findings": {"one": finding}}
    read = {c.question for group in finding.groups for c in group if c.question}
    shown = {q for example in finding.examples.stays_quiet for q in example} - read
    for question_id in shown:
        assert mentions(only, "questions", question_id) == {}
    for question_id in read:
        assert mentions(only, "questions", question_id) == {("findings", "question"): ["one"]}

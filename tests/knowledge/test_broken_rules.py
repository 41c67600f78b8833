"""Every example of broken rules prints exactly the lines written beside it.

Places follow one rule: a mistake stands where its key or list item starts; what is missing, at the key of the
block that lacks it; what concerns a whole file, at 1:1.
"""

import re

import pytest

from assistant.knowledge.validation import OWN_CODES
from tests.knowledge.broken import BROKEN, HERE, LOCALES, SHOWN, SOUND, lines_printed, read_example
from tests.knowledge.generated import GENERATED
from tests.knowledge.recording import outcome_of_example, outcome_of_generated
from tests.wording.messages import message_names

EXAMPLES = sorted(path.stem for path in BROKEN.glob("*.yaml"))
FORM = re.compile(rf"{SHOWN}.*:\d+:\d+: .+: found .+, expected .+")

WITHOUT_EXAMPLE = {
    "rules-message_missing": "the examples are checked without words; tests/authoring/test_check.py has it",
    "rules-other": "stands in for sentences that a later version of the validation library may ask for",
    "rules-file_unreadable": "made by a disk that refuses, in test_awkward_files",
    "rules-folder_unreadable": "made by a disk that refuses, in test_awkward_files",
    "rules-schema_written": "said when schemas are written",
    "rules-schema_not_written": "said when schemas can't be written",
    "rules-foreseen_written": "said when what measurements may come to is written",
    "rules-foreseen_not_written": "said when it can't be written",
    "rules-limit_malformed_id": "names are checked more strictly before",
    "rules-limit_repeated_id": "two files can't have one name",
    "rules-limit_concludes_a_given_key": "said before as a name that is taken or reserved",
    "rules-limit_band_out_of_range": "the bands are the program's own",
}


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_broken_example_prints_the_lines_beside_it(name):
    outcome = outcome_of_example(name)
    assert list(outcome.lines) == read_example(BROKEN / f"{name}.yaml")["printed"]
    assert outcome.status == (0 if outcome.lines[-1].endswith("no mistakes.") else 1)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_line_says_where_and_what_was_found_and_what_was_expected(name):
    *lines, last = outcome_of_example(name).lines
    assert all(FORM.fullmatch(line) for line in lines)
    assert re.fullmatch(r"(1 mistake|\d+ mistakes|\d+ rule files read, no mistakes)\.", last)
    assert not any(line.endswith("expected one of: ") or "“”" in line for line in lines)


def test_every_sentence_about_a_mistake_has_an_example():
    texts = [path.read_text("utf-8") for path in (LOCALES / "en-GB").glob("*.ftl")]
    sentences = {name for text in texts for name in message_names(text) if name.startswith("rules-")}
    outcomes = [outcome_of_example(name) for name in EXAMPLES] + [outcome_of_generated(name) for name in GENERATED]
    used = {message for outcome in outcomes for message in outcome.messages}
    assert sentences - used == set(WITHOUT_EXAMPLE)


def test_every_code_that_the_model_raises_is_known():
    sources = [
        (HERE.parent.parent / "assistant/knowledge" / f"{name}.py").read_text()
        for name in ("model", "figures", "fixed_points", "foreseen", "learned", "regions", "settings")
    ]
    raised = {code for source in sources for code in re.findall(r'PydanticCustomError\(\s*"(\w+)"', source)}
    assert raised == set(OWN_CODES)


def test_the_sound_folder_has_no_mistakes():
    lines, status = lines_printed(SOUND)
    assert (lines, status) == (["27 rule files read, no mistakes."], 0)


def test_mistakes_in_several_files_are_printed_at_once_in_order():
    *lines, count = outcome_of_example("together_in_many_files").lines
    places = [(file, int(line), int(column)) for file, line, column in (line.split(":")[:3] for line in lines)]
    assert places == sorted(places)
    assert len({file for file, _, _ in places}) == 6
    assert count == f"{len(lines)} mistakes."


@pytest.mark.parametrize("name", [name for name in EXAMPLES if name.startswith("together_a_broken_")])
def test_a_mistake_that_follows_from_a_broken_file_is_not_said(name):
    assert outcome_of_example(name).lines[-1] == "1 mistake."

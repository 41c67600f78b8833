"""What a householder reads is easy: short sentences, short words.

Grade and ease by J. P. Kincaid et al., Derivation of New Readability Formulas for Navy Enlisted Personnel,
US Navy Research Branch Report 8-75, 1975. Reading age 9 is the aim that British public-service guidance names;
sentences of 15 to 20 words on average that of the Plain English Campaign.
"""

import re
from collections.abc import Iterator

import pyphen
import pytest

from assistant.knowledge.model import Knowledge
from assistant.wording.sentences import Sentences

MOST_WORDS_IN_A_SENTENCE = 25
MOST_WORDS_ON_AVERAGE = 12
HIGHEST_GRADE_ON_AVERAGE = 4.0
HIGHEST_GRADE_OF_ONE_TEXT = 9.0

hyphens = pyphen.Pyphen(lang="en_GB")


def grade(words: int, sentences: int, syllables: int) -> float:
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59


def ease(words: int, sentences: int, syllables: int) -> float:
    return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words


def sentences_of(text: str) -> list[list[str]]:
    """Sentences as lists of words; a colon or semicolon ends a unit that is read by itself."""
    parts = re.split(r"[.!?:;]+(?:\s|$)", text)
    return [words for part in parts if (words := re.findall(r"[A-Za-z][A-Za-z'’]*", part))]


def counts(text: str) -> tuple[int, int, int]:
    found = sentences_of(text)
    words = [word for sentence in found for word in sentence]
    return len(words), len(found), sum(len(hyphens.positions(word)) + 1 for word in words)


def household_texts(knowledge: Knowledge, sentences: Sentences) -> Iterator[tuple[str, str]]:
    for question_id in knowledge.questions:
        text = sentences.question_by_id(question_id)
        yield f"question-{question_id}", text.text
        yield f"question-{question_id}.how", text.how
        yield f"question-{question_id}.why", text.why
    for kind, ids in (("act", knowledge.acts), ("advice", knowledge.advice), ("finding", knowledge.findings)):
        yield from ((f"{kind}-{entry}", sentences.wording.say(f"{kind}-{entry}")) for entry in ids)
    for step in knowledge.steps:
        yield f"step-{step}", sentences.wording.say(f"step-{step}", **sentences.lines)
    for cause in knowledge.causes:
        yield f"cause-{cause}.explain", sentences.wording.say(f"cause-{cause}", "explain")


@pytest.mark.parametrize(
    ("counted", "expected_grade", "expected_ease"),
    [
        # "Turn the oven off at the wall. Let it cool. Call an engineer.", counted by hand
        ((13, 3, 16), 0.6231, 98.3136),
        # "Turn off the power at the wall switch before you look inside. If you smell burning, stop and call an
        # engineer. Do not take off any panel.", counted by hand
        ((27, 3, 35), 3.2163, 88.0333),
        # "This sentence, taken as a reading passage unto itself, is being used to prove a point.", counted by hand
        ((16, 1, 23), 7.6125, 68.9825),
    ],
)
def test_the_formulas_give_the_known_figures(
    counted: tuple[int, int, int], expected_grade: float, expected_ease: float
) -> None:
    assert grade(*counted) == pytest.approx(expected_grade, abs=5e-5)
    assert ease(*counted) == pytest.approx(expected_ease, abs=5e-5)


def test_no_sentence_is_long(knowledge: Knowledge, sentences: Sentences) -> None:
    long = [
        (name, " ".join(words))
        for name, text in household_texts(knowledge, sentences)
        for words in sentences_of(text)
        if len(words) > MOST_WORDS_IN_A_SENTENCE
    ]
    assert long == []


def test_sentences_and_words_are_short_on_average(knowledge: Knowledge, sentences: Sentences) -> None:
    words, units, syllables = map(
        sum, zip(*(counts(text) for _, text in household_texts(knowledge, sentences)), strict=True)
    )
    assert words / units <= MOST_WORDS_ON_AVERAGE
    assert grade(words, units, syllables) <= HIGHEST_GRADE_ON_AVERAGE


def test_no_text_is_hard(knowledge: Knowledge, sentences: Sentences) -> None:
    hard = [
        (name, round(grade(*counts(text)), 1), text)
        for name, text in household_texts(knowledge, sentences)
        if counts(text)[0] >= 8 and grade(*counts(text)) > HIGHEST_GRADE_OF_ONE_TEXT
    ]
    assert hard == []

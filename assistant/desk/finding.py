"""Questions by any of their words, whatever would be asked next."""

from collections.abc import Iterator

from rapidfuzz import fuzz

from assistant.desk.call import Call
from assistant.wording.words import normalised

MOST_FOUND = 9
"""One digit picks."""
NEAR = 82
"""Of 100: from here on a word counts for a sought one, a slip of the finger allowed."""


def found_questions(call: Call, sought: str) -> tuple[str, ...]:
    """Those that an agent may put, with all the sought words first, in the order of the rules."""
    words = normalised(sought).split()
    if not words:
        return ()
    script = call.conversation.script
    ranked = []
    for question_id, question in script.knowledge.questions.items():
        if not call.may_reopen(question_id):
            continue
        hits = _hits(words, _words_of(call, question_id))
        if hits > 0:
            ranked.append((-hits, question.order, question_id))
    return tuple(question_id for _, _, question_id in sorted(ranked)[:MOST_FOUND])


def _words_of(call: Call, question_id: str) -> list[str]:
    text = call.own.question_by_id(question_id)
    return normalised(
        " ".join((text.text, question_id.replace("_", " "), *_names_of_choices(call, question_id)))
    ).split()


def _names_of_choices(call: Call, question_id: str) -> Iterator[str]:
    """What the choices are called, also by those who answer in their own words."""
    for phrases in call.own.vocabulary(question_id).phrases.values():
        yield from phrases


def _hits(sought: list[str], words: list[str]) -> float:
    """How many of the sought words stand there; a whole one counts a little more than its beginning or a near one."""
    return sum(max((_likeness(each, word) for word in words), default=0.0) for each in sought)


def _likeness(sought: str, word: str) -> float:
    if sought == word:
        return 1.0
    if len(sought) >= 3 and word.startswith(sought):
        return 0.9
    return 0.8 if len(sought) >= 4 and fuzz.ratio(sought, word) >= NEAR else 0.0

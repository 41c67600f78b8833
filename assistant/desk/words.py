"""The words an agent types after a full stop, which no answer begins with: `.find fan`, or the beginning of one."""

from typing import Literal, get_args

from assistant.wording.locale import Wording
from assistant.wording.words import normalised

MARK = "."

Word = Literal[
    "new", "take", "park", "calls", "find", "change", "back", "note", "view", "all", "end", "why", "how", "unsure",
    "skip", "code", "save", "leave",
]  # fmt: skip
WORDS: tuple[Word, ...] = get_args(Word)


def spelled(word: Word, wording: Wording) -> str:
    return wording.say(f"desk-word_{word}")


def read_word(line: str, wording: Wording) -> tuple[tuple[Word, ...], str]:
    """The words it may begin with, exactly one where it is clear, and what follows it."""
    typed, _, rest = line.strip().removeprefix(MARK).strip().partition(" ")
    said = normalised(typed)
    exact = tuple(word for word in WORDS if normalised(spelled(word, wording)) == said)
    begun = tuple(word for word in WORDS if said and normalised(spelled(word, wording)).startswith(said))
    return exact or begun, rest.strip()


def is_word(line: str) -> bool:
    return line.lstrip().startswith(MARK) and not line.strip().strip(MARK).strip()[:1].isdigit()

"""Hears danger in a typed line: phrases of the language, less what is denied ('no smell' is none).

A denial must govern the phrase: only little words may stand between them ('no sign of any smoke'). With anything
else between ('no idea why it sparks', 'not heating up smells of gas') the phrase is heard.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz.distance import OSA

from assistant.wording.locale import Wording
from assistant.wording.words import clauses, phrases

SHORTEST_STRETCHED = 5
SHORTEST_MISSPELT = 7
MOST_CHARACTERS = 20_000


@dataclass(frozen=True)
class Heard:
    """A danger sign that a line speaks of; unclear ones are asked back like the clear ones."""

    sign_id: str
    clear: bool


@dataclass(frozen=True)
class _Phrase:
    sign_id: str
    clear: bool
    words: tuple[str, ...]


class Listener:
    """Hears the danger phrases of one language."""

    def __init__(self, wording: Wording, sign_ids: Sequence[str]) -> None:
        self._phrases = [
            _Phrase(sign_id, attribute == "phrases", tuple(phrase.split()))
            for sign_id in sign_ids
            for attribute in ("phrases", "unclear")
            if wording.has(f"sign-{sign_id}", attribute)
            for phrase in phrases(wording.say(f"sign-{sign_id}", attribute))
        ]
        self._negations = frozenset(phrases(wording.say("listener-negations")))
        self._double = frozenset(phrases(wording.say("listener-double")))
        self._plain = frozenset(phrases(wording.say("listener-never_stretched")))
        self._lifting = [tuple(phrase.split()) for phrase in phrases(wording.say("listener-lifting_after"))]
        self._between = frozenset(phrases(wording.say("listener-between"))) - self._negations
        self._listed = frozenset(phrase.words for phrase in self._phrases)
        self._longest = max(map(len, self._listed), default=0)

    def hear(self, line: str) -> tuple[Heard, ...]:
        """Each sign once, in the order of the signs; clear if any of its clear phrases was heard."""
        heard: dict[str, bool] = {}
        spoken = clauses(line[:MOST_CHARACTERS])
        for phrase in self._phrases:
            if any(self._says(words, phrase.words) for words in spoken):
                heard[phrase.sign_id] = heard.get(phrase.sign_id, False) or phrase.clear
        return tuple(Heard(sign_id, clear) for sign_id, clear in heard.items())

    def _says(self, spoken: Sequence[str], phrase: Sequence[str]) -> bool:
        """Whether the clause holds the phrase somewhere where it isn't denied."""
        return any(not self._denied(spoken, start, phrase) for start in self._places(spoken, phrase))

    def _places(self, spoken: Sequence[str], phrase: Sequence[str]) -> Iterator[int]:
        for start in range(len(spoken) - len(phrase) + 1):
            if all(self._means(said, meant) for said, meant in zip(spoken[start:], phrase, strict=False)):
                yield start

    def _means(self, said: str, meant: str) -> bool:
        return said == meant or (said not in self._plain and _a_slip_from(said, meant))

    def _denied(self, spoken: Sequence[str], start: int, phrase: Sequence[str]) -> bool:
        """A negation denies through little words and other danger phrases.

        Not in 'won't stop …' or 'not only …', nor where '… like this' follows.
        """
        if self._negations.intersection(phrase):
            return False
        position = start - 1
        while position >= 0 and spoken[position] not in self._negations:
            step = 1 if spoken[position] in self._between else self._listed_before(spoken, position)
            if not step:
                return False
            position -= step
        if position < 0:
            return False
        return not self._double.intersection(spoken[position + 1 : start]) and not self._lifted(
            spoken[start + len(phrase) :]
        )

    def _listed_before(self, spoken: Sequence[str], position: int) -> int:
        """The length of a danger phrase that ends there: 'no smoke or burning smell' denies both."""
        for length in range(min(self._longest, position + 1), 0, -1):
            if tuple(spoken[position + 1 - length : position + 1]) in self._listed:
                return length
        return 0

    def _lifted(self, after: Sequence[str]) -> bool:
        return any(tuple(after[: len(words)]) == words for words in self._lifting)


@lru_cache(maxsize=50_000)
def _a_slip_from(said: str, meant: str) -> bool:
    """One slip of the finger away: a letter too many, too few or swapped; in long words also a wrong one."""
    if len(meant) < SHORTEST_STRETCHED or abs(len(said) - len(meant)) > 1:
        return False
    if OSA.distance(said, meant, score_cutoff=1) > 1:
        return False
    return len(said) != len(meant) or len(meant) >= SHORTEST_MISSPELT or sorted(said) == sorted(meant)

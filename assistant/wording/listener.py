"""Hears danger in a typed line: phrases of the language, less what is denied ('no smell' is none)."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz import fuzz

from assistant.wording.locale import Wording
from assistant.wording.words import clauses, phrases

NEGATION_REACH = 4
SHORTEST_FUZZY_WORD = 5
ALIKE = 86
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
        self._breakers = frozenset(phrases(wording.say("listener-breakers")))
        self._double = frozenset(phrases(wording.say("listener-double")))

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
        return any(
            all(_same_word(said, meant) for said, meant in zip(spoken[start:], phrase, strict=False))
            and not self._denied(spoken, start, phrase)
            for start in range(len(spoken) - len(phrase) + 1)
        )

    def _denied(self, spoken: Sequence[str], start: int, phrase: Sequence[str]) -> bool:
        """A negation shortly before denies, unless 'but' comes between or it is 'won't stop …', 'not only …'."""
        if self._negations.intersection(phrase):
            return False
        for position in range(start - 1, max(start - 1 - NEGATION_REACH, -1), -1):
            if spoken[position] in self._breakers:
                return False
            if spoken[position] in self._negations:
                return not self._double.intersection(spoken[position + 1 : start])
        return False


@lru_cache(maxsize=20_000)
def _same_word(said: str, meant: str) -> bool:
    if said == meant:
        return True
    if len(meant) < SHORTEST_FUZZY_WORD or abs(len(said) - len(meant)) > 1 or said[0] != meant[0]:
        return False
    return fuzz.ratio(said, meant) >= ALIKE

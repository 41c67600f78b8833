"""Hears danger in a typed line: phrases of the language, less what is denied ('no smell' is none).

A denial must govern the phrase: only little words may stand between them ('no sign of any smoke'). With anything
else between ('no idea why it sparks', 'not heating up smells of gas') the phrase is heard.
"""

from collections.abc import Sequence
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
    """`ending`: heard only at the end of a clause ('it trips', but not 'it trips me up')."""

    sign_id: str
    clear: bool
    ending: bool
    words: tuple[str, ...]


KINDS = ("phrases", "unclear", "ending")


class Listener:
    """Hears the danger phrases of one language, or those of other messages that begin with `of`."""

    def __init__(self, wording: Wording, sign_ids: Sequence[str], of: str = "sign") -> None:
        listed = [
            _Phrase(sign_id, kind == "phrases", kind == "ending", tuple(phrase.split()))
            for sign_id in sign_ids
            for kind in KINDS
            if wording.has(f"{of}-{sign_id}", kind)
            for phrase in phrases(wording.say(f"{of}-{sign_id}", kind))
        ]
        self._order = {sign_id: number for number, sign_id in enumerate(sign_ids)}
        self._by_first_word: dict[str, list[_Phrase]] = {}
        for phrase in listed:
            self._by_first_word.setdefault(phrase.words[0], []).append(phrase)
        self._negations = frozenset(phrases(wording.say("listener-negations")))
        self._double = frozenset(phrases(wording.say("listener-double")))
        self._plain = frozenset(phrases(wording.say("listener-never_stretched")))
        self._lifting = [tuple(phrase.split()) for phrase in phrases(wording.say("listener-lifting_after"))]
        self._between = frozenset(phrases(wording.say("listener-between"))) - self._negations
        self._listed = frozenset(phrase.words for phrase in listed)
        self._longest = max(map(len, self._listed), default=0)
        self._starting_with = lru_cache(maxsize=20_000)(self._phrases_starting_with)

    def hear(self, line: str) -> tuple[Heard, ...]:
        """Each sign once, in the order of the signs; clear if any of its clear phrases was heard."""
        heard: dict[str, bool] = {}
        for spoken in clauses(line[:MOST_CHARACTERS]):
            for start, word in enumerate(spoken):
                for phrase in self._starting_with(word):
                    if self._says(spoken, start, phrase):
                        heard[phrase.sign_id] = heard.get(phrase.sign_id, False) or phrase.clear
        return tuple(Heard(sign_id, heard[sign_id]) for sign_id in sorted(heard, key=self._order.__getitem__))

    def _phrases_starting_with(self, said: str) -> tuple[_Phrase, ...]:
        meant = [word for word in self._by_first_word if self._means(said, word)]
        return tuple(phrase for word in meant for phrase in self._by_first_word[word])

    def _says(self, spoken: Sequence[str], start: int, phrase: _Phrase) -> bool:
        """Whether the clause holds the phrase there, and doesn't deny it."""
        end = start + len(phrase.words)
        if end > len(spoken) or (phrase.ending and end < len(spoken)):
            return False
        if phrase.ending and tuple(spoken[start:end]) != phrase.words:
            return False
        rest = zip(spoken[start + 1 : end], phrase.words[1:], strict=True)
        return all(self._means(said, meant) for said, meant in rest) and not self._denied(spoken, start, phrase.words)

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

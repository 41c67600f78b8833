"""Typed words -> one of the choices, or 'unclear': never a guess."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from rapidfuzz import fuzz

from assistant.wording.words import normalised

_SEPARATORS = re.compile(r"[,;&+]")
_LISTED = re.compile(r"[,;&+\s]+")
_POSITION = re.compile(r"\(?(?:(?P<number>[0-9]{1,2})|(?P<letter>[a-z]))[.):]?", re.IGNORECASE)

ALIKE = 84
MARGIN = 8
SHORTEST_FUZZY = 3
COVERS = 0.6
WITHIN = 90.0


@dataclass(frozen=True)
class Vocabulary:
    """The choices of a question, each with the phrases that name it, and the language's 'not', 'and' and opposites."""

    phrases: Mapping[str, tuple[str, ...]]
    negations: frozenset[str]
    joiners: frozenset[str] = frozenset()
    opposites: Mapping[str, frozenset[str]] = field(default_factory=dict)


@dataclass(frozen=True)
class Match:
    choices: tuple[str, ...]


@dataclass(frozen=True)
class Unclear:
    """`candidates` are the choices it might have been, if any came near."""

    candidates: tuple[str, ...]


def match_choice(typed: str, vocabulary: Vocabulary, *, exact: bool = False) -> Match | Unclear:
    """A number, a letter, a phrase, or words near enough to just one choice's phrases.

    With `exact`, only a number, a letter or a phrase as listed will do.
    """
    ids = list(vocabulary.phrases)
    said = normalised(typed)
    position = _position(typed, len(ids))
    if position is not None:
        return Match((ids[position],))
    named = tuple(choice for choice, listed in vocabulary.phrases.items() if said in listed)
    if len(named) == 1:
        return Match(named)
    if exact or named or len(said) < SHORTEST_FUZZY:
        return Unclear(named)
    return _nearest(said, vocabulary)


def match_choices(typed: str, vocabulary: Vocabulary, *, exact: bool = False) -> Match | Unclear:
    """Several choices at once: '1, 3', 'a c', or phrases with commas or 'and' between them."""
    ids = list(vocabulary.phrases)
    whole = match_choice(typed, vocabulary, exact=True)
    if isinstance(whole, Match):
        return whole
    listed = [part for part in _LISTED.split(typed) if part and normalised(part) not in vocabulary.joiners]
    positions = [_position(part, len(ids)) for part in listed]
    if positions and None not in positions:
        return Match(_in_order(ids, [ids[position] for position in positions if position is not None]))
    parts = _parts(typed, vocabulary.joiners)
    found = [match_choice(part, vocabulary, exact=exact) for part in parts]
    matched = [match for match in found if isinstance(match, Match)]
    if len(parts) > 1 and len(matched) == len(parts):
        return Match(_in_order(ids, [choice for match in matched for choice in match.choices]))
    return match_choice(typed, vocabulary, exact=exact)


def _parts(typed: str, joiners: frozenset[str]) -> list[str]:
    """What stands between commas and joining words."""
    joined = "|".join(re.escape(word) for word in sorted(joiners))
    pieces = _SEPARATORS.split(re.sub(rf"\b(?:{joined})\b", ",", typed, flags=re.IGNORECASE) if joined else typed)
    return [piece for piece in pieces if piece.strip()]


def _in_order(ids: Sequence[str], chosen: Sequence[str]) -> tuple[str, ...]:
    return tuple(choice for choice in ids if choice in chosen)


def _position(said: str, count: int) -> int | None:
    """'2', '2.' or 'b' -> 1, if there are so many choices; '1.5' and '-1' are none."""
    found = _POSITION.fullmatch(said.strip())
    if found is None:
        return None
    position = int(found["number"]) - 1 if found["number"] else ord(found["letter"].lower()) - ord("a")
    return position if 0 <= position < count else None


def _nearest(said: str, vocabulary: Vocabulary) -> Match | Unclear:
    """The choice whose phrases come nearest, if near enough and clear of the next. Denials must agree."""
    denies = _denials(said, vocabulary.negations)
    nearness = {
        choice: max(
            (
                _alike(said, phrase)
                for phrase in listed
                if _denials(phrase, vocabulary.negations) == denies and not _turned(said, phrase, vocabulary.opposites)
            ),
            default=0.0,
        )
        for choice, listed in vocabulary.phrases.items()
    }
    ranked = sorted(nearness.items(), key=lambda item: -item[1])
    (best, best_ratio), next_ratio = ranked[0], ranked[1][1] if len(ranked) > 1 else 0.0
    if best_ratio >= ALIKE and best_ratio - next_ratio >= MARGIN:
        return Match((best,))
    return Unclear(tuple(choice for choice, ratio in ranked[:3] if ratio >= ALIKE - 20))


def _denials(text: str, negations: frozenset[str]) -> bool:
    return not negations.isdisjoint(text.split())


def _turned(said: str, phrase: str, opposites: Mapping[str, frozenset[str]]) -> bool:
    """Whether one says 'off' where the other says 'on'."""
    words, meant = set(said.split()), set(phrase.split())
    return any(not meant.isdisjoint(opposites.get(word, ())) for word in words - meant)


def _alike(said: str, phrase: str) -> float:
    """Whole against whole, words in any order; or one within the other: a phrase of two words and
    more that makes up most of the line, or two words and more of a phrase.
    """
    nearness = max(fuzz.ratio(said, phrase), fuzz.token_sort_ratio(said, phrase))
    words, spoken = set(phrase.split()), said.split()
    contained = len(words) > 1 and words <= set(spoken) and len(words) >= COVERS * len(spoken)
    part_of_it = len(spoken) > 1 and f" {said} " in f" {phrase} "
    return max(nearness, WITHIN) if contained or part_of_it else nearness

"""Typed text made comparable: lower case, no apostrophes ("dont" is as good as "don't"), no punctuation."""

import re
import unicodedata

_APOSTROPHES = str.maketrans(dict.fromkeys("'’‘ʼ`´", ""))
_NOT_WORD = re.compile(r"[\W_]+")
_CLAUSE_END = re.compile(r"[.;:!?,\n]+|\s[-–—]\s")


def normalised(text: str) -> str:
    """`"It’s ON, again!"` -> `"its on again"`."""
    folded = unicodedata.normalize("NFKC", text.translate(_APOSTROPHES)).casefold()
    return " ".join(_NOT_WORD.sub(" ", folded).split())


def tokens(text: str) -> list[str]:
    return normalised(text).split()


def clauses(text: str) -> list[list[str]]:
    """The text's clauses, each as its words; a comma or a dash ends one."""
    found = [tokens(part) for part in _CLAUSE_END.split(unicodedata.normalize("NFKC", text))]
    return [words for words in found if words]


def phrases(listed: str) -> tuple[str, ...]:
    """`"yes | yeah | it does"` -> each phrase, normalised."""
    return tuple(dict.fromkeys(p for p in map(normalised, listed.split("|")) if p))

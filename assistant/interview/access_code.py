"""The code that gives a person their session back: made, tidied up after typing, and hashed.

A code is sixteen characters of Crockford's base 32 (no I, L, O or U), read out in groups of four:
`7K3M-QX8D-0ZRT-5WAB`. Sixteen times five bits make the eighty bits of chance behind it.
"""

import hashlib
import unicodedata
from collections.abc import Callable

from assistant.errors import SessionUnknown

ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
RANDOM_BYTES = 10
CHARACTERS = RANDOM_BYTES * 8 // 5
GROUP = 4

_SOUND_ALIKES = str.maketrans({"O": "0", "I": "1", "L": "1"})
_SEPARATORS = frozenset("_.,\u2212")
_SEPARATOR_CATEGORIES = frozenset({"Pd", "Zs", "Zl", "Zp", "Cc", "Cf"})


def new_code(random_bytes: Callable[[int], bytes]) -> str:
    """A fresh code. `random_bytes(n)` gives n unguessable bytes, as `secrets.token_bytes` does.

    Raises ValueError if it gives another number of bytes than it was asked for.
    """
    chance = random_bytes(RANDOM_BYTES)
    if len(chance) != RANDOM_BYTES:
        raise ValueError(f"asked for {RANDOM_BYTES} random bytes, got {len(chance)}")
    number = int.from_bytes(chance, "big")
    return _grouped("".join(ALPHABET[number >> shift & 31] for shift in range(5 * (CHARACTERS - 1), -1, -5)))


def normalise_code(text: str) -> str:
    """The one spelling of a code, however it was typed.

    Case, width, spaces and hyphens (also missing ones) don't matter; O is read as 0, I and L as 1.
    Raises SessionUnknown if the text can't be a code, because no session has one like it.
    """
    typed = unicodedata.normalize("NFKC", text).upper().translate(_SOUND_ALIKES)
    characters = "".join(char for char in typed if not _separates(char))
    if len(characters) != CHARACTERS or not set(characters) <= set(ALPHABET):
        raise SessionUnknown("not a code")
    return _grouped(characters)


def hash_code(code: str) -> str:
    """The SHA-256 of a code, in hex: what is stored in its place. The code may be typed in any way.

    A slow, salted hash protects secrets that people choose, because those can be guessed. Behind this
    one stand eighty random bits: trying them all is out of reach however fast the hash is, and no two
    codes are alike for a table to be of use. Without a salt the hash can be looked up by an index.
    Raises SessionUnknown as `normalise_code` does.
    """
    return hashlib.sha256(normalise_code(code).encode("ascii")).hexdigest()


def _grouped(characters: str) -> str:
    return "-".join(characters[start : start + GROUP] for start in range(0, len(characters), GROUP))


def _separates(char: str) -> bool:
    return char in _SEPARATORS or unicodedata.category(char) in _SEPARATOR_CATEGORIES

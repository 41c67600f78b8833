import re
import secrets

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import SessionUnknown
from assistant.interview.access_code import ALPHABET, hash_code, new_code, normalise_code
from tests.store.samples import numbered_code

EIGHTY_BITS = st.binary(min_size=10, max_size=10)


def test_a_code_is_four_groups_of_four_easy_characters() -> None:
    assert re.fullmatch(r"([0-9A-HJKMNP-TV-Z]{4}-){3}[0-9A-HJKMNP-TV-Z]{4}", new_code(secrets.token_bytes))


def test_the_alphabet_has_no_letters_that_are_mistaken() -> None:
    assert len(set(ALPHABET)) == 32
    assert not set(ALPHABET) & set("ILOU")


@given(EIGHTY_BITS, EIGHTY_BITS)
def test_all_eighty_bits_count(one: bytes, other: bytes) -> None:
    same_code = new_code(lambda _: one) == new_code(lambda _: other)
    assert same_code == (one == other)


def test_every_single_bit_changes_the_code() -> None:
    assert len({numbered_code(1 << bit) for bit in range(80)}) == 80


def test_too_little_chance_is_a_mistake() -> None:
    with pytest.raises(ValueError, match="10 random bytes"):
        new_code(lambda _: b"few")


@given(EIGHTY_BITS)
def test_a_code_is_its_own_one_spelling(chance: bytes) -> None:
    code = new_code(lambda _: chance)
    assert normalise_code(code) == code


@pytest.mark.parametrize(
    "typed",
    [
        "01ab-cdef-ghjk-mn01",
        "01ABCDEFGHJKMN01",
        " 01AB CDEF\tGHJK MN01\n",
        "OlAB-CDEF-GHJK-MNoi",
        "oIab cdef ghjk mnOL",
        "01AB\u2013CDEF\u2014GHJK\u2010MN01",
        "０１ＡＢ－ＣＤＥＦ－ＧＨＪＫ－ＭＮ０１",
        "01AB\u00a0CDEF\u200bGHJK\u00adMN01",
        "01AB.CDEF,GHJK_MN01",
        "-01-AB-CD-EF-GH-JK-MN-01-",
    ],
)
def test_a_code_is_understood_however_typed(typed: str) -> None:
    assert normalise_code(typed) == "01AB-CDEF-GHJK-MN01"
    assert hash_code(typed) == hash_code("01AB-CDEF-GHJK-MN01")


@pytest.mark.parametrize(
    "typed", ["", "-", "01AB", "01AB-CDEF-GHJK-MN012", "U1AB-CDEF-GHJK-MN01", "01AB-CDEF-GHJK-MN0\ud800"]
)
def test_what_cannot_be_a_code_is_nobodys(typed: str) -> None:
    with pytest.raises(SessionUnknown):
        normalise_code(typed)
    with pytest.raises(SessionUnknown):
        hash_code(typed)


@given(st.text())
def test_any_text_is_a_code_or_nobodys(typed: str) -> None:
    try:
        code = normalise_code(typed)
    except SessionUnknown:
        return
    assert normalise_code(code) == code


def test_the_hash_does_not_show_the_code() -> None:
    code = "01AB-CDEF-GHJK-MN01"
    assert re.fullmatch(r"[0-9a-f]{64}", hash_code(code))
    assert code not in hash_code(code)
    assert hash_code(code) != hash_code("01AB-CDEF-GHJK-MN02")

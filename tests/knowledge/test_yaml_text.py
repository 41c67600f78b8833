import sys
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.knowledge.yaml_text import MAX_DEPTH, Place, read_yaml


def mistakes(text):
    return [(m.code, m.place.line, m.place.column) for m in read_yaml(text).mistakes]


@pytest.mark.parametrize(
    "value", ["on", "off", "yes", "No", "~", "null", "010", "0x1F", "1_000", "1:30", ".inf", "1.0"]
)
def test_a_scalar_stays_the_text_that_was_written(value):
    assert read_yaml(f"key: {value}\n{value}: key\n".encode()).data == {"key": value, value: "key"}


def test_every_key_and_item_has_its_place():
    text = read_yaml(b"a: 1\nb:\n  - c: 2\n    d: [x, y]\n")
    assert text.mistakes == ()
    assert text.places == {
        (): Place(1, 1),
        ("a",): Place(1, 1),
        ("b",): Place(2, 1),
        ("b", 0): Place(3, 5),
        ("b", 0, "c"): Place(3, 5),
        ("b", 0, "d"): Place(4, 5),
        ("b", 0, "d", 0): Place(4, 9),
        ("b", 0, "d", 1): Place(4, 12),
    }
    assert text.place_of(("b", 0, "e", "f")) == Place(3, 5)


def test_a_key_written_twice_keeps_its_first_value_and_places():
    text = read_yaml(b"a: {b: 1}\nc: 2\na: {b: 3, d: 4}\n")
    assert text.data == {"a": {"b": "1"}, "c": "2"}
    assert text.places[("a", "b")] == Place(1, 5)
    assert ("a", "d") not in text.places
    assert mistakes(b"a: {b: 1}\nc: 2\na: {b: 3, d: 4}\n") == [("key_twice", 3, 1)]


def test_columns_count_characters_and_not_bytes():
    assert mistakes("é: é\n'ü': {é: 1, é: 2}\n".encode()) == [("key_twice", 2, 13)]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_lines_are_counted_with_every_line_end(end):
    assert mistakes(end.join(["a: 1", "b: 2", "a: 3", ""]).encode()) == [("key_twice", 3, 1)]
    assert mistakes(end.join(["a: 1", "b: \x07", ""]).encode()) == [("character_not_allowed", 2, 4)]
    assert mistakes(end.join(["a: 1", "b: ", ""]).encode() + b"c: \xff") == [("not_utf8", 3, 4)]


def test_a_byte_order_mark_at_the_start_is_not_counted():
    assert mistakes(b"\xef\xbb\xbfa: 1\na: 2\n") == [("key_twice", 2, 1)]
    assert mistakes(b"\xef\xbb\xbfa: \xff\n") == [("not_utf8", 1, 4)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (b"", ("empty_file", 1, 1)),
        (b"# only this\n", ("empty_file", 1, 1)),
        (b"---\n", ("empty_file", 1, 1)),
        (b"a: 1\n---\nb: 2\n", ("second_document", 2, 1)),
        (b"a: *b\n", ("alias", 1, 4)),
        (b"*b : 1\n", ("alias", 1, 1)),
        (b"a: !!int 3\n", ("tag", 1, 4)),
        (b"!x a: 1\n", ("tag", 1, 1)),
        (b"[a]: 1\n", ("key_not_text", 1, 1)),
        (b"? {a: 1}\n: 2\n", ("key_not_text", 1, 3)),
        (b"a:\n\tb: 1\n", ("tab", 2, 1)),
        (b"a: b: c\n", ("colon_not_expected", 1, 5)),
        (b"a: %b\n", ("marks_needed", 1, 4)),
        (b"a: 1\nb\n", ("no_colon", 2, 1)),
        (b"a: 'b\nc: 1\n", ("never_closed", 1, 4)),
        (b"a: [b\n", ("never_closed", 1, 4)),
        (b"a: [b}\n", ("comma_missing", 1, 6)),
        (b"a:\n  - b\n c: d\n", ("does_not_fit", 3, 2)),
        (b'a: "\\q"\n', ("not_yaml", 1, 5)),
        ("a: b\u2028c\n".encode(), ("character_not_allowed", 1, 5)),
    ],
)
def test_a_mistake_in_the_text_is_named_with_its_place(text, expected):
    assert mistakes(text) == [expected]


@pytest.mark.parametrize(("depth", "codes"), [(MAX_DEPTH, []), (MAX_DEPTH + 1, ["too_deep"])])
def test_nesting_is_bounded(depth, codes):
    text = b"{a: " * depth + b"1" + b"}" * depth
    assert [mistake.code for mistake in read_yaml(text).mistakes] == codes


def test_only_characters_that_can_be_seen_are_allowed():
    for number in range(sys.maxunicode + 1):
        character = chr(number)
        category = unicodedata.category(character)
        if category in ("Cs", "Cn", "Co"):
            continue
        hidden = category in ("Cc", "Zl", "Zp", "Zs") and character not in " \t\n\r"
        refused = [m.code for m in read_yaml(f"'a{character}'".encode()).mistakes] == ["character_not_allowed"]
        assert refused == hidden or (category == "Cf" and refused), f"U+{number:04X}"


@given(some.binary(max_size=200))
def test_no_bytes_make_reading_raise(content):
    text = read_yaml(content)
    assert text.mistakes or text.data is not None


@given(some.text(alphabet="ab:-[]{},'\"\n #&*!|>?%@`\t", max_size=60))
def test_no_text_makes_reading_raise_and_places_lie_within_it(content):
    lines = content.split("\n")
    for mistake in read_yaml(content.encode()).mistakes:
        assert 1 <= mistake.place.line <= len(lines) + 1
        assert mistake.place.column >= 1

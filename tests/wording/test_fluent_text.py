"""Messages are read as the library's own parser reads them."""

from random import Random

import pytest
from fluent.syntax import FluentParser, ast

from assistant.wording.fluent_text import parsed
from assistant.wording.locale import wording_files
from tests.conftest import ROOT

FILES = wording_files(ROOT / "locales", "en-GB")
PIECES = (
    *'{}[]*.=-#"$ \n\r\\(:,',
    "\n\n",
    "\n    ",
    "\r\n",
    "{ $x }",
    "{ -term }",
    "->",
    "\\u00e9",
    "é",
    "a = b\n",
    "\n# c",
)


def by_the_library(text: str) -> ast.Resource:
    """Without comments, which nobody sees, and with one character at the end of each line."""
    resource = FluentParser(with_spans=False).parse(text.replace("\r\n", "\n"))
    resource.body = [entry for entry in resource.body if isinstance(entry, ast.Message | ast.Term | ast.Junk)]
    for entry in resource.body:
        if isinstance(entry, ast.Message | ast.Term):
            entry.comment = None
    return resource


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_each_file_is_read_as_the_library_reads_it(path) -> None:  # type: ignore[no-untyped-def]
    text = path.read_text("utf-8")
    assert parsed(text).body
    assert parsed(text).equals(by_the_library(text))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\n \n",
        "a = b",
        "a = b\r\n    c\r\n\r\n    d\r\nnext = e\r\n",
        "a =\n    deep\n      deeper\n    .label = { $n ->\n        [one] an oven\n       *[other] { $n }\n    }\n",
        '-brand = x\n    .kind = y\na = { -brand } { -brand(kind: "z") } { FIGURE($n, digits: 2) }',
        "# told\n# of a\na = b\n## group\n### all\n\n# alone",
        'a = { "\\u00e9 { }" } }',
        "a = { $x",
        "a\nb = c",
        "a = \r b\r",
    ],
)
def test_what_is_awkward_is_read_as_the_library_reads_it(text: str) -> None:
    assert parsed(text).equals(by_the_library(text))


def test_damaged_text_is_junk_where_it_is_to_the_library() -> None:
    random, junk = Random(7), 0
    texts = [path.read_text("utf-8") for path in FILES]
    for _ in range(600):
        whole = random.choice(texts)
        start = random.randrange(len(whole))
        damaged = whole[start : start + random.randrange(1, 500)]
        for _ in range(random.randrange(1, 5)):
            place = random.randrange(len(damaged) + 1)
            damaged = damaged[:place] + random.choice(PIECES) + damaged[place + random.randrange(3) :]
        expected = by_the_library(damaged)
        assert parsed(damaged).equals(expected), damaged
        junk += any(isinstance(entry, ast.Junk) for entry in expected.body)
    assert 200 < junk < 600

"""What people type is words in every form and nothing else: it can't act, hide, turn round or break anything."""

import json
import re
from collections.abc import Callable
from functools import partial

import jsonschema
import pytest
from markdown_it import MarkdownIt

from assistant.knowledge.model import Knowledge
from assistant.reports.lettering import shown
from assistant.reports.summary.as_html import as_html
from assistant.reports.summary.as_json import as_json
from assistant.reports.summary.as_markdown import as_markdown
from assistant.reports.summary.as_pdf import as_pdf
from assistant.reports.summary.as_text import as_text
from assistant.reports.summary.json_schema import summary_schema
from assistant.reports.summary.pdf.letters import fitted
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Summary
from tests.reports.summary.hostile import CONTROLS, HOSTILE, UNSEEN
from tests.reports.summary.read_html import Outline
from tests.reports.summary.read_pdf import opened, said, sheets_in
from tests.reports.summary.samples import FOOTING, with_words, words_in
from tests.reports.summary.sessions import both, with_text

TYPED = (
    "complaint_in_own_words",
    "access_for_visit",
    "anything_else",
    "make_and_model",
    "serial_number",
    "who_is_speaking",
    "call_back_number",
    "call_notes",
)
OF_THE_CALL = ("who_is_speaking", "call_back_number", "call_notes")
"""What an agent wrote down stands on the engineer's page alone."""
FORMS: dict[str, Callable[[Summary], str]] = {
    "text": partial(as_text, footing=FOOTING),
    "markdown": partial(as_markdown, footing=FOOTING),
    "html": partial(as_html, footing=FOOTING),
    "json": as_json,
}
CLEAN = {name: shown(words) for name, words in HOSTILE.items()}
"""As they stand in the value."""
hostile = pytest.mark.parametrize("name", list(HOSTILE))
everywhere = pytest.mark.parametrize("reader", ["engineer", "household"])


def squeezed(words: str) -> str:
    return re.sub(r"\s", "", words)


def test_every_free_text_of_the_rules_is_tried(knowledge: Knowledge) -> None:
    assert {id_ for id_, question in knowledge.questions.items() if question.kind == "text"} == set(TYPED)


@hostile
def test_the_value_takes_nothing_that_could_act_from_a_session(name: str, dangerous: Told) -> None:
    told = dangerous
    for question_id in TYPED:
        told = with_text(told, question_id, HOSTILE[name])
    for summary in both(told):
        words = list(words_in(summary))
        told_here = len(TYPED) - (0 if summary.reader == "engineer" else len(OF_THE_CALL))
        assert words.count(CLEAN[name]) >= told_here
        assert not set("".join(words)) & set(CONTROLS + UNSEEN)
        "".join(words).encode()


def test_what_is_only_letters_is_taken_as_it_was_typed() -> None:
    for name in ("script", "link", "operators", "formula", "hebrew", "arabic", "brackets"):
        assert CLEAN[name] == HOSTILE[name]


@hostile
@pytest.mark.parametrize("form", list(FORMS))
def test_written_forms_can_not_move_a_cursor_or_turn_the_direction(name: str, form: str) -> None:
    written = FORMS[form](with_words(CLEAN[name]))
    assert not set(written) & (set(CONTROLS + UNSEEN) - {"\n"})
    written.encode()


@hostile
@everywhere
def test_in_text_every_word_is_there(name: str, reader: str) -> None:
    written = squeezed(as_text(with_words(CLEAN[name], reader=reader), FOOTING))
    assert written.count(squeezed(CLEAN[name])) >= 20


@hostile
@everywhere
def test_in_markdown_nothing_is_marked_up(name: str, reader: str) -> None:
    """The same tokens as for words that mean nothing, and the words within them."""
    read = MarkdownIt("commonmark", {"html": True, "linkify": False}).enable(["table", "strikethrough"])
    plain, found = (read.parse(as_markdown(with_words(w, reader=reader), FOOTING)) for w in ("plain", CLEAN[name]))
    assert [token.type for token in found] == [token.type for token in plain]
    for token, expected in zip(found, plain, strict=True):
        kinds = {child.type for child in token.children or []}
        assert kinds <= {child.type for child in expected.children or []} | {"text_special"}
        told = "".join(child.content for child in token.children or [])
        assert told == "".join(child.content for child in expected.children or []).replace("plain", CLEAN[name])


@hostile
@everywhere
def test_in_html_it_is_text_alone(name: str, reader: str) -> None:
    plain, found = (Outline(as_html(with_words(w, reader=reader), FOOTING)) for w in ("plain", CLEAN[name]))
    assert found.tags() == plain.tags()
    assert found.comments == []
    for (_, expected, words), (_, attributes, got) in zip(plain.elements, found.elements, strict=True):
        assert set(attributes) - {"class"} == set(expected) - {"class"}
        assert "".join(got) == "".join(words).replace("plain", CLEAN[name])


@hostile
@everywhere
def test_in_json_it_is_a_string(name: str, reader: str) -> None:
    read = json.loads(as_json(with_words(CLEAN[name], reader=reader)))
    jsonschema.Draft202012Validator(summary_schema()).validate(read)
    assert read["title"] == read["pages"][0]["sections"][0]["blocks"][0]["words"] == CLEAN[name]


@hostile
@everywhere
def test_in_a_pdf_it_is_text_and_whole(name: str, reader: str) -> None:
    summary = with_words(CLEAN[name], reader=reader)
    pdf = as_pdf(summary, FOOTING)
    sheets = squeezed("".join(sheets_in(pdf)))
    assert sheets.count(squeezed(fitted(CLEAN[name]))) >= 20
    if len(opened(pdf).pages) == len(summary.pages):
        assert sheets == squeezed(said(summary))


@hostile
def test_in_a_pdf_nothing_runs_off_the_sheet(name: str) -> None:
    """Each string begins and ends between the margins."""
    places: list[tuple[float, float]] = []

    def seen(text: str, cm: list[float], tm: list[float], *_: object) -> None:
        if text.strip():
            places.append((cm[4] + tm[4], cm[5] + tm[5]))

    for page in opened(as_pdf(with_words(CLEAN[name]), FOOTING)).pages:
        page.extract_text(visitor_text=seen)
    assert places
    assert all(0 < x < 596 and 0 < y < 842 for x, y in places)

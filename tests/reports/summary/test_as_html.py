"""HTML: all of the value, in well-formed elements that neither run nor fetch anything."""

from base64 import b64encode
from dataclasses import replace
from hashlib import sha256

import pytest

from assistant.reports.summary.as_html import as_html
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Page, Section, Summary, Table
from tests.reports.summary.read_html import Outline
from tests.reports.summary.samples import FOOTING, PLAIN, words_in
from tests.reports.summary.sessions import both

TOLD = ("h1", "h2", "p", "li", "dt", "dd", "th", "td", "figcaption")
ELEMENTS = {
    *("html", "head", "meta", "title", "style", "body", "header", "main", "div", "section", "footer", "figure"),
    *("ul", "ol", "dl", "table", "thead", "tbody", "tr", *TOLD),
    *("svg", "defs", "pattern", "rect", "circle", "line", "polyline", "polygon", "text"),
}


def outline_of(summary: Summary) -> Outline:
    return Outline(as_html(summary, FOOTING))


@pytest.fixture(scope="session")
def summaries(tolds: tuple[Told, ...]) -> list[Summary]:
    return [PLAIN, *(summary for told in tolds for summary in both(told))]


def test_every_word_of_the_value_is_there_in_order(summaries: list[Summary]) -> None:
    for summary in summaries:
        assert outline_of(summary).texts(*TOLD) == [*words_in(summary), FOOTING.session]


def test_every_element_is_closed_and_none_is_unexpected(summaries: list[Summary]) -> None:
    for summary in summaries:
        outline = outline_of(summary)
        assert set(outline.tags()) <= ELEMENTS
        assert outline.unclosed == []


def test_nothing_is_fetched_and_nothing_runs(summaries: list[Summary]) -> None:
    for summary in summaries:
        outline = outline_of(summary)
        names = {name for _, attributes, _ in outline.elements for name in attributes}
        assert not {"src", "href", "srcset", "style", "action", "data"} & names
        assert not any(name.startswith(("on", "xlink")) for name in names)
        assert "url(http" not in as_html(summary, FOOTING)
        assert "@import" not in as_html(summary, FOOTING)


def test_the_policy_allows_the_one_style_and_nothing_else() -> None:
    outline = outline_of(PLAIN)
    (style,) = outline.texts("style")
    digest = b64encode(sha256(style.encode()).digest()).decode()
    (policy,) = [each["content"] for each in outline.attributes("meta") if "http-equiv" in each]
    assert policy == f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"


def test_the_language_and_the_title_are_named() -> None:
    outline = outline_of(replace(PLAIN, lang="el", title="Πριν"))
    assert outline.attributes("html") == [{"lang": "el"}]
    assert outline.texts("title")[0] == "Πριν – a3f9a3f9"


def test_ids_are_there_once_and_what_points_to_them_finds_them(measured: Told) -> None:
    for summary, pictures in ((PLAIN, 2), (both(measured)[0], 4)):
        outline = outline_of(summary)
        assert outline.tags().count("svg") == pictures
        ids = [attributes["id"] for _, attributes, _ in outline.elements if "id" in attributes]
        assert len(ids) == len(set(ids))
        for _, attributes, _ in outline.elements:
            fill = attributes.get("fill") or ""
            pointed = [*(attributes.get("aria-labelledby") or "").split(), *([fill[5:-1]] if "url" in fill else [])]
            assert set(pointed) <= set(ids)


def test_one_heading_stands_above_all_and_each_section_has_its_own(summaries: list[Summary]) -> None:
    for summary in summaries:
        outline = outline_of(summary)
        headings = [tag for tag in outline.tags() if tag[0] == "h" and tag[1:].isdigit()]
        assert headings == ["h1", *("h2" for page in summary.pages for _ in page.sections)]


def test_each_head_of_a_table_says_of_what_it_is_one() -> None:
    table = Table(("Cause", "Probability"), (("base", "7 %"), ("top", "3 %")))
    outline = outline_of(replace(PLAIN, pages=(Page((Section("likely", "Likely", (table,)),)),)))
    assert [each["scope"] for each in outline.attributes("th")] == ["col", "col", "row", "row"]
    assert [each["data-label"] for each in outline.attributes("td")] == ["Probability", "Probability"]


def test_a_compact_table_stays_one_on_a_phone_and_another_becomes_a_list() -> None:
    wide, compact = Table(("Cause",), (("base",),)), Table(("Way",), (("top",),), compact=True)
    outline = outline_of(replace(PLAIN, pages=(Page((Section("likely", "Likely", (wide, compact)),)),)))
    assert outline.attributes("table") == [{}, {"class": "compact"}]
    assert [each.get("data-label") for each in outline.attributes("th")] == [None, "Cause", None, None]
    (style,) = outline.texts("style")
    phone = style[style.index("max-width: 36rem") :]
    assert "table:not(.compact), table:not(.compact) :is(tbody, tr, th, td) { display: block; }" in phone


def test_what_was_said_of_each_way_of_heating_and_the_bread_are_compact(measured: Told) -> None:
    tables = [
        block
        for page in both(measured)[0].pages
        for section in page.sections
        for block in section.blocks
        if isinstance(block, Table)
    ]
    assert [len(each.columns) for each in tables if each.compact] == [6]
    assert any(not each.compact for each in tables)


def test_of_a_drawing_in_two_forms_the_style_shows_one(measured: Told) -> None:
    outline = outline_of(both(measured)[0])
    assert [each["class"] for each in outline.attributes("svg")] == ["wide", "narrow", "wide", "narrow"]
    (style,) = outline.texts("style")
    narrow = style.index("figure .wide { display: none; }")
    assert style.index("figure .narrow { display: none; }") < narrow < style.index("figure .narrow { display: block;")
    assert "@media screen" in style[:narrow].splitlines()[-2]


def test_pages_are_sheets_of_their_own() -> None:
    outline = outline_of(PLAIN)
    assert [each.get("class") for each in outline.attributes("div")].count("sheet") == len(PLAIN.pages)


def test_danger_is_plain_without_colour() -> None:
    (style,) = outline_of(PLAIN).texts("style")
    (rule,) = [each for each in style.split("}") if each.strip().startswith(".danger {") and "alarm" in each]
    assert "font-weight: 700" in rule
    assert "border:" in rule


def test_the_same_value_gives_the_same_page() -> None:
    assert as_html(PLAIN, FOOTING) == as_html(replace(PLAIN), FOOTING)

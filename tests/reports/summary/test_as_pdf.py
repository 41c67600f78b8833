"""PDF: all of the value as text in its order, on sheets of A4 from which nothing runs off."""

import re
from dataclasses import replace

import pytest
from pypdf.generic import ContentStream

from assistant.reports.summary.as_pdf import SIZES, as_pdf, size_of
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Drawing, Items, Page, Paragraph, Section, Summary, Table
from tests.reports.summary.read_pdf import keys_in, opened, said, sheets_in, structure
from tests.reports.summary.samples import CHART, FOOTING, PLAIN, with_words, words_in
from tests.reports.summary.sessions import both

PARAGRAPH = Paragraph("It never gets hot enough. " * 12)


def pdf_of(summary: Summary) -> bytes:
    return as_pdf(summary, FOOTING)


def squeezed(words: str) -> str:
    return re.sub(r"\s", "", words)


def with_blocks(*blocks: Paragraph | Items | Table | Drawing) -> Summary:
    return replace(PLAIN, pages=(Page((Section("only", "Only this", blocks),)),))


@pytest.mark.parametrize(
    "words",
    [
        "The oven stays pale below",
        "Wärmefühler, große Öse, Łódź, háček ďábel, ağ, ő, ș",
        "Το φουρνάκι μένει κρύο από κάτω",
        "Ёлка печётся, духовка холодная",
        "≥ 200 °C ± 5 %, 46 Ω – “so it says” … 3½ → ½",
    ],
)
def test_the_text_comes_out_as_it_went_in(words: str) -> None:
    summary = with_words(words)
    assert squeezed("".join(sheets_in(pdf_of(summary)))) == squeezed(said(summary))


def test_words_stay_whole_and_apart() -> None:
    summary = with_blocks(PARAGRAPH)
    assert " ".join(sheets_in(pdf_of(summary))) == said(summary)


def test_sessions_come_out_too(tolds: tuple[Told, ...]) -> None:
    for summary in (summary for told in tolds for summary in both(told)):
        sheets = sheets_in(pdf_of(summary))
        if len(sheets) == len(summary.pages):
            assert squeezed("".join(sheets)) == squeezed(said(summary))
        left = squeezed("".join(sheets))
        for words in words_in(summary):
            _, found, left = left.partition(squeezed(words))
            assert found == squeezed(words)


def test_an_engineers_page_one_is_one_sheet(measured: Told, dangerous: Told) -> None:
    for told in (measured, dangerous):
        summary, _ = both(told)
        _, second = summary.pages
        sheets = sheets_in(pdf_of(summary))
        assert sheets[1].startswith(second.sections[0].heading)


def test_letters_shrink_within_bounds_and_then_the_text_flows_on() -> None:
    least, usual = SIZES["engineer"]
    sizes = [size_of(with_blocks(*[PARAGRAPH] * number), 0) for number in (1, 20, 24, 30)]
    assert sizes[0] == usual > sizes[1] > sizes[2] >= least
    assert len(sheets_in(pdf_of(with_blocks(*[PARAGRAPH] * 24)))) == 1
    flowing = with_blocks(*[PARAGRAPH] * 30)
    assert least < sizes[3] < usual
    assert len(sheets_in(pdf_of(flowing))) == 2
    assert " ".join(sheets_in(pdf_of(flowing))) == said(flowing)


def test_what_the_letters_lack_is_seen_to_be_lacking() -> None:
    (sheet,) = sheets_in(pdf_of(with_blocks(Paragraph("hot 🔥 אש 火 \x00 end"))))
    assert sheet.endswith("hot � �� � � end")


def test_letters_and_their_marks_are_put_together() -> None:
    (sheet,) = sheets_in(pdf_of(with_blocks(Paragraph("cafe\u0301"))))
    assert sheet.endswith("café")


def test_a_row_that_is_taller_than_a_sheet_goes_on_under_the_same_heads() -> None:
    long = "word " * 4000
    sheets = sheets_in(pdf_of(with_blocks(Table(("No.", "How"), (("1", long), ("2", "short"))))))
    assert len(sheets) > 1
    assert sum(sheet.count("word") for sheet in sheets) == 4000
    assert all(sheet.startswith("No. How") for sheet in sheets[1:])
    assert sheets[-1].endswith("2 short")


def test_a_word_that_is_wider_than_its_column_is_broken_and_whole() -> None:
    long = "x" * 400 + "end"
    (sheet,) = sheets_in(pdf_of(with_blocks(Table(("Test", "How"), (("1", long), (long, "2"))))))
    assert squeezed(sheet).count("x" * 400 + "end") == 2


def test_title_language_and_pages_are_named() -> None:
    pdf = opened(pdf_of(replace(PLAIN, lang="el", title="Πριν")))
    assert pdf.metadata is not None
    assert pdf.metadata.title == "Πριν"
    assert pdf.metadata.creation_date == PLAIN.written_at
    root = pdf.trailer["/Root"]
    assert root["/Lang"] == "el"  # type: ignore[index]
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]  # type: ignore[index]
    assert {tuple(map(round, page.mediabox[2:])) for page in pdf.pages} == {(595, 842)}


def test_its_letters_come_with_it() -> None:
    for page in opened(pdf_of(PLAIN)).pages:
        fonts = [font.get_object() for font in page["/Resources"]["/Font"].values()]  # type: ignore[index]
        used = [font for font in fonts if "DejaVu" in font["/BaseFont"]]
        assert used
        assert all("/FontFile2" in font["/FontDescriptor"] for font in used)


def test_it_runs_and_opens_nothing() -> None:
    keys = keys_in(pdf_of(with_words("https://example.org javascript:alert(1) ) Tj")))
    assert "/MCID" in keys
    assert not keys & {"/JavaScript", "/JS", "/OpenAction", "/AA", "/URI", "/Launch", "/Annots", "/EmbeddedFile"}


def test_it_tells_readers_of_screens_what_is_what() -> None:
    blocks = (
        Paragraph("one"),
        Items(("two", "three"), numbered=True),
        Table(("four",), (("five",),)),
        Drawing(CHART, "six"),
    )
    tree = structure(pdf_of(with_blocks(*blocks)))
    assert " ".join(role for role, _ in tree) == (
        "Document H1 P Sect H2 P L LI Lbl LBody LI Lbl LBody Table TR TH TR TH Figure P"
    )
    (figure,) = [element for role, element in tree if role == "Figure"]
    assert figure["/Alt"] == "six"
    assert [element["/A"]["/Scope"] for role, element in tree if role == "TH"] == ["/Column", "/Row"]


def test_all_that_is_drawn_is_marked_and_each_mark_is_in_the_tree_once() -> None:
    pdf = pdf_of(PLAIN)
    told = sorted(
        (id(kid["/Pg"].get_object()), kid["/MCID"])
        for _, element in structure(pdf)
        for kid in element["/K"]
        if "/MCID" in kid.get_object()
    )
    assert len(told) == len(set(told)) > 20
    reader = opened(pdf)
    for page in reader.pages:
        depth = 0
        for operands, operator in ContentStream(page["/Contents"], reader).operations:
            depth += {b"BDC": 1, b"BMC": 1, b"EMC": -1}.get(operator, 0)
            assert 0 <= depth <= 1
            assert depth or operator not in (b"Tj", b"S", b"f", b"B", b"f*", b"B*"), operands


def test_the_same_value_gives_the_same_file() -> None:
    assert pdf_of(PLAIN) == pdf_of(replace(PLAIN))

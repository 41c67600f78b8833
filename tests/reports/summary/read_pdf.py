"""What a PDF says, as another library reads it."""

from io import BytesIO
from typing import Any

from pypdf import PdfReader

from assistant.reports.summary.pdf.letters import fitted
from assistant.reports.summary.picture import picture_of
from assistant.reports.summary.value import Drawing, Items, Pairs, Paragraph, Summary, Table
from tests.reports.summary.samples import FOOTING


def opened(pdf: bytes) -> PdfReader:
    return PdfReader(BytesIO(pdf), strict=True)


def sheets_in(pdf: bytes) -> list[str]:
    """The text of each sheet on one line, without its footing, which must be there."""
    sheets = [" ".join(page.extract_text().split()) for page in opened(pdf).pages]
    for number, sheet in enumerate(sheets):
        footing = f" {FOOTING.session} {FOOTING.page_of(number + 1, len(sheets))}"
        assert sheet.endswith(footing)
        sheets[number] = sheet.removesuffix(footing)
    return sheets


def said(summary: Summary) -> str:
    """What a PDF of the summary is to say, on one line, its drawings' letters too."""
    words = [summary.title, summary.about]
    for section in (section for page in summary.pages for section in page.sections):
        words.append(section.heading)
        for block in section.blocks:
            match block:
                case Paragraph():
                    words.append(block.words)
                case Items():
                    numbers = [f"{number}. " for number in range(1, len(block.items) + 1)] if block.numbered else []
                    words += [number + item for number, item in zip(numbers or [""] * 99, block.items, strict=False)]
                case Pairs():
                    words += [cell for row in block.rows for cell in row]
                case Table():
                    words += [*(block.columns if block.rows else ()), *(cell for row in block.rows for cell in row)]
                case Drawing():
                    words += [each.text or "" for each in picture_of(block.svg, "").iter("text")]
                    words.append(block.described)
    return " ".join(" ".join(map(fitted, words)).split())


def structure(pdf: bytes) -> list[tuple[str, dict[str, Any]]]:
    """(role, element) of the tree that readers of screens follow, from the top."""
    found: list[tuple[str, dict[str, Any]]] = []

    def walk(element: Any) -> None:
        found.append((element["/S"].removeprefix("/"), element))
        for kid in element["/K"]:
            if "/S" in kid.get_object():
                walk(kid.get_object())

    walk(opened(pdf).trailer["/Root"]["/StructTreeRoot"]["/K"].get_object())  # type: ignore[index]
    return found


def keys_in(pdf: bytes) -> set[str]:
    """Of every dictionary in the file."""
    reader = opened(pdf)
    keys: set[str] = set()

    def walk(element: Any) -> None:
        if isinstance(element, dict):
            keys.update(element)
            for each in element.values():
                walk(each)
        elif isinstance(element, list):
            for each in element:
                walk(each)

    for number in range(1, int(reader.trailer["/Size"])):  # type: ignore[call-overload]
        walk(reader.get_object(number))
    return keys

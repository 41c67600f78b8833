"""The tree that tells readers of screens what the marked content of a PDF is (ISO 32000-1, 14.7)."""

from typing import Any

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFString
from reportlab.pdfgen.canvas import Canvas

from assistant.reports.summary.pdf.units import Node


def internals(canvas: Canvas) -> Any:
    """What the library has no open way to: the commands of the page, and the objects of the file."""
    return canvas


def hang_tree(canvas: Canvas, tree: Node, sheets: int) -> None:
    """Into the file that is being drawn. All its pages must be there."""
    document = internals(canvas)._doc
    pages = [document.Pages.pages[number] for number in range(sheets)]
    owners: list[dict[int, Any]] = [{} for _ in pages]
    root = PDFDictionary({"Type": PDFName("StructTreeRoot")})
    root_reference = document.Reference(root)
    root["K"] = _element(document, tree, root_reference, pages, owners)
    numbered: list[Any] = []
    for number, (page, owned) in enumerate(zip(pages, owners, strict=True)):
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        page.StructParents = number
        page.Tabs = PDFName("S")
        numbered += [number, document.Reference(PDFArray([owned[mark] for mark in sorted(owned)]))]
    root["ParentTree"] = document.Reference(PDFDictionary({"Nums": PDFArray(numbered)}))
    root["ParentTreeNextKey"] = sheets
    document.Catalog.StructTreeRoot = root_reference
    document.Catalog.MarkInfo = PDFDictionary({"Marked": "true"})
    document.Catalog.ViewerPreferences = PDFDictionary({"DisplayDocTitle": "true"})


def _element(document: Any, node: Node, parent: Any, pages: list[Any], owners: list[dict[int, Any]]) -> Any:
    """A reference to it, with all below it."""
    element = PDFDictionary({"Type": PDFName("StructElem"), "S": PDFName(node.role), "P": parent})
    reference = document.Reference(element)
    kids: list[Any] = []
    for sheet, mark in node.places:
        owners[sheet][mark] = reference
        page = document.Reference(pages[sheet])
        kids.append(PDFDictionary({"Type": PDFName("MCR"), "Pg": page, "MCID": mark}))
    kids += [_element(document, child, reference, pages, owners) for child in node.children]
    element["K"] = PDFArray(kids)
    if node.described:
        element["Alt"] = PDFString(node.described)
    if node.scope:
        element["A"] = PDFDictionary({"O": PDFName("Table"), "Scope": PDFName(node.scope)})
    return reference

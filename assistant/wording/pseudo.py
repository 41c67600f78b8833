"""A made-up language, generated from a real one: every sentence is marked, so that one written into the code
shows at once, and a fifth longer, so that narrow screens are tried."""

from fluent.syntax import FluentSerializer, ast
from fluent.syntax.visitor import Transformer

from assistant.wording.fluent_text import parsed

PSEUDO_LANG = "x-marked"
OPENING, CLOSING = "⟦", "⟧"

_ACCENTED = str.maketrans("aeiouAEIOUcnsy", "áéíóúÁÉÍÓÚçñšý")
_WORD_LISTS = ("words", "phrases", "unclear", "ending", "also")


def marked(text: str) -> str:
    return text.translate(_ACCENTED)


class _Marker(Transformer):
    """Accents every text and brackets every pattern; lists of typed words are accented only."""

    def visit_TextElement(self, node: ast.TextElement) -> ast.TextElement:  # noqa: N802 - the library's name
        node.value = marked(node.value)
        return node

    def visit_Message(self, node: ast.Message) -> ast.Message:  # noqa: N802 - the library's name
        self.generic_visit(node)
        if node.value is not None and not node.id.name.startswith(("listener-", "words-")):
            _bracket(node.value)
        for attribute in node.attributes:
            if not attribute.id.name.endswith(_WORD_LISTS):
                _bracket(attribute.value)
        return node


def _bracket(pattern: ast.Pattern) -> None:
    pattern.elements = [ast.TextElement(OPENING), *pattern.elements, ast.TextElement(CLOSING)]


def pseudo_resource(text: str) -> str:
    """The Fluent text with every message marked."""
    return FluentSerializer().serialize(_Marker().visit(parsed(text)))

"""The forms in which a summary may be had: each brings what it is written with only when it is asked for."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.reports.summary.value import Summary
    from assistant.wording.locale import Wording

    Form = Callable[[Summary, Wording], bytes]


def _text(summary: "Summary", wording: "Wording") -> bytes:
    from assistant.reports.summary.as_text import as_text
    from assistant.reports.summary.footing import footing_of

    return as_text(summary, footing_of(summary, wording)).encode()


def _markdown(summary: "Summary", wording: "Wording") -> bytes:
    from assistant.reports.summary.as_markdown import as_markdown
    from assistant.reports.summary.footing import footing_of

    return as_markdown(summary, footing_of(summary, wording)).encode()


def _html(summary: "Summary", wording: "Wording") -> bytes:
    from assistant.reports.summary.as_html import as_html
    from assistant.reports.summary.footing import footing_of

    return as_html(summary, footing_of(summary, wording)).encode()


def _pdf(summary: "Summary", wording: "Wording") -> bytes:
    from assistant.reports.summary.as_pdf import as_pdf
    from assistant.reports.summary.footing import footing_of

    return as_pdf(summary, footing_of(summary, wording))


def _json(summary: "Summary", wording: "Wording") -> bytes:
    from assistant.reports.summary.as_json import as_json

    return as_json(summary).encode()


FORMS: Mapping[str, "Form"] = {"text": _text, "markdown": _markdown, "html": _html, "pdf": _pdf, "json": _json}
NO_TEXT = frozenset({"pdf"})
"""Forms that a terminal can't show."""

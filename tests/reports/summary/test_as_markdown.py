"""Markdown: its last line is the footing, and nothing in that is mark-up."""

from dataclasses import replace

from markdown_it import MarkdownIt

from assistant.reports.summary.as_markdown import as_markdown
from assistant.reports.summary.session import Told
from tests.reports.summary.samples import FOOTING, PLAIN
from tests.reports.summary.sessions import both


def test_the_last_paragraph_says_which_session_it_is_and_as_of_when(measured: Told) -> None:
    for summary in (PLAIN, *both(measured)):
        written = as_markdown(summary, replace(FOOTING, session="*Before*, a3f9, as of 2026-03-04 12:00 UTC"))
        *_, before, last, _ = MarkdownIt("commonmark").enable("table").parse(written)
        assert (before.type, last.type) == ("paragraph_open", "inline")
        assert {child.type for child in last.children or []} <= {"text", "text_special"}
        assert "".join(child.content for child in last.children or []) == "*Before*, a3f9, as of 2026-03-04 12:00 UTC"

"""Beneath every page: which session, as of when, which page."""

from assistant.reports.summary.footing import footing_of
from assistant.wording.languages import Languages
from tests.reports.summary.samples import PLAIN


def test_it_names_the_session_and_when_it_was_written(languages: Languages) -> None:
    footing = footing_of(PLAIN, languages.wording("en-GB"))
    assert footing.session == "Before the visit, session a3f9a3f9, as of 2026-03-04 12:00 UTC"
    assert footing.page_of(1, 2) == "1 of 2"


def test_it_speaks_the_language_of_the_wording(languages: Languages) -> None:
    assert footing_of(PLAIN, languages.wording("x-marked")).page_of(1, 2) == "⟦1 óf 2⟧"

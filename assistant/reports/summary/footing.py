"""What stands beneath every page of a summary: which session, as of when, and which page it is."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from assistant.reports.summary.value import Summary
from assistant.wording.locale import Wording


@dataclass(frozen=True)
class Footing:
    """`page_of`: the page's number and how many there are, in words."""

    session: str
    page_of: Callable[[int, int], str]


def time_in_words(moment: datetime, wording: Wording) -> str:
    """`moment`: aware, in the time zone in which it is told."""
    return wording.say("summary-time", date=f"{moment:%Y-%m-%d}", time=f"{moment:%H:%M}", zone=moment.tzname() or "")


def footing_of(summary: Summary, wording: Wording) -> Footing:
    """In the language of the wording, which should be the summary's."""
    when = time_in_words(summary.written_at, wording)

    def page_of(page: int, pages: int) -> str:
        return wording.say("summary-page_of", page=str(page), pages=str(pages))

    return Footing(
        wording.say("summary-footer", title=summary.title, session=summary.session, when=when),
        page_of,
    )

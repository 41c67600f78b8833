"""What a summary says, in the reader's words, in the order in which it is read. Each form shows all of it."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

Reader = Literal["engineer", "household"]
Style = Literal["plain", "strong", "danger", "quiet"]


@dataclass(frozen=True)
class Paragraph:
    words: str
    style: Style = "plain"


@dataclass(frozen=True)
class Items:
    """A list; `numbered` where the order counts."""

    items: tuple[str, ...]
    numbered: bool = False


@dataclass(frozen=True)
class Pairs:
    """What is known under which name, a row each."""

    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Table:
    """Every row has as many cells as there are columns. `compact`: cells of a word or two, which say something only
    beside and below each other, so that it stays a table on the narrowest screen.
    """

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    compact: bool = False


@dataclass(frozen=True)
class Drawing:
    """An SVG, and what it shows in words. `narrow`: the same for a narrow screen, with letters as large there."""

    svg: str
    described: str
    narrow: str | None = None


Block = Paragraph | Items | Pairs | Table | Drawing


@dataclass(frozen=True)
class Section:
    """`name` is the same in every language."""

    name: str
    heading: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Page:
    sections: tuple[Section, ...]


@dataclass(frozen=True)
class ToldSign:
    """`state`: it stands, or was told and its own question has no answer yet, or was taken back. `since`: aware."""

    id: str
    state: Literal["stands", "open", "taken_back"]
    since: datetime


@dataclass(frozen=True)
class Facts:
    """What a program may read of a summary: ids of the rules and figures, no words.

    `action`: of the verdict. `off_confirmed`: whether somebody confirmed that the oven is off. For the household
    there are no causes, no tests and no kit. `causes`: marginals, most probable first. `tests` in their order;
    `kit_chance`: simulated, that what is in the kit mends the oven at the first visit.
    """

    rules_fingerprint: str
    action: str
    off_confirmed: bool
    signs: tuple[ToldSign, ...] = ()
    causes: tuple[tuple[str, float], ...] = ()
    tests: tuple[str, ...] = ()
    kit: tuple[str, ...] = ()
    kit_chance: float | None = None


@dataclass(frozen=True)
class Summary:
    """`session`: the first characters of the session's id. `written_at`: of its latest event, aware, in the
    time zone in which it is told.
    """

    reader: Reader
    lang: str
    title: str
    about: str
    session: str
    written_at: datetime
    pages: tuple[Page, ...]
    facts: Facts

"""What a PDF is laid out from: units that stand one below the other, and the tree that tells readers what they are."""

from dataclasses import dataclass, field
from xml.etree import ElementTree as Xml


@dataclass(eq=False)
class Node:
    """A structure element (ISO 32000-1, 14.8.4). `places`: (sheet, number of the marked content on it)."""

    role: str
    children: list["Node"] = field(default_factory=list)
    described: str = ""
    scope: str = ""
    places: list[tuple[int, int]] = field(default_factory=list)

    def add(self, role: str, *, described: str = "", scope: str = "") -> "Node":
        child = Node(role, described=described, scope=scope)
        self.children.append(child)
        return child


@dataclass(frozen=True)
class Column:
    """Lines of text below each other. `left`: from the margin, points. Without a node it is decoration."""

    lines: tuple[str, ...]
    left: float
    node: Node | None
    bold: bool = False
    quiet: bool = False
    bullet: bool = False


@dataclass(frozen=True)
class Picture:
    """`wide`, `tall`: as it is placed, points."""

    element: Xml.Element
    node: Node
    wide: float
    tall: float


@dataclass(frozen=True)
class Unit:
    """Columns side by side, or a picture.

    Points: `above` is left free, `padding` lies within its frame, above and below. `hangs`: on the unit after it.
    `head` stands above it again where a sheet begins with it.
    """

    columns: tuple[Column, ...] = ()
    size: float = 9.0
    leading: float = 11.0
    above: float = 0.0
    padding: float = 0.0
    hangs: bool = False
    danger: bool = False
    ruled: bool = False
    underlined: bool = False
    head: "Unit | None" = None
    picture: Picture | None = None

    @property
    def count(self) -> int:
        return max((len(column.lines) for column in self.columns), default=0)

    def height(self, lines: int | None = None) -> float:
        """Of so many of its lines; of all of them."""
        if self.picture is not None:
            return self.above + self.picture.tall
        return self.above + 2 * self.padding + self.leading * (self.count if lines is None else lines)


@dataclass(frozen=True)
class Placed:
    """Lines `first` to `last` (not included) of a unit; `top` counts from the sheet's upper margin, points."""

    unit: Unit
    top: float
    first: int
    last: int
    again: bool = False
    """A head that was there before."""

"""Units -> sheets: what stands on which sheet, and how far down. Nothing is left out and nothing runs off."""

from collections.abc import Iterable, Sequence

from assistant.reports.summary.pdf.units import Placed, Unit

MOST_KEPT = 8
"""A unit of no more lines isn't broken over two sheets."""
LEAST_KEPT = 3


def sheets_of(pages: Iterable[Sequence[Unit]], tall: float) -> list[list[Placed]]:
    """Each page begins on a new sheet. `tall`: between the margins, points."""
    sheets: list[list[Placed]] = []
    for units in pages:
        sheets += _Filling(tall).filled(units)
    return sheets


def height_of(units: Iterable[Unit]) -> float:
    return sum(unit.height() for unit in units)


class _Filling:
    """Of one page's sheets, from the top."""

    def __init__(self, tall: float) -> None:
        self._tall = tall
        self._sheets: list[list[Placed]] = [[]]
        self._top = 0.0

    def filled(self, units: Sequence[Unit]) -> list[list[Placed]]:
        for number, unit in enumerate(units):
            needed = _least_of(units[number:])
            if self._sheets[-1] and self._top + needed > self._tall and needed <= self._tall:
                self._turn(unit)
            self._put(unit)
        return self._sheets

    def _put(self, unit: Unit) -> None:
        if unit.picture is not None:
            if self._sheets[-1] and self._top + unit.height() > self._tall:
                self._turn(unit)
            self._place(unit, 0, 0)
            return
        first = 0
        while first < unit.count:
            fit = self._fitting(unit)
            if fit < 1 and self._sheets[-1]:
                self._turn(unit)
                fit = self._fitting(unit)
            last = min(unit.count, first + max(1, fit))
            self._place(unit, first, last)
            first = last

    def _fitting(self, unit: Unit) -> int:
        return int((self._tall - self._top - unit.height(0) + 1e-6) / unit.leading)

    def _place(self, unit: Unit, first: int, last: int) -> None:
        self._sheets[-1].append(Placed(unit, self._top, first, last))
        self._top += unit.height(last - first)

    def _turn(self, unit: Unit) -> None:
        """A new sheet, with the head of the table that goes on."""
        self._sheets.append([])
        self._top = 0.0
        if unit.head is not None and unit.head.height() < self._tall / 4:
            self._sheets[-1].append(Placed(unit.head, 0.0, 0, unit.head.count, again=True))
            self._top = unit.head.height()


def _least_of(units: Sequence[Unit]) -> float:
    """What has to stand on one sheet: units that hang on the next, and the beginning of that one."""
    needed = 0.0
    for unit in units:
        needed += unit.height(unit.count if unit.count <= MOST_KEPT else LEAST_KEPT)
        if not unit.hangs:
            break
    return needed

"""How wide the columns of a table are: each as wide as it would be, or what can be spared of that."""

from collections.abc import Sequence

from assistant.reports.summary.pdf.letters import fitted, widest_word, width_of


def column_widths(rows: Sequence[Sequence[str]], room: float, size: float, gap: float) -> list[float]:
    """In points, the gap after each column included; their sum is at most the room.

    A column is no narrower than its longest word, as long as all columns can be; then words are broken.
    """
    columns = list(zip(*rows, strict=True))
    least = [gap + max(widest_word(cell, size) for cell in column) for column in columns]
    wanted = [gap + max(width_of(fitted(cell), size) for cell in column) for column in columns]
    if sum(wanted) <= room:
        return wanted
    fair = room / len(columns)
    if sum(least) > room:
        least = [min(width, fair) for width in least]
    spare = room - sum(least)
    asked = [(max(0.0, want - low)) ** 0.5 for want, low in zip(wanted, least, strict=True)]
    return _shared(least, wanted, asked, spare)


def _shared(least: list[float], wanted: list[float], asked: list[float], spare: float) -> list[float]:
    """Nobody gets more than was wanted; what is left over goes to the others."""
    widths = list(least)
    hungry = [number for number, want in enumerate(asked) if want > 0]
    while hungry and spare > 1e-6:
        share = spare / sum(asked[number] for number in hungry)
        spare = 0.0
        for number in list(hungry):
            given = widths[number] + share * asked[number]
            widths[number] = min(given, wanted[number])
            if given >= wanted[number]:
                spare += given - wanted[number]
                hungry.remove(number)
    return widths

"""Which blocks are shown at all."""

from assistant.reports.summary.value import Block, Items, Pairs, Table


def says_something(block: Block) -> bool:
    """A list or a table without entries doesn't; readers of screens would announce it."""
    match block:
        case Items(items=entries) | Pairs(rows=entries) | Table(rows=entries):
            return bool(entries)
        case _:
            return True

"""How far long work has come: a bar for a person at a terminal, nothing for anything else."""

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Done = Callable[[], None]
"""To be called once for each piece of work that is done."""


@contextmanager
def progress(label: str, total: int) -> Iterator[Done]:
    """A bar on standard error while that is a terminal which can move its cursor. Reads nothing that is typed."""
    if not (sys.stderr.isatty() and os.name == "posix" and os.environ.get("TERM", "dumb") != "dumb"):
        yield _nothing
        return
    from prompt_toolkit.data_structures import Size
    from prompt_toolkit.input import create_pipe_input
    from prompt_toolkit.output.vt100 import Vt100_Output
    from prompt_toolkit.shortcuts import ProgressBar

    def size() -> Size:
        columns, rows = os.get_terminal_size(sys.stderr.fileno())
        return Size(rows or 24, columns or 80)

    screen = Vt100_Output(sys.stderr, size, term=os.environ["TERM"], enable_cpr=False)
    with create_pipe_input() as silent, ProgressBar(output=screen, input=silent) as bar:
        counter = bar(range(total), label=label)
        yield counter.item_completed
        counter.done = True


def _nothing() -> None:
    return

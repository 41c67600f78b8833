"""Long work on all processors: the results are those of one process, in the same order."""

import os
import signal
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from multiprocessing import active_children, get_context, resource_tracker
from typing import Any, TypeVar

Task = TypeVar("Task")
Result = TypeVar("Result")

_working: list[Callable[[Any], Any]] = []
"""What does the work of this process, where it was started only for that."""


def processors() -> int:
    """Those that this program may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def spread(
    begin: Callable[..., Callable[[Task], Result]],
    arguments: tuple[Any, ...],
    tasks: Iterable[Task],
    jobs: int,
    at_once: int,
) -> Iterator[Result]:
    """`begin(*arguments)` makes, in each process anew, what turns a task into its result.

    Both must stand at the top of a module, and arguments, tasks and results must be what can be sent. A result may
    hang on nothing but the arguments and its own task.
    """
    if jobs <= 1:
        yield from map(begin(*arguments), tasks)
        return
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    others = set(active_children())
    pool = ProcessPoolExecutor(jobs, get_context("spawn"), _begin, (begin, arguments))
    try:
        with _deaf_children():
            results = pool.map(_work, tasks, chunksize=at_once)
        yield from results
    except BaseException:
        for child in set(active_children()) - others:
            child.terminate()
        raise
    finally:
        pool.shutdown(cancel_futures=True)


@contextmanager
def _deaf_children() -> Iterator[None]:
    """Processes that are started meanwhile don't hear Ctrl-C: the first process alone answers to it, a moment later.

    They inherit that the signal waits. What keeps track of their resources is started before, for it lets it through.
    """
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    resource_tracker.ensure_running()
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _begin(begin: Callable[..., Callable[[Any], Any]], arguments: tuple[Any, ...]) -> None:
    _working.append(begin(*arguments))


def _work(task: Any) -> Any:
    return _working[0](task)

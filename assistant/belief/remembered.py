"""Results that are kept, so that what was computed already is only looked up."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

Result = TypeVar("Result")


class Remembered(Generic[Result]):
    """The latest `most` results by their key; safe for two threads. The key must hold all that the result hangs on."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: OrderedDict[Hashable, Result] = OrderedDict()
        self._lock = Lock()

    def __deepcopy__(self, memo: object) -> "Remembered[Result]":
        """A copy begins with nothing kept."""
        return Remembered(self._most)

    def get(self, key: Hashable, make: Callable[[], Result]) -> Result:
        """The kept result, or that of `make`, which is kept from now on."""
        with self._lock:
            if key in self._kept:
                self._kept.move_to_end(key)
                return self._kept[key]
        made = make()
        with self._lock:
            self._kept[key] = made
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)
        return made

"""Waiting for others where SQLite doesn't do it by itself."""

import time
from collections.abc import Iterator

BUSY_SECONDS = 5.0
"""How long a call waits for others where nobody said."""
PAUSE_SECONDS = 0.02


def attempts(seconds: float) -> Iterator[None]:
    """One attempt at once, and further ones, with short pauses, until so many seconds have passed."""
    give_up_at = time.monotonic() + seconds
    yield
    while time.monotonic() < give_up_at:
        time.sleep(PAUSE_SECONDS)
        yield

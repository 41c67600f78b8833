"""What sounds by itself while a line is awaited: the longest time of a measurement is over."""

from collections.abc import Callable
from dataclasses import dataclass

from assistant.reports.screen import Paragraph

LOOK_EVERY_S = 1.0
"""How often a terminal looks whether it is time. The clock is asked anew each time: a machine may have slept."""


@dataclass
class Alarm:
    """Rings once, with what is to be said then, as soon as `is_due`."""

    is_due: Callable[[], bool]
    said: tuple[Paragraph, ...]
    rung: bool = False

    @property
    def should_ring(self) -> bool:
        return not self.rung and self.is_due()

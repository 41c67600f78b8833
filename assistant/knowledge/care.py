"""What a question asks of a person, and who is sent for."""

from enum import StrEnum
from typing import Literal

Trade = Literal["appliance_engineer", "electrician"]


class Care(StrEnum):
    """What a question asks of the person, the least first. The last is for a qualified engineer alone."""

    TALK = "talk"
    LOOK_COLD = "look_cold"
    DAILY_USE = "daily_use"
    WATCH_HOT = "watch_hot"
    OPEN_HOT = "open_hot"
    ENGINEER = "engineer"

    @property
    def rank(self) -> int:
        return _RANKS[self]


_RANKS = {care: rank for rank, care in enumerate(Care)}

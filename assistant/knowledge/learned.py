"""What a firm's own outcomes have taught: the optional file `learned.yaml`."""

from typing import Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.figures import Entry
from assistant.knowledge.scalars import Day, Id, WholeNumber

Group = Literal["visited", "solved_by_phone"]
"""How a session ended, by what can be seen of it: within a group, outcomes were seen for the same reason."""

LEARNED_FILE = "learned.yaml"
LEARNED_DIFF = "learned.diff"
MOST_SESSIONS = 1_000_000_000


class Count(Entry):
    """In how many outcomes a cause was `found`, `of` all that would have shown it."""

    found: WholeNumber = Field(ge=0, le=MOST_SESSIONS)
    of: WholeNumber = Field(ge=0, le=MOST_SESSIONS)

    @model_validator(mode="after")
    def _found_among_them(self) -> Self:
        if self.found > self.of:
            raise PydanticCustomError("found_above_of", "more found than looked at")
        return self


class Sessions(Entry):
    """How many sessions ended in each group; `unknown` are those whose outcome nobody knows."""

    visited: WholeNumber = Field(ge=0, le=MOST_SESSIONS)
    solved_by_phone: WholeNumber = Field(ge=0, le=MOST_SESSIONS)
    unknown: WholeNumber = Field(ge=0, le=MOST_SESSIONS)

    @property
    def total(self) -> int:
        return self.visited + self.solved_by_phone + self.unknown

    def of_group(self, group: Group) -> int:
        return self.visited if group == "visited" else self.solved_by_phone


class Learned(Entry):
    """Counts from outcomes until that day: of sessions, and within each group of causes found."""

    until: Day
    sessions: Sessions
    counts: dict[Group, dict[Id, Count]] = Field(default_factory=dict)

    def count(self, group: Group, cause_id: str) -> Count:
        return self.counts.get(group, {}).get(cause_id, Count(found=0, of=0))

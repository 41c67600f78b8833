"""What measurements may come to, simulated beforehand: the optional file `foreseen.yaml`, written by a command."""

from typing import Annotated, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.figures import Entry
from assistant.knowledge.scalars import Id, Note, Number

FORESEEN_FILE = "foreseen.yaml"

Shares = tuple[Annotated[Number, Field(ge=0, le=100)], ...]
"""Percent of the simulated ovens, one for each outcome."""


class Foreseen(Entry):
    """Of one measuring question: the outcomes it is sorted into, and their shares for each way an oven behaves.

    `ways` are named by the first cause that behaves so; `none` is the sound oven. `drawn_from` is the mark of
    the oven model and of the physical changes that were simulated.
    """

    drawn_from: Note
    outcomes: tuple[Id, ...] = Field(min_length=2)
    ways: dict[str, Shares] = Field(min_length=1)

    @model_validator(mode="after")
    def _one_share_for_each(self) -> Self:
        for name, shares in self.ways.items():
            if len(shares) != len(self.outcomes):
                raise PydanticCustomError("shares_for_outcomes", "one share for each outcome", {"found": name})
        return self

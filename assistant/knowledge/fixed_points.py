"""Water whose temperature is known, into which a household's thermometer may be held before it measures an oven."""

from collections.abc import Mapping
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.figures import Entry
from assistant.knowledge.scalars import Id, Number
from assistant.physics.boiling import boiling_point_c

ICE_POINT_C = 0.0
"""Of water with ice in it, at any height. Source: the melting curve of ice falls 0.0075 K per 100 kPa (IAPWS)."""
LOWEST_M, HIGHEST_M = -400, 5000
"""Where people live."""

Height = Annotated[Number, Field(ge=LOWEST_M, le=HIGHEST_M)]


class FixedPoint(Entry):
    """A question that asks what a thermometer reads in water, and the measurement whose thermometer it `checks`.

    Water boils by the height above the sea: `height_from` is the question that tells it, `heights` what each of its
    answers stands for, in metres. `counts_while`: what other questions must be answered with, or the thermometer that
    was checked isn't the one that measures.
    """

    checks: Id
    water: Literal["ice", "boiling"]
    height_from: Id | None = None
    heights: dict[Id, Height] = Field(default_factory=dict)
    counts_while: dict[Id, Annotated[tuple[Id, ...], Field(min_length=1)]] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _boiling_has_heights(self) -> Self:
        wanted = self.water == "boiling"
        if (self.height_from is not None) != wanted or bool(self.heights) != wanted:
            raise PydanticCustomError("heights_for_boiling", "heights go with boiling water, and only with it")
        return self

    def counts(self, told: Mapping[str, object]) -> bool:
        """Whether the check is one of the thermometer that measures, by these answers of other questions."""
        return all(told.get(question_id) in answers for question_id, answers in self.counts_while.items())

    def should_read_c(self, height_told: str | None) -> float | None:
        """°C of the water, for that answer about the height; None where it isn't known."""
        if self.water == "ice":
            return ICE_POINT_C
        metres = self.heights.get(height_told or "")
        return boiling_point_c(metres) if metres is not None else None

"""What holds where the oven stands: where to call, what things cost."""

from typing import Annotated, Literal, Self

from pydantic import Field, StringConstraints, model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.care import Care, Trade
from assistant.knowledge.figures import Entry, Money, Volts
from assistant.knowledge.scalars import Id, Note
from assistant.knowledge.time_zones import may_be_time_zone


class Line(Entry):
    """Where to call. `source` and `seen` say where the number stands and when it was looked at."""

    number: Note
    source: Note
    seen: Note


class Costs(Entry):
    """What things cost in a region, in its currency. Injury has no price and isn't here.

    `visit`: for each trade, one visit. `return_visit`: a second trip for a part that wasn't brought.
    `part_brought`: one more part to order and carry. `test`: the engineer's time for one. `fault_left`,
    `habit_left`: the oven is called sound though one is there, besides the visit that a fault then needs after all.
    `habit_visited`: somebody comes and it was the way of use; besides the visit, what that does to trust.
    `tried_in_vain`: an act or a way of use is tried and serves nothing that is there.
    `act`, `advice`: the trouble of following it.
    `minute`: of the householder's time. `question`: that some give up at one question more; it grows by itself once
    every `patience` questions. `care`: what a question of it costs besides.
    """

    visit: dict[Trade, Money]
    return_visit: Money
    part_brought: Money
    test: Money
    fault_left: Money
    habit_left: Money
    habit_visited: Money
    tried_in_vain: Money
    act: Money
    advice: Money
    minute: Money
    question: Money
    care: dict[Care, Money]

    @model_validator(mode="after")
    def _prices_all(self) -> Self:
        missing = [trade for trade in Trade.__args__ if trade not in self.visit]  # type: ignore[attr-defined]
        missing += [care for care in Care if care not in self.care]
        if missing:
            raise PydanticCustomError("prices_missing", "prices missing", {"missing": ", ".join(missing)})
        return self


class Supply(Entry):
    """What the network promises between line and neutral: its `nominal` voltage, and within what it is kept."""

    nominal: Volts
    lowest: Volts
    highest: Volts

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not self.lowest.value <= self.nominal.value <= self.highest.value:
            raise PydanticCustomError("volts_not_in_order", "the nominal voltage lies outside its limits")
        return self


class Region(Entry):
    """Where the oven stands. `currency` is a code of ISO 4217, `time_zone` a name of the IANA database; `has_not` are
    parts that no oven has there.
    """

    note: Note
    lines: dict[Literal["emergency", "gas", "network_operator"], Line]
    supply: Supply
    notes: dict[Id, Note] = Field(default_factory=dict)
    has_not: tuple[Id, ...] = ()
    currency: Annotated[str, StringConstraints(pattern=r"^[A-Z]{3}$")]
    time_zone: Note
    costs: Costs

    @model_validator(mode="after")
    def _has_a_time(self) -> Self:
        if not may_be_time_zone(self.time_zone):
            raise PydanticCustomError("no_time_zone", "no such time zone", {"found": self.time_zone})
        return self

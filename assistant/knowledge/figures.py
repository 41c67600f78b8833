"""Numbers with their unit and source, and likelihoods in figures or words."""

from collections.abc import Callable
from typing import Annotated, Any, Literal, Self, get_args

from pydantic import AfterValidator, BaseModel, ConfigDict, Discriminator, Tag, model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.scalars import Id, Note, Number

SpokenWord = Literal["almost always", "often", "sometimes", "seldom", "almost never"]
Word = Literal["almost always", "often", "sometimes", "seldom", "almost never", "rest"]
Unit = Literal[
    "percent", "minutes", "years", "degrees_celsius", "questions", "money", "parts", "tests", "times", "volts", "watts"
]


class Entry(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Figure(Entry):
    """A number with its unit and source; one without a source says `assumed` and gives a range."""

    value: Number
    unit: Unit
    source: Note
    range: tuple[Number, Number] | None = None

    @model_validator(mode="after")
    def _assumed_has_a_range(self) -> Self:
        if self.source == "assumed" and self.range is None:
            raise PydanticCustomError("assumed_without_range", "an assumed number has no range")
        if self.range is not None and not self.range[0] <= self.value <= self.range[1]:
            raise PydanticCustomError("value_outside_range", "value outside its range")
        if self.unit == "percent" and not 0 <= self.value <= 100:
            raise PydanticCustomError("not_a_percentage", "a percentage lies between 0 and 100")
        return self

    @property
    def share(self) -> float:
        """A percentage as a share of one."""
        return self.value / 100


def _in_unit(unit: Unit) -> Callable[[Figure], Figure]:
    def checked(figure: Figure) -> Figure:
        if figure.unit != unit:
            raise PydanticCustomError("wrong_unit", "wrong unit", {"found": figure.unit, "wanted": unit})
        return figure

    return checked


def _neither_never_nor_always(figure: Figure) -> Figure:
    if not 0 < figure.value < 100:
        raise PydanticCustomError("never_or_always", "a rate of nothing or of everything")
    return figure


def _above_zero(figure: Figure) -> Figure:
    if figure.value <= 0:
        raise PydanticCustomError("not_above_zero", "not above zero")
    return figure


def _not_below_zero(figure: Figure) -> Figure:
    if figure.value < 0:
        raise PydanticCustomError("below_zero", "below zero")
    return figure


Percentage = Annotated[Figure, AfterValidator(_in_unit("percent"))]
Rate = Annotated[Percentage, AfterValidator(_neither_never_nor_always)]
Minutes = Annotated[Figure, AfterValidator(_in_unit("minutes")), AfterValidator(_above_zero)]
Volts = Annotated[Figure, AfterValidator(_in_unit("volts"))]
Celsius = Annotated[Figure, AfterValidator(_in_unit("degrees_celsius"))]
Money = Annotated[Figure, AfterValidator(_in_unit("money")), AfterValidator(_not_below_zero)]
"""In the currency of the region that it stands in."""


def _from_one(figure: Figure) -> Figure:
    if figure.value < 1:
        raise PydanticCustomError("below_one", "below one")
    return figure


Times = Annotated[Figure, AfterValidator(_in_unit("times")), AfterValidator(_from_one)]


def _whole(figure: Figure) -> Figure:
    if figure.value != int(figure.value) or figure.value < 1:
        raise PydanticCustomError("not_a_count", "not a whole number from one on")
    return figure


Questions = Annotated[Figure, AfterValidator(_in_unit("questions")), AfterValidator(_whole)]
Parts = Annotated[Figure, AfterValidator(_in_unit("parts")), AfterValidator(_whole)]
Tests = Annotated[Figure, AfterValidator(_in_unit("tests")), AfterValidator(_whole)]


def _word_or_figure(value: Any) -> str:
    return "figure" if isinstance(value, dict | Figure) else "word"


Likelihood = Annotated[
    Annotated[Word, Tag("word")] | Annotated[Percentage, Tag("figure")], Discriminator(_word_or_figure)
]
Distribution = dict[Id, Likelihood]


def _every_word(words: dict[SpokenWord, Figure]) -> dict[SpokenWord, Figure]:
    missing = [word for word in get_args(SpokenWord) if word not in words]
    if missing:
        raise PydanticCustomError("words_missing", "words missing", {"missing": ", ".join(missing)})
    return words


Words = Annotated[dict[SpokenWord, Rate], AfterValidator(_every_word)]

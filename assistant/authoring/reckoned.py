"""What `ovenside reckon` hands to whoever words it: numbers with unit and source, and notes, all named by id."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal


@dataclass(frozen=True)
class Number:
    """`values` in `unit`: one; or two from the least `to` the most; or several of which each may be meant (`or`).

    `of` tells what the number is of, and fills in its name. The most is infinite where there is no upper limit.
    """

    name: str
    values: tuple[float, ...]
    unit: str
    source: str
    of: Mapping[str, float | str] = field(default_factory=dict)
    joined: Literal["to", "or"] = "to"


@dataclass(frozen=True)
class Reckoned:
    """Everything that is told of one WHAT. `given` is the input as it was taken; `notes` are ids of sentences."""

    what: str
    readers: Literal["engineer", "household"]
    given: Mapping[str, Any]
    numbers: tuple[Number, ...]
    notes: tuple[str, ...]

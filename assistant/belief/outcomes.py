"""What a case turned out to be, once it is over: closed lists and ids, no free text, no names."""

from collections.abc import Iterable, Mapping
from typing import Annotated, Literal, Self, get_args

from pydantic import Field, StringConstraints, model_validator
from pydantic_core import PydanticCustomError

from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.knowledge.figures import Entry
from assistant.knowledge.learned import Group
from assistant.knowledge.scalars import Day, Id

Result = Literal[
    "mended",
    "advised",
    "not_worth_mending",
    "no_fault_found",
    "no_access",
    "not_fixed",
    "cancelled",
    "back_within_30_days",
]
GROUPS: tuple[str, ...] = get_args(Group)
RESULTS: tuple[str, ...] = get_args(Result)

FOUND_SOMETHING = frozenset({"mended", "advised", "not_worth_mending"})
FOUND_NOTHING = frozenset({"no_fault_found"})
NO_VISIT = frozenset({"no_access", "cancelled"})

ReportName = Annotated[str, StringConstraints(pattern=r"^[a-z](_{0,2}[a-z0-9])*$", max_length=99)]
"""A question, or one of several answers to it and the observable that it speaks of, joined by two underscores."""

HexDigits = StringConstraints(pattern=r"^[0-9a-f]+$")


class Outcome(Entry):
    """What is learned from: of one session, the evidence and what was found. A file of outcomes has one a line.

    `causes_found` may hold `something_else`, a cause that the rules don't name. It is empty where nothing was
    wrong, and where nobody can say: a part that was fitted isn't a cause that was found. `evidence` (report ->
    code) and `not_fitted` (parts) are as belief saw them under the rules of that fingerprint.
    """

    session: Annotated[str, HexDigits, Field(min_length=32, max_length=32)]
    recorded_on: Day
    group: Group
    result: Result
    causes_found: tuple[Id, ...]
    evidence: Mapping[ReportName, Id]
    not_fitted: tuple[Id, ...]
    rules_fingerprint: Annotated[str, HexDigits, Field(min_length=64, max_length=64)]

    @model_validator(mode="after")
    def _result_and_causes_go_together(self) -> Self:
        misfit = misfit_of(self.result, self.causes_found)
        if misfit is not None:
            raise PydanticCustomError(misfit, "result and causes don't go together")
        return self

    @property
    def counts(self) -> bool:
        """Whether it shows what was wrong."""
        return counts(self.result)

    def known_causes(self, cause_ids: Iterable[str]) -> frozenset[str]:
        """The causes found, with something else for those that the rules don't have."""
        known = frozenset(cause_ids)
        return frozenset(cause if cause in known else SOMETHING_ELSE for cause in self.causes_found)


def counts(result: str) -> bool:
    """Whether it shows what was wrong. No access, not fixed, cancelled and back again show nothing."""
    return result in FOUND_SOMETHING | FOUND_NOTHING


def misfit_of(result: str, causes_found: Iterable[str]) -> str | None:
    """Why the two don't go together, if they don't: `causes_needed` or `no_causes_wanted`."""
    found = bool(tuple(causes_found))
    if result in FOUND_SOMETHING:
        return None if found else "causes_needed"
    return "no_causes_wanted" if found else None


def latest_of_each_session(outcomes: Iterable[Outcome]) -> tuple[Outcome, ...]:
    """A later line replaces an earlier one of the same session, and stands where the later one stands."""
    latest: dict[str, Outcome] = {}
    for outcome in outcomes:
        latest.pop(outcome.session, None)
        latest[outcome.session] = outcome
    return tuple(latest.values())

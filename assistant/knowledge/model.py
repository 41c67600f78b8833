"""The knowledge as types: what a rules folder says once it has been read.

An entry's id is the name of its file (or its key, where one file holds several). Everything is frozen.
"""

from typing import Annotated, Literal, Self

from pydantic import AfterValidator, Field, WithJsonSchema, model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.care import Care as Care
from assistant.knowledge.care import Trade as Trade
from assistant.knowledge.figures import Celsius, Minutes, Rate
from assistant.knowledge.figures import Distribution as Distribution
from assistant.knowledge.figures import Entry as Entry
from assistant.knowledge.figures import Figure as Figure
from assistant.knowledge.figures import Likelihood as Likelihood
from assistant.knowledge.figures import SpokenWord as SpokenWord
from assistant.knowledge.figures import Unit as Unit
from assistant.knowledge.figures import Word as Word
from assistant.knowledge.fixed_points import FixedPoint
from assistant.knowledge.foreseen import Foreseen as Foreseen
from assistant.knowledge.kinds import MEASURED_CODES as MEASURED_CODES
from assistant.knowledge.kinds import MEASUREMENTS as MEASUREMENTS
from assistant.knowledge.kinds import Kind as Kind
from assistant.knowledge.learned import Learned as Learned
from assistant.knowledge.regions import Costs as Costs
from assistant.knowledge.regions import Line as Line
from assistant.knowledge.regions import Region as Region
from assistant.knowledge.scalars import Flag, Note, Number, WholeNumber
from assistant.knowledge.scalars import Id as Id
from assistant.knowledge.settings import BeliefSettings as BeliefSettings

RESERVED_CODES = frozenset({"answered", "not_sure", "skipped", "none"})


def _each_once(names: tuple[str, ...]) -> tuple[str, ...]:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise PydanticCustomError("listed_twice", "listed twice", {"found": name})
        seen.add(name)
    return names


class Observable(Entry):
    """A state of the world that reports speak of. Ordered states go from normal to worst.

    `ordered: false` marks a pattern, whose states are merely different.
    """

    note: Note
    states: Annotated[tuple[Id, ...], Field(min_length=2), AfterValidator(_each_once)]
    ordered: Flag = True
    normal: Distribution


class Choice(Entry):
    """One answer of a question: what it says of the observable or of the oven, and what follows at once.

    Where several answers may be given, each may report observables of its own: `said_when` gives, for each of
    their states, how often the answer is among those chosen; what it says of two observables is multiplied.
    `says_nothing`: 'mine hasn't one', and the like.
    """

    means: tuple[Id, ...] = ()
    says_nothing: Flag = False
    said_when: dict[Id, dict[Id, Likelihood]] = Field(default_factory=dict)
    has: tuple[Id, ...] = ()
    has_not: tuple[Id, ...] = ()
    signals: Id | None = None
    withdraws: Id | None = None

    @property
    def is_no_report(self) -> bool:
        """Whether the answer speaks of the oven's parts, or of nothing, instead of the observable."""
        return self.says_nothing or (bool(self.has_not) and not self.means)


class Band(Entry):
    """Numbers below `below` (and not below the band before) say that the observable is in one of `means`."""

    below: Number | None = None
    means: tuple[Id, ...] = ()


FURTHEST_BOUND = 1_000_000
Bound = Annotated[Number, Field(ge=-FURTHEST_BOUND, le=FURTHEST_BOUND)]


class NumberRange(Entry):
    unit: Unit
    least: Bound
    most: Bound
    bands: dict[Id, Band] = Field(default_factory=dict)


Stage = Literal["danger", "greeting", "call", "complaint", "oven", "care", "signs", "look", "visit", "closing", "tests"]
CALL_STAGES: tuple[Stage, ...] = ("greeting", "call", "closing")
"""Asked by who is on the telephone for somebody else."""


class HotRun(Entry):
    """How the oven is run, from cold, while somebody measures: `way` of heating, `setting`, at the `longest`."""

    way: Id
    setting: Celsius
    longest: Minutes


Place = Literal["top", "base", "rear", "fan", "lamp"]


class SpeaksOf(Entry):
    """The `way` of heating and the `place` in the oven, or its lamp, that an answer speaks of."""

    way: Id
    place: Place


Made = Literal["dead", "live", "heating"]
"""How an engineer's test is made: isolated and proved dead, with its terminals live, or with the oven heating."""


class Question(Entry):
    """What may be asked, what it costs the person, and how often its answer is mistaken.

    `all_gone_through`: of several answers, who answers looks at each, so that what isn't named counts too.
    `run`: how the oven is run for a measurement; `measures`: the observables whose other reports count no more once
    it is there, for it tells the same and more. `fixed_point`: the water in which a thermometer is checked.
    `any_number`: a text that may well hold long numbers, such as a serial number; any other isn't taken with what may
    be a bank card's. `telephone_number`: a text with one. `made`: how an engineer's test is made. `speaks_of`: where
    its answer stands in the summary's grid of ways of heating and places.
    """

    note: Note
    stage: Stage
    order: WholeNumber = Field(ge=0, le=9999)
    kind: Kind
    care: Care
    minutes: Minutes
    can_mislead: Note | None = None
    observable: Id | None = None
    mistakes: Likelihood | None = None
    table: dict[Id, Distribution] | None = None
    choices: dict[Id, Choice] = Field(default_factory=dict)
    tells: Literal["functions", "kind"] | None = None
    made: Made = "dead"
    speaks_of: SpeaksOf | None = None
    all_gone_through: Flag = False
    any_number: Flag = False
    telephone_number: Flag = False
    number: NumberRange | None = None
    run: HotRun | None = None
    measures: Annotated[tuple[Id, ...], AfterValidator(_each_once)] = ()
    fixed_point: FixedPoint | None = None
    ask_when: tuple[Id, ...] = ()
    not_when: tuple[Id, ...] = ()
    needs: tuple[Id, ...] = ()

    @model_validator(mode="after")
    def _kind_fits(self) -> Self:
        if (self.kind in ("choice", "choices")) != bool(self.choices):
            raise PydanticCustomError("choices_for_kind", "choices go with the kinds choice and choices")
        if (self.kind == "number") != (self.number is not None):
            raise PydanticCustomError("number_for_kind", "a number range goes with the kind number")
        if self.kind in ("choices", "text", *MEASUREMENTS) and self.observable:
            raise PydanticCustomError("kind_cannot_report", "this kind can't report an observable")
        if self.is_measurement != (self.run is not None) or self.is_measurement != bool(self.measures):
            raise PydanticCustomError(
                "run_for_measurement", "run and measures go with measurements, and only with them"
            )
        return self

    @property
    def is_measurement(self) -> bool:
        """Whether it is answered by what somebody wrote down at the hot oven."""
        return self.kind in MEASUREMENTS


class Condition(Entry):
    """One thing that must hold: an answer, a number's bounds, or another finding."""

    question: Id | None = None
    finding: Id | None = None
    equals: Id | None = Field(None, alias="is")
    is_one_of: tuple[Id, ...] = ()
    includes: Id | None = None
    at_least: Number | None = None
    more_than: Number | None = None
    at_most: Number | None = None
    less_than: Number | None = None

    @property
    def bounded(self) -> bool:
        return any(v is not None for v in (self.at_least, self.more_than, self.at_most, self.less_than))

    @model_validator(mode="after")
    def _says_one_thing(self) -> Self:
        ways = [self.equals is not None, bool(self.is_one_of), self.includes is not None, self.bounded]
        if (self.question is None) == (self.finding is None):
            raise PydanticCustomError("question_or_finding", "a condition names a question or a finding")
        if sum(ways) != (0 if self.finding else 1):
            raise PydanticCustomError("one_way_to_hold", "a condition on a question says one thing")
        return self


Handover = Literal["registered_gas_engineer", "appliance_engineer", "electrician", "hob_engineer", "maker"]


class Effects(Entry):
    """What a finding does: it stops, gates, advises or explains. It never ranks causes.

    `tests_first`: questions of the stage `tests` that are planned whatever is likeliest.
    """

    stops: Id | None = None
    allows_care: Care | None = None
    care_at_most: Care | None = None
    asks: Id | None = None
    advises: tuple[Id, ...] = ()
    hands_on_to: Handover | None = None
    visit_first: Literal["maker", "seller", "landlord"] | None = None
    may_not_be_worth_mending: Flag = False
    visit_anyway: Literal["emergency", "soon", "routine"] | None = None
    tests_first: tuple[Id, ...] = ()
    explains: Flag = False
    is_normal: Flag = False


Given = Annotated[str, WithJsonSchema({"type": ["string", "number"]})] | tuple[str, ...]
"""An answer as an example writes it: a code, a number or a text; several codes as a list."""


class Examples(Entry):
    """Answers under which the finding must fire, and under which it must not: run as tests."""

    fires: tuple[dict[Id, Given], ...] = Field(min_length=1)
    stays_quiet: tuple[dict[Id, Given], ...] = Field(min_length=1)


class Finding(Entry):
    """A crisp rule: all of `when` (or all of one group of `any_of`), and none of `unless`."""

    note: Note
    when: tuple[Condition, ...] = ()
    any_of: tuple[Annotated[tuple[Condition, ...], Field(min_length=1)], ...] = ()
    unless: tuple[Id, ...] = ()
    then: Effects = Effects()
    can_mislead: Note
    examples: Examples

    @model_validator(mode="after")
    def _has_conditions(self) -> Self:
        if bool(self.when) == bool(self.any_of):
            raise PydanticCustomError("when_or_any_of", "a finding has either when or any_of")
        return self

    @property
    def groups(self) -> tuple[tuple[Condition, ...], ...]:
        return self.any_of or (self.when,)


class Sign(Entry):
    """A danger sign. `stop` stops at once; `narrow` has a harmless look-alike and asks one question first.

    `answers` are those of the sign's own question: asked to narrow, or after a typed line spoke of the sign.
    `ask_plainly` signs are named once more to whoever isn't sure about danger. Where `confirm_off` is false
    (no switch may be touched, nobody should go back), nothing more is asked after the stop.
    `told_when`: what the sign says of observables: for each of their states, how often it is told.
    `tests_first`: questions of the stage `tests` that are planned after it, whatever is likeliest.
    Where `oven_off_is_enough` is false the danger is in the home's supply: the steps hold with the oven off, too.
    """

    note: Note
    order: WholeNumber = Field(ge=0, le=9999)
    on_screen: Flag = True
    ask_plainly: Flag = False
    grade: Literal["stop", "narrow"]
    not_sure_is_danger: Flag = True
    answers: dict[Id, Literal["stop", "clear"]] = Field(min_length=2)
    told_when: dict[Id, dict[Id, Likelihood]] = Field(default_factory=dict)
    tests_first: tuple[Id, ...] = ()
    steps: tuple[Id, ...] = Field(min_length=1)
    confirm_off: Flag = True
    oven_off_is_enough: Flag = True
    urgency: Literal["emergency", "soon"] = "soon"
    who: Literal["appliance_engineer", "electrician", "network_operator", "gas_emergency", "fire_service"]


class PhysicalChange(Entry):
    """What becomes of one parameter of the oven model: `times`, `by` (added) or `to`, give or take `spread`."""

    times: Number | None = None
    by: Number | None = None
    to: Number | None = None
    spread: Annotated[Number, Field(ge=0)] = 0.0
    source: Note

    @model_validator(mode="after")
    def _says_one_thing(self) -> Self:
        if [self.times, self.by, self.to].count(None) != 2:
            raise PydanticCustomError("one_way_to_change", "a parameter changes in one way")
        return self


Physical = dict[Id, PhysicalChange]


class Effect(Entry):
    """How an oven behaves that has one of several causes: their common physical effect.

    A cause that names it shows all of it, but where the cause's own `shows` says otherwise. `physical`: what it
    changes in the oven model, by the names of its parameters.
    """

    note: Note
    shows: dict[Id, Distribution] = Field(min_length=1)
    physical: Physical = Field(default_factory=dict)
    masks: Annotated[tuple[Id, ...], AfterValidator(_each_once)] = ()


class Cause(Entry):
    """A fault, or a habit (a way of use or a setting). `shows` lists only where it differs from normal, or from what
    its physical `effect` shows.

    `base_rate`: the share of the ovens that people ask about which have it, before anything was said of them.
    `danger`: the danger sign whose steps hold for it, if it is dangerous. `masks`: observables in which only this
    cause is seen, whatever else is wrong. `excludes`: causes that can't be there together with it.
    """

    note: Note
    kind: Literal["fault", "habit"]
    base_rate: Rate
    danger: Id | None = None
    needs: tuple[Id, ...] = ()
    part: Id | None = None
    mended_by: Literal["householder"] | Trade
    urgency: Literal["emergency", "soon", "routine"] = "routine"
    act: Id | None = None
    advice: Id | None = None
    look_alikes: tuple[Id, ...] = ()
    can_mislead: Note
    effect: Id | None = None
    shows: dict[Id, Distribution] = Field(default_factory=dict)
    physical: Physical = Field(default_factory=dict)
    masks: Annotated[tuple[Id, ...], AfterValidator(_each_once)] = ()
    excludes: Annotated[tuple[Id, ...], AfterValidator(_each_once)] = ()

    @model_validator(mode="after")
    def _remedy_fits(self) -> Self:
        if (self.kind == "habit") != (self.mended_by == "householder"):
            raise PydanticCustomError("habit_mended_by_householder", "habits, and only they, are the householder's")
        if (self.act is not None) + (self.advice is not None) != (self.kind == "habit"):
            raise PydanticCustomError("habit_needs_remedy", "a habit has one act or one advice, a fault neither")
        if not self.shows and self.effect is None:
            raise PydanticCustomError("cause_shows_nothing", "a cause has an effect, or shows something")
        return self

    def with_effect(self, effect: Effect) -> Self:
        """The cause with what its effect shows and changes besides, and what that masks."""
        masks = tuple(dict.fromkeys((*self.masks, *effect.masks)))
        update = {
            "shows": {**effect.shows, **self.shows},
            "masks": masks,
            "physical": {**effect.physical, **self.physical},
        }
        return self.model_copy(update=update)

    def shows_as(self, effect: Effect, name: str) -> bool:
        """Whether what the cause shows of that observable is what the effect shows."""
        return name in effect.shows and self.shows.get(name) == effect.shows[name]


class Pair(Entry):
    """Two causes that are more than their product.

    `together`: of a hundred ovens with the first cause, how many have the second too, where one trigger or the
    first itself brings the second. `shows` overrides what the two would show by the general rule.
    """

    note: Note
    causes: Annotated[tuple[Id, Id], AfterValidator(_each_once)]
    together: Rate | None = None
    can_mislead: Note
    shows: dict[Id, Distribution] = Field(default_factory=dict)

    @model_validator(mode="after")
    def _says_something(self) -> Self:
        if self.together is None and not self.shows:
            raise PydanticCustomError("pair_says_nothing", "a pair has `together` or `shows`")
        return self


class Function(Entry):
    """A way of heating, by the parts that it uses."""

    note: Note
    uses: tuple[Id, ...]


class OvenKind(Entry):
    """A kind of oven: which functions it may have, by the parts that each uses there, and parts it never has.

    `functions` says only where this kind differs from `functions` of all ovens; `has_not` are parts.
    """

    note: Note
    functions: dict[Id, tuple[Id, ...]] = Field(default_factory=dict)
    has_not: tuple[Id, ...] = ()


class Ovens(Entry):
    """Parts an oven may have, the functions that use them, and the kinds of oven that differ in both."""

    parts: dict[Id, Note]
    functions: dict[Id, Function]
    kinds: dict[Id, OvenKind] = Field(default_factory=dict)

    def uses(self, function_id: str, kind: str | None = None) -> tuple[str, ...]:
        """The parts that a function uses, in that kind of oven if it is known."""
        of_kind = self.kinds[kind].functions if kind in self.kinds else {}
        return of_kind.get(function_id, self.functions[function_id].uses)


class Role(Entry):
    """Who speaks, and up to which care questions may be put to them."""

    note: Note
    asked_up_to: Care
    sees_probabilities: Flag
    on_the_telephone: Flag = False


class Listed(Entry):
    """One entry of a closed list: an act, a piece of advice, a safety step."""

    note: Note
    source: Note = "common practice"


class Act(Listed):
    """A harmless thing to do. One with `only_when` is told only if one of those findings holds."""

    only_when: tuple[Id, ...] = ()


class Step(Listed):
    """A safety step. One that `touches_nothing` may also be told beside a graver sign's own steps.

    `rules_out` names steps that are left out while a sign with this step stands. One that counts only `until_off`
    is part of switching the oven off; all others hold in any case.
    """

    touches_nothing: Flag = False
    rules_out: tuple[Id, ...] = ()
    until_off: Flag = False


class Knowledge(Entry):
    """A whole rules folder, with the danger questions derived from its signs."""

    fingerprint: str
    settings: BeliefSettings
    ovens: Ovens
    observables: dict[Id, Observable]
    questions: dict[str, Question]
    causes: dict[Id, Cause]
    effects: dict[Id, Effect] = Field(default_factory=dict)
    pairs: dict[Id, Pair]
    findings: dict[Id, Finding]
    signs: dict[Id, Sign]
    regions: dict[Id, Region]
    roles: dict[Id, Role]
    acts: dict[Id, Act]
    advice: dict[Id, Listed]
    steps: dict[Id, Step]
    learned: Learned | None = None
    foreseen: dict[Id, Foreseen] = Field(default_factory=dict)

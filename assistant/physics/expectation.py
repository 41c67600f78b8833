"""What to expect of a sound oven with given elements: how long it heats up, and how much of the time it is then on.

Simulated, never measured: ovens are drawn (population.py), given these elements and carried through one long run from
cold (heating.py). Its control is watched as a lamp that hangs on it would show it (lamp.py).
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from assistant.physics.heating import Programme, Run, run
from assistant.physics.lamp import lamp_times
from assistant.physics.oven import FUNCTIONS, NAMES, Floats, Ovens, Truths
from assistant.physics.parameters import ELEMENTS
from assistant.physics.population import KINDS, typical_ovens

OF_A_KIND = 100
SEED = 1
LASTING_S = 3 * 3600.0
STEADY_FROM_S = 3600.0
"""By then walls and housing, whose time constants are some 20 minutes, change no more."""


@dataclass(frozen=True)
class Elements:
    """`watts` of each element at `rated_v` V; the oven has `supply_v` V while it heats, in a kitchen of so many °C.

    Elements that aren't named are drawn as in any oven, which changes nothing where the function leaves them off.
    """

    watts: Mapping[str, float]
    supply_v: float
    rated_v: float
    kitchen_c: float


@dataclass(frozen=True)
class Expected:
    """Of D drawn ovens, (D,) each; NaN where there is none. `ovens` are those drawn.

    `opens_s`: from switching on until the control first opens, s. `period_s`: from one opening to the next in the
    steady state, s. `share_on`: of the time there. `power_w`: while it heats. `cut_out`: whether the cut-out tripped.
    """

    ovens: Ovens
    opens_s: Floats
    period_s: Floats
    share_on: Floats
    power_w: Floats
    cut_out: Truths


def used_elements(function: str) -> tuple[str, ...]:
    """The elements that a function switches on."""
    return tuple(name for name in ELEMENTS if getattr(FUNCTIONS[function], name) > 0)


def sound_ovens(elements: Elements, of_a_kind: int = OF_A_KIND, seed: int = SEED) -> Ovens:
    """Sound ovens with these elements, as many with a thermostat as with a sensor; for a seed always the same ones."""
    random = np.random.default_rng(seed)
    each = [typical_ovens(kind, of_a_kind, random) for kind in KINDS]
    drawn = Ovens(**{name: np.concatenate([getattr(ovens, name) for ovens in each]) for name in NAMES})
    given = {f"{name}_power": watts for name, watts in elements.watts.items()}
    given |= {"supply_voltage": elements.supply_v, "rated_voltage": elements.rated_v}
    given |= {"kitchen_temperature": elements.kitchen_c}
    return replace(drawn, **{name: np.full(drawn.draws, value) for name, value in given.items()})


def expected(function: str, set_c: float, elements: Elements) -> Expected:
    """What sound ovens with these elements do, set to so many °C. Raises ValueError as `heating.run` does."""
    return _seen(run(sound_ovens(elements), Programme(function, set_c, LASTING_S)))


def _seen(found: Run) -> Expected:
    from_cold = lamp_times(found, 0, LASTING_S)
    steady = lamp_times(found, STEADY_FROM_S, LASTING_S)
    return Expected(
        ovens=found.ovens,
        opens_s=from_cold.first_out,
        period_s=steady.period,
        share_on=steady.share_lit,
        power_w=found.watts.sum(axis=0),
        cut_out=np.logical_or.reduce(np.isfinite(found.cut_out.times), axis=0),
    )

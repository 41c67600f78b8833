"""The project's own rules, in parts of up to twelve causes, against two programs for exact inference.

Every marginal and the probability of every exact set of causes are compared, over random evidence.
"""

import random
from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from assistant.belief import combination, hypotheses
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior
from tests.belief.outside import Asked, AskedOfAgrum, pgmpy_network
from tests.belief.sub_models import (
    PRESENT,
    TOGETHER,
    Tables,
    causes_picked,
    part_of,
    project_rules,
    random_evidence,
    told,
)

SUB_MODELS = range(40)
AGREE = 1e-9
EVIDENCE_SETS = 25
"""For each part of the rules: a thousand altogether."""


class SubModel:
    """One part of the rules for all three programs."""

    def __init__(self, seed, causes=None):
        self.chance = random.Random(seed)
        self.knowledge = part_of(project_rules(), causes or causes_picked(project_rules(), self.chance))
        self.tables = Tables(self.knowledge)
        self.causes = self.tables.causes
        self.pgmpy = Asked(pgmpy_network(self.tables.nodes))
        self.agrum = AskedOfAgrum(self.tables.nodes, self.causes)

    def evidence_sets(self, number):
        return [random_evidence(self.knowledge, self.chance) for _ in range(number)]

    def by_others(self, evidence):
        """The joint distribution of all causes: from pgmpy and from pyAgrum."""
        known = self.known(evidence)
        return self.pgmpy.chances(self.causes, known), self.agrum.joint(known)

    def known(self, evidence):
        return {told(report): code for report, code in evidence.items()} | {TOGETHER: PRESENT}

    def compiled(self):
        return compile_evidence_model(self.knowledge)

    def by_this(self, model, evidence):
        """The joint distribution of all causes, and the marginals that the program gives itself."""
        found = posterior(model, evidence)
        joint = np.zeros((2,) * len(self.causes))
        for causes, probability in zip(model.hypotheses, found.probabilities, strict=True):
            joint[tuple(int(cause in causes) for cause in self.causes)] = probability
        return joint, np.array([found.of(cause) for cause in self.causes])


def marginals(joint):
    return np.array([joint.take(1, axis).sum() for axis in range(joint.ndim)])


def greatest_differences(sub_model, evidence_sets):
    """Of exact sets and of marginals, from both others."""
    model = sub_model.compiled()
    found = []
    for evidence in evidence_sets:
        joint, own_marginals = sub_model.by_this(model, evidence)
        for other in sub_model.by_others(evidence):
            found.append(np.abs(joint - other).max())
            found.append(np.abs(own_marginals - marginals(other)).max())
    return max(found)


@pytest.mark.parametrize("seed", SUB_MODELS)
def test_all_three_programs_believe_the_same(seed):
    sub_model = SubModel(seed)
    assert greatest_differences(sub_model, sub_model.evidence_sets(EVIDENCE_SETS)) < AGREE


@pytest.mark.parametrize("seed", SUB_MODELS[:5])
def test_a_single_cause_asked_for_by_itself_is_as_probable(seed):
    """Not by adding up a joint distribution: the other program eliminates all else."""
    sub_model = SubModel(seed)
    model = sub_model.compiled()
    for evidence in sub_model.evidence_sets(3):
        _, own = sub_model.by_this(model, evidence)
        asked = [sub_model.pgmpy.chance(cause, PRESENT, sub_model.known(evidence)) for cause in sub_model.causes]
        assert own == pytest.approx(asked, abs=1e-9)


def test_the_parts_of_the_rules_hold_every_feature():
    """Pairs with a table and with `together`, masks, exclusions, both kinds of causes and of observables."""
    seen = Counter()
    sizes = set()
    for seed in SUB_MODELS:
        knowledge = part_of(project_rules(), causes_picked(project_rules(), random.Random(seed)))
        causes = knowledge.causes
        sizes.add(len(causes) + 1)
        seen["tables"] += any(pair.shows for pair in knowledge.pairs.values())
        seen["together"] += any(pair.together for pair in knowledge.pairs.values())
        seen["masks"] += any(cause.masks for cause in causes.values())
        seen["excludes"] += any(other in causes for cause in causes.values() for other in cause.excludes)
        seen["faults"] += sum(cause.kind == "fault" for cause in causes.values()) >= 3
        seen["habits"] += any(cause.kind == "habit" for cause in causes.values())
    assert min(seen.values()) >= 10, seen
    assert len(seen) == 6
    assert max(sizes) == 12


def leak_counted_twice(alone, normal):
    """As if a cause were described without what is met anyway."""
    return np.cumsum(alone, axis=-1)


def mixture_for_the_worst(tables, present, normal):
    return combination._one_of(tables, present, normal)


def without(**fields):
    """`states_given` that overlooks something of what is shown."""

    def defective(shown, members):
        return combination.states_given(replace(shown, **{name: make(shown) for name, make in fields.items()}), members)

    return defective


def excluded_pairs_too(faults, habits, excluded):
    """Sets as they are, but excluded pairs too."""
    return combination.sets_of_causes(faults, habits, ())


DEFECTS = {
    "leak counted twice": (combination, "own_part", leak_counted_twice),
    "mixture instead of the worst": (combination, "_worst_of", mixture_for_the_worst),
    "masks forgotten": (hypotheses, "states_given", without(masks=lambda shown: np.zeros_like(shown.masks))),
    "tables of pairs forgotten": (hypotheses, "states_given", without(pairs=lambda _: {})),
    "patterns combined as if ordered": (hypotheses, "states_given", without(ordered=lambda _: True)),
    "excluded pairs believed": (hypotheses, "sets_of_causes", excluded_pairs_too),
    "being asked about forgotten": (
        hypotheses.Priors,
        "odds_of",
        lambda priors, causes: float(np.prod([priors.at_large[c] * priors.asked_about for c in causes])),
    ),
}

WITH_EVERYTHING = [
    "breaker_found_off",
    "cooling_fan_stopped",
    "voltage_low",
    "supply_off",
    "thermal_cutout_open",
    "thermostat_drifted_low",
    "thermostat_stuck_closed",
    "tray_blocks_air",
]


@pytest.fixture(scope="module")
def with_everything():
    sub_model = SubModel(1, WITH_EVERYTHING)
    return sub_model, sub_model.evidence_sets(40)


def test_without_a_defect_nothing_is_noticed(with_everything):
    assert greatest_differences(*with_everything) < AGREE


@pytest.mark.parametrize("defect", DEFECTS)
def test_a_defect_is_noticed(defect, with_everything, monkeypatch):
    monkeypatch.setattr(*DEFECTS[defect])
    assert greatest_differences(*with_everything) > 1000 * AGREE

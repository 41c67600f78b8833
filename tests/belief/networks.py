"""Published networks as evidence models: hypotheses are the joint states of the hidden variables."""

from itertools import product
from math import prod

import numpy as np

from assistant.belief.hypotheses import EvidenceModel


def tables_of(network):
    """Variable -> its states, its parents and parents' states -> chances; plain dictionaries from the file's tables."""
    found = {}
    for table in network.get_cpds():
        parents = table.variables[1:]
        values = table.values.reshape(len(table.state_names[table.variable]), -1)
        columns = product(*(table.state_names[parent] for parent in parents))
        by_parents = {states: list(values[:, number]) for number, states in enumerate(columns)}
        found[table.variable] = (table.state_names[table.variable], parents, by_parents)
    return found


def worlds_of(tables):
    """Every joint state with its probability."""
    names = list(tables)
    for states in product(*(tables[name][0] for name in names)):
        world = dict(zip(names, states, strict=True))
        yield (
            world,
            prod(
                by_parents[tuple(world[parent] for parent in parents)][of_name.index(world[name])]
                for name, (of_name, parents, by_parents) in tables.items()
            ),
        )


def evidence_model_of(network, hidden, observed):
    """`observed` must hang together through `hidden` alone. A cause is there where its variable is in its first state.

    Reports are never mistaken.
    """
    tables = tables_of(network)
    hypotheses = [
        tuple(name for name, there in zip(hidden, held, strict=True) if there)
        for held in product([False, True], repeat=len(hidden))
    ]
    prior = dict.fromkeys(hypotheses, 0.0)
    seen = {(name, state, h): 0.0 for name in observed for state in tables[name][0] for h in hypotheses}
    for world, chance in worlds_of(tables):
        hypothesis = tuple(name for name in hidden if world[name] == tables[name][0][0])
        prior[hypothesis] += chance
        for name in observed:
            seen[name, world[name], hypothesis] += chance
    return EvidenceModel(
        causes=tuple(hidden),
        hypotheses=tuple(hypotheses),
        prior_odds=np.array([prior[h] for h in hypotheses]),
        state_given={
            name: np.array([[seen[name, state, h] / prior[h] for h in hypotheses] for state in tables[name][0]])
            for name in observed
        },
        report_given={name: np.eye(len(tables[name][0])) for name in observed},
        codes={name: tuple(tables[name][0]) for name in observed},
        observable_of={name: name for name in observed},
        needs={},
    )

"""Two programs for exact inference in Bayesian networks, written by others: what this one is checked against.

Where one isn't installed, the tests that need it are skipped. Both warn while they are imported (old names inside
the one; wrapped types without a module in the other, which crash the interpreter if the warning is an error), so
warnings are silenced here, and nowhere else.
"""

import gzip
import logging
import warnings
from importlib.resources import files

import pytest

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    pgmpy = pytest.importorskip("pgmpy")
    pyagrum = pytest.importorskip("pyagrum")
    from pgmpy.factors.discrete import TabularCPD as Table
    from pgmpy.inference import VariableElimination
    from pgmpy.models import DiscreteBayesianNetwork
    from pgmpy.readwrite import BIFReader

logging.getLogger("pgmpy").setLevel(logging.ERROR)


def shipped_network(name):
    """A network from the folder of examples that comes with pgmpy: no download."""
    packed = files("pgmpy").joinpath("utils", "example_models", f"{name}.bif.gz").read_bytes()
    return BIFReader(string=gzip.decompress(packed).decode("utf-8")).get_model()


class Asked:
    """Queries of a pgmpy network by variable elimination, without a progress bar; states by their names."""

    def __init__(self, network):
        self.network = network
        self.elimination = VariableElimination(network)

    def chances(self, variables, evidence):
        """Joint distribution of the variables, an axis each, in their order."""
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            found = self.elimination.query(list(variables), evidence=dict(evidence), show_progress=False)
        order = [found.variables.index(variable) for variable in variables]
        return found.values.transpose(order)

    def chance(self, variable, state, evidence):
        names = self.network.get_cpds(variable).state_names[variable]
        return float(self.chances([variable], evidence)[names.index(state)])


def pgmpy_network(tables):
    """From name -> (states, parents, chances)."""
    edges = [(parent, name) for name, (_, parents, _) in tables.items() for parent in parents]
    network = DiscreteBayesianNetwork(edges)
    network.add_nodes_from(tables)
    for name, (states, parents, chances) in tables.items():
        network.add_cpds(
            Table(
                name,
                len(states),
                chances.reshape(len(states), -1),
                evidence=list(parents),
                evidence_card=list(chances.shape[1:]),
                state_names={each: list(tables[each][0]) for each in (name, *parents)},
            )
        )
    return network


class AskedOfAgrum:
    """Queries of a pyAgrum network, from name -> (states, parents, chances), by lazy propagation."""

    def __init__(self, tables, targets):
        self.network = pyagrum.BayesNet()
        self.targets = list(targets)
        for name, (states, _, _) in tables.items():
            self.network.add(pyagrum.LabelizedVariable(name, name, list(states)))
        for name, (_, parents, chances) in tables.items():
            for parent in parents:
                self.network.addArc(parent, name)
            table = self.network.cpt(name)
            order = [[name, *parents].index(each) for each in table.names]
            table.fillWith(chances.transpose(order).ravel(order="F").tolist())
        self.propagation = pyagrum.LazyPropagation(self.network)
        self.propagation.addJointTarget(set(self.targets))

    def joint(self, evidence):
        """Of all targets, an axis each, in their order."""
        self.propagation.setEvidence(dict(evidence))
        found = self.propagation.jointPosterior(set(self.targets))
        flat = found.toarray()
        axes = list(reversed(found.names))
        return flat.transpose([axes.index(target) for target in self.targets])

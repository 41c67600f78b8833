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

__all__ = ["Asked", "DiscreteBayesianNetwork", "Table", "pyagrum", "shipped_network"]


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

"""Starts the command line."""

import gc
import os
import sys

SELDOM = (100_000, 20, 50)
"""Each collection of garbage goes over all rules, words and syntax trees, of which nothing ever becomes garbage."""


def main() -> None:
    """Belief's matrices are small: several threads for one of them take longer than one, and more memory. They would
    also be in the way of the rule tools' own processes. It has to be said before numpy is loaded.
    """
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    gc.set_threshold(*SELDOM)
    from assistant.cli import run

    sys.exit(run(sys.argv[1:]))


if __name__ == "__main__":
    main()

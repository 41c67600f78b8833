"""Starts the command line."""

import sys


def main() -> None:
    from assistant.cli import run

    sys.exit(run(sys.argv[1:]))


if __name__ == "__main__":
    main()

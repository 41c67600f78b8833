"""The first screen waits for nothing that it doesn't show."""

import subprocess
import sys

HEAVY = ("numpy", "durable")


def test_the_words_of_the_first_screen_are_found_without_arithmetic_and_rule_engine():
    program = (
        "import sys, assistant.chat.pages, assistant.knowledge.load, assistant.wording.languages; "
        f"print([name for name in {HEAVY} if name in sys.modules])"
    )
    said = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True).stdout
    assert said == "[]\n"


def test_the_command_line_and_the_first_screen_start_without_arithmetic_and_rule_engine():
    program = (
        f"import sys, assistant.cli, assistant.chat.begin; print([name for name in {HEAVY} if name in sys.modules])"
    )
    said = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True).stdout
    assert said == "[]\n"

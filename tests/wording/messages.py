"""What a file of messages holds."""

from fluent.syntax import ast

from assistant.wording.fluent_text import parsed


def message_names(text: str) -> dict[str, frozenset[str]]:
    """Every message of a resource with the names of its attributes."""
    resource = parsed(text)
    return {
        entry.id.name: frozenset(attribute.id.name for attribute in entry.attributes)
        for entry in resource.body
        if isinstance(entry, ast.Message)
    }

"""What a file of messages holds."""

from fluent.syntax import FluentParser, ast


def message_names(text: str) -> dict[str, frozenset[str]]:
    """Every message of a resource with the names of its attributes."""
    resource = FluentParser().parse(text)
    return {
        entry.id.name: frozenset(attribute.id.name for attribute in entry.attributes)
        for entry in resource.body
        if isinstance(entry, ast.Message)
    }

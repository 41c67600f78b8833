"""What stands in a page of HTML, as the standard library reads it."""

from html.parser import HTMLParser

VOID = {"meta", "br", "hr", "img", "link", "input"}


class Outline(HTMLParser):
    """`elements`: (tag, attributes, text directly within it), in the order of the page."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[tuple[str, dict[str, str | None], list[str]]] = []
        self.unclosed: list[int] = []
        self.comments: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs), []))
        if tag not in VOID:
            self.unclosed.append(len(self.elements) - 1)

    def handle_endtag(self, tag: str) -> None:
        assert self.elements[self.unclosed.pop()][0] == tag, f"</{tag}> closes another element"

    def handle_data(self, data: str) -> None:
        if self.unclosed:
            self.elements[self.unclosed[-1]][2].append(data)

    def handle_comment(self, data: str) -> None:
        self.comments.append(data)

    def tags(self) -> list[str]:
        return [tag for tag, _, _ in self.elements]

    def texts(self, *tags: str) -> list[str]:
        return ["".join(text) for tag, _, text in self.elements if tag in tags]

    def attributes(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for found, attributes, _ in self.elements if found == tag]

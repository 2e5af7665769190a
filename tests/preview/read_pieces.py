"""Pieces of HTML read by the standard library's parser."""

from html.parser import HTMLParser

VOID = {"meta", "img", "br", "link", "input", "wbr"}


class Read(HTMLParser):
    """Tags with their attributes, texts, rows of tables; `faults` are tags that do not close in order."""

    def __init__(self, html: str) -> None:
        """Read a piece."""
        super().__init__(convert_charrefs=True)
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[str] = []
        self.rows: list[list[str]] = []
        self.faults: list[str] = []
        self._open: list[str] = []
        self.feed(html)
        self.close()
        self.faults += self._open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag opens."""
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self._open.append(tag)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.rows[-1].append("")

    def handle_endtag(self, tag: str) -> None:
        """A tag closes."""
        if not self._open or self._open.pop() != tag:
            self.faults.append(tag)

    def handle_data(self, data: str) -> None:
        """A text."""
        self.texts.append(data)
        if self._open and self._open[-1] in ("td", "th"):
            self.rows[-1][-1] += data


def read(html: str) -> Read:
    """The piece, read."""
    return Read(html)

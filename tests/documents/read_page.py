"""A page read by the standard library's HTML parser: its tags balanced, its tables, its texts."""

from html.parser import HTMLParser

VOID = {"meta", "img", "br", "link", "wbr"}


class Page(HTMLParser):
    """What stands on a page; `faults` are tags that do not close in order."""

    def __init__(self, text: str) -> None:
        """Read the page."""
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.faults: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.rows: list[list[str]] = []
        self.headings: list[tuple[str, str]] = []
        self.texts: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag opens."""
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.rows[-1].append("")
        if tag in ("h1", "h2", "h3", "h4"):
            self.headings.append((tag, ""))

    def handle_endtag(self, tag: str) -> None:
        """A tag closes."""
        if not self.open or self.open.pop() != tag:
            self.faults.append(tag)

    def handle_data(self, data: str) -> None:
        """A text."""
        if self.open and self.open[-1] in ("td", "th"):
            self.rows[-1][-1] += data
        if self.open and self.open[-1] in ("h1", "h2", "h3", "h4"):
            level, before = self.headings[-1]
            self.headings[-1] = level, before + data
        if data.strip() and "style" not in self.open:
            self.texts.append(data.strip())

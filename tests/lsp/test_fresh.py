"""Any sequence of edits over several files, on disk and open, gives what a server says that is started then."""

import tempfile
from pathlib import Path

from editing import Editor
from hypothesis import HealthCheck, settings
from hypothesis import strategies as some
from hypothesis.stateful import RuleBasedStateMachine, precondition, rule
from viewing import CATALOGUE

ROOM = "room {0}\n  height 2400\n  on plasterboard\n  surface sound\n  finish board by glued vertical\n  wall a {1}\n"
FILES = {
    "job.room": 'job x\n  use "*.room"\n',
    "catalogue.room": CATALOGUE,
    "one.room": ROOM.format(1, 3030) + ROOM.format(2, 2000),
    "two.room": ROOM.format(3, 1010),
    "roomspec.toml": '[checks]\nnarrow-strip = "error"\n',
}
PATHS = some.sampled_from((*FILES, "new.room"))
NEW = some.sampled_from(
    ("", "x", "\n", "  wall b 1010\n", "room 1\n", "use", '"', "job y\n", "🚪", '[checks]\nno-gap = "off"\n')
)


class Editing(RuleBasedStateMachine):
    """One server for a sequence; another, fresh, at its end and wherever hypothesis wants to look."""

    def __init__(self) -> None:
        """Write the files and start."""
        super().__init__()
        self.kept = tempfile.TemporaryDirectory()
        folder = Path(self.kept.name).resolve()
        for path, text in FILES.items():
            (folder / path).write_text(text)
        self.editor = Editor(folder)

    def teardown(self) -> None:
        """Compare, and end the server."""
        try:
            assert self.editor.told() == self.editor.fresh()
        finally:
            self.editor.client.kill()
            self.kept.cleanup()

    @rule(path=PATHS)
    def open_or_close(self, path: str) -> None:
        """Without saving."""
        if path in self.editor.buffers:
            self.editor.close(path)
        else:
            self.editor.open(path)

    @rule(path=PATHS, at=some.integers(0, 300), size=some.integers(0, 30), new=NEW)
    def edit(self, path: str, at: int, size: int, new: str) -> None:
        """Some letters of a file."""
        if path not in self.editor.buffers:
            self.editor.open(path)
        length = len(self.editor.buffers[path])
        self.editor.edit(path, min(at, length), min(at + size, length), new)

    @precondition(lambda self: self.editor.buffers)
    @rule(data=some.data(), whole=some.booleans())
    def save_or_become(self, data: some.DataObject, whole: bool) -> None:
        """An open file is saved, or gets another text."""
        path = data.draw(some.sampled_from(sorted(self.editor.buffers)))
        if whole:
            self.editor.become(path, FILES.get(path, ROOM.format(1, 1010)))
        else:
            self.editor.save(path)

    @rule(path=PATHS, gone=some.booleans())
    def outside(self, path: str, gone: bool) -> None:
        """Something else writes a file, or deletes it."""
        if gone:
            self.editor.delete(path)
        else:
            self.editor.write(path, FILES.get(path, ROOM.format(4, 1010)))

    @rule(path=some.sampled_from(("one.room", "two.room", "catalogue.room")))
    def rename(self, path: str) -> None:
        """To a name that is free, and back."""
        for old, new in ((path, "moved.room"), ("moved.room", path)):
            free = new not in self.editor.buffers and not (self.editor.folder / new).exists()
            if free and ((self.editor.folder / old).exists() or old in self.editor.buffers):
                self.editor.rename(old, new)
                return

    @rule()
    def look(self) -> None:
        """Let the server check what there is."""
        self.editor.told()


TestEditing = Editing.TestCase
TestEditing.settings = settings(
    max_examples=6, stateful_step_count=14, deadline=None, suppress_health_check=list(HealthCheck)
)

"""Where a file belongs: the repositories behind the folders and files that the editor has open."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from urllib.parse import quote

from msgspec import Struct

from roomspec.analysis.world import MemoryWorld
from roomspec.files.disk import DiskWorld, root_of
from roomspec_lsp.convert import path_of, uri_of
from roomspec_lsp.overlay import Buffer
from roomspec_lsp.repository import Repository


class Where(Struct, frozen=True):
    """A file of a repository."""

    repository: Repository
    path: str


class Workspace:
    """The folders of the editor, and the repositories that its files stand in."""

    def __init__(self) -> None:
        """Begin without folders."""
        self.folders: list[Path] = []
        self.repositories: dict[Path | None, Repository] = {}
        self._roots: dict[Path, Path] = {}
        self._located: dict[str, Where] = {}
        self._uris: dict[tuple[Path | None, str], str] = {}

    def add_folder(self, uri: str) -> None:
        """Look for jobs below a folder too."""
        path = path_of(uri)
        if path is None or not path.is_dir():
            return
        folder = path.resolve()
        if folder not in self.folders:
            self.folders.append(folder)
            self._forget()
            repository = self._repository(self._root_of_folder(folder))
            if folder not in repository.files.folders:
                repository.files.folders.append(folder)
                repository.renamed()
            self._rehome()

    def remove_folder(self, uri: str) -> None:
        """Look below it no more; open files keep their repository."""
        path = path_of(uri)
        folder = path.resolve() if path is not None else None
        self.folders = [one for one in self.folders if one != folder]
        self._forget()
        for root, repository in tuple(self.repositories.items()):
            files = repository.files
            files.folders = [one for one in files.folders if folder is None or not one.is_relative_to(folder)]
            opened = {(root / path).parent for path in repository.overlay.buffers} if root is not None else set()
            files.folders.extend(sorted(opened - set(files.folders)))
            repository.renamed()
            if not files.folders and not repository.overlay.buffers:
                del self.repositories[root]
        self._rehome()

    def locate(self, uri: str) -> Where:
        """The repository of a file, and its path there."""
        found = self._located.get(uri)
        if found is None:
            found = self._located[uri] = self._locate(uri)
        return found

    def _locate(self, uri: str) -> Where:
        path = path_of(uri)
        if path is None:
            return Where(self._repository(None), f"{quote(uri, safe='')}.room")
        try:
            place = path.resolve()
        except (OSError, RuntimeError):
            place = path
        root = self._root(place)
        repository = self._repository(root)
        if not any(place.is_relative_to(folder) for folder in repository.files.folders):
            repository.files.folders.append(place.parent)
            repository.renamed()
        return Where(repository, place.relative_to(root).as_posix())

    def buffer(self, uri: str) -> Buffer | None:
        """The open file of that address."""
        where = self.locate(uri)
        return where.repository.overlay.buffers.get(where.path)

    def uri(self, repository: Repository, path: str) -> str:
        """The address of a file, as the editor wrote it where the file is open."""
        buffer = repository.overlay.buffers.get(path)
        if buffer is not None:
            return buffer.uri
        key = repository.files.root, path
        if key not in self._uris:
            self._uris[key] = uri_of((repository.files.root or Path("/")) / path)
        return self._uris[key]

    def every_repository(self) -> Iterator[Repository]:
        """All that are known."""
        yield from tuple(self.repositories.values())

    def _forget(self) -> None:
        self._roots.clear()
        self._located.clear()
        self._uris.clear()

    def _rehome(self) -> None:
        """Open files belong to the repository that they would be opened in now."""
        for repository in self.every_repository():
            for path, buffer in tuple(repository.overlay.buffers.items()):
                where = self.locate(buffer.uri)
                if where.repository is not repository:
                    del repository.overlay.buffers[path]
                    where.repository.overlay.buffers[where.path] = buffer
                    repository.renamed()
                    where.repository.renamed()

    def _repository(self, root: Path | None) -> Repository:
        if root not in self.repositories:
            world = MemoryWorld({}, date.today()) if root is None else DiskWorld(root)
            self.repositories[root] = Repository(world)
        return self.repositories[root]

    def _root(self, place: Path) -> Path:
        """The nearest folder with `.git`, else the editor's folder around the file, else the file's own."""
        return self._root_of_folder(place.parent)

    def _root_of_folder(self, own: Path) -> Path:
        if own not in self._roots:
            existing = next((folder for folder in (own, *own.parents) if folder.is_dir()), own)
            root = root_of(existing)
            if not (root / ".git").exists():
                around = [folder for folder in self.folders if own.is_relative_to(folder)]
                root = min(around, key=lambda folder: len(folder.parts), default=own)
            self._roots[own] = root
        return self._roots[own]

"""Names of files for drawings, safe on every common file system, and the list of what a folder of drawings holds."""

import json
import re
import unicodedata
from collections.abc import Sequence

from roomspec.model.job import Job
from roomspec.reports.drawing.job_drawings import Drawing

FORMAT = "roomspec/drawings"
_LONGEST = 120
"""Bytes of a name without its ending; file systems take 255."""
_RESERVED = re.compile(r"(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\..*)?", re.IGNORECASE)
"""Names of devices, which one common system does not take for files."""


def file_names(names: Sequence[str]) -> tuple[str, ...]:
    """A name ending in `.svg` for each, in order: `g.02/wall a` becomes `g.02-wall-a.svg`.

    Letters, digits, `.`, `_` and `-` stay. Names that would be one file where capitals do not count get `-2`, `-3` ...
    """
    taken: set[str] = set()
    found = []
    for name in names:
        stem = safe = _safe(name)
        number = 2
        while safe.casefold() in taken:
            safe = f"{stem}-{number}"
            number += 1
        taken.add(safe.casefold())
        found.append(f"{safe}.svg")
    return tuple(found)


def _safe(name: str) -> str:
    plain = re.sub(r"[^\w.-]+", "-", unicodedata.normalize("NFC", name)).strip("-.") or "drawing"
    while len(plain.encode()) > _LONGEST:
        plain = plain[:-1]
    return f"room-{plain}" if _RESERVED.fullmatch(plain) else plain


def drawings_contents(job: Job, drawings: Sequence[Drawing], files: Sequence[str], errors: int) -> str:
    """The list as JSON: what each file shows. Keys may be added; none changes its meaning within a version."""
    told = {
        "format": FORMAT,
        "version": 1,
        "job": job.name,
        "date": job.terms.date.isoformat() if job.terms.date else None,
        "errors": errors,
        "files": list(files),
        "drawings": [
            {
                "file": file,
                "kind": drawing.kind,
                "title": drawing.title,
                "rooms": list(drawing.rooms),
                "part": drawing.part,
                "paper": drawing.paper,
                "scale": drawing.scale or None,
                "sheet": drawing.sheet,
            }
            for file, drawing in zip(files, drawings, strict=True)
        ],
    }
    return json.dumps(told, indent=2, ensure_ascii=False) + "\n"

"""The list of what a hand-over holds, for programs and for the next run, which replaces it."""

import json
from collections.abc import Mapping

from roomspec.reports.hand_over.given import HandOver

FORMAT = "roomspec/hand-over"


def contents_json(given: HandOver, texts: Mapping[str, str]) -> str:
    """As JSON. Keys may be added; none changes its meaning within a version.

    `texts` are the files, each with the digest of the job's text that it was made of.
    """
    job = given.made.job
    told = {
        "format": FORMAT,
        "version": 1,
        "job": job.name,
        "date": job.terms.date.isoformat() if job.terms.date else None,
        "errors": len(given.errors),
        "files": list(texts),
        "text": dict(texts),
    }
    return json.dumps(told, ensure_ascii=False, indent=2) + "\n"

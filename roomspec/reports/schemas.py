"""The published JSON Schemas (draft 2020-12), written from the shapes themselves."""

from typing import Any

import msgspec

from roomspec.reports.checks_json import Checks
from roomspec.reports.comparison.comparison_json import Comparison
from roomspec.reports.estimate_json import EstimateOut
from roomspec.reports.findings_json import Findings

SCHEMAS = {
    "checks.schema.json": (Checks, "What `roomspec explain --as json` prints"),
    "comparison.schema.json": (Comparison, "What `roomspec compare --as json` prints"),
    "estimate.schema.json": (EstimateOut, "What `roomspec estimate --as json` prints"),
    "findings.schema.json": (Findings, "What `roomspec check --as json` prints"),
}
"""File beside this one -> the shape and its title."""


def schema_text(name: str) -> str:
    """The schema as its file holds it."""
    shape, title = SCHEMAS[name]
    schema: dict[str, Any] = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": title}
    return msgspec.json.format(msgspec.json.encode(schema | msgspec.json.schema(shape)), indent=2).decode() + "\n"

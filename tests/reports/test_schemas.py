"""The published schemas are fresh, valid, and true of what is printed."""

import json
from pathlib import Path

import jsonschema
import pytest

from roomspec.checks.registry import every_record
from roomspec.reports import schemas
from roomspec.reports.checks_json import checks_json

REPORTS = Path(schemas.__file__).parent


@pytest.mark.parametrize("name", sorted(schemas.SCHEMAS))
def test_the_schema_is_fresh(name, update):
    """The file holds what the shapes say now."""
    if update:
        (REPORTS / name).write_text(schemas.schema_text(name), encoding="utf-8")
    assert (REPORTS / name).read_text(encoding="utf-8") == schemas.schema_text(name)


@pytest.mark.parametrize("name", sorted(schemas.SCHEMAS))
def test_the_schema_is_a_schema(name):
    """It is valid against JSON Schema draft 2020-12, as the jsonschema library reads it."""
    jsonschema.Draft202012Validator.check_schema(json.loads((REPORTS / name).read_text(encoding="utf-8")))


def test_the_checks_are_as_published():
    """What explain prints holds against its schema."""
    schema = json.loads((REPORTS / "checks.schema.json").read_text(encoding="utf-8"))
    jsonschema.validate(json.loads(checks_json(every_record())), schema)

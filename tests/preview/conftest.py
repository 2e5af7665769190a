"""The small job on disk, and as a preview holds it."""

from pathlib import Path

import pytest
from two_rooms import CATALOGUE, JOB, ROOMS

from roomspec.cli.preview_job import PreviewJob


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """The folder with the job's files."""
    for name, text in (("job.room", JOB), ("rooms.room", ROOMS), ("catalogue.room", CATALOGUE)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


@pytest.fixture
def job(root: Path) -> PreviewJob:
    """The job, not yet read."""
    return PreviewJob(root, "job.room")

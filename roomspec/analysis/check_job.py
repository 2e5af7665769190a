"""Checking one job: the stages run, and what is kept of them."""

from roomspec.analysis.checked import Checked
from roomspec.analysis.session import Session


def check_job(session: Session, path: str) -> Checked:
    """Check the job in a file of the session's World."""
    snapshot = session.snapshot(path)
    if snapshot is None:
        return Checked(path, (), (), False)
    return Checked(path, tuple(tree.path for tree in snapshot.files), snapshot.findings, snapshot.job is not None)

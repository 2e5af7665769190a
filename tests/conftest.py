"""What all tests share: `--update` rewrites expectations, and the diff is read like code."""

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add `--update`."""
    parser.addoption("--update", action="store_true", help="rewrite expectations from what the program gives now")


@pytest.fixture
def update(request: pytest.FixtureRequest) -> bool:
    """True where expectations are to be rewritten."""
    return bool(request.config.getoption("--update"))

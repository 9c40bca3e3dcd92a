"""What the tests of tables share."""

import pytest

from parsers.harvest import harvest


@pytest.fixture
def read():
    """Read hand-made pages: from (key, limit) to values, or from key to readings."""

    def of(*pages):
        return harvest(pages, "0" * 64).readings

    return of

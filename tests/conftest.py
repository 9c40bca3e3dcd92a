"""What every test may ask for."""

from pathlib import Path

import pytest

SHARED = Path(__file__).resolve().parents[2] / "shared"


@pytest.fixture(scope="session")
def shared() -> Path:
    """The folder of real datasheets and check values beside the checkout; tests that ask for it are skipped where it is absent."""
    if not (SHARED / "corpus" / "labels.jsonl").is_file():
        pytest.skip("needs the folder 'shared' with the corpus of real datasheets beside the checkout")
    return SHARED

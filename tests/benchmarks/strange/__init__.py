"""Draws strange but likely datasheets: layout, wording and quirks combined at random, each with the readings that it prints.

The pen is the one that draws the fixtures.
"""

import sys
from pathlib import Path

sys.path.append(str(Path(__file__).resolve().parents[3] / "fixtures"))

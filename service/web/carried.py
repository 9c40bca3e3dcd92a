"""What was typed beside a marking goes along until the board is judged: nothing is typed twice."""

from collections.abc import Mapping
from typing import Any

KEYS = ("discharge_bank.switches", "cells.in_series", "claim.continuous")


def of(values: Mapping[str, str]) -> dict[str, Any]:
    """The counts and the claim that were typed, for the next page's address."""
    return {key: text for key in KEYS if (text := values.get(key, "").strip())}

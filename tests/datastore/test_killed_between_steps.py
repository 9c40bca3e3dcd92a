"""A process killed at any step loses nothing that it told, and leaves nothing by halves."""

import json
import subprocess
import sys
from pathlib import Path


def test_nothing_is_lost_or_left_by_halves_wherever_the_work_is_killed(tmp_path: Path) -> None:
    """Every step of taking in, keeping, freezing and correcting; then the same work again on what is left."""
    script = Path(__file__).with_name("killed_between_steps.py")
    told = subprocess.run([sys.executable, script, tmp_path], capture_output=True, text=True, timeout=300, check=True).stdout
    outcomes = [json.loads(line) for line in told.splitlines()]

    assert len(outcomes) > 25, "the work has fewer steps than it had: are they still counted?"
    assert [outcome["exit"] for outcome in outcomes] == [77] * (len(outcomes) - 1) + [0]
    assert [outcome for outcome in outcomes if outcome["broken"] or outcome["broken again"] or outcome["exit again"]] == []

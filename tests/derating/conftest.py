"""What the engine's tests may ask for: an independent circuit simulator."""

import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

MEASURED = re.compile(r"^\s*([a-z]\w*)\s*=\s*([-+0-9.eE]+)", re.MULTILINE)


@pytest.fixture(scope="session")
def ngspice(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], dict[str, float]]:
    """Run a netlist and give what its ``.meas`` lines found, by lower-case name; tests that ask for it are skipped where ngspice is absent."""
    program = shutil.which("ngspice")
    if program is None:
        pytest.skip("needs the circuit simulator ngspice (Debian package ngspice)")
    folder: Path = tmp_path_factory.mktemp("netlists")

    def run(netlist: str) -> dict[str, float]:
        deck = folder / "deck.cir"
        deck.write_text(netlist, encoding="ascii")
        done = subprocess.run([program, "-b", str(deck)], capture_output=True, text=True, timeout=120, check=False)
        return {name: float(value) for name, value in MEASURED.findall(done.stdout)}

    return run

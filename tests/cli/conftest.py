"""Running the command line as a person does, without a terminal's colours and width."""

import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from service.cli import main


@dataclass(frozen=True, slots=True)
class Ran:
    """What a command printed and how it ended."""

    code: int
    out: str
    err: str


@pytest.fixture
def run(tmp_path: Path, capfdbinary: pytest.CaptureFixture[bytes], monkeypatch: pytest.MonkeyPatch):
    """Runs a command within this process, in a data folder of its own."""
    monkeypatch.setenv("SWITCHBANK_DATA_DIR", str(tmp_path / "data"))
    monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setenv("COLUMNS", "80")

    def command(*arguments: object) -> Ran:
        monkeypatch.setattr(sys, "argv", ["switchbank", *map(str, arguments)])
        with pytest.raises(SystemExit) as ended:
            main()
        out, err = capfdbinary.readouterr()
        return Ran(int(ended.value.code or 0), out.decode("utf-8"), err.decode("utf-8"))

    return command


@pytest.fixture(scope="session")
def run_alone():
    """Runs Python in a process of its own and gives what it printed."""

    def python(program: str) -> str:
        ended = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True, env={**os.environ, "NO_COLOR": "1"})
        return ended.stdout

    return python

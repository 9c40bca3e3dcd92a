"""`switchbank serve`: the pages come up on this machine, say where, and go down when told to."""

import os
import re
import signal
import stat
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from urllib.request import Request, urlopen

import pytest

PROGRAM = "from service.cli import main; main()"


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """The running program and its address."""
    command = [sys.executable, "-c", PROGRAM, "serve", "--port", "0", "--data-dir", str(tmp_path / "data")]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONUNBUFFERED": "1"}) as program:
        said = program.stdout.readline()
        found = re.search(r"http://127\.0\.0\.1:\d+", said)
        assert found, said
        yield program, found[0]
        program.kill()


def test_the_pages_come_up_and_go_down(served, tmp_path):
    """The address that is said answers; Ctrl+C ends the program."""
    program, address = served
    with urlopen(address, timeout=20) as answer:  # noqa: S310  our own address
        assert answer.status == 200
        assert b"Switchbank" in answer.read()
    program.send_signal(signal.SIGINT)

    assert program.wait(timeout=20) in {0, 130}
    assert stat.S_IMODE((tmp_path / "data" / "secret-key").stat().st_mode) == 0o600


def test_a_stranger_s_host_name_is_refused(served):
    """A page elsewhere cannot reach in under a name of its own (DNS rebinding)."""
    _, address = served
    request = Request(address, headers={"Host": "pages.example.org"})  # noqa: S310  our own address
    with pytest.raises(OSError, match="HTTP Error 4"):
        urlopen(request, timeout=20)  # noqa: S310  our own address

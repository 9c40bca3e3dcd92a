"""The program as installed, on a data folder of its own, and a real browser in front of it."""

import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

BROWSERS = ("chromium", "chromium-browser", "google-chrome")
QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@pytest.fixture(scope="session")
def browser() -> Iterator[object]:
    """A browser of this machine, without a window."""
    found = next((path for name in BROWSERS if (path := shutil.which(name))), None)
    if found is None:
        pytest.skip(f"needs a browser: one of {', '.join(BROWSERS)} (Debian: apt-get install chromium)")
    from playwright.sync_api import sync_playwright  # noqa: PLC0415  slow to load, and only these tests need it

    with sync_playwright() as playwright:
        window = playwright.chromium.launch(executable_path=found, args=list(QUIET))
        yield window
        window.close()


@pytest.fixture
def page(browser) -> Iterator[object]:
    """An empty page that reports every complaint of the browser."""
    context = browser.new_context(viewport={"width": 1180, "height": 900})
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    yield page
    context.close()
    assert complaints == []


@pytest.fixture(scope="session")
def started(tmp_path_factory) -> Iterator[Callable[..., str]]:
    """Start a command of the program and give the address of its pages; all are stopped at the end."""
    running: list[subprocess.Popen[str]] = []

    def start(command: str) -> str:
        folder = tmp_path_factory.mktemp(command) / "data"
        program = Path(sys.executable).with_name("switchbank")
        process = subprocess.Popen([program, command, "--port", "0", "--data-dir", folder], stdout=subprocess.PIPE, text=True)
        running.append(process)
        for line in process.stdout:
            if address := re.search(r"http://\S+", line):
                return address[0]
        pytest.fail(f"switchbank {command} ended without an address")

    yield start
    for process in running:
        process.terminate()
        process.wait(timeout=20)
        process.stdout.close()


@pytest.fixture(scope="session")
def bench(started) -> str:
    """The address of an empty bench."""
    return started("serve")

"""The documents are tested like code: what can be named is named."""

import re
from pathlib import Path

import pytest

from service.cli import Commands
from service.derating.checks import CHECKS

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
FOLDERS = sorted(
    str(folder.relative_to(ROOT))
    for top in ("service", "parsers", "datastore")
    for folder in (ROOT / top).rglob("*")
    if folder.is_dir() and (folder / "__init__.py").is_file()
)


@pytest.mark.parametrize("folder", FOLDERS)
def test_every_package_is_explained_to_developers(folder):
    """A newcomer finds each folder's purpose in one place."""
    assert f"`{folder}/`" in DEVELOPERS


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_every_check_is_explained_in_the_readme(check):
    """A reader finds each question that a report may ask."""
    assert check.question in README


@pytest.mark.parametrize("command", Commands.SENTENCES)
def test_every_command_is_named_in_the_readme(command):
    """A reader finds each command."""
    assert f"`switchbank {command}" in README


def test_every_long_proof_is_named_for_developers():
    """What does not run in CI can be found and run."""
    proofs = [path.name for path in (ROOT / "tests" / "benchmarks").glob("*.py")]

    assert proofs
    assert [name for name in proofs if f"tests/benchmarks/{name}" not in DEVELOPERS] == []


def test_both_commands_of_the_readme_are_marked_and_short():
    """What a stranger types is one line each, and CI can find the test command."""
    blocks = re.findall(r"<!-- (start|test) command -->\n```sh\n(.+?)\n```", README)

    assert [name for name, _ in blocks] == ["start", "test"]


def test_the_top_level_holds_only_what_belongs_there():
    """The house has a fixed front."""
    allowed = {"README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml", "service", "parsers", "datastore", "tests", "fixtures"}
    seen = {path.name for path in ROOT.iterdir() if not path.name.startswith(".") and not path.name.endswith(".egg-info")}

    assert seen <= allowed | {"build", "dist", "htmlcov"}

"""The command line introduces itself at once, in words that are fixed here."""

import json

import pytest
from jsonschema import Draft202012Validator

COMMANDS = ("read", "lookup", "judge", "serve", "demo", "schema", "doctor")
HEAVY = ("pint", "sqlalchemy", "numpy", "scipy", "flask", "pdfplumber", "pypdfium2", "matplotlib", "alembic", "obstore")

OVERVIEW = """\
 Usage: switchbank [OPTIONS] COMMAND [ARGS]...

 Read power-switch datasheets and judge what a battery board can really do.
 The answers are calculations from printed and typed figures, no certification.
 Work on packs can hurt: local codes and licensed practice come first.

╭─ Options ────────────────────────────────────────────────────────────────────╮
│ --version      Show the version and exit.                                    │
│ --help     -h  Show this message and exit.                                   │
╰──────────────────────────────────────────────────────────────────────────────╯
╭─ Commands ───────────────────────────────────────────────────────────────────╮
│ read     Read datasheets and print what they say, each value with its place. │
│ lookup   Find the parts that a marking may stand for.                        │
│ judge    Judge what a board's switches can really do.                        │
│ serve    Start the pages on this machine.                                    │
│ demo     Start the pages with invented example data.                         │
│ schema   Print the JSON Schema of a sheet, a board or a report.              │
│ doctor   Say what this machine gives the program.                            │
╰──────────────────────────────────────────────────────────────────────────────╯
"""


def lines(text: str) -> list[str]:
    """The lines without the blanks at their ends and the empty ones."""
    return [line.rstrip() for line in text.splitlines() if line.strip()]


def test_the_overview_names_every_command_with_a_sentence(run):
    """A newcomer sees the order of the work."""
    shown = run("--help")

    assert shown.code == 0
    assert lines(shown.out) == lines(OVERVIEW)


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_explains_itself(run, command):
    """Each command has its own page of help."""
    shown = run(command, "--help")

    assert shown.code == 0
    assert f"Usage: switchbank {command}" in shown.out


@pytest.mark.parametrize("arguments", [["--help"], ["--version"], *([command, "--help"] for command in COMMANDS)], ids=" ".join)
def test_help_and_version_load_nothing_heavy(run_alone, arguments):
    """Nobody waits for a database, an engine or a PDF library to read a page of help."""
    program = f"""
import sys
sys.argv = ["switchbank", *{arguments!r}]
from service.cli import main
try:
    main()
except SystemExit as ended:
    assert not ended.code
print("LOADED", *sorted(set(sys.modules) & set({HEAVY!r})))
"""
    assert run_alone(program).splitlines()[-1].strip() == "LOADED"


def test_an_unknown_command_is_wrong_use(run):
    """A slip ends with code 2 and says where help is."""
    ended = run("reed")

    assert ended.code == 2
    assert "No such command 'reed'" in ended.err


@pytest.mark.parametrize("name", ["sheet", "board", "report", "switchbank.report/1"])
def test_schemas_are_printed_as_json_schema(run, name):
    """What is printed is a schema of the draft that it names."""
    shown = run("schema", name)

    Draft202012Validator.check_schema(json.loads(shown.out))
    assert json.loads(shown.out)["$id"] == f"switchbank.{name.removeprefix('switchbank.').removesuffix('/1')}/1"


def test_an_unknown_schema_is_refused_with_the_names(run):
    """The three names are listed."""
    ended = run("schema", "sheets")

    assert ended.code == 2
    assert "'sheet', 'board', 'report'" in ended.err


def test_a_terminal_without_an_ohm_sign_is_no_reason_to_stop(run_alone):
    """A terminal of Western European characters gets a question mark in its place."""
    program = """
import io, sys
from service.cli import main
from service.facts.reading import Sheet
from service.wiring import reading
reading.read_sheets = lambda paths, **how: iter([Sheet(reader_version="1", file="a.pdf", sha256="ab" * 32, package="\u03a9", text_layer="good")])
sys.stdout = io.TextIOWrapper(sys.stdout.buffer, encoding="latin-1")
sys.argv = ["switchbank", "read", sys.executable]
main()
"""
    assert run_alone(program) == "a.pdf: ?; 0 pages\n  nothing read\n\n"

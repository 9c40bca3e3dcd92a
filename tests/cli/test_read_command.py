"""`switchbank read`: one object a line for programs, a table for people, exit codes that a script can trust."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from service.facts.reading import Conditions, Limit, Reading, Refused, Sheet, Status
from service.wiring import reading

READING = Reading(
    id="r-1",
    key="rds_on",
    limit=Limit.MAX,
    value=4.0,
    unit="mohm",
    printed="4.0",
    si=0.004,
    cond=Conditions(vgs=10.0),
    status=Status.REVIEW,
    evidence=("row",),
    why="the column is in doubt",
    page=2,
    bbox=(401.0, 302.5, 420.0, 312.0),
    row_bbox=(40.0, 300.0, 560.0, 314.0),
    quote="RDS(on) VGS = 10 V 4.0 mΩ",
)


@pytest.fixture
def pdfs(tmp_path: Path) -> Path:
    """A folder of files; what a stub reader makes of each is in its name."""
    folder = tmp_path / "drawer"
    (folder / "inner").mkdir(parents=True)
    for name in ("good-a.pdf", "inner/good-b.PDF", "bad-c.pdf", "notes.txt"):
        (folder / name).write_bytes(b"%PDF-")
    return folder


@pytest.fixture
def stub_reader(monkeypatch: pytest.MonkeyPatch) -> list[dict[str, object]]:
    """Reads by the file's name, and notes what it was asked."""
    asked: list[dict[str, object]] = []

    def read_sheets(paths: list[Path], **how: object) -> Iterator[Sheet]:
        asked.append(how)
        return (_sheet(path) for path in paths)

    monkeypatch.setattr(reading, "read_sheets", read_sheets)
    return asked


def _sheet(path: Path) -> Sheet:
    """A sheet that was read, or one that was refused."""
    if path.name.startswith("bad"):
        refused = Refused(kind="not_a_datasheet", seems_to_be="application_note", detail="No rating table in 12 pages.")
        return Sheet(reader_version="1", file=path.name, sha256="cd" * 32, refused=refused)
    return Sheet(reader_version="1", file=path.name, sha256="ab" * 32, part="AB75N40", polarity="N", pages=8, text_layer="good", readings=(READING,))


@pytest.mark.usefixtures("stub_reader")
@pytest.mark.parametrize(
    ("names", "code"),
    [(["good-a.pdf"], 0), (["good-a.pdf", "bad-c.pdf"], 1), (["bad-c.pdf"], 3), (["nowhere.pdf"], 2), ([], 2)],
)
def test_the_exit_code_says_how_much_was_read(run, pdfs, names, code):
    """0 all, 1 some refused, 2 wrong use, 3 none."""
    assert run("read", "--json", *(pdfs / name for name in names)).code == code


@pytest.mark.usefixtures("stub_reader")
def test_json_is_one_object_a_line_in_the_order_of_the_files(run, pdfs):
    """A script reads line by line; what was refused has its line too."""
    shown = run("read", "--json", pdfs / "inner" / "good-b.PDF", pdfs / "bad-c.pdf", pdfs / "good-a.pdf")

    assert [json.loads(line)["file"] for line in shown.out.splitlines()] == ["good-b.PDF", "bad-c.pdf", "good-a.pdf"]
    assert shown.err == ""


@pytest.mark.usefixtures("stub_reader")
def test_of_a_folder_every_pdf_is_read(run, pdfs):
    """A whole drawer of sheets goes in at once, whatever case their names end in."""
    shown = run("read", "--json", pdfs)

    assert [json.loads(line)["file"] for line in shown.out.splitlines()] == ["bad-c.pdf", "good-a.pdf", "good-b.PDF"]


@pytest.mark.usefixtures("stub_reader")
def test_a_folder_without_pdfs_is_wrong_use(run, tmp_path):
    """Nothing to read is said, not passed over."""
    (tmp_path / "empty").mkdir()
    ended = run("read", tmp_path / "empty")

    assert (ended.code, ended.err) == (2, "switchbank: No PDF lies in empty.\n")


@pytest.mark.usefixtures("stub_reader")
def test_a_device_is_no_file(run):
    """What never ends is not begun."""
    assert run("read", "/dev/zero").err == "switchbank: zero is neither a file nor a folder.\n"


@pytest.mark.usefixtures("stub_reader")
def test_for_people_each_value_is_a_line(run, pdfs):
    """What, how much, for what, on which page, and why to look at it; a refusal in a sentence."""
    shown = run("read", pdfs / "good-a.pdf", pdfs / "bad-c.pdf")

    assert shown.out == (
        "good-a.pdf: AB75N40, N channel; 8 pages\n"
        "  rds_on  max  4.0 mΩ  vgs 10 V  p. 2  look at it: the column is in doubt\n"
        "\n"
        "bad-c.pdf: refused (not a datasheet). No rating table in 12 pages. It seems to be: application note.\n"
        "\n"
    )


@pytest.mark.usefixtures("stub_reader")
def test_timings_stay_out_of_the_output(run, pdfs):
    """How long it took goes to standard error; standard output stays the same bytes."""
    plain, timed = run("read", "--json", pdfs), run("read", "--json", "--timings", pdfs)

    assert timed.out == plain.out
    assert timed.err.startswith("3 files in ")


def test_how_to_read_is_handed_on(run, pdfs, stub_reader):
    """Workers, keeping and the data folder reach the reader."""
    run("read", "--workers", 2, "--keep", "--data-dir", pdfs, pdfs / "good-a.pdf")

    assert stub_reader == [{"workers": 2, "keep": True, "data_dir": pdfs}]

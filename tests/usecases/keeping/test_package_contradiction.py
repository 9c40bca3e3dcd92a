"""What was seen on the board against what the sheet prints."""

import pytest

from service.usecases.package_contradiction import outline_of, package_contradiction


@pytest.mark.parametrize(
    ("seen", "pins", "printed"),
    [
        ("TO-263", 3, "D2PAK (TO-263AB)"),
        ("D²PAK", 2, "TO263-3"),
        ("TO-263", 7, "TO-263-7L"),
        ("SOT-23", 3, "SOT23"),
        ("SOIC-8", 8, "SO-8"),
        ("DFN5x6", 8, "PDFN 5×6-8L"),
        ("TO-220", 3, "TO-220AB"),
        ("TO-263", 3, None),
        (None, None, "TO-220"),
        ("some odd thing", 5, "PG-HSOF-8-1"),
        (None, 5, "something new"),
    ],
)
def test_what_fits_or_is_unknown_is_no_contradiction(seen: str | None, pins: int | None, printed: str | None) -> None:
    """Other names of one outline, other ways of counting; and silence where we know too little."""
    assert package_contradiction(seen_package=seen, seen_pins=pins, sheet_package=printed) is None


@pytest.mark.parametrize(
    ("seen", "pins", "printed", "said"),
    [
        ("TO-220", 3, "TO-263", "the board carries TO-220, the sheet is of TO-263"),
        ("DPAK", None, "D2PAK", "the board carries DPAK, the sheet is of D2PAK"),
        ("TO-263-7", 7, "TO-263", "the board carries TO-263-7, the sheet is of TO-263"),
        ("SO-8", 8, "DFN5x6", "the board carries SO-8"),
        (None, 7, "TO-263", "7 pins were counted, a part in TO-263 has 2, 3, 4"),
        ("TO-263", 3, "TO-263-7", "the board carries TO-263, the sheet is of TO-263-7"),
        (None, 3, "SO-8", "3 pins were counted"),
    ],
)
def test_what_does_not_fit_is_said_in_one_sentence(seen: str | None, pins: int | None, printed: str, said: str) -> None:
    """Which of both is wrong is for the person to find out."""
    assert package_contradiction(seen_package=seen, seen_pins=pins, sheet_package=printed).startswith(said)


@pytest.mark.parametrize(
    ("package", "name"),
    [
        ("TO-252-2L", "TO-252"),
        ("DPAK", "TO-252"),
        ("I2PAK", "TO-262"),
        ("IPAK", "TO-251"),
        ("TSOP-6", "SOT-23-6"),
        ("SOT-23-6", "SOT-23-6"),
        ("TO-236AB", "SOT-23"),
    ],
)
def test_everyday_names_mean_their_outline(package: str, name: str) -> None:
    """Trade names beside the outline's number."""
    assert outline_of(package).name == name

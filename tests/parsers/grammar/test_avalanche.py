"""What an avalanche energy was tested with, as rows and footnotes print it."""

import pytest

from parsers.grammar.avalanche import avalanche_test_in, tells_of_test
from service.facts.reading import Conditions


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Starting TJ = 25°C, L = 0.12mH RG = 25Ω, IAS = 95A. (See Figure 12)", Conditions(id=95.0, tj=25.0, note="L = 0.12 mH")),
        ("V DD = 50V, starting T J = 25 o C, L = 7.9mH, R G = 25Ω, peak I AS = 14A.", Conditions(id=14.0, vds=50.0, tj=25.0, note="L = 7.9 mH")),
        ("VDD = - 25 V, starting TJ = 25 °C, L = 440 µH, Rg = 25 Ω, IAS = - 19 A", Conditions(id=-19.0, vds=-25.0, tj=25.0, note="L = 440 uH")),
        ("EAS condition\uff1aTj=25℃,VDD=30V,VG=10V,L=0.5mH,Rg=25Ω", Conditions(vds=30.0, tj=25.0, note="L = 0.5 mH")),
        ("ID = 30 A; Tj(init) = 25 °C; unclamped", Conditions(id=30.0, tj=25.0)),
        ("This is a typical value at device destruction", Conditions(note="at device destruction")),
        ("pulse width limited by TJ(MAX)=150°C", Conditions()),
    ],
)
def test_a_test_is_read_as_sheets_print_it(text, said):
    """Current, supply, start and coil, each where it is printed."""
    assert avalanche_test_in(text) == said


@pytest.mark.parametrize(
    ("text", "tells"),
    [
        ("Starting TJ = 25°C, RG = 25Ω", True),
        ("L = 0.1 mH", True),
        ("Repetitive rating; pulse width limited by max. junction temperature", False),
        ("VDS = VGS, ID = 250µA", False),
    ],
)
def test_a_footnote_tells_of_a_test_by_its_coil_or_its_start(text, tells):
    """A drain current alone is any row's condition."""
    assert tells_of_test(text) is tells

"""The grammar of a quantity: what people write is understood, and what nobody means is refused."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.formats import dimensions as d
from service.formats.errors import UnitError
from service.formats.quantity import read_amount, read_number, split_duration


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("80 A", d.CURRENT, 80.0),
        ("80A", d.CURRENT, 80.0),
        ("0.1 kA", d.CURRENT, 100.0),
        ("3.2 mohm", d.RESISTANCE, 0.0032),
        ("3.2 m\u2126", d.RESISTANCE, 0.0032),
        ("3.2 m\u03a9", d.RESISTANCE, 0.0032),
        ("250 us", d.TIME, 0.00025),
        ("250 \u00b5s", d.TIME, 0.00025),
        ("250 \u03bcs", d.TIME, 0.00025),
        ("-40 \u00b0C", d.TEMPERATURE, -40.0),
        ("\u221240 \u2103", d.TEMPERATURE, -40.0),
        ("40 \u00baC", d.TEMPERATURE, 40.0),
        ("0.75 \u00b0C/W", d.THERMAL_RESISTANCE, 0.75),
        ("25 mm\u00b2", d.AREA, 25.0),
        ("1.2 uH", d.INDUCTANCE, 1.2e-6),
        ("55 J/K", d.HEAT_CAPACITY, 55.0),
        (".5 m", d.LENGTH, 0.5),
    ],
)
def test_what_people_write_is_understood(text, dimension, value):
    """Every spelling of a unit that datasheets and people use gives the house unit, to the last digit."""
    assert read_number(text, dimension=dimension) == value


@pytest.mark.parametrize(
    "text",
    [
        "80", "A", "", "80 V", "80 MA", "1e400 A", "1e3 A", "inf A", "nan A", "-inf A", "9**9**9", "2**3 A", "1/0 A", "0x10 A", "1_000 A",
        "8,0 A", "1.2.3 A", "80 A A", "\u0668\u0660 A", "\uff18\uff10 A", "8\u00b2 A", "80 A; rm", "9" * 16 + " A", "9" * 90, "80 A\x00",
        80, 80.0, True, None, ["80 A"], {"a": 1},
    ],
)  # fmt: skip
def test_what_is_no_plain_quantity_is_refused(text):
    """Bare numbers, other units, powers, infinities and digits of other scripts never pass."""
    with pytest.raises(UnitError):
        read_number(text, "claim.continuous", dimension=d.CURRENT)


def test_an_error_names_key_value_and_what_is_allowed():
    """A reader can mend the line from the message alone."""
    with pytest.raises(UnitError) as caught:
        read_number("80", "claim.continuous", dimension=d.CURRENT)

    assert str(caught.value) == "claim.continuous = '80': a bare number; write its unit, as in '80 A'; allowed: current in A, mA, uA, kA"
    assert (caught.value.key, caught.value.value, caught.value.allowed) == ("claim.continuous", "80", "current in A, mA, uA, kA")


def test_a_band_has_two_ends_and_a_centre():
    """Forty to sixty is fifty, give or take."""
    band = read_amount("40 K/W to 60 K/W", dimension=d.THERMAL_RESISTANCE)

    assert (band.low, band.high, band.centre) == (40.0, 60.0, 50.0)


@pytest.mark.parametrize("text", ["60 K/W to 40 K/W", "40 to 60 K/W", "40 K/W to", "1 K/W to 2 K/W to 3 K/W"])
def test_a_band_without_two_rising_ends_is_refused(text):
    """Each end of a band carries its unit, and the first is the lower one."""
    with pytest.raises(UnitError):
        read_amount(text, dimension=d.THERMAL_RESISTANCE)


def test_a_surge_is_a_current_for_a_time():
    """The duration is split off; without one nothing is made up."""
    assert split_duration("160 A for 10 s") == ("160 A", "10 s")
    assert split_duration("160 A") == ("160 A", None)


@given(whole=st.integers(0, 10**9), fraction=st.integers(0, 999))
def test_any_plain_number_comes_through_to_the_last_digit(whole, fraction):
    """What is written with a prefix is the same number as without."""
    milliohm = f"{whole}.{fraction:03d}"

    assert read_number(f"{milliohm} mohm", dimension=d.RESISTANCE) == float(f"{milliohm}e-3")


@given(text=st.text(max_size=100))
def test_no_text_does_anything_but_pass_or_be_refused(text):
    """Text from outside gives a finite number or the one error, whatever it is."""
    with suppress(UnitError):
        assert abs(read_number(text, dimension=d.CURRENT)) < 1e18

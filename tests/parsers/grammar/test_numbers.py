"""Numbers by a fixed grammar, never by ``float`` on raw text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parsers.grammar.number import is_placeholder, number_at, numbers_in


@pytest.mark.parametrize(
    ("text", "value", "sign"),
    [
        ("30", 30.0, None),
        (".5", 0.5, None),
        ("0.0072", 0.0072, None),
        ("0,0085", 0.0085, None),
        ("2,5", 2.5, None),
        ("1,300", 1300.0, None),
        ("12,100.5", 12100.5, None),
        ("-30", -30.0, None),
        ("\u221230", -30.0, None),
        ("\u2013 55", -55.0, None),
        ("±20", 20.0, "+-"),
        ("+/-20", 20.0, "+-"),
        ("0. 28", 0.28, None),
    ],
)
def test_a_printed_number_reads_as_printed(text, value, sign):
    """Minus signs of four kinds, commas of two, a fraction set apart."""
    (number,) = numbers_in(text)

    assert number.value == pytest.approx(value)
    assert number.sign == sign


@pytest.mark.parametrize("text", ["1e999", "1_000", "inf", "nan", "\uff11\uff12", "Q1", "IRF540"])
def test_what_python_takes_for_a_number_is_none_here(text):
    """Exponents, underscores, words, full-width digits, digits of a name."""
    assert [number.printed for number in numbers_in(text)] in ([], ["1"])


@given(whole=st.integers(0, 999_999), fraction=st.text("0123456789", min_size=1, max_size=6))
def test_any_plain_decimal_reads_as_python_reads_it(whole, fraction):
    """Python's own reader of the same digits is the reference."""
    text = f"{whole}.{fraction}"
    number = number_at(text)

    assert number is not None
    assert number.value == pytest.approx(float(text))
    assert number.printed == text


@pytest.mark.parametrize("text", ["-", "–––", "—", "--", "", "…", "_"])
def test_a_dash_is_no_value(text):
    """A cell of dashes says that nothing is given."""
    assert is_placeholder(text)

"""A sheet as text for people: one line a value, with its page and whether it may be used."""

from service.cli.writing import columns
from service.facts.reading import Reading, Sheet
from service.formats.conditions import NUMBERS, conditions_json

UNITS = {"degC": "\N{DEGREE SIGN}C", "ohm": "\N{GREEK CAPITAL LETTER OMEGA}", "mohm": "m\N{GREEK CAPITAL LETTER OMEGA}"}


def sheet_text(sheet: Sheet) -> str:
    """Write what was read from one file.

    Args:
        sheet: As read.

    Returns:
        A heading and one line a value; or why nothing could be read.
    """
    if sheet.refused is not None:
        return refusal_text(sheet)
    facts = (sheet.part, sheet.manufacturer, sheet.polarity and f"{sheet.polarity} channel", sheet.package, sheet.revision)
    pages = "1 page" if sheet.pages == 1 else f"{sheet.pages} pages"
    heading = f"{sheet.file}: {', '.join(fact for fact in facts if fact) or 'no part number found'}; {pages}"
    layer = "" if sheet.text_layer == "good" else f", text layer {sheet.text_layer}"
    unread = f"  {len(sheet.unaccounted)} table rows were not understood." if sheet.unaccounted else ""
    flags = f"  Odd: {', '.join(sheet.flags)}." if sheet.flags else ""
    table = columns([_line(reading) for reading in sheet.readings]) if sheet.readings else "  nothing read"
    return "\n".join(line for line in (heading + layer, table, unread, flags) if line)


def refusal_text(sheet: Sheet) -> str:
    """Why a file could not be read; empty where it could."""
    refused = sheet.refused
    if refused is None:
        return ""
    seems = f" It seems to be: {refused.seems_to_be.replace('_', ' ')}." if refused.seems_to_be else ""
    return f"{sheet.file}: refused ({refused.kind.replace('_', ' ')}). {refused.detail}{seems}"


def reading_text(reading: Reading) -> str:
    """One value on a line of its own, without the doubts about it."""
    *said, _ = _line(reading)
    return ", ".join(cell for cell in said if cell)


def _line(reading: Reading) -> tuple[str, ...]:
    """One value: what, which end, how much, for what, where, and why it has to be looked at."""
    unit = UNITS.get(reading.unit, reading.unit)
    cond = ", ".join(_condition(name, value) for name, value in conditions_json(reading.cond).items())
    doubt = "" if reading.status.value == "accepted" else f"look at it: {reading.why}"
    return (reading.key, reading.limit.value, f"{reading.printed} {unit}", cond, f"p. {reading.page}", doubt)


def _condition(name: str, value: float | str) -> str:
    """One condition as a sheet would print it."""
    if name not in NUMBERS or isinstance(value, str):
        return str(value)
    house = NUMBERS[name].house
    if house == "A" and 0 < abs(value) < 0.1:
        value, house = (1e3 * value, "mA") if abs(value) >= 1e-3 else (1e6 * value, "\N{GREEK SMALL LETTER MU}A")
    return f"{name} {value:g} {UNITS.get(house, house)}"

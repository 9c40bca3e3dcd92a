"""How a value was read, as text for people: `switchbank read --explain KEY`."""

import difflib
import re

import rich_click as click

from service.cli.sheet_text import reading_text, refusal_text
from service.cli.writing import columns
from service.facts.parameter import PARAMETERS
from service.facts.reading import Reading, Sheet
from service.usecases.explain_reading import explain_reading


def asked_key(_ctx: click.Context, _param: click.Parameter, asked: str | None) -> str | None:
    """The key that a person asks for by its name, its letter symbol or its words.

    Raises:
        BadParameter: No parameter is called so; the nearest one is named.
    """
    if asked is None:
        return None
    names = {_plain(name): one.key for one in PARAMETERS.values() for name in (one.symbol, one.words, one.key)}
    if _plain(asked) in names:
        return names[_plain(asked)]
    near = difflib.get_close_matches(_plain(asked), names, n=1)
    hint = f"did you mean {names[near[0]]}?" if near else f"choose one of {', '.join(PARAMETERS)}."
    raise click.BadParameter(f"{asked!r} is no parameter of a datasheet; {hint}")


def explained_text(sheet: Sheet, key: str) -> str:
    """Explain every value of one parameter of a sheet.

    Args:
        sheet: As read.
        key: As in a reading.

    Returns:
        One block a value; or why there is none.
    """
    if sheet.refused is not None:
        return refusal_text(sheet)
    blocks = [_block(reading) for reading in sheet.readings if reading.key == key]
    return "\n\n".join([f"{sheet.file}: {PARAMETERS[key].words} ({key})", *(blocks or [_none(sheet)])])


def _block(reading: Reading) -> str:
    """One value: what it is, the stages, the evidence, the status."""
    said = explain_reading(reading)
    steps = columns([(step.stage, step.found) for step in said.steps], indent="    ")
    grounds = "\n".join(f"    {'+' if ground.given else '-'} {ground.words}" for ground in said.grounds)
    odd = "".join(f"\n    ! {oddity}" for oddity in said.oddities)
    return f"  {reading_text(reading)}\n{steps}\n{grounds}{odd}\n    {said.verdict}"


def _none(sheet: Sheet) -> str:
    rows = f" {len(sheet.unaccounted)} table rows were not understood; it may stand in one of them." if sheet.unaccounted else ""
    return f"  No such value was read.{rows}"


def _plain(text: str) -> str:
    return re.sub(r"[^a-z0-9]", "", text.lower())

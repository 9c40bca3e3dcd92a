"""Edit a saved board through a form that has fewer fields than the board file has keys: what the form does not ask stays."""

import json
from collections.abc import Collection, Mapping
from typing import Any

from service.usecases.ports import Store
from service.usecases.see_board import see_board

Document = Mapping[str, Any]
# A table of these with its required keys gone is no table; what the form does not ask of it goes with it.
WHOLE = ("charge_bank", "leads")


def edited(slug: str, document: Document, *, asked: Collection[str], store: Store) -> dict[str, Any]:
    """The board document that a filled-in form stands for.

    Args:
        slug: The saved board.
        document: What the form says.
        asked: Keys that the form has a field for: ``cooling.ambient``.
        store: Where boards are kept.

    Returns:
        What the form says; facts that it shows by their value alone keep their history, and keys that it does not ask keep theirs.

    Raises:
        UnknownBoardError: There is no such board.
    """
    before = json.loads(see_board(store, slug=slug).kept.document)
    return merged(before, document, asked=asked)


def merged(before: Document, document: Document, *, asked: Collection[str]) -> dict[str, Any]:
    """Lay what a form says over the document before it.

    Args:
        before: As saved.
        document: What the form says.
        asked: Keys that the form has a field for.

    Returns:
        The new document.
    """
    result = {name: dict(table) if isinstance(table, Mapping) else table for name, table in document.items()}
    for name, table in before.items():
        if not isinstance(table, Mapping) or name == "typed":
            result.setdefault(name, table)
            continue
        said = document.get(name, {})
        kept = {key: _kept(old, said.get(key), asked=f"{name}.{key}" in asked) for key, old in table.items()}
        if _still_there(name, table, said):
            result[name] = {**result.get(name, {}), **{key: value for key, value in kept.items() if value is not None}}
    return {name: table for name, table in result.items() if table != {}}


def _kept(old: object, new: object, *, asked: bool) -> object:
    """What stays of a value: all of it where nobody asked, its history where the form shows the same value; else nothing."""
    if not asked:
        return old
    return old if isinstance(old, Mapping) and str(old.get("value")) == new else None


def _still_there(name: str, table: Mapping[str, Any], said: Mapping[str, Any]) -> bool:
    """Whether what was said of a table still belongs to it: a bank with another part is another bank."""
    if name in WHOLE and not said:
        return False
    return "part" not in said or said["part"] == table.get("part")

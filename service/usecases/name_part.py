"""Give a part another name: a top marking or an ordering code."""

from service.facts.change import Change
from service.facts.part import LONGEST_MARKING, NameKind, Part, PartName, part_key
from service.usecases.ports import MarkingReader, Store


class UnknownPartNameError(LookupError):
    """No part goes by the name given."""


class NoNameError(ValueError):
    """A name without a letter or digit, with one in doubt, or too long for any package."""


def name_part(marking: str, *, name: str, kind: NameKind, store: Store, markings: MarkingReader, change: Change) -> Part:
    """Add a name to a part; several parts may share a top marking. A name that waited for a sheet waits no longer if the part has one.

    Args:
        marking: A name that the part goes by already.
        name: The new one, as printed.
        kind: What it is.
        store: Where parts are kept.
        markings: Folds the name.
        change: Who says so, when and why.

    Returns:
        The part under all its names.

    Raises:
        UnknownPartNameError: No part goes by the marking.
        NoNameError: The name has neither letter nor digit, a character in doubt, or is too long.
    """
    if not part_key(name) or "?" in name or len(name) > LONGEST_MARKING:
        raise NoNameError(
            f"{name[:LONGEST_MARKING]!r} is no name: it needs letters or digits, each of them certain, {LONGEST_MARKING} characters at most"
        )
    with store.changing() as shelf:
        part = shelf.parts.find(marking)
        if part is None:
            raise UnknownPartNameError(f"no part goes by {marking!r}")
        shelf.parts.name(PartName(part=part.key, text=name.strip(), kind=kind, fold=markings.fold(name), change=change))
        if part.sheets:
            shelf.wanted.drop(name)
        return shelf.parts.find(part.key) or part

"""Say which part a datasheet is of, where its own words do not."""

from service.facts.change import Change
from service.facts.part import NameKind, Part, PartName, part_key
from service.usecases.name_part import NoNameError
from service.usecases.ports import MarkingReader, Store


def link_sheet(sha256: str, *, marking: str, store: Store, markings: MarkingReader, change: Change) -> Part:
    """Make a kept file a datasheet of a part, known or new.

    Args:
        sha256: The file.
        marking: The part's number or marking, each character certain.
        store: Where both are kept.
        markings: Folds the name.
        change: Who says so, when and why.

    Returns:
        The part.

    Raises:
        NoNameError: The marking has neither letter nor digit, or a character in doubt.
    """
    key = part_key(marking)
    if not key or "?" in marking:
        raise NoNameError(f"{marking!r} is no part number: it needs letters or digits, each of them certain")
    with store.changing() as shelf:
        known = shelf.parts.find(marking)
        part = known or Part(key=key, marking=marking.strip())
        if known is None:
            shelf.parts.add(part)
            name = PartName(part=key, text=marking.strip(), kind=NameKind.PART_NUMBER, fold=markings.fold(marking), change=change)
            shelf.parts.name(name)
        shelf.parts.link(part.key, sha256)
        shelf.wanted.drop(marking)
        return shelf.parts.find(part.key) or part

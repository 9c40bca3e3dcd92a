"""Type the numbers of a part without a datasheet; the part goes on waiting for one."""

import math
from dataclasses import replace

from service.facts.change import Change
from service.facts.part import LONGEST_MARKING, NameKind, Part, PartName, TypedPart, Wanted, part_key, wanted_key
from service.facts.result import InputKind
from service.facts.switch import Switch
from service.usecases.out_of_date import mark_users
from service.usecases.ports import MarkingReader, Store
from service.usecases.wait_for_sheet import search_phrase


class CannotTypeError(ValueError):
    """What was typed describes no part."""


def type_part(switch: Switch, *, store: Store, markings: MarkingReader, change: Change) -> Part:
    """Keep a part as a person typed it; a result of it stays provisional, and results of an earlier typing are out of date.

    Args:
        switch: The figures under the marking that the part goes by.
        store: Where parts are kept.
        markings: Folds the name.
        change: Who typed it, when and why.

    Returns:
        The part.

    Raises:
        CannotTypeError: No marking, a character in doubt in it, no figures, or a figure that is not finite.
    """
    key = part_key(switch.marking)
    if not key or "?" in switch.marking or len(switch.marking) > LONGEST_MARKING:
        raise CannotTypeError(
            f"{switch.marking[:LONGEST_MARKING]!r} is no marking: it needs letters or digits, each of them certain, "
            f"{LONGEST_MARKING} characters at most"
        )
    if not switch.values or not all(math.isfinite(value.sourced.value) for value in switch.values):
        raise CannotTypeError(f"{switch.marking}: type at least one figure, and plain numbers only")
    with store.changing() as shelf:
        shelf.parts.add(Part(key=key, marking=switch.marking))
        known = shelf.parts.find(key) or Part(key=key, marking=switch.marking)
        version = 1 if known.typed is None else known.typed.version + 1
        if known.typed is not None and known.typed.switch == replace(switch, typed=True):
            return known
        shelf.parts.name(PartName(part=key, text=switch.marking, kind=NameKind.PART_NUMBER, fold=markings.fold(switch.marking), change=change))
        shelf.parts.type_in(TypedPart(part=key, version=version, switch=replace(switch, typed=True), change=change))
        mark_users(
            shelf,
            kind=InputKind.TYPED_PART,
            input_id=key,
            version=version,
            reason=lambda _version: f"{switch.marking} was typed anew: {change.why}",
            change=change,
        )
        if not known.sheets and wanted_key(switch.marking) not in {wanted_key(wanted.marking) for wanted in shelf.wanted.listed()}:
            phrase = search_phrase(switch.marking, markings=markings, package=switch.package or "")
            shelf.wanted.add(Wanted(marking=switch.marking, package=switch.package or "", pins=None, phrase=phrase, change=change))
        return shelf.parts.find(key) or known

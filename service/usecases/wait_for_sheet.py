"""Put a part on the list of those that wait for a datasheet, with a phrase to search for; nothing leaves the machine."""

from dataclasses import dataclass

from service.facts.change import Change
from service.facts.part import LONGEST_MARKING, Part, Wanted, wanted_key
from service.usecases.look_up_marking import look_up_marking
from service.usecases.ports import MarkingReader, Store

MOST_READINGS = 4
MOST_CAME = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """A line of the list, with what may have ended the wait.

    Attributes:
        wanted: The line.
        came: Parts with a sheet that the marking may stand for, the likeliest first: a person says whether one is meant.
    """

    wanted: Wanted
    came: tuple[Part, ...]


class NoMarkingError(ValueError):
    """A marking without one certain character, or too long for any package."""


def wait_for_sheet(marking: str, *, store: Store, markings: MarkingReader, change: Change, package: str = "", pins: int | None = None) -> Wanted:
    """Put a marking on the list, once, as last seen.

    Args:
        marking: As read off the board, ``?`` for a character in doubt.
        store: Where the list is kept.
        markings: Spells the likely readings out.
        change: Who saw it, when and why.
        package: As seen, empty where nobody said.
        pins: As counted.

    Returns:
        The line of the list.

    Raises:
        NoMarkingError: The marking has no certain letter or digit, or is too long.
    """
    if not wanted_key(marking).replace("?", "") or len(marking) > LONGEST_MARKING:
        raise NoMarkingError(
            f"{marking[:LONGEST_MARKING]!r} is no marking: type the letters and digits that can be read, with ? for the rest, "
            f"{LONGEST_MARKING} characters at most"
        )
    phrase = search_phrase(marking, markings=markings, package=package, pins=pins)
    wanted = Wanted(marking=marking.strip(), package=package.strip(), pins=pins, phrase=phrase, change=change)
    with store.changing() as shelf:
        shelf.wanted.add(wanted)
    return wanted


def see_waiting(*, store: Store, markings: MarkingReader) -> tuple[Waiting, ...]:
    """List what waits, and for each line the sheets that have come since and may be the one.

    Args:
        store: Where the list is kept.
        markings: Knows the confusions of eye and OCR.

    Returns:
        Every line of the list.
    """
    with store.looking() as shelf:
        listed = shelf.wanted.listed()
    return tuple(Waiting(wanted=wanted, came=_came(wanted.marking, store, markings)) for wanted in listed)


def _came(marking: str, store: Store, markings: MarkingReader) -> tuple[Part, ...]:
    """Parts with a sheet that a marking may stand for."""
    found = (candidate.part for candidate in look_up_marking(marking, store=store, markings=markings))
    return tuple(part for part in found if part.sheets)[:MOST_CAME]


def stop_waiting(marking: str, *, store: Store) -> None:
    """Take a marking off the list: its sheet came under another name, or nobody wants it any more.

    Args:
        marking: As it stands on the list; nothing happens where it does not.
        store: Where the list is kept.
    """
    with store.changing() as shelf:
        shelf.wanted.drop(marking)


def search_phrase(marking: str, *, markings: MarkingReader, package: str = "", pins: int | None = None) -> str:
    """Word a search for a datasheet, to copy: likely readings of the marking, the package, the pins.

    Args:
        marking: As read off the board; a character in doubt becomes ``*``.
        markings: Spells the likely readings out.
        package: As seen.
        pins: As counted.

    Returns:
        ``"AB75N40" OR "A875N40" TO-263 7-pin MOSFET datasheet`` and the like.
    """
    readings = " OR ".join(f'"{reading.replace("?", "*")}"' for reading in markings.likely(marking, most=MOST_READINGS))
    counted = f"{pins}-pin" if pins else ""
    return " ".join(text for text in (readings, package.strip(), counted, "MOSFET datasheet") if text)

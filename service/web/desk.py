"""What the pages work with; service/wiring/pages.py lays it out."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC
from typing import cast

from flask import current_app

from service.facts.change import Change
from service.usecases.ports import Clock, Cropper, MarkingReader, Store, Who

KEY = "switchbank"


@dataclass(frozen=True, slots=True, kw_only=True)
class Desk:
    """The parts behind the pages, by their ports.

    Attributes:
        store: Where things are kept.
        cropper: Renders places on a page, in a process of its own.
        markings: Knows the confusions of eye and OCR.
        clock: Says what time it is.
        who: Says who is asking.
        read_later: Hands a kept file to the reading that goes on behind the pages.
        example_data: Whether the data folder holds the invented example.
    """

    store: Store
    cropper: Cropper
    markings: MarkingReader
    clock: Clock
    who: Who
    read_later: Callable[[str], None]
    example_data: bool = False

    def change(self, why: str) -> Change:
        """An entry of the history: who asks now, and why."""
        return Change(by=self.who(), at=self.clock().astimezone(UTC).isoformat(timespec="seconds"), why=why)


def desk() -> Desk:
    """The desk of the application that answers this request."""
    return cast("Desk", current_app.extensions[KEY])

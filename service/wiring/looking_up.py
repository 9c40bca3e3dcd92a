"""Look a marking up among the parts that are kept."""

from pathlib import Path
from typing import TYPE_CHECKING

from service.wiring.ground import markings, store_to_look_at

if TYPE_CHECKING:
    from service.usecases.look_up_marking import Candidate


def lookup(marking: str, *, data_dir: Path | None) -> tuple["Candidate", ...]:
    """Find the kept parts that a marking may stand for, the likeliest first."""
    from service.usecases.look_up_marking import look_up_marking

    with store_to_look_at(data_dir) as store:
        return look_up_marking(marking, store=store, markings=markings())


def search_phrase(marking: str) -> str:
    """Word a search for the datasheet of a part that is not kept."""
    from service.usecases.wait_for_sheet import search_phrase

    return search_phrase(marking, markings=markings())

"""What becomes of kept readings when a reader reads their file again: identities follow the place, a person's word follows the figure."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import chain, count

from service.facts.change import Change
from service.facts.kept_reading import KeptReading, Standing
from service.facts.reading import Box, Reading, Sheet, Status
from service.usecases.append_readings import figure_in_words, same_figure

OVERLAP = 0.5
FROM_EVIDENCE = {Status.ACCEPTED: Standing.ACCEPTED, Status.REVIEW: Standing.REVIEW}


def follow_readings(kept: Sequence[KeptReading], sheet: Sheet, change: Change) -> tuple[KeptReading, ...]:
    """Decide what a sheet, newly read, adds to what is kept of its file.

    Args:
        kept: The entries that stand.
        sheet: What the reader sees now; a refused sheet adds nothing and takes nothing away.
        change: Who had it read, when and why.

    Returns:
        The entries to append: one for each place that says something new. A person's word stays where the figure stayed; a changed
        figure goes back to review; what a reader no longer finds waits for review, unless a person has settled it.
    """
    if sheet.refused is not None:
        return ()
    fresh = told_apart(sheet.readings)
    pairs = match(kept, fresh)
    followed = [_follow(entry, pairs.get(entry.id), sheet, change) for entry in kept]
    new = told_apart([reading for reading in fresh if reading not in pairs.values()], taken=frozenset(entry.id for entry in kept))
    return (*(entry for entry in followed if entry is not None), *(_first(reading, sheet, change) for reading in new))


def told_apart(readings: Sequence[Reading], *, taken: frozenset[str] = frozenset()) -> tuple[Reading, ...]:
    """Give every reading an id of its own: one printed number may speak of two channels, and then stands for two readings.

    Args:
        readings: What a reader sees.
        taken: Ids that belong to other readings.

    Returns:
        The readings; of several with one id, and of one whose id is taken, the later ones with a number behind it.
    """
    ids = set(taken)
    apart = []
    for reading in readings:
        names = chain((reading.id,), (f"{reading.id}~{number}" for number in count(2)))
        own = next(name for name in names if name not in ids)
        ids.add(own)
        apart.append(replace(reading, id=own))
    return tuple(apart)


def match(kept: Sequence[KeptReading], fresh: Sequence[Reading]) -> dict[str, Reading]:
    """Find for each kept reading the one that stands at its place now: same key and limit, same page, boxes that overlap by half.

    Args:
        kept: The entries that stand.
        fresh: What a reader sees now.

    Returns:
        By identity; each fresh reading once, the best fitting pairs first.
    """
    fits = [(_fit(entry, reading), entry.id, reading) for entry in kept for reading in fresh if _may_be(entry, reading)]
    pairs: dict[str, Reading] = {}
    for _how_well, identity, reading in sorted(fits, key=lambda fit: fit[0], reverse=True):
        if identity not in pairs and reading.id not in {taken.id for taken in pairs.values()}:
            pairs[identity] = reading
    return pairs


def overlap(one: Box, other: Box) -> float:
    """How much of the smaller of two boxes lies in the other, 0 to 1."""
    width = min(one[2], other[2]) - max(one[0], other[0])
    height = min(one[3], other[3]) - max(one[1], other[1])
    smaller = min((box[2] - box[0]) * (box[3] - box[1]) for box in (one, other))
    return 0.0 if width <= 0 or height <= 0 or smaller <= 0 else width * height / smaller


def _may_be(entry: KeptReading, now: Reading) -> bool:
    """Whether a reading can be of the place of an entry."""
    before = entry.as_read
    same_kind = (before.key, before.limit, before.page) == (now.key, now.limit, now.page)
    return same_kind and (now.id in {entry.id, before.id} or overlap(before.bbox, now.bbox) >= OVERLAP)


def _fit(entry: KeptReading, now: Reading) -> tuple[bool, bool, bool, float]:
    """How well a reading fits an entry: the same channel, the same id, the same figure, then the boxes."""
    before = entry.as_read
    same_channel = (before.cond.ch, before.cond.part) == (now.cond.ch, now.cond.part)
    return same_channel, before.id == now.id, same_figure(before, now), overlap(before.bbox, now.bbox)


def _first(reading: Reading, sheet: Sheet, change: Change) -> KeptReading:
    """The first entry of a place that nobody has read before."""
    return KeptReading(
        id=reading.id,
        version=1,
        sha256=sheet.sha256,
        reading=reading,
        as_read=reading,
        standing=FROM_EVIDENCE[reading.status],
        reader_version=sheet.reader_version,
        change=change,
    )


def _follow(before: KeptReading, fresh: Reading | None, sheet: Sheet, change: Change) -> KeptReading | None:
    """The next entry of a place; None where there is nothing to say."""
    if fresh is None:
        return _lost(before, sheet, change)
    if fresh == before.as_read and sheet.reader_version == before.reader_version:
        return None
    next_one = replace(_first(fresh, sheet, change), id=before.id, version=before.version + 1)
    if before.settled is None:
        return next_one
    if same_figure(fresh, before.reading):
        return replace(next_one, standing=before.standing, settled=before.settled)
    if same_figure(fresh, before.as_read):
        return replace(next_one, reading=_as_corrected(before.reading, fresh), standing=before.standing, settled=before.settled)
    why = f"{before.settled.by} had settled {figure_in_words(before.reading)}, reader {sheet.reader_version} reads {figure_in_words(fresh)}"
    return replace(next_one, standing=Standing.REVIEW, change=replace(change, why=why))


def _lost(before: KeptReading, sheet: Sheet, change: Change) -> KeptReading | None:
    """A place where a reader finds nothing: a person's word stays, the earlier reader's has to be looked at."""
    if before.settled is not None or sheet.reader_version == before.reader_version:
        return None
    why = f"reader {sheet.reader_version} no longer finds it"
    return replace(
        before,
        version=before.version + 1,
        standing=Standing.REVIEW,
        reader_version=sheet.reader_version,
        change=replace(change, why=why),
    )


def _as_corrected(corrected: Reading, fresh: Reading) -> Reading:
    """A person's figure at the place where the reader sees it now."""
    figure = {name: getattr(corrected, name) for name in ("limit", "value", "unit", "printed", "si", "cond")}
    return replace(fresh, **figure)

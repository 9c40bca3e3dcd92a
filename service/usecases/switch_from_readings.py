"""Turn what a datasheet prints into a switch to be judged: only what may be used, each value with its place, in magnitudes."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from service.facts.kept_reading import USABLE, KeptReading
from service.facts.part import part_key
from service.facts.reading import Conditions, Limit, Reading, Sheet, Status
from service.facts.source import Source
from service.facts.sourced import Known, Sourced
from service.facts.switch import RatedValue, Switch
from service.formats.keys import DIMENSIONS

# Beyond this a sheet contradicts itself, and its watts and thermal resistance wait for a person.
LARGEST_CONTRADICTION = 0.10
SIGNED = frozenset({"tj_max"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """A reading that a judgement may use.

    Attributes:
        id: Its identity, the stable one where it is kept.
        version: Version of the kept entry; 0 for one that is just read.
        sha256: The file that it stands in.
        reading: The value that stands.
        settled: Whether a person has seen it.
    """

    id: str
    version: int
    sha256: str
    reading: Reading
    settled: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Described:
    """What a switch is called, apart from its figures.

    Attributes:
        marking: The part.
        polarity: N, P, N+N, P+P or N+P.
        package: As printed.
    """

    marking: str
    polarity: str | None = None
    package: str | None = None


def offered_by_sheet(sheet: Sheet) -> tuple[Offered, ...]:
    """The accepted readings of a sheet that nobody has looked at yet."""
    accepted = (reading for reading in sheet.readings if reading.status is Status.ACCEPTED)
    return tuple(Offered(id=reading.id, version=0, sha256=sheet.sha256, reading=reading, settled=False) for reading in accepted)


def offered_by_store(entries: Iterable[KeptReading]) -> tuple[Offered, ...]:
    """The kept readings that may be used: accepted, confirmed or corrected."""
    return tuple(
        Offered(id=entry.id, version=entry.version, sha256=entry.sha256, reading=entry.reading, settled=entry.seen_by_a_person)
        for entry in entries
        if entry.standing in USABLE
    )


def switch_from_readings(offered: Iterable[Offered], *, described: Described, channel: str | None = None) -> Switch:
    """Make a switch of readings.

    Args:
        offered: Readings that may be used.
        described: The part's name, polarity and package.
        channel: Which switch of a part with several; of all of them the weaker one where nothing is said.

    Returns:
        The switch. Its ``look_at`` names every reading behind it that no person has settled, the withheld ones too:
        where power, thermal resistance and junction temperature contradict each other by more than a tenth, the first two wait
        for a person.
    """
    usable = tuple(one for one in offered if one.reading.key in DIMENSIONS)
    part = own_part(described.marking, (one.reading.cond.part for one in usable))
    fitting = tuple(one for one in usable if _is_of(one.reading.cond, part=part, channel=channel))
    withheld = contradicting(fitting)
    values = weaker_ones(tuple(_rated(one) for one in fitting if one.id not in withheld))
    behind = withheld | {value.sourced.source.reading for value in values if value.sourced.source}
    return Switch(
        marking=described.marking,
        polarity=described.polarity or "N",
        package=described.package,
        values=values,
        look_at=tuple(dict.fromkeys(one.id for one in fitting if one.id in behind and not one.settled)),
    )


def contradicting(offered: Iterable[Offered]) -> frozenset[str]:
    """Identities of the unsettled readings of power and thermal resistance that no pair of the sheet bears out.

    Source: PD(25) x RthJC = Tjmax - 25, the meaning of the printed watts (NXP AN11158 rev 4, section 2.4).
    """
    shown = tuple(offered)
    power = [one for one in shown if one.reading.key == "pd" and one.reading.cond.tc == 25 and one.reading.cond.t is None]
    resistance = [one for one in shown if one.reading.key == "rth_jc" and one.reading.limit is Limit.MAX]
    hottest = [one.reading.si for one in shown if one.reading.key == "tj_max"]
    gaps = [abs(abs(p.reading.si * r.reading.si) / (t - 25) - 1) for p in power for r in resistance for t in hottest if t > 25]
    if not gaps or min(gaps) <= LARGEST_CONTRADICTION:
        return frozenset()
    return frozenset(one.id for one in (*power, *resistance) if not one.settled)


def own_part(marking: str, named: Iterable[str | None]) -> str | None:
    """Which of the parts that a sheet tells apart is meant.

    Args:
        marking: The part that the board carries: ``AB75N40-TR``.
        named: Parts as the sheet's values name them; None for a value of all of them.

    Returns:
        The very part, else the longest one that the marking begins with (an ordering code adds to the part number), else None.
    """
    key = part_key(marking)
    begun = [name for name in dict.fromkeys(named) if name and key.startswith(part_key(name))]
    return max(begun, key=lambda name: len(part_key(name)), default=None)


def weaker_ones(values: tuple[RatedValue, ...]) -> tuple[RatedValue, ...]:
    """Of values that differ by nothing but their channel or part keep the one that is harder on the board.

    Args:
        values: Figures of every channel and part that may be meant.

    Returns:
        One figure a key, limit and condition, in the order given and no longer of one channel or part; those of all of them stay.
    """
    kept: dict[object, RatedValue] = {}
    for number, value in enumerate(values):
        bare = replace(value.cond, ch=None, part=None)
        place = number if bare == value.cond else (value.key, value.limit, bare)
        kept[place] = replace(_harder(kept.get(place, value), value), cond=bare)
    return tuple(kept.values())


def _harder(one: RatedValue, other: RatedValue) -> RatedValue:
    """The larger of what costs, the smaller of what is allowed."""
    costs = one.key in COSTS
    return max(one, other, key=lambda value: value.sourced.value if costs else -value.sourced.value)


COSTS = frozenset({"rds_on", "rth_jc", "rth_ja", "rth_cs", "rth_jl", "vsd", "qg", "ciss", "coss", "crss"})


def _is_of(cond: Conditions, *, part: str | None, channel: str | None) -> bool:
    """Whether a value of a sheet with several parts or channels speaks of the ones that are meant."""
    return (part is None or cond.part in (None, part)) and (channel is None or cond.ch in (None, channel))


def _rated(one: Offered) -> RatedValue:
    """A reading as a figure of the switch, with its place."""
    reading = one.reading
    source = Source(sha256=one.sha256, page=reading.page, bbox=reading.bbox, quote=reading.quote, reading=one.id)
    value = reading.si if reading.key in SIGNED else abs(reading.si)
    fact = Sourced(value=value, unit=DIMENSIONS[reading.key].house, known=Known.PRINTED, source=source)
    return RatedValue(key=reading.key, limit=reading.limit, sourced=fact, cond=_magnitudes(reading.cond))


def _magnitudes(cond: Conditions) -> Conditions:
    """Conditions without the signs of a P-channel part; temperatures keep theirs."""
    return replace(cond, **{name: abs(value) for name in ("vgs", "id", "is_", "vds") if (value := getattr(cond, name)) is not None})

"""A power switch as its datasheet, or a person, describes it."""

from dataclasses import dataclass, field

from service.facts.reading import Conditions, Limit
from service.facts.sourced import Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class RatedValue:
    """One figure of a switch. Magnitudes: a P-channel part's signs stay on its sheet.

    Attributes:
        key: What it is: vds_max, rds_on, pd, id_cont, rth_jc, tj_max and so on.
        limit: Whether it is the least, typical or largest value.
        sourced: The magnitude in base units with its place.
        cond: What it holds for.
    """

    key: str
    limit: Limit
    sourced: Sourced
    cond: Conditions = field(default_factory=Conditions)


@dataclass(frozen=True, slots=True, kw_only=True)
class Switch:
    """One part number's electrical and thermal figures.

    Attributes:
        marking: The part as named: a marking, a part number, or the name it was typed under.
        polarity: N, P, N+N, P+P or N+P.
        package: As printed or seen, if known.
        values: Every figure that is known.
        on_resistance_curve: RDS(on) over its 25 degC value, against junction temperature: (degC, ratio), rising in temperature.
        transient_points: Junction-case impedance of a single pulse: (s, K/W), rising in time.
        transient_foster: The same as Foster pairs: (K/W, s).
        typed: Whether a person typed it without a sheet; keeps a result provisional.
        look_at: Readings that are used here and that no person has confirmed yet, by id.
    """

    marking: str
    polarity: str = "N"
    package: str | None = None
    values: tuple[RatedValue, ...] = ()
    on_resistance_curve: tuple[tuple[float, float], ...] = ()
    transient_points: tuple[tuple[float, float], ...] = ()
    transient_foster: tuple[tuple[float, float], ...] = ()
    typed: bool = False
    look_at: tuple[str, ...] = ()

    def of(self, key: str, *limits: Limit) -> tuple[RatedValue, ...]:
        """Figures of one key, in the order given; of any limit unless some are named."""
        return tuple(v for v in self.values if v.key == key and (not limits or v.limit in limits))

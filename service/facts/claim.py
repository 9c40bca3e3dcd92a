"""What a seller says of a pack."""

from dataclasses import dataclass

from service.facts.sourced import Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """Claimed currents and stacking.

    Attributes:
        continuous_a: Discharge current for hours. [A]
        continuous_charge_a: Charge current for hours; taken as the discharge claim where nothing is said. [A]
        surge_a: Short current. [A]
        surge_s: How long the surge is claimed for. [s]
        packs_in_series: Packs that may be stacked.
    """

    continuous_a: Sourced
    continuous_charge_a: Sourced | None = None
    surge_a: Sourced | None = None
    surge_s: Sourced | None = None
    packs_in_series: int = 1

"""Invented switches whose ratings fit together as those of a real one do."""

from dataclasses import dataclass
from random import Random


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What is true of one switch (or of one channel of a dual one).

    Attributes:
        name: Part number.
        polarity: N or P.
        vds: Drain-source rating. [V]
        vgs: Gate-source rating. [V]
        gates: Gate voltages at which on-resistance is given, the highest first. [V]
        rds: Typical and largest on-resistance at each. [mohm]
        tj: Highest junction temperature. [degC]
        rth_jc: Typical and largest; None for a small part that is rated in free air. [K/W]
        rth_ja: For ten seconds and steady. [K/W]
    """

    name: str
    polarity: str
    vds: int
    vgs: int
    gates: tuple[float, ...]
    rds: tuple[tuple[float, float], ...]
    tj: int
    rth_jc: tuple[float, float] | None
    rth_ja: tuple[float, float]

    @property
    def spot(self) -> str:
        """The temperature that its ratings refer to: tc or ta."""
        return "ta" if self.rth_jc is None else "tc"

    def power(self, spot: str, celsius: float, *, short: bool = False) -> float:
        """Power that warms the junction to its limit [W]."""
        resistance = self.rth_jc[1] if spot == "tc" and self.rth_jc else self.rth_ja[0 if short else 1]
        return (self.tj - celsius) / resistance

    def current(self, spot: str, celsius: float, *, short: bool = False) -> float:
        """Current that makes this power in a warm switch [A]."""
        return (self.power(spot, celsius, short=short) / (self.rds[0][1] * 1.8e-3)) ** 0.5


def invented(rng: Random, *, polarity: str | None = None, small: bool | None = None, gates: tuple[float, ...] | None = None) -> Part:
    """Draw a part at random.

    Args:
        rng: Where chance comes from.
        polarity: N or P; at random where nothing is said.
        small: Whether it is rated in free air; at random where nothing is said.
        gates: Gate voltages at which on-resistance is given; at random where nothing is said.

    Returns:
        The part.
    """
    polarity = polarity or rng.choices("NP", (4, 1))[0]
    small = rng.random() < 0.3 if small is None else small
    vds = rng.choice((20, 30, 40, 60) if small else (30, 40, 55, 60, 75, 80, 100, 120, 150, 200, 600, 650))
    gates = gates or rng.choice(((4.5, 2.5), (10.0, 4.5), (4.5, 2.5, 1.8)) if small else ((10.0,), (10.0,), (10.0, 4.5), (10.0, 6.0)))
    best = 10 ** rng.uniform(1.0, 2.2) if small else 10 ** rng.uniform(0.1, 1.4) * (40 if vds > 300 else 1 + vds / 120)
    rds = []
    for at in range(len(gates)):
        most = best * (1 + 0.35 * at + 0.15 * at * at)
        rds.append((rounded(most * rng.uniform(0.75, 0.9)), rounded(most)))
    steady = rng.choice((62.5, 83.0, 100.0, 125.0)) if small else rng.choice((40.0, 50.0, 62.0, 62.5))
    worst = rounded(10 ** rng.uniform(-0.4, 0.4))
    name = f"{rng.choice(('QX', 'HNM', 'TRL', 'VKD', 'OSP', 'MUR'))}{rng.randint(3, 180)}{polarity}{vds // 10:02d}{rng.choice(('', 'T', 'K', 'D'))}"
    return Part(
        name=name,
        polarity=polarity,
        vds=vds,
        vgs=rng.choice((8, 12) if gates[0] < 5 else (20, 20, 25, 16)),
        gates=gates,
        rds=tuple(rds),
        tj=150 if small else rng.choice((150, 175)),
        rth_jc=None if small else (rounded(worst * 0.8), worst),
        rth_ja=(rounded(steady * 0.7), steady),
    )


def rounded(value: float, digits: int = 2) -> float:
    """A number to so many digits, as sheets give it."""
    return float(f"{value:.{digits}g}")

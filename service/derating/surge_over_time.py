"""The largest surge over its time, in both corners: for a picture."""

from service.derating.case import Case, Corner
from service.derating.figures import least_of
from service.derating.surging import surge_curve, surged_banks
from service.facts.drawn import Axis, Curve, Mark, Series

# Why so few: each is a search of its own, and between them the line is straight enough on logarithmic paper. [s]
TIMES_S = (0.1, 0.3, 1.0, 3.0, 10.0, 30.0, 100.0, 300.0, 1000.0)
# How long a surge is taken to last where none is claimed. [s]
ORDINARY_S = 10.0
NO_MASS = (
    "Nobody has said how much heat the board holds, so the worst case takes it to hold none: then a surge may be no larger than the "
    "current for hours, however short it is."
)


def surge_over_time(case: Case) -> Curve | None:
    """Draw the bank that bears the smaller surge for the claimed time, of those that a discharge surge passes.

    Args:
        case: The board under one rule set.

    Returns:
        Largest current over its time; None where a bank's heat has no bound.
    """
    claim = case.board.claim
    times_s = sorted({*TIMES_S, claim.surge_s.most}) if claim.surge_s else TIMES_S
    banks = surged_banks(case)[:1] if case.banks_alike else surged_banks(case)
    if any(case.lacks_conduction(bank) for bank in banks):
        return None
    seconds = claim.surge_s.most if claim.surge_s else ORDINARY_S
    bank = min(banks, key=lambda one: surge_curve(case, one, Corner.WORST, times_s=(seconds,))[0][1]) if len(banks) > 1 else banks[0]
    rated = least_of(bank.switch, "id_pulse")
    marks = []
    if claim.surge_a and claim.surge_s:
        marks.append(Mark(label="claimed", x=claim.surge_s.most, y=claim.surge_a.most))
    if rated:
        marks.append(Mark(label="pulsed current of the sheet, all switches", y=rated.value * bank.switches))
    return Curve(
        kind="surge_current_vs_time",
        bank=bank.name,
        x=Axis(quantity="time", unit="s", scale="log"),
        y=Axis(quantity="current", unit="A", scale="log"),
        series=tuple(
            Series(label="largest surge", corner=corner.value, points=surge_curve(case, bank, corner, times_s=times_s))
            for corner in (Corner.WORST, Corner.FAVOURABLE)
        ),
        marks=tuple(marks),
        note="" if case.board.cooling.board_heat_jpk else NO_MASS,
    )

"""The loop of a short circuit: its voltage, its resistance and its inductance, each with its ends.

Smallest resistances make the largest current, so they stand at the worst end: typical on-resistance at 25 degC and the cells'
alternating-current resistance. Inductance has no worse end: a small one lets the current rise faster, a large one stores more; all of
its band is searched.
"""

from service.derating.case import Case
from service.derating.figures import Ends, default, larger_is_worse, single, smaller_is_worse
from service.derating.formulas.conductor import outer_radius_m, rated_wire_resistance_ohm, wire_resistance_ohm
from service.derating.formulas.inductance import straight_wire_h, wire_pair_h
from service.derating.quantity import Point, Quantity, Wording
from service.facts.board import Leads
from service.facts.sourced import Known, Sourced

NOMINAL_CELL_V = 3.2
MOST_CELL_OHM, MOST_LEAD_OHM = 2e-3, 5e-3
# From a short bar to ten metres of cable; own estimate.
LEAST_LOOP_H, MOST_LOOP_H = 0.1e-6, 10e-6
# Bars and cells inside the pack; own estimate.
MOST_EXTRA_H = 1e-6
COPPER_MEASURED_AT_C = 20.0


def loop_quantities(case: Case) -> tuple[Quantity, ...]:
    """What only a short circuit asks of a board.

    Args:
        case: The board under one rule set.

    Returns:
        Cell voltage, cell and lead resistance; the loop's inductance is no quantity with a worse end and comes from ``inductance_h``.
    """
    cells = case.board.cells
    return (
        _quantity("fault_voltage", _cell_voltage(case), "each cell gives {value} or less into the fault", 0.5, 5.0),
        _quantity("cell_resistance", _cell_resistance(cells.resistance_ohm), "each cell has {value} or more", 0.0, 1.0),
        _quantity("lead_resistance", _lead_resistance(case.board.leads), "the leads have {value} or more", 0.0, 1.0),
    )


def supply_v(case: Case, point: Point) -> float:
    """Voltage of the whole string into a fault. [V]."""
    return case.board.claim.packs_in_series * case.board.cells.in_series * point["fault_voltage"]


def loop_ohm(case: Case, point: Point) -> float:
    """Resistance of the whole loop at the fault's start. [ohm]."""
    board, bank = case.board, case.discharge
    pack = board.cells.in_series * point["cell_resistance"]
    # Why the favourable end of these: typical on-resistance and the least shunt make the largest current.
    for item in case.conducting(bank):
        pack += case.quantities[item.prefix + "on_resistance"].favourable / item.switches
    for name in ("shunt_resistance", "joints"):
        # Why asked of the point as well: so that the finding shows it among its inputs.
        pack += 0.0 if point.get(name) is None else case.quantities[name].favourable
    return board.claim.packs_in_series * pack + point["lead_resistance"]


def inductance_h(case: Case) -> Sourced:
    """Inductance of the whole loop, stated or from its leads, with its band. [H].

    Args:
        case: The board under one rule set.

    Returns:
        Stated where it is; else the leads' geometry with something for bars and cells; else from a short bar to metres of cable.
    """
    fault = case.board.fault
    extra = fault.extra_inductance_h
    if fault.loop_inductance_h is not None:
        return _plus(fault.loop_inductance_h, extra)
    leads = _lead_inductance(case.board.leads)
    if leads is None:
        name = "from a short bar to ten metres of cable; own estimate"
        return default(1e-6, "H", name, low=LEAST_LOOP_H, high=MOST_LOOP_H)
    inside = default(MOST_EXTRA_H / 2, "H", "bars and cells inside the pack", low=0.0, high=MOST_EXTRA_H)
    return _plus(leads, extra or inside)


def _quantity(name: str, ends: Ends, phrase: str, lowest: float, highest: float) -> Quantity:
    """A quantity of the loop with its wording."""
    how = {
        "fault_voltage": "Measure the open-circuit voltage of a full cell at rest.",
        "cell_resistance": "Measure a cell at 1 kHz, or read the cell's sheet.",
        "lead_resistance": "Measure length and size of the leads, or the millivolts along them at a known current.",
    }[name]
    wording = Wording(phrase=phrase, how=how, effort=5, lowest=lowest, highest=highest)
    return Quantity(
        key=name,
        name=name,
        unit=ends.sourced.unit,
        favourable=ends.favourable,
        nominal=ends.nominal,
        worst=ends.worst,
        sourced=ends.sourced,
        wording=wording,
    )


def _cell_voltage(case: Case) -> Ends:
    """Of one cell into the fault."""
    stated = case.board.cells.fault_v
    if stated is not None:
        return larger_is_worse(stated)
    charge = case.board.cells.charge_v.most
    return larger_is_worse(default(charge, "V", "a full cell at charge voltage", low=min(NOMINAL_CELL_V, charge), high=charge))


def _cell_resistance(stated: Sourced | None) -> Ends:
    """Of one series position."""
    name = "no cell resistance stated; none at all makes the largest current"
    return smaller_is_worse(stated or default(0.0, "ohm", name, low=0.0, high=MOST_CELL_OHM))


def _lead_resistance(leads: Leads | None) -> Ends:
    """Of both polarities together, at their temperature or at 20 degC."""
    if leads is None or leads.area_mm2 is None:
        name = "no leads stated; none at all makes the largest current"
        return smaller_is_worse(default(0.0, "ohm", name, low=0.0, high=MOST_LEAD_OHM))
    rise_k = (leads.temperature_c.value if leads.temperature_c else COPPER_MEASURED_AT_C) - COPPER_MEASURED_AT_C
    length_m = 2 * leads.length_m.value / leads.conductors
    if leads.resistance_ohm_per_m is not None:
        ohm = rated_wire_resistance_ohm(length_m=length_m, ohm_per_m=leads.resistance_ohm_per_m.value, rise_k=rise_k)
    else:
        ohm = wire_resistance_ohm(length_m=length_m, area_m2=leads.area_mm2.value * 1e-6, rise_k=rise_k)
    return single(Sourced(value=ohm, unit="ohm", known=leads.length_m.known, name=_described(leads)))


def _lead_inductance(leads: Leads | None) -> Sourced | None:
    """Of both polarities together; without their spacing from side by side to far apart."""
    if leads is None or leads.area_mm2 is None:
        return None
    radius = float(outer_radius_m(area_m2=leads.area_mm2.value * 1e-6, conductors=leads.conductors))
    length = leads.length_m.value
    if leads.spacing_m is not None:
        apart = float(wire_pair_h(length_m=length, radius_m=radius, spacing_m=max(leads.spacing_m.value, 2 * radius)))
        return Sourced(value=apart, unit="H", known=leads.length_m.known, name=_described(leads))
    low = float(wire_pair_h(length_m=length, radius_m=radius, spacing_m=2 * radius))
    high = 2 * float(straight_wire_h(length_m=length, radius_m=radius))
    return default((low + high) / 2, "H", f"{_described(leads)}, from side by side to far apart", low=min(low, high), high=max(low, high))


def _described(leads: Leads) -> str:
    """The leads in words."""
    size = leads.size_text or f"{leads.area_mm2.value if leads.area_mm2 else 0:g} mm2"
    return f"{leads.conductors} x {size}, {leads.length_m.value:g} m each way"


def _plus(first: Sourced, second: Sourced | None) -> Sourced:
    """Two inductances in series."""
    if second is None:
        return first
    known = first.known if first.known is second.known else Known.ASSUMED
    return Sourced(
        value=first.value + second.value,
        unit="H",
        known=known,
        low=first.least + second.least,
        high=first.most + second.most,
        name=" + ".join(part.name or f"{part.value * 1e6:g} uH stated" for part in (first, second)),
    )

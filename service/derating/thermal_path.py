"""The way of the heat from junction to air, built step by step, each step in K/W with its band and what it rests on."""

from dataclasses import dataclass

from service.derating.formulas.plate import layer_resistance_kpw
from service.derating.still_air import Surface, sealed_air_c, surface_temperature_c
from service.facts.board import Cooling
from service.facts.sourced import Known, Sourced

# Case to heat sink, flat and greased, as sheets print it. [K/W]
GREASED = {
    "TO-220": Sourced(value=0.50, unit="K/W", known=Known.CLASS_DEFAULT, name="flat greased surface, printed in IRF1404, IRF3205, IRFR3806"),
    "TO-247": Sourced(value=0.24, unit="K/W", known=Known.CLASS_DEFAULT, name="flat greased surface, printed in IRFP1405"),
}
# Emissivities of surfaces (NXP AN11113 rev 2, Table 1). [1]
EMISSIVITY = {
    "black plastic": Sourced(value=0.95, unit="1", known=Known.CLASS_DEFAULT, name="black plastic, NXP AN11113 Table 1"),
    "anodised aluminium": Sourced(value=0.8, unit="1", known=Known.CLASS_DEFAULT, name="anodised aluminium, NXP AN11113 Table 1"),
    "polished aluminium": Sourced(value=0.04, unit="1", known=Known.CLASS_DEFAULT, name="polished aluminium, NXP AN11113 Table 1"),
}
# Why a band on convection: edges, neighbours and tilt are in no plate formula.
CONVECTION_BAND = 0.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One thermal resistance of the way.

    Attributes:
        name: From where to where.
        resistance: With its band and what it rests on. [K/W]
        shared_by: How many switches send their heat through it.
    """

    name: str
    resistance: Sourced
    shared_by: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class ThermalPath:
    """Steps in the order of the heat, from one switch to the air.

    Attributes:
        steps: The ways that lie behind each other.
    """

    steps: tuple[Step, ...]

    @property
    def per_switch(self) -> Sourced:
        """Rise of one switch over the air when all that share a step make equal heat, for a watt of each. [K/W]."""
        return _sum([(step, float(step.shared_by)) for step in self.steps])

    def cooling(self, *, ambient: Sourced, board_heat: Sourced | None = None) -> Cooling:
        """The path as a board's cooling: what each switch has alone, and what all share.

        Args:
            ambient: Air that the last step ends in. [degC]
            board_heat: Heat capacity of the shared part. [J/K]

        Returns:
            Cooling whose case_to_board holds the steps of one switch, without junction to case, and board_to_air the shared ones.

        Raises:
            ValueError: Nothing is shared; then the path is no board, and ``per_switch`` is the junction to air.
        """
        shared = [(step, 1.0) for step in self.steps if step.shared_by > 1]
        if not shared:
            raise ValueError("no step is shared by several switches; use per_switch as junction to air")
        alone = [(step, 1.0) for step in self.steps if step.shared_by == 1 and step.name != "junction to case"]
        return Cooling(ambient_c=ambient, case_to_board_kpw=_sum(alone), board_to_air_kpw=_sum(shared), board_heat_jpk=board_heat)


def pad(*, thickness_m: Sourced, conductivity_wpmk: Sourced, area_m2: Sourced, contact_kpw: Sourced) -> Step:
    """An insulating pad between a switch and a plate.

    Args:
        thickness_m: Of the pad under pressure. [m]
        conductivity_wpmk: Of its material. [W/m/K]
        area_m2: That touches it. [m2]
        contact_kpw: What both faces add; zero only for a potted joint. [K/W]

    Returns:
        The step, its band from the bands of all four.
    """
    ends = [
        layer_resistance_kpw(thickness_m=thick, conductivity_wpmk=good, area_m2=wide) + extra
        for thick, good, wide, extra in (
            (thickness_m.least, conductivity_wpmk.most, area_m2.most, contact_kpw.least),
            (thickness_m.value, conductivity_wpmk.value, area_m2.value, contact_kpw.value),
            (thickness_m.most, conductivity_wpmk.least, area_m2.least, contact_kpw.most),
        )
    ]
    name = f"{thickness_m.value * 1e3:g} mm of {conductivity_wpmk.value:g} W/(m K) on {area_m2.value * 1e6:g} mm2, with contacts"
    return Step(name="case to plate", resistance=_banded(ends, name))


def surface(face: Surface, *, power_w: float, air_c: float, shared_by: int) -> Step:
    """A plate or board that gives its heat to still air.

    Args:
        face: Its size and surface.
        power_w: All heat that leaves it; a warmer plate sheds heat better, so the resistance belongs to this power. [W]
        air_c: Still air and surroundings. [degC]
        shared_by: Switches that sit on it.

    Returns:
        The step; its band from the emissivity's and from 20 % on convection.
    """
    ends = [
        (surface_temperature_c(face, power_w=power_w, air_c=air_c, emissivity=shine, convection=draught) - air_c) / power_w
        for shine, draught in (
            (face.emissivity.most, 1 + CONVECTION_BAND),
            (face.emissivity.value, 1.0),
            (face.emissivity.least, 1 - CONVECTION_BAND),
        )
    ]
    name = f"{face.area_m2 * 1e4:g} cm2 in still air at {power_w:g} W: Churchill and Chu, and radiation of {face.emissivity.name}"
    return Step(name="plate to air", resistance=_banded(ends, name), shared_by=shared_by)


def sealed_air(case: Surface, *, power_w: float, outside_c: Sourced) -> Sourced:
    """Air inside a closed case that makes heat within.

    Args:
        case: Its outer faces.
        power_w: All heat made inside, the cells' too. [W]
        outside_c: Air around the case. [degC]

    Returns:
        Temperature of the air inside, its band from the emissivity's, from 20 % on convection and from the outside. [degC]
    """
    low = sealed_air_c(case, power_w=power_w, outside_c=outside_c.least, emissivity=case.emissivity.most, convection=1 + CONVECTION_BAND)
    middle = sealed_air_c(case, power_w=power_w, outside_c=outside_c.value, emissivity=case.emissivity.value, convection=1.0)
    high = sealed_air_c(case, power_w=power_w, outside_c=outside_c.most, emissivity=case.emissivity.least, convection=1 - CONVECTION_BAND)
    name = f"air inside a closed case of {case.area_m2 * 1e4:g} cm2 with {power_w:g} W in air of {outside_c.value:g} degC"
    return Sourced(value=middle, unit="degC", known=Known.ASSUMED, low=low, high=high, name=name)


def _banded(ends: list[float], name: str) -> Sourced:
    """A computed resistance: favourable, central and unfavourable."""
    return Sourced(value=ends[1], unit="K/W", known=Known.ASSUMED, low=min(ends), high=max(ends), name=name)


def _sum(parts: list[tuple[Step, float]]) -> Sourced:
    """Steps behind each other, each times how many watts pass it."""
    low, value, high = (
        sum(times * pick for (_, times), pick in zip(parts, picks, strict=True))
        for picks in zip(*((step.resistance.least, step.resistance.value, step.resistance.most) for step, _ in parts), strict=True)
    )
    name = " + ".join(step.name for step, _ in parts)
    return Sourced(value=value, unit="K/W", known=Known.ASSUMED, low=low, high=high, name=name)

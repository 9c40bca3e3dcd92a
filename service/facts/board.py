"""A battery-management board: its switch banks and what they sit on, as counted, measured, claimed or assumed."""

from dataclasses import dataclass
from enum import StrEnum

from service.facts.claim import Claim
from service.facts.sourced import Sourced
from service.facts.switch import Switch


class Port(StrEnum):
    """Whether charge and discharge share one pair of terminals (both banks in series) or not."""

    COMMON = "common"
    SEPARATE = "separate"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bank:
    """Equal switches in parallel.

    Attributes:
        switch: The part.
        switches: How many, counted on the board.
        part: How the board names it: a marking, ``sha256:HEX`` or ``typed:NAME``.
        channel: Which switch of a part with several: "Q1".
        on_resistance_ohm: Of one switch at 25 degC, where somebody measured it on the board; replaces the sheet's. [ohm]
    """

    switch: Switch
    switches: int
    part: str = ""
    channel: str | None = None
    on_resistance_ohm: Sourced | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cells:
    """The cells behind the board.

    Attributes:
        in_series: Cells in series in one pack, 1 to 32.
        charge_v: Charge voltage of one cell. [V]
        empty_v: End-of-discharge voltage of one cell. [V]
        resistance_ohm: One series position, AC. [ohm]
        fault_v: Voltage of one cell that a short circuit meets. [V]
    """

    in_series: int
    charge_v: Sourced
    empty_v: Sourced
    resistance_ohm: Sourced | None = None
    fault_v: Sourced | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cooling:
    """How heat leaves: a chain over the shared board, or one simple figure per switch.

    Attributes:
        ambient_c: Air around the board. [degC]
        junction_to_air_kpw: One switch alone, no mutual heating; only in the simple form. [K/W]
        case_to_board_kpw: Per switch. [K/W]
        board_to_air_kpw: Shared by all switches. [K/W]
        board_heat_jpk: Heat capacity of board and plate. [J/K]
        board_limit_c: Highest temperature that the board itself may have. [degC]
    """

    ambient_c: Sourced
    junction_to_air_kpw: Sourced | None = None
    case_to_board_kpw: Sourced | None = None
    board_to_air_kpw: Sourced | None = None
    board_heat_jpk: Sourced | None = None
    board_limit_c: Sourced | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Leads:
    """The way from the cells to the load, one way, per polarity.

    Attributes:
        length_m: One way. [m]
        conductors: In parallel per polarity.
        area_mm2: Copper of one conductor, geometric. [mm2]
        resistance_ohm_per_m: One conductor at 20 degC, where a wire class fixes it. [ohm/m]
        spacing_m: Between the centres of the two polarities. [m]
        temperature_c: Of the copper. [degC]
        size_text: The size as written.
    """

    length_m: Sourced
    conductors: int = 1
    area_mm2: Sourced | None = None
    resistance_ohm_per_m: Sourced | None = None
    spacing_m: Sourced | None = None
    temperature_c: Sourced | None = None
    size_text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """What is known about a short circuit.

    Attributes:
        protection_delay_s: From the fault to the gates' turn-off. [s]
        loop_inductance_h: Whole loop; replaces the figure from the leads. [H]
        extra_inductance_h: Added to either figure: bars and cells that it leaves out. [H]
    """

    protection_delay_s: Sourced | None = None
    loop_inductance_h: Sourced | None = None
    extra_inductance_h: Sourced | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """Everything that a judgement starts from.

    Attributes:
        claim: What the pack is said to do.
        cells: The cells in series behind it.
        discharge_bank: Switches that carry and cut discharge.
        charge_bank: Switches that carry and cut charge.
        port: One pair of terminals or two.
        cooling: How heat leaves the switches.
        gate_v: Gate drive, where known. [V]
        charger_v: The charger's largest voltage. [V]
        shunt_ohm: Current-sense resistor. [ohm]
        shunt_rating_w: Its rated power. [W]
        shunt_on_board: Whether it heats the same board.
        joints_ohm: Joints and tracks on the board. [ohm]
        recloses_on_current: Whether the protection closes a blocked bank when current flows through its diodes.
        junction_limit_c: A limit that the user gives. [degC]
        junction_surge_limit_c: The same for a surge. [degC]
        leads: Between pack and load.
        fault: About a short circuit.
        rule_set: maker, trade-80 or eee-inst-002.
    """

    claim: Claim
    cells: Cells
    discharge_bank: Bank
    charge_bank: Bank
    cooling: Cooling
    port: Port = Port.COMMON
    gate_v: Sourced | None = None
    charger_v: Sourced | None = None
    shunt_ohm: Sourced | None = None
    shunt_rating_w: Sourced | None = None
    shunt_on_board: bool = True
    joints_ohm: Sourced | None = None
    recloses_on_current: bool | None = None
    junction_limit_c: Sourced | None = None
    junction_surge_limit_c: Sourced | None = None
    leads: Leads | None = None
    fault: Fault = Fault()
    rule_set: str = "maker"

"""A board as written (TOML or JSON, the keys of switchbank.board/1) to the facts that a judgement starts from, defaults filled in."""

from collections.abc import Mapping
from functools import partial

from service.facts.board import Bank, Board, Cells, Cooling, Fault, Leads, Port
from service.facts.claim import Claim
from service.facts.sourced import Known, Sourced
from service.facts.switch import Switch
from service.formats import dimensions as d
from service.formats.defaults import AMBIENT, CHARGE_VOLTAGE, EMPTY_VOLTAGE, JUNCTION_TO_AIR
from service.formats.dimensions import Dimension
from service.formats.errors import BoardError, Problem, UnitError
from service.formats.part_name import bank_switch, read_part_name
from service.formats.quantity import split_duration
from service.formats.sourced import read_sourced
from service.formats.table import Table
from service.formats.typed_part import read_typed_part
from service.formats.wire import read_wire

SCHEMA = "switchbank.board/1"
RULE_SETS = ("maker", "trade-80", "eee-inst-002")
MOST_CELLS = 32
MOST_PACKS = 100
MOST_SWITCHES = 1000
# Stands in for a required quantity that is missing or wrong; the board is then refused as a whole.
_NOWHERE = Sourced(value=0.0, unit="", known=Known.ASSUMED)


def read_board(written: Mapping[str, object]) -> Board:
    """Read a board.

    Args:
        written: The file or the body, as parsed from TOML or JSON.

    Returns:
        The board. A bank of a part that is kept elsewhere holds a switch without values, under the name that the board gives it.

    Raises:
        BoardError: With every problem of the file: unknown keys, wrong units, impossible counts, missing or contradicting entries.
    """
    problems: list[Problem] = []
    file = Table(dict(written), at="", problems=problems)
    file.choice("schema", (SCHEMA,), default=SCHEMA)
    shelf = file.table("typed")
    typed = {name: read_typed_part(shelf.table(name), name=name) for name in shelf.names()}
    discharge = _bank(file.table("discharge_bank"), typed)
    board_table, limits = file.table("board"), file.table("limits")
    board = Board(
        claim=_claim(file.table("claim")),
        cells=_cells(file.table("cells")),
        discharge_bank=discharge,
        charge_bank=_bank(file.table("charge_bank"), typed) if file.has("charge_bank") else discharge,
        port=Port(board_table.choice("port", tuple(Port), default=Port.COMMON)),
        gate_v=_quantity(board_table, "gate_voltage", d.VOLTAGE),
        charger_v=_quantity(board_table, "charger_voltage", d.VOLTAGE),
        shunt_ohm=_quantity(board_table, "shunt", d.RESISTANCE),
        shunt_rating_w=_quantity(board_table, "shunt_rating", d.POWER),
        shunt_on_board=board_table.flag("shunt_on_board") is not False,
        joints_ohm=_quantity(board_table, "joints", d.RESISTANCE, zero=True),
        recloses_on_current=board_table.flag("recloses_on_current"),
        cooling=_cooling(file.table("cooling")),
        junction_limit_c=_quantity(limits, "junction", d.TEMPERATURE),
        junction_surge_limit_c=_quantity(limits, "junction_surge", d.TEMPERATURE),
        leads=_leads(file.table("leads")) if file.has("leads") else None,
        fault=_fault(file.table("fault")),
        rule_set=_rule_set(file.table("rules")),
    )
    for table in (board_table, limits, file):
        table.finish()
    if problems:
        raise BoardError(tuple(problems))
    return board


def _quantity(table: Table, name: str, dimension: Dimension, *, zero: bool = False) -> Sourced | None:
    """A quantity that may be left out."""
    return table.parsed(name, partial(read_sourced, dimension=dimension, zero=zero))


def _required(table: Table, name: str, dimension: Dimension) -> Sourced:
    """A quantity that may not be left out."""
    if not table.has(name):
        table.note(name, None, why="missing", allowed=f"a {dimension.name}, as in {dimension.example!r}")
    return _quantity(table, name, dimension) or _NOWHERE


def _claim(table: Table) -> Claim:
    """What the pack is said to do."""
    surge = table.parsed("surge", _surge)
    claim = Claim(
        continuous_a=_required(table, "continuous", d.CURRENT),
        continuous_charge_a=_quantity(table, "continuous_charge", d.CURRENT),
        surge_a=surge[0] if surge else None,
        surge_s=surge[1] if surge else None,
        packs_in_series=table.count("packs_in_series", most=MOST_PACKS, default=1),
    )
    table.finish()
    return claim


def _surge(written: object, key: str) -> tuple[Sourced, Sourced]:
    """A short current with its duration, as text or in a table."""
    text = written.get("value") if isinstance(written, dict) else written
    current, duration = split_duration(text)
    if duration is None:
        raise UnitError(key=key, value=text, why="a surge needs its duration", allowed="a current for a time, as in '160 A for 10 s'")
    parts: tuple[object, object] = (current, duration)
    if isinstance(written, dict):
        parts = (written | {"value": current}, written | {"value": duration})
    return read_sourced(parts[0], key, dimension=d.CURRENT), read_sourced(parts[1], key, dimension=d.TIME)


def _cells(table: Table) -> Cells:
    """The cells behind the board."""
    cells = Cells(
        in_series=table.count("in_series", most=MOST_CELLS),
        charge_v=_quantity(table, "charge_voltage", d.VOLTAGE) or CHARGE_VOLTAGE,
        empty_v=_quantity(table, "empty_voltage", d.VOLTAGE) or EMPTY_VOLTAGE,
        resistance_ohm=_quantity(table, "resistance", d.RESISTANCE),
        fault_v=_quantity(table, "fault_voltage", d.VOLTAGE),
    )
    table.finish()
    return cells


def _bank(table: Table, typed: dict[str, Switch]) -> Bank:
    """Equal switches in parallel, of a part that is typed below or kept elsewhere."""
    part = table.parsed("part", partial(read_part_name, typed=tuple(typed)))
    if not table.has("part"):
        table.note("part", None, why="missing", allowed="a marking, sha256:HEX or typed:NAME")
    bank = Bank(
        switch=bank_switch(part or "", typed),
        switches=table.count("switches", most=MOST_SWITCHES),
        part=part or "",
        channel=table.text("channel"),
        on_resistance_ohm=_quantity(table, "on_resistance", d.RESISTANCE),
    )
    table.finish()
    return bank


def _cooling(table: Table) -> Cooling:
    """How heat leaves: a chain over the shared board, or one simple figure per switch, never both."""
    simple = _quantity(table, "junction_to_air", d.THERMAL_RESISTANCE)
    case_to_board = _quantity(table, "case_to_board", d.THERMAL_RESISTANCE)
    board_to_air = _quantity(table, "board_to_air", d.THERMAL_RESISTANCE)
    if table.has("junction_to_air") and (table.has("case_to_board") or table.has("board_to_air")):
        table.note("junction_to_air", None, why="stands beside a chain", allowed="junction_to_air alone, or case_to_board and board_to_air")
    chain = case_to_board is not None or board_to_air is not None
    cooling = Cooling(
        ambient_c=_quantity(table, "ambient", d.TEMPERATURE) or AMBIENT,
        junction_to_air_kpw=simple or (None if chain else JUNCTION_TO_AIR),
        case_to_board_kpw=case_to_board,
        board_to_air_kpw=board_to_air,
        board_heat_jpk=_quantity(table, "board_heat_capacity", d.HEAT_CAPACITY),
        board_limit_c=_quantity(table, "board_limit", d.TEMPERATURE),
    )
    table.finish()
    return cooling


def _leads(table: Table) -> Leads:
    """The way from pack to load."""
    size = table.parsed("size", read_wire)
    leads = Leads(
        length_m=_required(table, "length", d.LENGTH),
        conductors=table.count("conductors", most=100, default=1),
        area_mm2=size.area_mm2 if size else None,
        resistance_ohm_per_m=size.resistance_ohm_per_m if size else None,
        spacing_m=_quantity(table, "spacing", d.LENGTH),
        temperature_c=_quantity(table, "temperature", d.TEMPERATURE),
        size_text=size.text if size else "",
    )
    table.finish()
    return leads


def _fault(table: Table) -> Fault:
    """What is known about a short circuit."""
    fault = Fault(
        protection_delay_s=_quantity(table, "protection_delay", d.TIME),
        loop_inductance_h=_quantity(table, "loop_inductance", d.INDUCTANCE),
        extra_inductance_h=_quantity(table, "extra_inductance", d.INDUCTANCE, zero=True),
    )
    table.finish()
    return fault


def _rule_set(table: Table) -> str:
    """By whose rules."""
    name = table.choice("set", RULE_SETS, default="maker")
    table.finish()
    return name

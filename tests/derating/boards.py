"""Invented boards as a person would write them, for tests of the engine."""

import tomllib
from collections.abc import Mapping

from service.derating.case import Case
from service.derating.open_case import open_case
from service.formats.board import read_board

# The board that the contract prints as its example; every field is stated.
WHOLE = """
claim = {continuous = "90 A", continuous_charge = "45 A", surge = "180 A for 5 s", packs_in_series = 2}
cells = {in_series = 8, charge_voltage = "3.65 V", empty_voltage = "2.5 V", resistance = "0.4 mohm", fault_voltage = "3.3 V"}
discharge_bank = {part = "typed:A", switches = 10}
charge_bank = {part = "typed:A", switches = 7}
cooling = {ambient = "35 °C", case_to_board = "4 K/W", board_to_air = "2.5 K/W", board_heat_capacity = "55 J/K", board_limit = "110 °C"}
limits = {junction = "120 °C", junction_surge = "150 °C"}
leads = {length = "0.3 m", conductors = 1, size = "2 AWG", spacing = "25 mm", temperature = "40 °C"}
fault = {protection_delay = "250 us", loop_inductance = "1.2 uH", extra_inductance = "0.3 uH"}
rules = {set = "maker"}

[board]
port = "common"
gate_voltage = "12 V"
charger_voltage = "29.4 V"
shunt = "0.25 mohm"
shunt_rating = "5 W"
shunt_on_board = true
joints = "0.2 mohm"
recloses_on_current = true

[typed.A]
polarity = "N"
package = "TO-263"
vds_max = {max = "75 V"}
vgs_max = {max = "20 V"}
rds_on = [{typ = "3.3 mohm", max = "4.0 mohm", vgs = "10 V"}, {typ = "4.4 mohm", max = "5.6 mohm", vgs = "6 V"}]
tj_max = {max = "175 °C"}
pd = [{max = "188 W", tc = "25 °C"}]
rth_jc = {max = "0.8 K/W"}
id_cont = [{max = "145 A", tc = "25 °C", limited_by = "silicon"}, {max = "110 A", tc = "25 °C", limited_by = "package"}]
id_pulse = {max = "580 A"}
eas = {max = "300 mJ", id = "50 A"}
vsd = {max = "1.2 V"}
rds_on_vs_tj = [[-40, 0.70], [25, 1.0], [100, 1.52], [175, 2.20]]
zth_foster = [["0.1 K/W", "0.3 ms"], ["0.3 K/W", "3 ms"], ["0.4 K/W", "20 ms"]]
"""

# Four fields and a typed part: what a practitioner has after five minutes.
FOUR_FIELDS = """
claim = {continuous = "80 A"}
cells = {in_series = 8}
discharge_bank = {part = "typed:A", switches = 6}

[typed.A]
vds_max = {max = "80 V"}
rds_on = [{typ = "4.0 mohm", max = "5.0 mohm", vgs = "10 V"}]
tj_max = {max = "175 °C"}
rth_jc = {max = "0.75 K/W"}
"""


def case_of(text: str, changes: Mapping[str, Mapping[str, object]] | None = None, *, rules: str | None = None) -> Case:
    """A case from a board's text.

    Args:
        text: The board.
        changes: Fields to set, table by table; None takes a field away.
        rules: Name of a rule set, where it is not the board's own.

    Returns:
        The case.
    """
    tables = tomllib.loads(text)
    for path, fields in (changes or {}).items():
        table = tables
        for name in path.split("."):
            table = table.setdefault(name, {})
        for name, value in fields.items():
            if value is None:
                table.pop(name, None)
            else:
                table[name] = value
    return open_case(read_board(tables), rules=rules)

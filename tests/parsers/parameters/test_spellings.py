"""Each parameter is known by the ways in which sheets spell it, and not by the ways in which they spell its neighbours.

The spellings are common practice, no source: letter symbols as in IEC 60747-8, names as makers of many countries print them.
"""

from importlib import import_module
from pkgutil import iter_modules

import pytest

from parsers import parameters
from parsers.grammar.spelling import squeezed_name
from parsers.grammar.unit import SCALE
from parsers.grid import Column, Entry, Region, Role, Table, Text
from parsers.left_out import left_on_purpose
from parsers.stages.spelled import match
from parsers.types import Page
from service.facts.parameter import PARAMETERS

SPELLINGS = {
    "drain_source_voltage": [
        ("Drain-Source Voltage", "VDS", "V"),
        ("Drain to Source Voltage", "VDSS", "V"),
        ("漏源电压", "VDSS", "V"),
        ("", "VDSS", "V"),
    ],
    "gate_source_voltage": [
        ("Gate-to-Source Voltage", "VGS", "V"),
        ("Gate Source Voltage", "VGSS", "V"),
        ("栅源电压", "VGS", "V"),
        ("", "VGSM", "V"),
    ],
    "continuous_drain_current": [
        ("Continuous Drain Current, VGS @ 10V", "", "A"),
        ("Drain Current – Continuous", "ID", "A"),
        ("ID @ TC = 25°C", "", "A"),
        ("连续漏极电流", "ID", "A"),
        ("ドレイン電流", "ID", "A"),
        ("", "ID25", "A"),
    ],
    "pulsed_drain_current": [
        ("Pulsed Drain Current", "IDM", "A"),
        ("Drain peak current", "ID(pulse)", "A"),
        ("Drain Current - Pulsed", "IDM", "A"),
        ("", "IDM", "A"),
    ],
    "avalanche_current": [("Avalanche Current", "IAS", "A"), ("Avalanche current, repetitive", "IAR", "A"), ("", "IAP", "A")],
    "avalanche_energy": [
        ("Single Pulse Avalanche Energy", "EAS", "mJ"),
        ("Non-repetitive drain-source avalanche energy", "EDS(AL)S", "mJ"),
        ("", "EAS", "mJ"),
    ],
    "repetitive_avalanche_energy": [("Repetitive Avalanche Energy", "EAR", "mJ"), ("Avalanche energy, repetitive", "EAR", "mJ"), ("", "EAR", "mJ")],
    "power_dissipation": [
        ("Power Dissipation", "PD", "W"),
        ("Total Dissipation at TC = 25 °C", "PTOT", "W"),
        ("Channel dissipation", "Pch", "W"),
        ("耗散功率", "PD", "W"),
    ],
    "power_derating": [("Linear Derating Factor", "", "W/°C"), ("- Derate above 25 °C", "", "mW/°C")],
    "junction_temperature": [
        ("Operating Junction and Storage Temperature Range", "TJ, TSTG", "°C"),
        ("Channel temperature", "Tch", "°C"),
        ("工作结温和储存温度", "TJ", "℃"),
        ("", "Tvj", "°C"),
    ],
    "junction_to_case": [
        ("Thermal Resistance, Junction-to-Case", "RθJC", "°C/W"),
        ("thermal resistance from junction to mounting base", "Rth(j-mb)", "K/W"),
        ("", "Rthj-case", "°C/W"),
    ],
    "junction_to_ambient": [
        ("Maximum Junction-to-Ambient", "RthJA", "°C/W"),
        ("Channel to ambient thermal resistance", "Rth(ch-a)", "°C/W"),
        ("", "RθJA", "K/W"),
    ],
    "case_to_sink": [("Case-to-Sink, Flat, Greased Surface", "RθCS", "°C/W"), ("", "RthCS", "°C/W")],
    "junction_to_lead": [("Maximum Junction-to-Lead", "RθJL", "°C/W"), ("thermal resistance from junction to solder point", "Rth(j-sp)", "K/W")],
    "breakdown_voltage": [("Drain-Source Breakdown Voltage", "V(BR)DSS", "V"), ("Drain to Source Voltage", "BVDSS", "V"), ("", "BVDSS", "V")],
    "gate_threshold": [("Gate Threshold Voltage", "VGS(th)", "V"), ("Gate to source cutoff voltage", "VGS(off)", "V"), ("阈值电压", "VGS(th)", "V")],
    "on_resistance": [
        ("Static Drain-to-Source On-Resistance", "RDS(on)", "mΩ"),
        ("Drain-source on-state resistance", "RDSon", "Ω"),
        ("导通电阻", "RDS(ON)", "mΩ"),
        ("", "rDS(on)", "Ω"),
    ],
    "gate_charge": [
        ("Total Gate Charge", "Qg", "nC"),
        ("Gate charge total", "QG", "nC"),
        ("Total Gate Charge (Gate to Source + Gate to Drain)", "Qg(TOT)", "nC"),
    ],
    "input_capacitance": [("Input Capacitance", "Ciss", "pF"), ("输入电容", "Ciss", "pF")],
    "output_capacitance": [("Output Capacitance", "Coss", "pF"), ("输出电容", "Coss", "pF")],
    "reverse_capacitance": [("Reverse Transfer Capacitance", "Crss", "pF"), ("反向传输电容", "Crss", "pF")],
    "diode_forward_voltage": [("Diode Forward Voltage", "VSD", "V"), ("Forward On Voltage", "VSD", "V"), ("Source-drain voltage", "VSD", "V")],
    "diode_current": [
        ("Continuous Source Current (Body Diode)", "IS", "A"),
        ("Maximum Body-Diode Continuous Current", "IS", "A"),
        ("Body-drain diode reverse drain current", "IDR", "A"),
    ],
}

NEIGHBOURS = [
    ("Zero Gate Voltage Drain Current", "IDSS", "µA"),
    ("Gate-Body Leakage Current", "IGSS", "nA"),
    ("On-State Drain Current", "ID(ON)", "A"),
    ("Forward Transconductance", "gfs", "S"),
    ("Gate-Source Charge", "Qgs", "nC"),
    ("Gate-Drain (Miller) Charge", "Qgd", "nC"),
    ("Gate Resistance", "Rg", "Ω"),
    ("Turn-On Delay Time", "td(on)", "ns"),
    ("Body Diode Reverse Recovery Time", "trr", "ns"),
    ("Pulsed Source Current (Body Diode)", "ISM", "A"),
    ("Drain-Gate Voltage", "VDGR", "V"),
    ("Storage Temperature Range", "Tstg", "°C"),
    ("Maximum Lead Temperature for Soldering Purposes", "TL", "°C"),
    ("Peak Diode Recovery dv/dt", "dv/dt", "V/ns"),
    ("Breakdown Voltage Temperature Coefficient", "ΔV(BR)DSS/ΔTJ", "V/°C"),
    ("Effective Output Capacitance", "Coss eff.", "pF"),
]


def entry(unit):
    """A row with a unit and nothing else: names are given to the matcher apart."""
    page = Page(number=1, width=595.0, height=842.0, words=(), rules=())
    table = Table(
        region=Region(page=page, heads=(), top=0, heading_bottom=0, caption="", lines=()), layout="", columns=(Column(role=Role.VALUE, x0=0, x1=1),)
    )
    return Entry(table=table, y=0, cells=(), label=Text(), symbol=Text(), condition=Text(), unit=Text(own=unit), caption="", box=(0, 0, 1, 1))


@pytest.mark.parametrize(("module", "spelling"), [(module, spelling) for module, spellings in SPELLINGS.items() for spelling in spellings])
def test_a_parameter_is_known_by_its_spellings(module, spelling):
    """Words, symbol and unit together name one parameter."""
    name, symbol, unit = spelling
    found = match(name, symbol, entry(unit))

    assert found is not None
    assert found[0].key == import_module(f"parsers.parameters.{module}").CARD.key


@pytest.mark.parametrize(("name", "symbol", "unit"), NEIGHBOURS)
def test_a_neighbour_is_taken_for_no_parameter(name, symbol, unit):
    """Leakage is no drain current, and gate-source charge no gate charge."""
    assert match(name, symbol, entry(unit)) is None


@pytest.mark.parametrize(("name", "symbol", "unit"), NEIGHBOURS)
def test_a_neighbour_is_left_on_purpose(name, symbol, unit):  # noqa: ARG001  the unit belongs to the case
    """What is not read is known all the same."""
    assert left_on_purpose(squeezed_name(f"{symbol} {name}"))


def test_every_parameter_file_is_registered_and_has_a_spelling():
    """A new file that nobody lists would never be read."""
    files = {module.name for module in iter_modules(parameters.__path__)}
    registered = {card.key for card in parameters.CARDS}

    assert files == set(SPELLINGS)
    assert registered == {import_module(f"parsers.parameters.{name}").CARD.key for name in files}
    assert registered == set(PARAMETERS)


@pytest.mark.parametrize("card", parameters.CARDS, ids=lambda card: card.key)
def test_a_parameter_has_units_of_the_whitelist_and_a_range(card):
    """Units that no grammar knows could never be read, nor a range that ends before it begins."""
    assert set(card.units) <= set(SCALE)
    assert 0 < card.low < card.high
    assert set(card.needs) <= set(card.keeps)

"""Datasheet parameters, one a file: how sheets spell each, its units, its plausible range and what stands beside it."""

from parsers.parameter import Card
from parsers.parameters import (
    avalanche_current,
    avalanche_energy,
    breakdown_voltage,
    case_to_sink,
    continuous_drain_current,
    diode_current,
    diode_forward_voltage,
    drain_source_voltage,
    gate_charge,
    gate_source_voltage,
    gate_threshold,
    input_capacitance,
    junction_temperature,
    junction_to_ambient,
    junction_to_case,
    junction_to_lead,
    on_resistance,
    output_capacitance,
    power_derating,
    power_dissipation,
    pulsed_drain_current,
    repetitive_avalanche_energy,
    reverse_capacitance,
)

CARDS: tuple[Card, ...] = (
    drain_source_voltage.CARD,
    gate_source_voltage.CARD,
    continuous_drain_current.CARD,
    pulsed_drain_current.CARD,
    avalanche_current.CARD,
    avalanche_energy.CARD,
    repetitive_avalanche_energy.CARD,
    power_dissipation.CARD,
    power_derating.CARD,
    junction_temperature.CARD,
    junction_to_case.CARD,
    junction_to_ambient.CARD,
    case_to_sink.CARD,
    junction_to_lead.CARD,
    breakdown_voltage.CARD,
    gate_threshold.CARD,
    on_resistance.CARD,
    gate_charge.CARD,
    input_capacitance.CARD,
    output_capacitance.CARD,
    reverse_capacitance.CARD,
    diode_forward_voltage.CARD,
    diode_current.CARD,
)
"""Every parameter that is read, in the order in which sheets print them."""

BY_KEY = {card.key: card for card in CARDS}

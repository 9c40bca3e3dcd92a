"""Checks, one question a file; the list gives the order of the report."""

from service.derating.check import Check
from service.derating.checks import (
    body_diode,
    conduction_loss,
    continuous_current,
    current_sharing,
    drain_source_voltage,
    gate_drive,
    package_current,
    power_rating,
    pulsed_current,
    short_circuit,
    shunt,
    surge_current,
)

CHECKS: tuple[Check, ...] = (
    drain_source_voltage.CHECK,
    gate_drive.CHECK,
    continuous_current.CHECK,
    current_sharing.CHECK,
    conduction_loss.CHECK,
    power_rating.CHECK,
    package_current.CHECK,
    pulsed_current.CHECK,
    surge_current.CHECK,
    shunt.CHECK,
    short_circuit.CHECK,
    body_diode.CHECK,
)

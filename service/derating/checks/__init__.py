"""Checks, one question a file; the list gives the order of the report."""

from service.derating.check import Check
from service.derating.checks import drain_source_voltage

CHECKS: tuple[Check, ...] = (drain_source_voltage.CHECK,)

"""Datasheet parameters: spellings, units, plausible range and the condition that stands beside each, one a file."""

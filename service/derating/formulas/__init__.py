"""Formulas, one physical subject a file; plain arithmetic on floats and arrays."""

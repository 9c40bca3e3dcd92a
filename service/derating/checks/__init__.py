"""Checks, one question a file; the list gives the order of the report."""

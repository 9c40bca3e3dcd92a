"""The words that everybody shares: frozen dataclasses on the standard library alone."""

"""Keeping: files by their hash, parts, readings and results in a database whose rows never leave this package."""

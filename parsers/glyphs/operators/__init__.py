"""Operators of a content stream, one group a file (ISO 32000-1:2008, Annex A)."""

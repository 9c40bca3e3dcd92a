"""Pages, one subject a file: bench, sheets, parts, boards, results; each view asks a use case and shows its answer."""

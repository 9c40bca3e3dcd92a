"""How a datasheet writes numbers, units, conditions and footnotes: small fixed grammars, never ``float`` on raw text."""

"""Pairs of neighbouring characters: what two similar markings share."""

from itertools import pairwise


def grams(fold: str) -> frozenset[str]:
    """Split a folded marking into pairs, its two ends marked; pairs with a character in doubt tell nothing and are left out.

    Why pairs and not triples: markings on small packages have three or four characters, and one in doubt spoils every triple.

    Args:
        fold: A folded marking: ``A475N4?``.

    Returns:
        ``^A``, ``A4``, ``47``, ``75``, ``5N``, ``N4``.
    """
    return frozenset(pair for pair in map("".join, pairwise(f"^{fold}$")) if "?" not in pair)

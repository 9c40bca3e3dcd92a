"""A saved board: the document as its writer left it, version by version."""

from dataclasses import dataclass

from service.facts.change import Change


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptBoard:
    """One version of a saved board document; the one with the largest version stands.

    Attributes:
        slug: Identity: lower-case letters, digits and hyphens.
        version: 1 for the first; each later one supersedes the one before.
        title: What people call it.
        text: The document as TOML, byte for byte as saved.
        document: The same document parsed, as JSON text.
        parts: Keys of the parts that its banks carry.
        change: Who saved it, when and why.
    """

    slug: str
    version: int
    title: str
    text: str
    document: str
    parts: tuple[str, ...]
    change: Change

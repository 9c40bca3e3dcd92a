"""A font's own map from character codes to text (ISO 32000-1:2008, 9.10.3), read with patterns because every font brings one."""

import re

_SECTION = re.compile(rb"beginbf(char|range)(.*?)endbf", re.DOTALL)
_PAIR = re.compile(rb"<([0-9A-Fa-f\s]*)>\s*<([0-9A-Fa-f\s]*)>")
_RANGE = re.compile(rb"<([0-9A-Fa-f\s]*)>\s*<([0-9A-Fa-f\s]*)>\s*(?:<([0-9A-Fa-f\s]*)>|\[([^\]]*)\])")
_TEXT = re.compile(rb"<([0-9A-Fa-f\s]*)>")
_ODD = re.compile(rb"usecmap|begincid|/\w+\s*endbf|<[^<>]*>\s*/\w")
"""Parts that this does not read."""
_MOST_CODES = 0x10000


def unicode_map(stream: bytes) -> dict[int, str] | None:
    """Text by character code.

    Args:
        stream: The map as the file holds it, unpacked.

    Returns:
        The text of each code; None where the map uses parts that only the library reads, or holds more codes than two bytes can number.
    """
    if _ODD.search(stream):
        return None
    found: dict[int, str] = {}
    for kind, body in _SECTION.findall(stream):
        pairs = _from_pairs(body) if kind == b"char" else _from_ranges(body)
        if pairs is None or len(found) + len(pairs) > _MOST_CODES:
            return None
        for code, text in pairs:
            # Why not always: some fonts map a plain space and then a hard one to the same code.
            if not (text == "\u00a0" and found.get(code) == " "):
                found[code] = text
    return found


def _from_pairs(body: bytes) -> list[tuple[int, str]]:
    return [(_code(code), _text(_bytes(text))) for code, text in _PAIR.findall(body)]


def _from_ranges(body: bytes) -> list[tuple[int, str]] | None:
    pairs: list[tuple[int, str]] = []
    for first, last, text, texts in _RANGE.findall(body):
        codes = range(_code(first), _code(last) + 1)
        if len(codes) > _MOST_CODES:
            return None
        if texts:
            pairs.extend(zip(codes, (_text(_bytes(item)) for item in _TEXT.findall(texts)), strict=False))
        else:
            pairs.extend((code, _counted(_bytes(text), step)) for step, code in enumerate(codes))
    return pairs


def _counted(start: bytes, step: int) -> str:
    """The text that lies so many steps after another one."""
    tail = start[-4:]
    value = (int.from_bytes(tail, "big") + step) & (256 ** len(tail) - 1)
    return _text(start[:-4] + value.to_bytes(len(tail), "big"))


def _bytes(digits: bytes) -> bytes:
    digits = b"".join(digits.split())
    return bytes.fromhex((digits if len(digits) % 2 == 0 else digits + b"0").decode())


def _code(digits: bytes) -> int:
    return int.from_bytes(_bytes(digits), "big")


def _text(raw: bytes) -> str:
    return raw.decode("utf-16-be", "ignore")

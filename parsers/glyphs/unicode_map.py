"""A font's own map from character codes to text (ISO 32000-1:2008, 9.10.3), read with patterns because every font brings one."""

import re

_SECTION = re.compile(rb"beginbf(char|range)(.*?)endbf", re.DOTALL)
_PAIR = re.compile(rb"<([0-9A-Fa-f\s]*)>\s*<([0-9A-Fa-f\s]*)>")
_RANGE = re.compile(rb"<([0-9A-Fa-f\s]*)>\s*<([0-9A-Fa-f\s]*)>\s*(?:<([0-9A-Fa-f\s]*)>|\[([^\]]*)\])")
_TEXT = re.compile(rb"<([0-9A-Fa-f\s]*)>")
_ODD = re.compile(rb"usecmap|begincid|/\w+\s*endbf|<[^<>]*>\s*/\w")
"""Parts that this does not read."""


class UnicodeMap:
    """Text by character code; ranges are counted out only where a page uses them.

    Args:
        stream: The map as the file holds it, unpacked.
    """

    def __init__(self, stream: bytes) -> None:
        self._single: dict[int, str] = {}
        self._ranges: list[tuple[int, int, bytes]] = []
        self.complete = not _ODD.search(stream)
        for kind, body in _SECTION.findall(stream):
            if kind == b"char":
                for code, text in _PAIR.findall(body):
                    self._add(_code(code), _text(_bytes(text)))
            else:
                self._add_ranges(body)

    def get_unichr(self, code: int) -> str:
        """The text of a code.

        Args:
            code: A character code.

        Returns:
            What it shows.

        Raises:
            KeyError: The map does not say.
        """
        if code in self._single:
            return self._single[code]
        for first, last, start in reversed(self._ranges):
            if first <= code <= last:
                return _counted(start, code - first)
        raise KeyError(code)

    def _add(self, code: int, text: str) -> None:
        # Why not always: some fonts map a plain space and then a hard one to the same code.
        if not (text == "\u00a0" and self._single.get(code) == " "):
            self._single[code] = text

    def _add_ranges(self, body: bytes) -> None:
        for first, last, text, texts in _RANGE.findall(body):
            start, end = _code(first), _code(last)
            if texts:
                for code, item in zip(range(start, end + 1), _TEXT.findall(texts), strict=False):
                    self._add(code, _text(_bytes(item)))
            elif start == end:
                self._add(start, _text(_bytes(text)))
            else:
                self._ranges.append((start, end, _bytes(text)))


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

"""A page's content stream as operators with their operands (ISO 32000-1:2008, 7.8.2)."""

import re
from collections.abc import Callable, Iterator
from typing import Any

_REGULAR = rb"[^\s\x00()<>\[\]{}/%]"
_PLAIN = rb"([-+]?(?>\d+\.?\d*|\.\d+))\s+"
_TOKEN = re.compile(
    rb"[\s\x00]*(?:"
    # Why whole operators: graphs are drawn with tens of thousands of them, and one match is cheaper than three or seven.
    + (_PLAIN * 2 + rb"(?:([ml]|T[dD])|" + _PLAIN * 2 + rb"(?:(re)|" + _PLAIN * 2 + rb"(c|cm|Tm)))(?!" + _REGULAR + rb")")  # 1 to 9
    + rb"|([-+]?(?>\d+\.?\d*|\.\d+))(?!"
    + _REGULAR
    + rb")"  # 10 number
    rb"|([A-Za-z'\"]" + _REGULAR + rb"*)"  # 11 operator
    rb"|/(" + _REGULAR + rb"*)"  # 12 name
    rb"|\(([^()\\]*(?:\\.[^()\\]*)*)\)"  # 13 string without brackets inside
    rb"|<([0-9A-Fa-f\s]*)>"  # 14 string in hexadecimal digits
    rb"|(\[)|(\])|(<<)|(>>)"  # 15 to 18
    rb"|(\()"  # 19 string with brackets inside
    rb"|(%[^\r\n]*)"  # 20 comment
    rb"|([-+.\d]" + _REGULAR + rb"*)"  # 21 something like a number
    rb"|([^\s\x00]))",  # 22 anything else
    re.DOTALL,
)
_PAIR, _BOX, _SIX = 3, 6, 9
_NUMBER, _OPERATOR, _NAME, _STRING, _HEX, _OPEN, _CLOSE, _OPEN_MAP, _CLOSE_MAP, _BRACKETED, _COMMENT, _ODD_NUMBER, _SENSELESS = range(10, 23)
_ESCAPE = re.compile(rb"\\([0-7]{1,3}|\r\n|.)", re.DOTALL)
_ESCAPED = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f", b"\n": b"", b"\r": b"", b"\r\n": b""}
_BRACKET = re.compile(rb"\\.|[()]", re.DOTALL)
_LEADING_NUMBER = re.compile(rb"[-+]?\d*\.?\d*")
_HEX_ESCAPE = re.compile(rb"#([0-9A-Fa-f]{2})")
_END_OF_PICTURE = re.compile(rb"(?<=[\s\x00>])EI(?=[\s\x00]|$)")
LOST = b""
"""Given at the end of a stream that could not be followed all the way: an array, a string or a picture in it has no end."""
_LETTER = re.compile(rb"[A-Za-z]")
_CONSTANTS = {b"true": True, b"false": False, b"null": None}


class Name(str):
    """A name such as ``/F1``, kept apart from strings."""

    __slots__ = ()


class Picture(dict[str, Any]):
    """Dictionary of a picture that lies in the content stream itself; its bytes are skipped."""


def operations(content: bytes) -> Iterator[tuple[bytes, list[Any]]]:
    """Operators with their operands, in order.

    Args:
        content: The page's content streams, joined by line ends.

    Yields:
        The operator and the operands before it: numbers as floats, strings as bytes, arrays as lists; ``LOST`` last where a part makes no sense.
    """
    operands = _Operands()
    position, next_token = 0, _TOKEN.match
    while match := next_token(content, position):
        kind, position = match.lastindex or 0, match.end()
        if kind == _NUMBER:
            operands.values.append(float(match[10]))
        elif kind == _PAIR:
            yield match[3], [float(match[1]), float(match[2])]
        elif kind == _SIX:
            yield match[9], [float(match[1]), float(match[2]), float(match[4]), float(match[5]), float(match[7]), float(match[8])]
        elif kind == _BOX:
            yield b"re", [float(match[1]), float(match[2]), float(match[4]), float(match[5])]
        elif kind != _OPERATOR:
            position = operands.take(kind, match, position)
        elif operands.nested or match[11] in _CONSTANTS:
            operands.take_word(match[11], position)
        elif match[11] == b"ID":
            yield b"EI", [Picture(_map(operands.all()))]
            position = operands.after_picture(content, position)
        else:
            yield match[11], operands.all()
    if operands.nested or (operands.lost and _LETTER.search(content, operands.lost)):
        yield LOST, []


class _Operands:
    """Values before an operator, in as many nested arrays and dictionaries as are open."""

    def __init__(self) -> None:
        self.values: list[Any] = []
        self.nested: list[list[Any]] = []
        self.lost = 0

    def all(self) -> list[Any]:
        """Give the values away and begin anew."""
        values, self.values = self.values, []
        return values

    def lose(self, position: int) -> None:
        """Note where the stream stopped making sense; what follows the last operator is no loss."""
        self.lost = self.lost or position

    def take_word(self, word: bytes, position: int) -> None:
        """Take a word that stands for a value; among values no other word makes sense."""
        if word in _CONSTANTS:
            self.values.append(_CONSTANTS[word])
        else:
            self.lose(position - len(word))

    def take(self, kind: int, match: re.Match[bytes], position: int) -> int:
        """Take a value that is no plain number, and say where the next token begins."""
        if kind in _VALUES:
            self.values.extend(_VALUES[kind](match[kind]))
        elif kind in (_OPEN, _OPEN_MAP):
            self.nested.append(self.values)
            self.values = []
        elif kind in (_CLOSE, _CLOSE_MAP) and self.nested:
            inner, self.values = self.values, self.nested.pop()
            self.values.append(inner if kind == _CLOSE else _map(inner))
        elif kind == _BRACKETED:
            position = self._take_bracketed(match.string, position)
        elif kind == _SENSELESS:
            self.lose(position)
        return position

    def _take_bracketed(self, content: bytes, start: int) -> int:
        """Take a string with brackets inside, and say where it ends."""
        depth = 1
        for match in _BRACKET.finditer(content, start):
            depth += {b"(": 1, b")": -1}.get(match[0], 0)
            if not depth:
                self.values.append(_ESCAPE.sub(_unescape, content[start : match.start()]))
                return match.end()
        self.lose(start)
        return len(content)

    def after_picture(self, content: bytes, start: int) -> int:
        """Where the operator that ends a picture's bytes ends."""
        match = _END_OF_PICTURE.search(content, start)
        if match is None:
            self.lose(start)
        return match.end() if match else len(content)


def _unescape(match: re.Match[bytes]) -> bytes:
    code = match[1]
    if code[:1].isdigit() and code[0] < 56:
        return bytes((int(code, 8) & 255,))
    return _ESCAPED.get(code, code)


def _string(raw: bytes) -> tuple[bytes]:
    return (_ESCAPE.sub(_unescape, raw) if b"\\" in raw else raw,)


def _from_hex(digits: bytes) -> tuple[bytes]:
    digits = b"".join(digits.split())
    return (bytes.fromhex((digits + b"0" if len(digits) % 2 else digits).decode()),)


def _name(raw: bytes) -> tuple[Name]:
    if b"#" in raw:
        raw = _HEX_ESCAPE.sub(lambda match: bytes.fromhex(match[1].decode()), raw)
    return (Name(raw.decode("utf-8", "replace")),)


def _map(inner: list[Any]) -> dict[str, Any]:
    return {str(key): value for key, value in zip(inner[::2], inner[1::2], strict=False)}


def _odd_number(raw: bytes) -> tuple[float, ...]:
    """What starts like a number: the part that is one, as lenient readers take it."""
    match = _LEADING_NUMBER.match(raw)
    try:
        return (float(match[0]),) if match else ()
    except ValueError:
        return ()


_VALUES: dict[int, Callable[[bytes], tuple[Any, ...]]] = {_STRING: _string, _HEX: _from_hex, _NAME: _name, _ODD_NUMBER: _odd_number}
"""How the text of a token becomes values."""

"""Frames between a parent and its child: four bytes of length, then so many bytes."""

import os
import struct

_LENGTH = struct.Struct("!I")
_PIECE = 1 << 18


class FrameError(Exception):
    """A frame is longer than is taken, or the other side went away in the middle of one."""


class TooLongError(FrameError):
    """A frame announces more bytes than are taken.

    Args:
        announced: How many it announces. [byte]
        most: How many are taken. [byte]
    """

    def __init__(self, *, announced: int, most: int) -> None:
        super().__init__(f"{announced} bytes announced, {most} are taken")


def framed(content: bytes) -> bytes:
    """Put the length before some bytes."""
    return _LENGTH.pack(len(content)) + content


def send(descriptor: int, content: bytes) -> None:
    """Write one frame.

    Args:
        descriptor: An open socket or pipe.
        content: What to send.

    Raises:
        OSError: The other side is gone.
    """
    rest = memoryview(framed(content))
    while rest:
        rest = rest[os.write(descriptor, rest[:_PIECE]) :]


def receive(descriptor: int, *, most: int) -> bytes:
    """Read one frame.

    Args:
        descriptor: An open socket or pipe.
        most: The longest content that is taken. [byte]

    Returns:
        The content.

    Raises:
        FrameError: The frame is too long, or ends early.
        OSError: The descriptor cannot be read.
    """
    (length,) = _LENGTH.unpack(_exactly(descriptor, _LENGTH.size))
    if length > most:
        raise TooLongError(announced=length, most=most)
    return _exactly(descriptor, length)


def _exactly(descriptor: int, count: int) -> bytes:
    content = bytearray()
    while len(content) < count:
        piece = os.read(descriptor, min(_PIECE, count - len(content)))
        if not piece:
            raise FrameError(f"ended after {len(content)} of {count} bytes")
        content += piece
    return bytes(content)

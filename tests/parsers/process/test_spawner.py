"""Where the system cannot fork, each document gets a program of its own: slower, and no less safe where the system has limits."""

import escape_attempts
import misbehaviour
import pytest
from test_one_document import READ, pdf

from parsers.process import read_document, starting
from parsers.process.job import Job
from parsers.process.limits import MEBIBYTE, Limits
from parsers.process.spawner import Spawner


@pytest.fixture(autouse=True)
def _cannot_fork(monkeypatch):
    """A system that cannot fork."""
    monkeypatch.setattr(starting, "can_fork", lambda: False)
    monkeypatch.setattr(starting, "_running", None)


def asked(function):
    """What came of a function of the stand-ins."""
    limits = Limits(memory_bytes=512 * MEBIBYTE, processor_s=15)
    return Spawner().ask(Job(task=f"{function.__module__}:{function.__name__}", data=b"12345", limits=limits))


def test_a_document_is_read_by_a_program_of_its_own():
    """The caller sees no difference."""
    assert isinstance(starting.start(), Spawner)
    assert read_document("a.pdf", pdf(), function=READ).part == "PART OF a.pdf"


@pytest.mark.parametrize(("behave", "words"), [("abort", "SIGABRT"), ("leave", "without an answer"), ("error", "RuntimeError")])
def test_a_program_that_fails_gives_a_refusal(behave, words):
    """As with the fork server."""
    assert words in read_document("bad.pdf", pdf(behave), function=READ).refused.detail


def test_an_escape_is_stopped_as_well():
    """The jail does not depend on how the child was born."""
    outcome = asked(escape_attempts.read_a_file_of_the_system)
    if outcome.isolation["landlock"] != "on":
        pytest.skip(f"this kernel offers less: {outcome.isolation}")

    assert outcome.fault == "PermissionError"


def test_a_program_that_hangs_is_ended(monkeypatch):
    """By the clock."""
    monkeypatch.setattr(Limits, "wall_s", property(lambda _: 3))
    outcome = asked(misbehaviour.sleep_without_a_word)

    assert outcome.overdue
    assert outcome.answer is None

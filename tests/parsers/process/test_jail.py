"""The jail stops what reading does not need, and lets reading work."""

import escape_attempts as attempts
import pytest

from parsers.process import jail
from parsers.process.job import Job, Outcome
from parsers.process.libc import LIBC
from parsers.process.limits import MEBIBYTE, Limits
from parsers.process.starting import start

NARROW = Limits(memory_bytes=512 * MEBIBYTE, processor_s=5)
STOPPED = [
    attempts.read_a_file_of_the_system,
    attempts.read_a_file_of_this_user,
    attempts.list_a_folder,
    attempts.write_a_file,
    attempts.delete_a_file,
    attempts.connect_by_tcp,
    attempts.send_by_udp,
    attempts.speak_to_a_local_service,
    attempts.start_a_program,
    attempts.fork,
    attempts.signal_the_parent,
    attempts.signal_everybody,
    attempts.look_into_the_parent,
    attempts.trace_the_parent,
    attempts.raise_the_memory_limit,
    attempts.raise_the_time_limit,
    attempts.leave_the_jail,
    attempts.make_memory_with_a_name,
    attempts.open_many_files,
    attempts.take_much_memory,
]
WORKING = [attempts.start_a_thread, attempts.read_a_library_file, attempts.map_memory, attempts.name_its_modules]
TOLD_OTHERWISE = {
    attempts.open_many_files: "OSError",
    attempts.take_much_memory: "MemoryError",
    # Why: Python tells the kernel's "not permitted" in this way.
    attempts.raise_the_memory_limit: "ValueError",
}

needs_the_whole_jail = pytest.mark.skipif(LIBC is None, reason="needs Linux with Landlock and seccomp")


def tried(attempt, *, jailed=True) -> Outcome:
    """Let a child make an attempt."""
    return start().ask(Job(task=f"{attempt.__module__}:{attempt.__name__}", data=b"", limits=NARROW, jailed=jailed))


@needs_the_whole_jail
@pytest.mark.parametrize("attempt", STOPPED, ids=lambda attempt: attempt.__name__)
def test_an_escape_is_stopped(attempt):
    """The kernel answers with an error of permission, or of the limit that was reached."""
    outcome = tried(attempt)
    if any(outcome.isolation[step] != jail.ON for step in jail.CORE_STEPS):
        pytest.skip(f"this kernel offers less: {outcome.isolation}")

    assert outcome.answer is None
    assert outcome.fault == TOLD_OTHERWISE.get(attempt, "PermissionError")


@pytest.mark.parametrize(
    "attempt",
    [attempts.read_a_file_of_the_system, attempts.connect_by_tcp, attempts.send_by_udp, attempts.signal_the_parent, attempts.make_memory_with_a_name],
    ids=lambda attempt: attempt.__name__,
)
def test_the_same_attempt_succeeds_outside_the_jail(attempt):
    """It is the jail that stops it, not a mistake in the attempt."""
    assert tried(attempt, jailed=False).answer == attempts.HAPPENED


@pytest.mark.parametrize("attempt", WORKING, ids=lambda attempt: attempt.__name__)
def test_what_libraries_need_works_in_the_jail(attempt):
    """Threads, library files and memory are there."""
    assert tried(attempt).answer == b"works"


def test_a_child_does_not_see_the_parents_environment():
    """A secret that the service was started with stays with it."""
    assert tried(attempts.find_secrets_in_the_environment).answer == b"none"


def test_every_step_says_on_or_why_not():
    """What was achieved is kept in words, step by step."""
    isolation = tried(attempts.start_a_thread).isolation

    assert set(isolation) >= jail.CORE_STEPS
    assert all(isolation.values())


def test_isolation_is_reduced_when_a_core_step_is_missing():
    """Namespaces may be missing; Landlock may not."""
    whole = dict.fromkeys(jail.CORE_STEPS, jail.ON)

    assert not jail.is_reduced(whole | {"namespaces": "Operation not permitted"})
    assert jail.is_reduced(whole | {"landlock": "Function not implemented"})
    assert jail.is_reduced({})


def test_a_step_that_fails_is_named_with_its_reason(monkeypatch):
    """One refusal of the kernel does not keep the other steps from being tried."""

    def refuse() -> None:
        raise OSError("Function not implemented")

    monkeypatch.setattr(jail, "_steps", lambda _: {"landlock": refuse, "seccomp": lambda: None})

    assert jail.enter(NARROW) == {"landlock": "Function not implemented", "seccomp": jail.ON}

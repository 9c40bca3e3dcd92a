"""The fork server: one thread, a child a job, and an end that the asker hears of whatever happens."""

import os
import signal
import threading
import time
from pathlib import Path

import misbehaviour
import pytest

from parsers.process.fork_server import ForkServer, ForkServerError
from parsers.process.job import Job
from parsers.process.limits import MEBIBYTE, Limits
from parsers.process.starting import start

ROOMY = Limits(memory_bytes=1024 * MEBIBYTE, processor_s=10)


@pytest.fixture
def server():
    """A server of the test's own."""
    server = ForkServer((misbehaviour.__name__,))
    yield server
    server.close()


def job(task, data=b"", *, limits=ROOMY, jailed=True, **arguments) -> Job:
    """A job for a function of the stand-ins."""
    return Job(task=f"{misbehaviour.__name__}:{task.__name__}", data=data, limits=limits, arguments=arguments, jailed=jailed)


def test_document_and_answer_arrive_whole(server):
    """Megabytes pass in both directions."""
    document = os.urandom(3 << 20)

    assert server.ask(job(misbehaviour.say_what_was_given, document, times=2)).answer == document * 2


def test_the_server_has_one_thread_though_its_asker_has_several(server):
    """A process that forks with threads may leave locks held in the child for ever."""
    waiting = threading.Event()
    threads = [threading.Thread(target=waiting.wait) for _ in range(3)]
    for thread in threads:
        thread.start()
    try:
        outcome = server.ask(job(misbehaviour.count_threads, jailed=False))
        own = list(Path(f"/proc/{server.pid}/task").iterdir()) if Path("/proc/self/task").is_dir() else [None]
    finally:
        waiting.set()
        for thread in threads:
            thread.join()

    assert len(own) == 1
    assert outcome.answer in (b"1", None)


def test_the_preloaded_modules_start_no_thread():
    """Neither the PDF libraries nor what they bring along may start one in the process that forks."""
    server = start()
    server.ask(job(misbehaviour.say_what_was_given, b"", times=1))
    if not Path("/proc/self/task").is_dir():
        pytest.skip("needs /proc to count another process's threads")

    assert len(list(Path(f"/proc/{server.pid}/task").iterdir())) == 1


def test_several_threads_ask_at_the_same_time(server):
    """Four children that wait for half a second each overlap."""
    server.ask(job(misbehaviour.say_what_was_given, b"", times=1))
    answers = []
    threads = [threading.Thread(target=lambda: answers.append(server.ask(job(misbehaviour.wait_a_moment)).answer)) for _ in range(4)]
    began = time.monotonic()
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert answers == [b"done"] * 4
    assert time.monotonic() - began < 1.8


def test_an_answer_that_is_too_long_is_not_taken(server):
    """Eight megabytes are the most."""
    assert server.ask(job(misbehaviour.answer_too_much)).fault == "AnswerTooLong"


def test_a_child_that_was_taken_over_cannot_fill_the_parents_memory(server):
    """A frame that announces four gigabytes is not waited for, and its child is killed at once."""
    began = time.monotonic()
    outcome = server.ask(job(misbehaviour.take_over_the_answer))

    assert outcome.fault == "AnswerTooLong"
    assert outcome.signal == signal.SIGKILL
    assert not outcome.overdue
    assert time.monotonic() - began < 5


def test_what_a_child_used_is_known(server):
    """Processor time and memory are told for each child."""
    outcome = server.ask(job(misbehaviour.say_what_was_given, b"x" * (5 << 20), times=1))

    assert outcome.peak_bytes > 5 << 20
    assert 0 < outcome.processor_s < 5


def test_a_server_that_is_gone_is_the_programs_fault_not_the_documents():
    """No refusal is made of it."""
    server = ForkServer(())
    os.kill(server.pid, signal.SIGKILL)
    server._process.wait()  # noqa: SLF001  nothing public waits for a death

    with pytest.raises(ForkServerError, match="start the program again"):
        server.ask(job(misbehaviour.wait_a_moment))
    server.close()


def test_a_server_that_died_is_started_again():
    """The next document is read by a new one."""
    first = start()
    os.kill(first.pid, signal.SIGKILL)
    first._process.wait()  # noqa: SLF001  nothing public waits for a death
    second = start()

    assert second.pid != first.pid
    assert second is start()
    assert second.ask(job(misbehaviour.say_what_was_given, b"here", times=1)).answer == b"here"


def test_children_end_with_their_server():
    """A program that stops leaves nobody at work."""
    server = ForkServer((misbehaviour.__name__,))
    outcomes = []

    def ask() -> None:
        try:
            outcomes.append(server.ask(job(misbehaviour.take_over_the_answer)))
        except ForkServerError as error:
            outcomes.append(error)

    server.ask(job(misbehaviour.say_what_was_given, b"", times=1))
    thread = threading.Thread(target=ask)
    thread.start()
    server.close()
    thread.join(10)

    assert len(outcomes) == 1

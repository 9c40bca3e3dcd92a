"""Whatever a document does to its child, the caller gets a sheet or a refusal, and the next document is read."""

import io
import time
from dataclasses import replace

import misbehaviour
import pikepdf
import pytest

from parsers.process import limits, one_document, read_document
from parsers.process.limits import MEBIBYTE, Limits

READ = f"{misbehaviour.__name__}:read"


def pdf(behave: str = "", pages: int = 1) -> bytes:
    """An empty document that tells the stand-in for the reader how to behave."""
    written = io.BytesIO()
    with pikepdf.new() as document:
        for _ in range(pages):
            document.add_blank_page()
        document.save(written, deterministic_id=True)
    return written.getvalue() + b"%" + behave.encode()


@pytest.fixture(autouse=True)
def _short_limits(monkeypatch):
    """Limits that are reached within a test's time."""
    narrow = Limits(memory_bytes=256 * MEBIBYTE, processor_s=1)
    monkeypatch.setattr(one_document, "reading_limits", lambda _: narrow)
    # Why so long: on a busy machine a second of processor time takes several by the clock.
    monkeypatch.setattr(Limits, "wall_s", property(lambda _: 25))


@pytest.fixture
def _impatient(monkeypatch):
    """A child that does nothing is not waited for."""
    monkeypatch.setattr(Limits, "wall_s", property(lambda _: 3))


def test_a_document_is_read_in_a_child():
    """The reader's answer comes back; what the parent knows itself is not taken from the child."""
    sheet = read_document("a.pdf", pdf(pages=3), function=READ)

    assert sheet.part == "PART OF a.pdf"
    assert (sheet.file, sheet.pages, sheet.refused) == ("a.pdf", 3, None)
    assert sheet.reader_version != "child"
    assert len(sheet.sha256) == 64


@pytest.mark.parametrize(
    ("behave", "kind", "words"),
    [
        ("memory", "too_large", "256 MiB"),
        ("processor", "too_slow", "1 s of processor time"),
        ("recursion", "damaged", "RecursionError"),
        ("error", "damaged", "RuntimeError"),
        ("escape", "damaged", "PermissionError"),
        ("abort", "damaged", "SIGABRT"),
        ("crash", "damaged", "SIGSEGV"),
        ("leave", "damaged", "without an answer"),
    ],
)
def test_a_child_that_fails_gives_a_refusal_and_the_next_document_is_read(behave, kind, words):
    """The refusal says what happened, how much was used and what to do; no other document is touched."""
    sheet = read_document("bad.pdf", pdf(behave), function=READ)
    after = read_document("good.pdf", pdf(), function=READ)

    assert sheet.refused is not None
    assert sheet.refused.kind == kind
    assert words in sheet.refused.detail
    assert "read that" in sheet.refused.detail
    assert after.part == "PART OF good.pdf"


@pytest.mark.usefixtures("_impatient")
def test_a_child_that_sleeps_is_killed_at_its_time():
    """A hang without work is ended by the clock."""
    began = time.monotonic()
    sheet = read_document("asleep.pdf", pdf("sleep"), function=READ)

    assert sheet.refused.kind == "too_slow"
    assert "3 s by the clock" in sheet.refused.detail
    assert time.monotonic() - began < 15


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"", "not_a_pdf"),
        (b"<html>%PDF-1.4", "not_a_pdf"),
        (b" %PDF-1.7 with a space before it", "not_a_pdf"),
        (b"%PDF-1.7\n" + b"\0" * (32 << 20), "too_large"),
        (b"%PDF-1.7\nand nothing else", "damaged"),
    ],
    ids=["empty", "web page", "begins late", "33 MB", "torn"],
)
def test_a_file_that_cannot_be_a_datasheet_is_refused_with_its_kind(data, kind):
    """Size and first bytes are looked at before any library sees the file."""
    sheet = read_document("odd.pdf", data, function=READ)

    assert sheet.refused is not None
    assert sheet.refused.kind == kind


def test_a_password_is_asked_for():
    """An encrypted file is refused as such; one with an empty user password is read."""
    secret, open_to_all = io.BytesIO(), io.BytesIO()
    with pikepdf.new() as document:
        document.add_blank_page()
        document.save(secret, encryption=pikepdf.Encryption(user="secret", owner="owner"))
        document.save(open_to_all, encryption=pikepdf.Encryption(user="", owner="owner"))

    assert read_document("secret.pdf", secret.getvalue(), function=READ).refused.kind == "encrypted"
    assert read_document("open.pdf", open_to_all.getvalue(), function=READ).refused is None


def test_the_sheet_says_how_its_reading_was_shut_in():
    """What the jail achieved is kept, and a sheet read without the core of it is flagged."""
    sheet = read_document("a.pdf", pdf(), function=READ)

    assert sheet.isolation
    assert (one_document.REDUCED in sheet.flags) == one_document.jail.is_reduced(sheet.isolation)


def test_a_reading_without_the_jail_is_flagged():
    """The child cannot leave the flag out, nor set it."""
    sheet = one_document._stamped(read_document("a.pdf", pdf(), function=READ), {})  # noqa: SLF001  no public way to have a lesser kernel

    assert sheet.flags == (one_document.REDUCED,)
    assert one_document._stamped(sheet, dict.fromkeys(one_document.jail.CORE_STEPS, "on")).flags == ()  # noqa: SLF001


def test_processor_time_grows_with_the_pages_up_to_a_minute_and_a_half():
    """15 s and 1.5 s a page, 90 s at most; twice that and half a minute by the clock."""
    assert [limits.reading_limits(pages).processor_s for pages in (1, 10, 50, 600)] == [17, 30, 90, 90]
    assert replace(limits.reading_limits(10)).memory_bytes == 1 << 30

"""The main job on real datasheets in a real browser: upload, check, four fields, result, print; the key presses are counted."""

import io

import pdfplumber
import pytest

pytestmark = [pytest.mark.browser, pytest.mark.corpus]

# Six makers: an ordinary sheet, a dual part, a P-channel part, a garbled text layer, a sheet full of bitmaps, a sheet of many pages.
SHEETS = {
    "ordinary": "ir__IRFB3077PbF.pdf",
    "dual": "fairchild__FDS6990A.pdf",
    "P-channel": "diodes__DMP3013SFV.pdf",
    "garbled": "vishay__Si2303DS.pdf",
    "bitmaps": "infineon__IPB020N08N5.pdf",
    "long": "ti__CSD19536KTT.pdf",
}
MOST_PRESSES = 10


@pytest.mark.parametrize("kind", SHEETS)
def test_a_real_sheet_goes_from_upload_to_a_printed_result(kind, shared, bench, page):
    """A stranger's way, with nothing but the file, four fields and the Enter key."""
    page.goto(bench)
    page.set_input_files("#sheet", shared / "corpus" / "pdf" / SHEETS[kind])
    page.get_by_role("button", name="Look up or judge").click()
    page.wait_for_url("**/parts/**", timeout=60_000)
    assert page.locator(".printed").count() >= 6

    for field, value in (("discharge_bank.switches", "6"), ("cells.in_series", "4"), ("claim.continuous", "20")):
        page.locator(f'[name="{field}"]').fill(value)
    page.get_by_role("button", name="Judge a board with this part").click()
    page.wait_for_url("**/results/**")
    assert page.locator(".outcome").first.inner_text() in {"holds", "holds if", "fails", "not determined"}
    assert "Provisional" in page.content()

    assert checked_by_keyboard(page) <= MOST_PRESSES
    assert "Provisional" not in page.content()
    assert "compared with the page by a person" in page.content()

    printed = words_of(page.pdf())
    assert "no certification" in printed.lower() or "not a certificate" in printed.lower()
    assert "How far each limit lies" in printed


def checked_by_keyboard(page) -> int:
    """Compare every value with its crop by pressing Enter, and count the presses up to being back on the result."""
    result = page.url
    page.get_by_role("link", name="Look at").focus()
    presses = 0
    while presses == 0 or page.url != result:
        focused(page)
        with page.expect_navigation():
            page.keyboard.press("Enter")
        presses += 1
        assert presses <= 3 * MOST_PRESSES, "the values never come to an end"
    return presses


def focused(page) -> None:
    """Wait until the page itself has put the focus on a link or a button."""
    for _ in range(50):
        if page.evaluate("document.activeElement.matches('a, button')"):
            return
        page.wait_for_timeout(100)
    pytest.fail("the page puts the focus nowhere: a person would have to search for it")


def words_of(pdf: bytes) -> str:
    """The text of a printed page."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return "\n".join(page.extract_text() for page in document.pages)


def test_a_file_that_is_no_switchs_sheet_is_refused_in_words(shared, bench, page):
    """A resistor-like stranger says what it seems to be, and the way on is there."""
    page.goto(bench)
    page.set_input_files("#sheet", shared / "corpus" / "other" / "slkor__DW01A.pdf")
    page.get_by_role("button", name="Look up or judge").click()
    page.get_by_text("Not read.").wait_for(timeout=60_000)

    assert "It seems to be" in page.content()

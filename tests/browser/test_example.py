"""The invented example in a real browser: on a wide and a narrow window, light and dark, without a complaint of the browser."""

import pytest

pytestmark = pytest.mark.browser


@pytest.fixture(scope="session")
def example(started) -> str:
    """The address of the example's bench."""
    return started("demo")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1180])
def test_no_page_of_the_example_is_wider_than_its_window(example, browser, scheme, width):
    """Nothing has to be pushed sideways, on a phone either."""
    context = browser.new_context(viewport={"width": width, "height": 844}, color_scheme=scheme)
    page = context.new_page()
    page.goto(example)
    links = {link.get_attribute("href") for link in page.locator("main a, nav a").all()}
    assert len(links) > 6

    for path in sorted(links):
        page.goto(example + path)
        assert page.evaluate("document.documentElement.scrollWidth") <= width, path
        assert page.get_by_text("Example data").count() == 1, path
    context.close()


def test_the_example_holds_what_it_promises(example, page):
    """A board that holds, one that holds if, one that fails, and one that cannot be judged yet."""
    page.goto(f"{example}/results/")
    seen = set()
    for path in [link.get_attribute("href") for link in page.locator("main a").all()]:
        page.goto(example + path)
        seen |= {text.strip() for text in page.locator("table .outcome, .verdict .outcome").all_inner_texts()}
    page.goto(example)

    assert {"holds", "holds if", "fails"} <= seen
    assert page.get_by_role("heading", name="Waiting for a datasheet").count() == 1
    assert page.locator("blockquote", has_text="MOSFET datasheet").count() == 1


def test_a_value_that_the_crop_shows_is_boxed_on_its_page(example, page):
    """From the number in a result to its place on the page, by links alone."""
    page.goto(f"{example}/parts/")
    page.locator("main li a").first.click()
    page.locator(".printed a.crop").first.click()

    # Why asked again and again: the content policy forbids the browser to watch for it by itself.
    for _ in range(60):
        if wide := page.locator("figure img").evaluate("image => image.naturalWidth > 600"):
            break
        page.wait_for_timeout(500)
    assert wide


def test_every_picture_of_a_result_is_drawn_and_its_working_shows_the_page(example, page):
    """Pictures and crops are fetched when they come into sight, and none is broken."""
    page.goto(f"{example}/results/")
    page.locator("main a", has_text="Heron").first.click()
    page.locator("#f-2 summary").click()
    pictures = [*page.locator("figure img").all(), page.locator("#f-2 .crop img").first]
    assert len(pictures) == 5

    for picture in pictures:
        picture.scroll_into_view_if_needed()
        # Why asked again and again: the content policy forbids the browser to watch for it by itself.
        for _ in range(60):
            if drawn := picture.evaluate("image => image.complete && image.naturalWidth > 0"):
                break
            page.wait_for_timeout(500)
        assert drawn, picture.get_attribute("src")


def test_a_test_on_the_bench_is_typed_judged_and_shown_beside_the_result_before(example, page):
    """What cannot be taken stays typed; what can leads to a new result that begins at its top."""
    page.goto(f"{example}/results/")
    page.locator("main a", has_text="Kingfisher").first.click()
    page.locator("#heat summary").click()
    page.get_by_label("Case during the test").select_option("closed")
    page.get_by_label("Where the probe sat").select_option("tab")
    page.get_by_label("Air around it").fill("24")
    page.locator("[name='heat.current']").fill("30")
    page.locator("[name='heat.probe']").fill("61 °C to 63 °C")
    page.locator("#heat button").click()

    page.get_by_role("heading", name="Before and after").wait_for()
    assert "measured 61 °C to 63 °C on the tab" in page.locator("main").inner_text()
    assert page.url.endswith("#main")

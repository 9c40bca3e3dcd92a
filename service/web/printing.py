"""A page as a PDF file, made without a browser; the extra ``pdf`` brings what draws it."""

import io
from importlib.util import find_spec

from flask import current_app, render_template, request
from werkzeug.exceptions import NotImplemented as NotHere


def can_print() -> bool:
    """Whether the extra ``pdf`` is installed."""
    return find_spec("weasyprint") is not None


def as_pdf(template: str, **filled: object) -> bytes:
    """Draw a page as it is printed.

    Args:
        template: The page's template.
        filled: What it shows.

    Returns:
        The PDF file.

    Raises:
        NotHere: The extra is not installed, or a library of the system that it draws with is missing.
    """
    try:
        # Why only now: it takes seconds to load, and most people print from the browser.
        from weasyprint import HTML  # noqa: PLC0415
        from weasyprint.urls import URLFetcher, URLFetcherResponse  # noqa: PLC0415
    except ImportError as error:
        raise NotHere("A PDF without a browser needs the extra pdf: pip install '.[pdf]'. The browser prints the same page.") from error
    except OSError as error:
        raise NotHere(f"The extra pdf is here, but a library of the system is not ({error}). The browser prints the same page.") from error

    class OwnPages(URLFetcher):  # type: ignore[misc]  # the library carries no types
        """Fetches what a page shows from this very application, and nothing from anywhere else."""

        def fetch(self, url: str, headers: dict[str, str] | None = None) -> object:
            """Ask our own page."""
            del headers
            if not url.startswith(request.host_url):
                raise ValueError(f"{url} is no page of {request.host_url}")
            path = url.removeprefix(request.host_url.rstrip("/"))
            answer = current_app.test_client().get(path, base_url=request.host_url, buffered=True)
            return URLFetcherResponse(url, io.BytesIO(answer.data), {"Content-Type": answer.content_type}, answer.status_code)

    page = render_template(template, **filled)
    return bytes(HTML(string=page, base_url=request.url, url_fetcher=OwnPages()).write_pdf())

"""What every answer carries and every request is held to: host, origin, forms and headers."""

from flask import Flask, Response, request
from flask_wtf import CSRFProtect
from werkzeug.exceptions import Forbidden

LOOPBACK = ("127.0.0.1", "localhost", "[::1]")

# Why so narrow: all style, pictures and forms are our own files; a sheet's text can bring none of its own.
CONTENT_POLICY = "default-src 'none'; style-src 'self'; img-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

HEADERS = {
    "Content-Security-Policy": CONTENT_POLICY,
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}
SAFE_METHODS = {"GET", "HEAD", "OPTIONS"}


def secure(app: Flask) -> None:
    """Hold every request of an application to its host, its origin and its form's token.

    Args:
        app: The application; ``SECRET_KEY`` is set.
    """
    app.config.update(
        TRUSTED_HOSTS=list(LOOPBACK),
        SESSION_COOKIE_HTTPONLY=True,
        SESSION_COOKIE_SAMESITE="Strict",
        MAX_CONTENT_LENGTH=33 * 1024 * 1024,
        MAX_FORM_MEMORY_SIZE=500_000,
        MAX_FORM_PARTS=500,
        # Why no end: a form that lay open over night must not lose what was typed; the token still dies with the session.
        WTF_CSRF_TIME_LIMIT=None,
    )
    # Why in this order: a foreign site is told so, before its form's token is looked at.
    app.before_request(refuse_foreign_origin)
    CSRFProtect(app)
    app.after_request(add_headers)


def refuse_foreign_origin() -> None:
    """Refuse a change that another site's page asks for.

    Raises:
        Forbidden: The request names an origin that is not the host it was sent to.
    """
    origin = request.headers.get("Origin")
    # Why "null" passes to the token check: a browser sends it for a page without referrer; the token still guards it.
    if request.method not in SAFE_METHODS and origin not in (None, "null", request.host_url.rstrip("/")):
        raise Forbidden(f"This form was sent from {origin}, not from a page of {request.host_url}; open the page here and send it again.")


def add_headers(response: Response) -> Response:
    """Add the headers that a browser obeys, unless the view set its own."""
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    return response

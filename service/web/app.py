"""Make the application that shows the pages."""

from flask import Flask, render_template
from werkzeug.exceptions import HTTPException, NotFound, SecurityError

from service.usecases.review_reading import UnknownReadingError
from service.usecases.see_board import UnknownBoardError
from service.usecases.see_part import UnknownPartError
from service.usecases.see_place import UnknownPlaceError
from service.usecases.see_result import UnknownResultError
from service.web import bench, boards, parts, results, sheets, words
from service.web.desk import KEY, Desk
from service.web.security import secure


def create_app(desk: Desk, *, secret_key: str) -> Flask:
    """Make the application.

    Args:
        desk: What the pages work with.
        secret_key: Signs forms and sessions; kept in the data folder, never in the code.
    """
    app = Flask(__name__)
    app.config["SECRET_KEY"] = secret_key
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.extensions[KEY] = desk
    secure(app)
    for subject in (bench, sheets, parts, boards, results):
        app.register_blueprint(subject.bp)
    app.jinja_env.filters.update(words.FILTERS)
    app.context_processor(lambda: {"example_data": desk.example_data})
    app.register_error_handler(HTTPException, show_error)
    for unknown in (UnknownBoardError, UnknownPartError, UnknownPlaceError, UnknownReadingError, UnknownResultError):
        app.register_error_handler(unknown, lambda error: show_error(NotFound(str(error))))
    return app


def show_error(error: HTTPException) -> tuple[str, int]:
    """Say what went wrong, and what to do."""
    if isinstance(error, SecurityError):
        # Why without a page: no address of ours can be made for a host that is not ours.
        return "These pages answer on this machine's own names alone: 127.0.0.1, ::1 or localhost.\n", 400
    return render_template("error.html", name=error.name, description=error.description), error.code or 500

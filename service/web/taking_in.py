"""Take a dropped file in: it is kept before anybody reads it, and read behind the page."""

from werkzeug.datastructures import FileStorage

from service.usecases.keep_sheet import take_in as keep
from service.web.desk import desk


def take_in(upload: FileStorage) -> str:
    """Keep an uploaded file and have it read, unless it was read before.

    Args:
        upload: The file as the browser sent it.

    Returns:
        Its SHA-256.
    """
    taken = keep(upload.filename or "", upload.stream.read(), store=desk().store, change=desk().change("dropped on a page"))
    if not taken.known:
        desk().read_later(taken.document.sha256)
    return taken.document.sha256

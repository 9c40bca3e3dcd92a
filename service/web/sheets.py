"""Datasheets: how far a file's reading has come, its pages, and the crops that prove a number."""

from flask import Blueprint, Response, flash, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as Answer

from service.usecases.link_sheet import link_sheet
from service.usecases.name_part import NoNameError
from service.usecases.see_place import document_of, entry_of, page_picture, row_crop
from service.usecases.see_sheet import see_sheet
from service.web import carried
from service.web.desk import desk
from service.web.taking_in import take_in

bp = Blueprint("sheets", __name__, url_prefix="/sheets")

# Why for ever: a file never changes, and a reading's place belongs to it; a corrected place gets a reading of its own.
FOR_EVER = "private, max-age=31536000, immutable"


@bp.post("/")
def upload() -> Answer:
    """Keep a datasheet and begin to read it."""
    sheet = request.files.get("sheet")
    if not sheet or not sheet.filename:
        return redirect(url_for("bench.show"), 303)
    return redirect(url_for("sheets.show", sha256=take_in(sheet), **carried.of(request.form)), 303)


@bp.get("/<sha256>")
def show(sha256: str) -> str | Answer:
    """Show how far the reading has come; a sheet whose part is clear leads on to it."""
    view = see_sheet(desk().store, sha256=sha256)
    if view.main and "stay" not in request.args:
        return redirect(url_for("parts.show", key=view.main.key, **carried.of(request.args)), 303)
    return render_template("sheets/show.html", document=view.document, sheet=view.sheet, parts=view.parts, carried=carried.of(request.args))


@bp.post("/<sha256>/again")
def read_again(sha256: str) -> Answer:
    """Read a kept file again."""
    desk().read_later(document_of(desk().store, sha256).sha256)
    return redirect(url_for("sheets.show", sha256=sha256), 303)


@bp.post("/<sha256>/part")
def link(sha256: str) -> Answer:
    """Take a person's word for which part the sheet is of."""
    marking = request.form.get("marking", "")
    try:
        part = link_sheet(
            document_of(desk().store, sha256).sha256,
            marking=marking,
            store=desk().store,
            markings=desk().markings,
            change=desk().change("said on the sheet's page"),
        )
    except NoNameError as error:
        flash(str(error))
        return redirect(url_for("sheets.show", sha256=sha256, **carried.of(request.form)), 303)
    return redirect(url_for("parts.show", key=part.key, **carried.of(request.form)), 303)


@bp.get("/<sha256>/file")
def download(sha256: str) -> Response:
    """Hand the file out, never into the browser's own viewer."""
    document = document_of(desk().store, sha256)
    answer = Response(desk().store.files.get(sha256), mimetype="application/pdf")
    answer.headers.set("Content-Disposition", "attachment", filename=document.name)
    answer.headers["Content-Security-Policy"] = "default-src 'none'; sandbox"
    return answer


@bp.get("/<sha256>/pages/<int:number>")
def page(sha256: str, number: int) -> str:
    """Show a page with a number boxed."""
    reading_id = request.args.get("reading")
    return render_template(
        "sheets/page.html",
        document=document_of(desk().store, sha256),
        number=number,
        entry=entry_of(desk().store, reading_id) if reading_id else None,
    )


@bp.get("/<sha256>/pages/<int:number>.png")
def picture(sha256: str, number: int) -> Response:
    """Render a page."""
    return png(page_picture(desk().store, desk().cropper, sha256=sha256, page=number, reading_id=request.args.get("reading")))


@bp.get("/crops/<reading_id>.png")
def crop(reading_id: str) -> Response:
    """Render the row that a value stands in."""
    return png(row_crop(desk().store, desk().cropper, reading_id=reading_id))


def png(data: bytes) -> Response:
    """A picture that never changes."""
    return Response(data, mimetype="image/png", headers={"Cache-Control": FOR_EVER})

"""Parts: which part is this, what does its sheet say, and did we read it right?"""

from collections.abc import Callable, Mapping

from flask import Blueprint, flash, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as Answer

from service.facts.keeping_error import MovedOnError
from service.facts.part import NameKind
from service.formats.errors import UnitError
from service.usecases.compare_revisions import Difference, compare_revisions
from service.usecases.look_up_marking import Candidate, look_up_marking
from service.usecases.name_part import NoNameError, name_part
from service.usecases.package_contradiction import package_contradiction
from service.usecases.review_reading import NothingCorrectedError, confirm, correct, reject
from service.usecases.see_bench import see_parts
from service.usecases.see_part import see_part
from service.usecases.type_part import CannotTypeError, type_part
from service.usecases.wait_for_sheet import NoMarkingError, search_phrase, stop_waiting, wait_for_sheet
from service.web import carried
from service.web.desk import desk
from service.web.forms.board import FOUR
from service.web.forms.typed_part import FIELDS, switch_of

bp = Blueprint("parts", __name__, url_prefix="/parts")


@bp.get("/")
def index() -> str:
    """Look a marking up, or list every part."""
    marking, package = request.args.get("marking", "").strip(), request.args.get("package", "").strip()
    store, markings = desk().store, desk().markings
    candidates = look_up_marking(marking, store=store, markings=markings) if marking else ()
    return render_template(
        "parts/index.html",
        marking=marking,
        package=package,
        pins=request.args.get("pins", ""),
        candidates=[(candidate, contradiction(candidate)) for candidate in candidates],
        phrase=search_phrase(marking, markings=markings, package=package, pins=pins_seen()) if marking else "",
        parts=() if marking else see_parts(store),
        carried=carried.of(request.args),
    )


@bp.get("/<key>")
def show(key: str) -> str:
    """Show a part: its printed values beside their crops, and where it was met."""
    view = see_part(desk().store, marking=key)
    return render_template(
        "parts/show.html", view=view, differences=changes(view.part.sheets), three=FOUR[1:], carried=request.args, back=request.path
    )


@bp.post("/readings/confirm")
def confirm_values() -> Answer:
    """Take a person's word that the page says so, of each number that they were shown."""
    change = desk().change("the page says so")
    for seen in request.form.getlist("seen"):
        reading_id, _, version = seen.rpartition(" ")
        try:
            confirm(reading_id, version=int(version) if version.isdecimal() else -1, store=desk().store, change=change)
        except MovedOnError as error:
            flash(str(error))
    return redirect(back_to(), 303)


@bp.post("/readings/<reading_id>/correct")
def correct_value(reading_id: str) -> Answer:
    """Take what a person read on the page instead."""
    change = desk().change(request.form.get("why", "").strip() or "the page says something else")
    written = request.form.get("written", "")
    return settled(lambda: correct(reading_id, written=written, version=version_seen(), store=desk().store, change=change))


@bp.post("/readings/<reading_id>/reject")
def reject_value(reading_id: str) -> Answer:
    """Take a person's word that this value is not what it was taken for."""
    change = desk().change(request.form.get("why", "").strip() or "the page does not say this")
    return settled(lambda: reject(reading_id, version=version_seen(), store=desk().store, change=change))


@bp.post("/<key>/names")
def add_name(key: str) -> Answer:
    """Give a part another name."""
    name, kind = request.form.get("name", ""), NameKind(request.form.get("kind", NameKind.TOP_MARKING))
    try:
        name_part(key, name=name, kind=kind, store=desk().store, markings=desk().markings, change=desk().change("named on the part's page"))
    except NoNameError as error:
        flash(str(error))
    return redirect(url_for("parts.show", key=key), 303)


@bp.post("/want")
def want() -> Answer:
    """Put a marking on the list of those that wait for a datasheet."""
    marking, package = request.form.get("marking", ""), request.form.get("package", "")
    try:
        wait_for_sheet(
            marking, store=desk().store, markings=desk().markings, change=desk().change("no datasheet yet"), package=package, pins=pins_seen()
        )
    except NoMarkingError as error:
        flash(str(error))
    return redirect(url_for("bench.show"), 303)


@bp.post("/came")
def came() -> Answer:
    """Take a person's word that a marking waits no longer: one of the parts was meant, or nobody wants it any more."""
    stop_waiting(request.form.get("marking", ""), store=desk().store)
    key = request.form.get("key")
    return redirect(url_for("parts.show", key=key) if key else url_for("bench.show"), 303)


@bp.get("/type")
def typing() -> str:
    """Show the form for a part without a sheet."""
    return typing_page(request.args, {}, [])


@bp.post("/type")
def type_in() -> Answer | tuple[str, int]:
    """Keep a part as typed; every field keeps its text when something is wrong."""
    marking = request.form.get("marking", "").strip()
    switch, errors = switch_of(marking, request.form)
    if switch is None:
        return typing_page(request.form, errors, []), 400
    try:
        part = type_part(switch, store=desk().store, markings=desk().markings, change=desk().change("typed without a sheet"))
    except CannotTypeError as error:
        return typing_page(request.form, {}, [str(error)]), 400
    return redirect(url_for("parts.show", key=part.key, **carried.of(request.form)), 303)


def settled(act: Callable[[], object]) -> Answer:
    """Do what a person decided about a value and go back to where they looked; say so when it cannot be done."""
    try:
        act()
    except (MovedOnError, NothingCorrectedError, UnitError) as error:
        flash(str(error))
    return redirect(back_to(), 303)


def back_to() -> str:
    """The page that the form came from: a path of ours, never another site's."""
    path = request.form.get("back", "")
    return path if path.startswith("/") and not path.startswith(("//", "/\\")) else url_for("bench.show")


def version_seen() -> int:
    """The version of a value that the person looked at."""
    return request.form.get("version", -1, type=int)


def pins_seen() -> int | None:
    """Pins as counted, where they were."""
    pins = request.values.get("pins", None, type=int)
    return pins if pins and 0 < pins < 1000 else None


def contradiction(candidate: Candidate) -> str | None:
    """What does not fit between the package seen and the sheet's."""
    sheet = see_part(desk().store, marking=candidate.part.key).sheets
    printed = sheet[0].sheet.package if sheet and sheet[0].sheet else None
    return package_contradiction(seen_package=request.args.get("package") or None, seen_pins=pins_seen(), sheet_package=printed)


def changes(sheets: tuple[str, ...]) -> tuple[Difference, ...]:
    """What differs between the two latest sheets of a part."""
    return compare_revisions(sheets[1], sheets[0], store=desk().store) if len(sheets) > 1 else ()


def typing_page(values: Mapping[str, str], errors: dict[str, str], problems: list[str]) -> str:
    """The form with what was typed."""
    return render_template(
        "parts/typing.html",
        marking=values.get("marking", ""),
        values=values,
        errors=errors,
        problems=problems,
        fields=FIELDS,
        carried=carried.of(values),
    )

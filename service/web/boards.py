"""Packs, the board half: its switch banks as a small circuit, what is known of it, and its results."""

from flask import Blueprint, Response, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as Answer

from service.derating.wanted import wanted
from service.facts.board import Bank, Board, Port
from service.facts.cautions import BEFORE_OPENING
from service.formats.board import read_board
from service.formats.errors import BoardError
from service.usecases.edit_board import edited
from service.usecases.judge_and_keep import judge_and_keep, short_title
from service.usecases.refusals import CannotJudgeError
from service.usecases.see_board import see_board
from service.usecases.see_progress import see_progress
from service.web.desk import desk
from service.web.forms.board import FIELDS, FOUR, GROUPS, document_of, values_of
from service.web.pictures.circuit import DrawnBank, circuit_svg, circuit_words
from service.web.pictures.drawing import svg
from service.web.words import amount

# Why four: the engine rounds a threshold to the safe side at four digits, and a shorter one might lie on the other.
ALL_DIGITS = 4

bp = Blueprint("boards", __name__, url_prefix="/boards")


@bp.get("/")
def index() -> str:
    """List the boards."""
    return render_template("boards/index.html", boards=see_progress(desk().store))


@bp.get("/new")
def new() -> str:
    """Show an empty form, with what was already typed elsewhere."""
    return form_page({"discharge_bank.part": request.args.get("part", ""), **request.args}, opened=True)


@bp.get("/<slug>")
def show(slug: str) -> str:
    """Show a board."""
    view = see_board(desk().store, slug=slug)
    known = [(field.label, values[field.key]) for values in (values_of(view.document),) for field in FIELDS if field.key in values]
    return render_template(
        "boards/show.html",
        board=view.kept,
        known=known,
        results=view.results,
        circuit_words=circuit_words(*banks(view.board), common_port=view.board.port is Port.COMMON),
        opening_cautions=BEFORE_OPENING,
    )


@bp.get("/<slug>/edit")
def edit(slug: str) -> str:
    """Show a board's form as last written."""
    view = see_board(desk().store, slug=slug)
    return form_page(values_of(view.document), slug=slug, title=view.kept.title, opened=True)


@bp.post("/")
def judge() -> Answer | tuple[str, int]:
    """Judge what the form says; with a problem, every field keeps what was typed."""
    slug, title = request.form.get("slug") or None, request.form.get("title", "").strip()
    try:
        document = document_of(request.form)
        if slug:
            document = edited(slug, document, asked={field.key for field in FIELDS}, store=desk().store)
        named = title or short_title(document)
        result = judge_and_keep(document, title=named, store=desk().store, change=desk().change("judged on the board's page"), slug=slug)
    except BoardError as error:
        errors = {problem.key: f"{problem.why}; allowed: {problem.allowed}" for problem in error.problems}
        return form_page(request.form, errors=errors, slug=slug or "", title=title, problems=[str(p) for p in error.problems], opened=True), 400
    except CannotJudgeError as error:
        return form_page(request.form, slug=slug or "", title=title, problems=[str(error)], opened=True), 400
    return redirect(url_for("results.show", result_id=result.id), 303)


@bp.get("/<slug>/circuit.svg")
def circuit(slug: str) -> Response:
    """Draw the switch banks with their counts."""
    board = see_board(desk().store, slug=slug).board
    return svg(circuit_svg(*banks(board), cells=board.cells.in_series, common_port=board.port is Port.COMMON))


@bp.get("/<slug>/board.toml")
def file(slug: str) -> Response:
    """Hand out the board as a file for the command line."""
    kept = see_board(desk().store, slug=slug).kept
    answer = Response(kept.text, mimetype="application/toml")
    answer.headers.set("Content-Disposition", "attachment", filename=f"{slug}.toml")
    return answer


@bp.get("/needed")
def needed() -> str | tuple[str, int]:
    """Say what the part would have to be."""
    values = {field.key: request.args.get(field.key, "").strip() for field in FOUR[1:]}
    page = {"three": FOUR[1:], "values": values}
    if not all(values.values()):
        return render_template("boards/needed.html", errors={}, problems=[], needed=[], **page)
    try:
        part = wanted(read_board(document_of({**values, "discharge_bank.part": "wanted"})))
    except BoardError as error:
        errors = {problem.key: f"{problem.why}; allowed: {problem.allowed}" for problem in error.problems}
        return render_template("boards/needed.html", errors=errors, problems=[], needed=[], **page), 400
    voltage = f"Rated for at least {amount(part.drain_voltage_v, 'V', ALL_DIGITS)} from drain to source."
    if part.on_resistance_ohm is None:
        carried = "No on-resistance is small enough: the claimed current does not hold with this many switches and assumed cooling."
    else:
        carried = (
            f"At most {amount(part.on_resistance_ohm, 'ohm', ALL_DIGITS)} guaranteed at 10 V gate voltage and 25 °C, "
            f"with a junction that may reach {amount(part.junction_max_c, 'degC')}."
        )
    return render_template("boards/needed.html", errors={}, problems=[], needed=[voltage, carried], **page)


def banks(board: Board) -> tuple[DrawnBank, DrawnBank]:
    """Both banks as they are drawn."""
    return drawn("discharge", board.discharge_bank), drawn("charge", board.charge_bank)


def drawn(name: str, bank: Bank) -> DrawnBank:
    """One bank as it is drawn."""
    return DrawnBank(name=name, part=(bank.part or bank.switch.marking).removeprefix("typed:"), switches=bank.switches)


def form_page(values: object, **more: object) -> str:
    """The form with what was typed."""
    page = {"errors": {}, "slug": "", "title": "", "problems": [], "opened": False, **more}
    return render_template("boards/edit.html", values=values, four=FOUR, groups=GROUPS, **page)

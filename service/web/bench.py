"""The bench: what should I do next?"""

from flask import Blueprint, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as Answer

from service.facts.cautions import BEFORE_OPENING
from service.formats.errors import BoardError
from service.usecases.judge_and_keep import judge_and_keep, short_title
from service.usecases.look_up_marking import known_part
from service.usecases.see_bench import see_bench
from service.usecases.wait_for_sheet import see_waiting
from service.web import carried
from service.web.desk import desk
from service.web.forms.board import FOUR, document_of
from service.web.taking_in import take_in

bp = Blueprint("bench", __name__)


@bp.get("/")
def show() -> str:
    """Show what lies on the bench."""
    return bench_page({}, {})


@bp.post("/start")
def start() -> Answer | tuple[str, int]:
    """Read a dropped datasheet, look a marking up, or judge when all four fields are filled."""
    values = {field.key: request.form.get(field.key, "").strip() for field in FOUR}
    sheet = request.files.get("sheet")
    if sheet and sheet.filename:
        return redirect(url_for("sheets.show", sha256=take_in(sheet), **carried.of(request.form)), 303)
    marking = values["discharge_bank.part"]
    if not marking:
        return bench_page(values, {"discharge_bank.part": "Type the marking of a switch, or drop its datasheet below."}), 400
    if known_part(marking, store=desk().store) is None or not all(values.values()):
        return redirect(url_for("parts.index", marking=marking, **carried.of(request.form)), 303)
    return judged(values)


def judged(values: dict[str, str]) -> Answer | tuple[str, int]:
    """Judge four filled fields; an error stands beside its field and nothing typed is lost."""
    document = document_of(values)
    try:
        result = judge_and_keep(document, title=short_title(document), store=desk().store, change=desk().change("judged on the bench"))
    except BoardError as error:
        return bench_page(values, {problem.key: f"{problem.why}; allowed: {problem.allowed}" for problem in error.problems}), 400
    return redirect(url_for("results.show", result_id=result.id), 303)


@bp.get("/start-own")
def start_own() -> str:
    """Say how to begin with data of one's own."""
    return render_template("bench/start_own.html")


def bench_page(values: dict[str, str], errors: dict[str, str]) -> str:
    """The bench with what was typed."""
    return render_template(
        "bench/show.html",
        bench=see_bench(desk().store),
        waiting=see_waiting(store=desk().store, markings=desk().markings),
        four=FOUR,
        values=values,
        errors=errors,
        opening_cautions=BEFORE_OPENING,
    )

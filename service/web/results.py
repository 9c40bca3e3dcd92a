"""Results: does it hold, what breaks first, how sure are we?"""

from flask import Blueprint, Response, flash, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as Answer

from service.usecases.judge_again import judge_again, judge_with_measurement
from service.usecases.see_result import see_result, see_results
from service.web.desk import desk
from service.web.pictures.margins import MarginBar, margins_svg
from service.web.words import BANKS, check_name

bp = Blueprint("results", __name__, url_prefix="/results")


@bp.get("/")
def index() -> str:
    """List every result."""
    return render_template("results/index.html", results=see_results(desk().store))


@bp.get("/<result_id>")
def show(result_id: str) -> str:
    """Show one result; the printed report is this page."""
    view = see_result(desk().store, result_id=result_id)
    return render_template("results/show.html", view=view, report=view.report, back=request.path)


@bp.get("/<result_id>/look")
def look(result_id: str) -> str:
    """Show the printed values that wait for a person, one key press each."""
    view = see_result(desk().store, result_id=result_id)
    return render_template("results/look.html", view=view, back=request.path)


@bp.get("/<result_id>/margins.svg")
def margins(result_id: str) -> Response:
    """Draw every margin, the smallest first."""
    findings = [f for f in see_result(desk().store, result_id=result_id).by_margin if f.get("margin") and f["margin"]["worst"] is not None]
    bars = tuple(
        MarginBar(
            label=f"{check_name(f['check'])}, {BANKS.get(f['bank'], f['bank'])}",
            worst=f["margin"]["worst"],
            favourable=f["margin"]["favourable"] or f["margin"]["worst"],
        )
        for f in findings
    )
    return Response(margins_svg(bars), mimetype="image/svg+xml")


@bp.post("/<result_id>/again")
def again(result_id: str) -> Answer:
    """Judge the same board with what is known now."""
    return redirect(url_for("results.show", result_id=judge_again(desk(), result_id=result_id).id), 303)


@bp.post("/<result_id>/measured")
def measured(result_id: str) -> Answer:
    """Judge the same board with one figure measured; both results stay."""
    result = judge_with_measurement(
        desk(), result_id=result_id, key=request.form["key"], value=request.form["value"], instrument=request.form.get("with", "")
    )
    flash("Judged with the measurement. The result before it stays as it was.")
    return redirect(url_for("results.show", result_id=result.id), 303)

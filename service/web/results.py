"""Results: does it hold, what breaks first, how sure are we?"""

from collections.abc import Callable, Mapping

from flask import Blueprint, Response, flash, redirect, render_template, request, url_for
from werkzeug.exceptions import NotFound
from werkzeug.wrappers import Response as Answer

from service.facts.result import Result
from service.formats.errors import BoardError
from service.usecases.judge_and_keep import judge_again, judge_with_measurement
from service.usecases.refusals import CannotJudgeError
from service.usecases.see_progress import see_judged
from service.usecases.see_result import see_result
from service.usecases.take_measurement import take_drop, take_heat_test
from service.web.desk import desk
from service.web.forms.measurement import DROP, HEAT, drop_said, fact_of, heat_said
from service.web.pictures.chain import chain_svg
from service.web.pictures.drawing import svg
from service.web.pictures.margins import MarginBar, margins_svg
from service.web.pictures.surge import surge_svg
from service.web.pictures.temperature import temperature_svg
from service.web.printing import as_pdf, can_print
from service.web.words import BANKS, check_name

bp = Blueprint("results", __name__, url_prefix="/results")


@bp.get("/")
def index() -> str:
    """List every result."""
    return render_template("results/index.html", results=see_judged(desk().store))


@bp.get("/<result_id>")
def show(result_id: str) -> str:
    """Show one result; the printed report is this page."""
    return result_page(result_id)


@bp.get("/<result_id>.pdf")
def show_pdf(result_id: str) -> Response:
    """The same report as a PDF file; its working is printed where it is asked for."""
    view = see_result(desk().store, result_id=result_id)
    return Response(as_pdf("results/show.html", view=view, report=view.report, opened=opened(), typed={}, errors={}), mimetype="application/pdf")


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
    return svg(margins_svg(bars))


@bp.get("/<result_id>/<any(temperature, surge, chain):name>.svg")
def picture(result_id: str, name: str) -> Response:
    """Draw what was kept with the result."""
    report = see_result(desk().store, result_id=result_id).report
    curves = {curve["kind"]: curve for curve in report.get("curves") or []}
    kept, draw = {
        "temperature": (curves.get("temperature_vs_current"), temperature_svg),
        "surge": (curves.get("surge_current_vs_time"), surge_svg),
        "chain": (report.get("thermal_chain"), chain_svg),
    }[name]
    if kept is None:
        raise NotFound("This result was kept without that picture; judge its board again to have it drawn.")
    return svg(draw(kept))


@bp.post("/<result_id>/again")
def again(result_id: str) -> Answer:
    """Judge the same board with what is known now."""
    try:
        result_id = judge_again(result_id, store=desk().store, change=desk().change("judged again")).id
    except (BoardError, CannotJudgeError) as error:
        flash(str(error))
    return redirect(url_for("results.show", result_id=result_id), 303)


@bp.post("/<result_id>/measured")
def measured(result_id: str) -> Answer | tuple[str, int]:
    """Judge the same board with one figure measured; both results stay."""
    key, instrument = request.form["key"], request.form.get("with", "").strip()
    change = desk().change(f"measured with {instrument or 'no instrument named'}")
    fact = fact_of(request.form["value"].strip(), by=change.by, on=change.at[:10], instrument=instrument)
    return judged(result_id, lambda: judge_with_measurement(result_id, key=key, fact=fact, store=desk().store, change=change))


@bp.post("/<result_id>/heat-test")
def heat_test(result_id: str) -> Answer | tuple[str, int]:
    """Judge the same board with the way of its heat measured."""
    said = heat_said(request.form)
    return judged(result_id, lambda: take_heat_test(result_id, said, store=desk().store, change=desk().change("measured")), form="heat")


@bp.post("/<result_id>/drop")
def drop(result_id: str) -> Answer | tuple[str, int]:
    """Judge the same board with a resistance measured."""
    said = drop_said(request.form)
    return judged(result_id, lambda: take_drop(result_id, said, store=desk().store, change=desk().change("measured")), form="drop")


def judged(result_id: str, judge: Callable[[], Result], *, form: str = "") -> Answer | tuple[str, int]:
    """Go on to the new result; with a problem, show the page again with all that was typed and what is wrong with it."""
    try:
        # Why a place of its own: a browser would go on to the place that the form named.
        return redirect(url_for("results.show", result_id=judge().id, _anchor="main"), 303)
    except BoardError as error:
        errors = {f"{form}.{problem.key}" if form else problem.key: f"{problem.why}; allowed: {problem.allowed}" for problem in error.problems}
        return result_page(result_id, typed=request.form, errors=errors), 400
    except CannotJudgeError as error:
        return result_page(result_id, typed=request.form, errors={form or request.form["key"]: str(error)}), 400


def result_page(result_id: str, *, typed: Mapping[str, str] | None = None, errors: Mapping[str, str] | None = None) -> str:
    """The page of a result, with a measurement that could not be taken as it was typed."""
    view = see_result(desk().store, result_id=result_id)
    return render_template(
        "results/show.html",
        view=view,
        report=view.report,
        opened=opened(),
        can_print=can_print(),
        heat_fields=HEAT,
        drop_fields=DROP,
        typed=typed or {},
        errors=errors or {},
    )


def opened() -> bool:
    """Whether all of the working is asked for."""
    return request.args.get("working") == "open"

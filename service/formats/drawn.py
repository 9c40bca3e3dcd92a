"""Curves and the thermal chain of a result, in the words of switchbank.report/1."""

from service.facts.drawn import Axis, Curve, HeatStep, Mark, Series, ThermalChain
from service.formats.report import known_json

Written = dict[str, object]
# Why no more: nobody sees a fifth digit in a picture, and the same judgement gives the same bytes on every machine.
DIGITS = 4


def curve_json(curve: Curve) -> Written:
    """Write a curve as sheets write theirs: axes, series, and what is marked within."""
    return {
        "kind": curve.kind,
        "bank": curve.bank,
        "x": _axis(curve.x),
        "y": _axis(curve.y),
        "series": [_series(series) for series in curve.series],
        "marks": [_mark(mark) for mark in curve.marks],
        "note": curve.note,
    }


def chain_json(chain: ThermalChain) -> Written:
    """Write the way of the heat."""
    return {
        "bank": chain.bank,
        "current_a": rounded(chain.current_a),
        "limit_degc": rounded(chain.limit_c),
        "board_limit_degc": None if chain.board_limit_c is None else rounded(chain.board_limit_c),
        "steps": [_step(step) for step in chain.steps],
        "note": chain.note,
    }


def rounded(value: float) -> float:
    """A number of a picture."""
    return float(f"{value:.{DIGITS}g}")


def _axis(axis: Axis) -> Written:
    """One side."""
    return {"quantity": axis.quantity, "unit": axis.unit, "scale": axis.scale}


def _series(series: Series) -> Written:
    """One line."""
    points = [[rounded(x), rounded(y)] for x, y in series.points]
    return {"label": series.label, "cond": {"corner": series.corner}, "points": points}


def _mark(mark: Mark) -> Written:
    """A limit or a claim."""
    return {"label": mark.label, "x": None if mark.x is None else rounded(mark.x), "y": None if mark.y is None else rounded(mark.y)}


def _step(step: HeatStep) -> Written:
    """One link of the chain."""
    return {
        "from": step.start,
        "to": step.end,
        "from_degc": rounded(step.start_c),
        "to_degc": rounded(step.end_c),
        "heat_w": rounded(step.heat_w),
        "resistance": {"favourable": rounded(step.favourable_kpw), "worst": rounded(step.worst_kpw), "unit": "K/W"},
        **known_json(step.sourced),
    }

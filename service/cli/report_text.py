"""A report as text for people: one sentence a finding, what decides first, what would still hold, what to measure next."""

import textwrap
from collections.abc import Iterator, Mapping
from typing import Any

from service.cli.writing import columns

WIDTH = 100
MOST_MEASUREMENTS = 3
ANSWERS = {
    "continuous_a": "continuous current",
    "continuous_a_junction": "continuous current by the junction limit alone",
    "surge_s": "time that the surge may last",
    "ambient_degc": "air around the board",
    "packs_in_series": "packs in series, as far as the switches go",
    "switches": "switches per bank, at least",
}
UNITS = {"1": "", "degC": "\N{DEGREE SIGN}C", "ohm": "\N{GREEK CAPITAL LETTER OMEGA}"}
Report = Mapping[str, Any]


def report_text(report: Report) -> str:
    """Write a report for people.

    Args:
        report: As switchbank.report/1.

    Returns:
        Paragraphs of text, the answer before the working.
    """
    said = (_board, _findings, _limiting, _largest, _spread, _next, _assumed, _cautions)
    paragraphs = (say(report) for say in said)
    return "\n\n".join(paragraph for paragraph in paragraphs if paragraph)


def _board(report: Report) -> str:
    """What was judged, by which rules, and how final it is."""
    board = report["board"]
    discharge, charge = board["discharge_bank"], board["charge_bank"]
    banks = f"{_bank(discharge)} per bank" if charge == discharge else f"{_bank(discharge)} for discharge, {_bank(charge)} for charge"
    claim = board["claim"]["continuous"]
    claimed = claim if isinstance(claim, str) else claim["value"]
    cells, rules = board["cells"]["in_series"], f"Rule set {report['rule_set']}, engine {report['engine_version']}."
    lines = (f"{banks}, {cells} cells in series, {claimed} claimed. {rules}", *_provisional(report))
    return "\n".join(textwrap.fill(line, WIDTH) for line in lines)


def _provisional(report: Report) -> Iterator[str]:
    """What keeps a result from being final, and what would make it so."""
    if not report["provisional"]["value"]:
        return
    waiting = {
        one["source"]["reading"]: f"{plain(one['name'])} {_number(one['value'], one['unit'])} (page {one['source']['page']})"
        for finding in report["findings"]
        for one in finding["inputs"]
        if one["source"] and one["source"]["reading"] in report["provisional"]["look_at"]
    }
    # Why there may be more: a value that its own sheet contradicts waits for a person before anything uses it.
    more = len(report["provisional"]["look_at"]) - len(waiting)
    named = (*waiting.values(), *((f"{more} more on the sheet, which contradicts itself",) if more else ()))
    if named:
        yield f"Provisional until a person has looked at the printed values behind it: {', '.join(named)}."
    else:
        yield "Provisional: the part was typed in, not read from a datasheet."


def _bank(bank: Report) -> str:
    """How many of which part; of a sheet's SHA-256 the beginning is enough."""
    part = bank["part"]
    return f"{bank['switches']} x {part[:19] + '...' if part.startswith('sha256:') else part}"


def _findings(report: Report) -> str:
    """One sentence a finding, under its outcome; what is true of both banks alike is said once."""
    told: dict[tuple[str, str], list[Report]] = {}
    for finding in report["findings"]:
        told.setdefault((_heading(finding), _of_each(finding["text"])), []).append(finding)
    return "\n".join(_hanging(heading + _banks(alike), text if len(alike) > 1 else alike[0]["text"]) for (heading, text), alike in told.items())


def _heading(finding: Report) -> str:
    """The outcome and the check."""
    return f"{(finding['outcome'] or 'for information').upper():<15} {plain(finding['check'])}{', if it ever happens' if finding['scenario'] else ''}"


def _banks(alike: list[Report]) -> str:
    """Which bank a finding is about."""
    names = ["each" if len(alike) > 1 else finding["bank"] for finding in alike if finding["bank"] != "both"]
    return f", {names[0]} bank" if names else ""


def _of_each(text: str) -> str:
    """A sentence about one bank as one about each."""
    return text.replace("the discharge bank", "each bank").replace("the charge bank", "each bank")


def _limiting(report: Report) -> str:
    """The check that decides first."""
    return f"What gives way first: {plain(report['limiting'])}." if report["limiting"] else "No check names a limit."


def _largest(report: Report) -> str:
    """What would still hold in the worst case, under each rule set."""
    inverse = report["inverse"]
    rule_sets = list(dict.fromkeys(name for answer in inverse.values() for name in answer["by_rule_set"]))
    if not rule_sets:
        return ""
    head = ("", *rule_sets, "limited by")
    rows = [
        (
            words,
            *(_number(inverse[name]["by_rule_set"].get(rules), inverse[name]["unit"]) for rules in rule_sets),
            plain(inverse[name]["check"] or "-"),
        )
        for name, words in ANSWERS.items()
        if name in inverse and inverse[name]["by_rule_set"] and any(value is not None for value in inverse[name]["by_rule_set"].values())
    ]
    return "The most that still holds in the worst case:\n" + columns([head, *rows])


def _spread(report: Report) -> str:
    """How many of many boards hold, and what moves the outcome most; nothing where nobody asked."""
    if "spread" not in report:
        return ""
    spread = report["spread"]
    if spread is None:
        return "No board can be drawn: a bank's heat has no bound."
    banks = {_drawn(bank): bank["bank"].capitalize() for bank in spread["banks"]}
    named = {text: "Each" if len(banks) == 1 else name for text, name in banks.items()}
    first = f"Of {spread['boards']:,} boards drawn evenly within the bands of what is open (seed {spread['seed']}), {_share(spread['holds'])} hold."
    return "\n".join((textwrap.fill(first, WIDTH), *(_hanging("", f"{name} bank: {text}", mark="- ") for text, name in named.items())))


def _drawn(bank: Report) -> str:
    """One bank over many boards."""
    board = "" if bank["board_holds"] is None else f", the board keeps its limit on {_share(bank['board_holds'])}"
    kept = f"the temperature settles on {_share(bank['settles'])}, the junctions keep their limit on {_share(bank['junction_holds'])}{board}"
    return f"{kept}; what moves the outcome most: {_ranked(bank)}."


def _share(part: float) -> str:
    """A share in percent; almost all is not written as all."""
    return "more than 99.99%" if 0.9999 < part < 1 else f"{part:.2%}"


def _ranked(bank: Report) -> str:
    """What moves the outcome, the strongest first, with its rank correlation."""
    return ", ".join(f"{plain(one['quantity'])} ({one['correlation']:+.2f})" for one in bank["ranking"]) or "nothing that is open"


def _next(report: Report) -> str:
    """What to measure or find out, each thing once, what decides most first."""
    wanted = dict.fromkeys((*_missing(report), *_conditions(report), *_measurements(report)))
    return "What to measure or find out next:\n" + "\n".join(_hanging("", text, mark="- ") for text in wanted) if wanted else ""


def _missing(report: Report) -> Iterator[str]:
    """Data without which a check has no answer at all."""
    for finding in report["findings"]:
        if finding["outcome"] == "not determined":
            yield from (f"{plain(name)}, for want of which {plain(finding['check'])} has no answer" for name in finding["missing"])


def _conditions(report: Report) -> Iterator[str]:
    """What decides a *holds if*."""
    yield from (finding["condition"]["text"] for finding in report["findings"] if finding["condition"])


def _measurements(report: Report) -> Iterator[str]:
    """How to pin down what is open, where it could decide something."""
    telling = [one for one in report["measure_next"] if one["decides"]][:MOST_MEASUREMENTS]
    for one in telling:
        # Why none without a unit: a yes or no has no band.
        band = f", now taken as {_number(one['low'], one['unit'])} to {_number(one['high'], one['unit'])}" if one["unit"] else ""
        yield f"{plain(one['quantity']).capitalize()}{band}: {one['how']}"


def _assumed(report: Report) -> str:
    """Each default that was used, with its band and where it would flip an outcome."""
    rows: dict[str, tuple[str, ...]] = {}
    for finding in report["findings"]:
        for one in finding["assumptions"]:
            unit = one["unit"]
            band = f"{_number(one['low'], unit)} to {_number(one['high'], unit)}" if one["low"] != one["high"] else _number(one["used"], unit)
            flips = f"flips {plain(finding['check'])} at {_number(one['flips_at'], unit)}" if one["flips_at"] is not None else ""
            key = one["name"]
            if key not in rows or (flips and not rows[key][2]):
                rows[key] = (plain(key), band, flips)
    return "Assumed; change what you know:\n" + columns(list(rows.values())) if rows else ""


def _cautions(report: Report) -> str:
    """What a calculation cannot know."""
    return "\n".join(_hanging("", text, mark="! ") for text in report["cautions"])


def plain(name: str) -> str:
    """A name of the contract in plain letters."""
    return name.replace("_", " ").replace(".", " ")


def _number(value: float | None, unit: str) -> str:
    """A figure with its unit, to four digits."""
    return "-" if value is None else f"{value:.4g} {UNITS.get(unit, unit)}".rstrip()


def _hanging(title: str, text: str, *, mark: str = "    ") -> str:
    """A title line with its sentence indented below, or a marked sentence."""
    body = textwrap.fill(text, WIDTH, initial_indent=mark if title else f"  {mark}", subsequent_indent="    ", break_long_words=False)
    return f"{title}\n{body}" if title else body

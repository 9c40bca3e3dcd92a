"""A report arranged for a person: what stands in front, and what must not hide it."""

from service.usecases.report_view import answers, by_margin, claim_answers, not_judged


def finding(check: str, outcome: str | None, worst: float | None = None, **more: object) -> dict:
    """A finding as the report has it."""
    margin = None if worst is None else {"worst": worst, "favourable": worst}
    return {"check": check, "bank": "discharge", "outcome": outcome, "margin": margin, "text": f"{check}: {outcome}", "scenario": False, **more}


def report(*findings: dict, **claim: object) -> dict:
    """A report with these findings."""
    return {"board": {"claim": {"continuous": "80 A", **claim}}, "findings": list(findings)}


def test_a_shunt_that_nobody_described_hides_no_answer_about_the_switches():
    """The first verdict, from four fields, says something that a person can act on."""
    asked = report(finding("continuous_current", "holds", 1.2), finding("shunt", "not determined"))

    assert [answer.outcome for answer in claim_answers(asked)] == ["holds"]
    assert [one["check"] for one in not_judged(asked)] == ["shunt"]


def test_a_shunt_that_is_too_small_decides_the_claim():
    """A described shunt counts like every other part."""
    asked = report(finding("continuous_current", "holds", 1.2), finding("shunt", "fails", 0.7))

    assert claim_answers(asked)[0].outcome == "fails"


def test_a_missing_datum_never_turns_into_a_yes():
    """What is not determined is not said to hold."""
    asked = report(finding("continuous_current", "holds", 1.2), finding("gate_drive", "not determined"))

    assert claim_answers(asked)[0].outcome == "not determined"


def test_a_surge_that_nobody_claimed_is_not_answered():
    """No claim, no answer; with a claim there is one."""
    pulse = finding("pulsed_current", "holds", 5)

    assert claim_answers(report(pulse)) == ()
    assert claim_answers(report(pulse, surge="160 A for 10 s"))[0].words == "160 A for 10 s surge"


def test_banks_that_say_the_same_say_it_once():
    """Two banks alike are one line, two that differ are two; the smaller margin first."""
    alike = by_margin(
        report(finding("shunt", "holds", 2), finding("gate_drive", "holds", 1.5), {**finding("gate_drive", "holds", 1.5), "bank": "charge"})
    )
    differ = by_margin(report(finding("gate_drive", "holds", 1.5), {**finding("gate_drive", "holds", 1.4), "bank": "charge"}))

    assert [(one["check"], one["bank"]) for one in alike] == [("gate_drive", "both"), ("shunt", "discharge")]
    assert [one["bank"] for one in differ] == ["charge", "discharge"]


def test_where_all_holds_the_claims_own_question_answers():
    """A person who asks about current hears about current, though another margin is smaller; a failure is heard first."""
    current, gate = finding("continuous_current", "holds", 2), finding("gate_drive", "holds", 1.1)

    assert claim_answers(report(gate, current))[0].check == "continuous_current"
    assert claim_answers(report(current, finding("gate_drive", "fails", 0.9)))[0].check == "gate_drive"


def test_air_colder_than_any_on_earth_is_no_answer():
    """A board that would need it holds in no air at all."""
    inverse = {"ambient_degc": {"value": -198.5, "unit": "degC", "check": "continuous_current"}}

    assert answers({**report(), "inverse": inverse})[0].value is None
    inverse["ambient_degc"]["value"] = -10
    assert answers({**report(), "inverse": inverse})[0].value == -10

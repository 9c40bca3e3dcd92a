"""Laws that hold for every board: monotony, scaling, permutation, order of the ends, and thresholds that really decide."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from strategies import boards

from service.derating.case import Corner
from service.derating.checks import continuous_current, current_sharing, package_current, power_rating
from service.derating.formulas.network import Die, Network
from service.derating.formulas.ratio_model import PowerLaw
from service.derating.formulas.settled_at import current_at_junction
from service.derating.formulas.settling import settle
from service.derating.open_case import open_case
from service.derating.thermal import largest_current_a, limits_of
from service.facts.board import Port
from service.facts.finding import Outcome, Relation
from service.facts.sourced import Known, Sourced

AT_REST = (continuous_current.CHECK, current_sharing.CHECK, power_rating.CHECK, package_current.CHECK)
many = settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
few = settings(deadline=None, max_examples=25, suppress_health_check=[HealthCheck.too_slow])


def typed(value, unit):
    """A fact that a person states."""
    return Sourced(value=value, unit=unit, known=Known.TYPED)


def largest(case, corner=Corner.WORST, *, low_switch=False):
    """Largest current of the discharge bank."""
    point = case.point(corner)
    return largest_current_a(case.network(case.discharge, point, low_switch=low_switch), limits_of(case, case.discharge, point))


@st.composite
def networks(draw):
    """One or two banks on a board, one of them perhaps with a low switch."""
    dies = []
    for bank in range(draw(st.integers(1, 2))):
        law = PowerLaw(draw(st.floats(1.2, 2.9)), draw(st.floats(1.2, 2.9)))
        ohm, kpw = draw(st.floats(5e-4, 2e-2)), draw(st.floats(0.5, 30))
        dies.append(Die(bank=bank, count=draw(st.integers(1, 12)), cold_resistance_ohm=ohm, to_board_kpw=kpw, ratio=law))
        if draw(st.booleans()):
            dies.append(replace(dies[-1], count=1, cold_resistance_ohm=ohm / draw(st.floats(1.0, 1.75))))
    return Network(
        dies=tuple(dies),
        ambient_c=draw(st.floats(-30, 60)),
        board_to_air_kpw=draw(st.sampled_from([0.0, 1.0, 3.0])),
        board_ohm=draw(st.floats(0, 1e-3)),
    )


@many
@given(network=networks(), amperes=st.floats(1, 60), more=st.floats(1.01, 1.5))
def test_more_current_is_never_cooler(network, amperes, more):
    """Every die and the board."""
    one, two = settle(network, current_a=amperes), settle(network, current_a=amperes * more)
    assume(two.exists)

    assert one.exists
    assert all(a <= b + 1e-7 for a, b in zip((*one.junctions_c, one.board_c), (*two.junctions_c, two.board_c), strict=True))


@many
@given(network=networks(), amperes=st.floats(1, 60), warmer=st.floats(0.1, 40))
def test_warmer_air_never_cools(network, amperes, warmer):
    """Every die by at least as much as the air, since hot switches make more heat."""
    two = settle(replace(network, ambient_c=network.ambient_c + warmer), current_a=amperes)
    one = settle(network, current_a=amperes)
    assume(two.exists)

    assert one.exists
    assert max(two.junctions_c) >= max(one.junctions_c)
    assert two.board_c >= one.board_c


@many
@given(network=networks(), amperes=st.floats(1, 60), factor=st.floats(0.3, 3))
def test_heat_scales_with_the_square_of_the_current_times_resistance(network, amperes, factor):
    """All resistances times f squared and the current over f settle at the same temperatures."""
    dies = tuple(replace(die, cold_resistance_ohm=die.cold_resistance_ohm * factor**2) for die in network.dies)
    scaled = settle(replace(network, dies=dies, board_ohm=network.board_ohm * factor**2), current_a=amperes / factor)
    plain = settle(network, current_a=amperes)
    assume(plain.exists)

    assert scaled.junctions_c == pytest.approx(plain.junctions_c, rel=1e-7)


@many
@given(network=networks(), amperes=st.floats(1, 60), times=st.integers(2, 4))
def test_as_many_times_the_switches_carry_as_many_times_the_current(network, amperes, times):
    """Each switch with its own way to the air."""
    alone = replace(network, board_to_air_kpw=0.0)
    grown = replace(alone, dies=tuple(replace(die, count=die.count * times) for die in alone.dies))
    one = settle(alone, current_a=amperes)
    assume(one.exists)

    assert settle(grown, current_a=amperes * times).junctions_c == pytest.approx(one.junctions_c, rel=1e-7)


@many
@given(network=networks(), amperes=st.floats(1, 60))
def test_the_order_of_equal_parts_does_not_matter(network, amperes):
    """Dies and banks named the other way round settle at the same temperatures."""
    turned = replace(network, dies=tuple(replace(die, bank=max(d.bank for d in network.dies) - die.bank) for die in reversed(network.dies)))
    one = settle(network, current_a=amperes)
    assume(one.exists)

    assert tuple(reversed(settle(turned, current_a=amperes).junctions_c)) == pytest.approx(one.junctions_c, rel=1e-7)


@many
@given(network=networks(), amperes=st.floats(1, 60))
def test_the_heat_balance_is_closed(network, amperes):
    """What all switches and the board's resistance make leaves through the board; each junction stands above it by its own heat."""
    found = settle(network, current_a=amperes)
    assume(found.exists)
    heat = sum(die.count * loss for die, loss in zip(network.dies, found.losses_w, strict=True)) + amperes**2 * network.board_ohm

    assert found.board_c == pytest.approx(network.ambient_c + network.board_to_air_kpw * heat, abs=1e-6)
    for die, junction, loss in zip(network.dies, found.junctions_c, found.losses_w, strict=True):
        assert junction == pytest.approx(found.board_c + die.to_board_kpw * loss, abs=1e-5)
    for bank in {die.bank for die in network.dies}:
        assert sum(d.count * i for d, i in zip(network.dies, found.currents_a, strict=True) if d.bank == bank) == pytest.approx(amperes)


@many
@given(network=networks(), amperes=st.floats(1, 60))
def test_the_inverse_of_settling_gives_the_current_back(network, amperes):
    """The current that meets the settled temperature of a die is the current that made it."""
    found = settle(network, current_a=amperes)
    assume(found.exists)
    assume(found.junctions_c[0] > network.ambient_c + 0.1)
    assume(max(found.junctions_c) < 400)

    assert current_at_junction(network, die=0, limit_c=found.junctions_c[0]).value == pytest.approx(amperes, rel=1e-5)


@many
@given(board=boards())
def test_the_ends_lie_in_order(board):
    """Favourable carries more than nominal, nominal more than worst."""
    case = open_case(board)
    favourable, nominal, worst = (largest(case, corner) for corner in (Corner.FAVOURABLE, Corner.NOMINAL, Corner.WORST))

    assert favourable >= nominal * (1 - 1e-9)
    assert nominal >= worst * (1 - 1e-9)


@few
@given(board=boards())
def test_no_margin_is_better_at_the_worst_end(board):
    """For every check at rest and every bank."""
    case = open_case(board)
    for check in AT_REST:
        for finding in check.run(case):
            if finding.margin:
                assert finding.margin.favourable >= finding.margin.worst * (1 - 1e-9), finding.text


@few
@given(board=boards(), more=st.integers(1, 5))
def test_more_switches_never_carry_less(board, more):
    """In each bank alike."""
    case = open_case(board)
    count = case.discharge.switches

    assert largest(case.with_switches(count + more)) >= largest(case.with_switches(count)) * (1 - 1e-9)


@few
@given(board=boards())
def test_banks_change_places_without_changing_their_findings(board):
    """On a common port discharge and charge are the same current."""
    case = open_case(replace(board, port=Port.COMMON))
    turned = open_case(replace(board, port=Port.COMMON, discharge_bank=board.charge_bank, charge_bank=board.discharge_bank))
    margins = [finding.margin for finding in continuous_current.CHECK.run(case)]
    turned_margins = [finding.margin for finding in continuous_current.CHECK.run(turned)]

    for one, two in zip(margins, reversed(turned_margins), strict=True):
        assert one.worst == pytest.approx(two.worst, rel=1e-7)
        assert one.favourable == pytest.approx(two.favourable, rel=1e-7)


@few
@given(board=boards(), number=st.integers(0, 3))
def test_a_threshold_put_in_as_a_fact_decides(board, number):
    """Just inside its condition a finding holds, just outside it does not: for every open quantity of every check at rest."""
    check = AT_REST[number]
    case = open_case(board)
    for index, finding in enumerate(check.run(case)):
        conditions = (finding.condition, *finding.conditions) if finding.condition else ()
        for condition in conditions:
            if not condition.quantity.endswith("gate_voltage"):
                item = case.quantities.get(condition.quantity)
                assume(item is not None)
                inside, outside = (as_fact(case, item, condition.value * factor) for factor in _factors(condition.relation))

                assert check.run(inside)[index].outcome is Outcome.HOLDS, condition
                assert check.run(outside)[index].outcome is not Outcome.HOLDS, condition


def _factors(relation):
    """A little inside and a little outside a threshold."""
    return (1 - 1e-6, 1 + 2e-3) if relation is Relation.AT_MOST else (1 + 1e-6, 1 - 2e-3)


def as_fact(case, item, value):
    """The case with one open quantity known."""
    return case.with_quantities((replace(item, favourable=value, nominal=value, worst=value, sourced=typed(value, item.unit)),))


@few
@given(board=boards())
def test_the_least_number_of_switches_is_the_least(board):
    """With it both banks hold, with one fewer they do not."""
    case = open_case(board)
    least = continuous_current.CHECK.inverses["switches"](case)
    assume(least is not None)
    assume(1 < least < 500)
    outcomes = [{finding.outcome for finding in continuous_current.CHECK.run(case.with_switches(int(count)))} for count in (least, least - 1)]

    assert outcomes[0] == {Outcome.HOLDS}
    assert outcomes[1] != {Outcome.HOLDS}


@few
@given(board=boards())
def test_the_largest_current_put_in_as_the_claim_holds_and_a_little_more_does_not(board):
    """On a common port and on the discharge path of separate ports."""
    case = open_case(board)
    amperes = continuous_current.CHECK.inverses["continuous_a"](case)
    assume(amperes > 0)
    for factor, holds in ((1 - 1e-7, True), (1 + 1e-4, False)):
        claimed = replace(board, claim=replace(board.claim, continuous_a=typed(amperes * factor, "A")))
        banks = 2 if board.port is Port.COMMON else 1
        found = {finding.outcome is Outcome.HOLDS for finding in continuous_current.CHECK.run(open_case(claimed))[:banks]}

        assert all(found) is holds


@few
@given(board=boards())
def test_the_highest_ambient_put_in_as_a_fact_holds_and_a_little_more_does_not(board):
    """For both banks."""
    case = open_case(board)
    ambient = continuous_current.CHECK.inverses["ambient_degc"](case)
    # No sheet says anything of colder air.
    assume(ambient > -60)
    for shift, holds in ((-1e-4, True), (0.05, False)):
        changed = replace(board, cooling=replace(board.cooling, ambient_c=typed(ambient + shift, "degC")))
        outcomes = {finding.outcome for finding in continuous_current.CHECK.run(open_case(changed))}

        assert (outcomes == {Outcome.HOLDS}) is holds

"""What the power path costs, by hand from a junction that scipy settles."""

import pytest
from boards import FOUR_FIELDS, case_of
from scipy.optimize import brentq

from service.derating.checks import conduction_loss


def hot_ohm(amperes):
    """The worst corner of the four fields: 5 mohm, exponent 2.3, 60 K/W into 40 degC, six switches."""

    def gap(junction_c):
        return 40 + 60 * (amperes / 6) ** 2 * 5e-3 * ((junction_c + 273.15) / 298.15) ** 2.3 - junction_c

    return 5e-3 * ((brentq(gap, 40, 170) + 273.15) / 298.15) ** 2.3


@pytest.mark.parametrize(
    ("board", "beside_ohm"),
    [({}, 0.0), ({"shunt": "0.5 mohm"}, 0.5e-3), ({"shunt": "0.5 mohm", "joints": "0.2 mohm"}, 0.7e-3)],
    ids=["switches alone", "with a shunt", "with shunt and joints"],
)
def test_the_path_is_two_hot_banks_and_what_lies_beside_them(board, beside_ohm):
    """By hand: 2 x R/6 and the rest in series; 70 A through it; 8 x 3.2 V behind it. What nobody states is left out and said so."""
    finding = conduction_loss.CHECK.run(case_of(FOUR_FIELDS, {"claim": {"continuous": "70 A"}, "board": board}))[0]
    path = 2 * hot_ohm(70) / 6 + beside_ohm
    worst = {name: both.worst for name, both in finding.values.items()}

    assert worst["path_resistance_ohm"] == pytest.approx(path, rel=1e-6)
    assert worst["path_drop_v"] == pytest.approx(70 * path, rel=1e-6)
    assert worst["path_loss_w"] == pytest.approx(4900 * path, rel=1e-6)
    assert worst["banks_loss_w"] == pytest.approx(4900 * 2 * hot_ohm(70) / 6, rel=1e-6)
    assert worst["shunt_loss_w"] + worst["joints_loss_w"] == pytest.approx(4900 * beside_ohm)
    assert worst["share_of_power"] == pytest.approx(70 * path / 25.6, rel=1e-6)
    assert len(finding.missing) == 2 - len(board)

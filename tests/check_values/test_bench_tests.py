"""What tests on the bench say, worked by hand or published."""

import pytest

from service.derating.formulas import bench_test


def test_figures_of_a_bench_test_by_hand():
    """34.2 mV at 20 A is 1.71 mohm; six parts with a ratio of 1.2 are 8.55 mohm each; 40 K over 0.8 W is 50 K/W; half the rise root two."""
    allowed = bench_test.current_from_test_a(tested_a=10, tested_rise_k=20, tested_ratio=1, allowed_rise_k=40, allowed_ratio=1)

    assert bench_test.resistance_from_drop_ohm(drop_v=0.0342, current_a=20) == pytest.approx(1.71e-3)
    assert bench_test.cold_switch_resistance_ohm(drop_v=0.0342, current_a=20, switches=6, ratio=1.2) == pytest.approx(8.55e-3)
    assert bench_test.resistance_from_rise_kpw(rise_k=40, loss_w=0.8) == pytest.approx(50)
    assert allowed == pytest.approx(14.142, abs=1e-3)


def test_a_published_rise_gives_the_published_resistance():
    """CV55: Nexperia AN90003 Table 10: 155 K at 5.05 W is 30.69 K/W."""
    assert bench_test.resistance_from_rise_kpw(rise_k=155, loss_w=5.05) == pytest.approx(30.69, abs=0.05)


def test_a_hotter_limit_allows_less_than_the_square_root_of_its_rise():
    """By hand: 10 A at 20 K with a ratio of 1.1, a limit of 80 K with a ratio of 1.76: 10 x sqrt(4 x 1.1 / 1.76) = 15.811 A."""
    allowed = bench_test.current_from_test_a(tested_a=10, tested_rise_k=20, tested_ratio=1.1, allowed_rise_k=80, allowed_ratio=1.76)

    assert allowed == pytest.approx(15.811, abs=1e-3)

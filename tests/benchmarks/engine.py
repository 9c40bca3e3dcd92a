"""How quick the engine is, as ratios of one run: ``python tests/benchmarks/engine.py``.

1. The electro-thermal solver against one ngspice run of the same bank (six unequal switches, two banks on one board): at least 500 times
   faster, and within 0.1 %.
2. A whole assessment against the solver calls that it makes: less than 20 times their time.
3. 100,000 boards at once against judging as many one by one: at most a hundredth.
"""

import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from service.derating import case as case_module
from service.derating import thermal
from service.derating.assess import assess
from service.derating.formulas.network import Die, Network
from service.derating.formulas.settling import settle
from service.derating.spread import spread
from service.formats.board import read_board

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "derating"))
from boards import FOUR_FIELDS, WHOLE

SLOPE, BEND = 6.17e-3, 1.626e-5


@dataclass(frozen=True)
class Parabola:
    """Ratio of the IRFR3806 sheet, Fig 4."""

    def value(self, junction_c: float) -> float:
        """The ratio."""
        return 1 + SLOPE * (junction_c - 25) + BEND * (junction_c - 25) ** 2

    def slope_per_k(self, junction_c: float) -> float:
        """Its growth."""
        return SLOPE + 2 * BEND * (junction_c - 25)


def bank(number: int) -> tuple[Die, Die]:
    """One switch of 2 mohm and five of 3, each 8 K/W from the board."""
    low = Die(bank=number, count=1, cold_resistance_ohm=2e-3, to_board_kpw=8.0, ratio=Parabola())
    return low, Die(bank=number, count=5, cold_resistance_ohm=3e-3, to_board_kpw=8.0, ratio=Parabola())


NETWORK = Network(dies=(*bank(0), *bank(1)), ambient_c=40.0, board_to_air_kpw=2.0)


def deck() -> str:
    """The same bank for the circuit simulator, from cold until it has settled; the second bank is the first one's heat once more."""
    lines = ["* six unequal switches on a shared board", "I1 0 d 80"]
    for n in range(1, 7):
        ohm = "2m" if n == 1 else "3m"
        lines += [
            f"Bd{n} d s{n} I = V(d,s{n})/({ohm}*(1+{SLOPE}*(V(t{n})-25)+{BEND}*(V(t{n})-25)^2))",
            f"V{n} s{n} 0 0",
            f"Bp{n} 0 t{n} I = V(d)*I(V{n})",
            f"Rj{n} t{n} brd 8",
            f"Cj{n} t{n} 0 0.5 ic=40",
        ]
    lines += ["Bo 0 brd I = V(d)*80", "Rba brd amb 2", "Va amb 0 40", "Cb brd 0 20 ic=40", ".options reltol=1e-5", ".tran 0.05 400 0 0.1 uic"]
    return "\n".join([*lines, ".meas tran low find v(t1) at=399", ".meas tran board find v(brd) at=399", ".end", ""])


def seconds(work: Callable[[], object], *, times: int) -> float:
    """Median time of one call."""
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spent.append(time.perf_counter() - start)
    return statistics.median(spent)


def against_simulator(say: Callable[[str], object]) -> bool:
    """The solver beside ngspice."""
    program = shutil.which("ngspice")
    if program is None:
        say("ngspice is not installed: its comparison is left out")
        return True
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "deck.cir"
        path.write_text(deck(), encoding="ascii")
        command = [program, "-b", str(path)]
        printed = subprocess.run(command, capture_output=True, text=True, check=False).stdout
        slow = seconds(lambda: subprocess.run(command, capture_output=True, check=False), times=5)
    found = {name: float(value) for name, value in re.findall(r"^(low|board)\s*=\s*(\S+)", printed, re.MULTILINE)}
    ours = settle(NETWORK, current_a=80.0)
    quick = seconds(lambda: settle(NETWORK, current_a=80.0), times=300)
    gap = max(abs(ours.junctions_c[0] / found["low"] - 1), abs(ours.board_c / found["board"] - 1))
    say(f"solver {quick * 1e6:.0f} us, ngspice {slow * 1e3:.0f} ms: {slow / quick:.0f} times faster (at least 500)")
    say(f"apart by {gap:.3%} (at most 0.1 %)")
    return slow / quick >= 500 and gap <= 1e-3


def against_its_solver(say: Callable[[str], object], text: str, name: str) -> bool:
    """A whole assessment beside the solver calls in it."""
    board = read_board(tomllib.loads(text))
    spent = {"calls": 0.0, "seconds": 0.0}

    def timed(solver: Callable[..., object]) -> Callable[..., object]:
        def run(*args: object, **named: object) -> object:
            start = time.perf_counter()
            answer = solver(*args, **named)
            spent["seconds"] += time.perf_counter() - start
            spent["calls"] += 1
            return answer

        return run

    names = ("current_at_junction", "current_at_board", "ambient_at_junction", "ambient_at_board", "settle")
    kept = {one: getattr(thermal, one) for one in names}
    for one in names:
        setattr(thermal, one, timed(kept[one]))
    case_module.settle = timed(kept["settle"])
    start = time.perf_counter()
    assess(board)
    whole = time.perf_counter() - start
    for one in names:
        setattr(thermal, one, kept[one])
    case_module.settle = kept["settle"]
    ratio = whole / spent["seconds"]
    say(f"{name}: {whole * 1e3:.0f} ms for {spent['calls']:.0f} solver calls of {spent['seconds'] * 1e3:.0f} ms: {ratio:.1f} times (less than 20)")
    return ratio < 20


def against_looping(say: Callable[[str], object]) -> bool:
    """Many boards at once beside one by one."""
    board = read_board(tomllib.loads(FOUR_FIELDS))
    once = seconds(lambda: assess(board), times=5)
    many = seconds(lambda: spread(board, boards=100_000), times=3)
    share = many / (100_000 * once)
    say(f"100,000 boards {many:.2f} s, one {once * 1e3:.0f} ms: {share:.2e} of looping (at most 0.01)")
    return share <= 0.01


def main() -> int:
    """Measure and print; 1 where a ratio is missed."""

    def say(line: str) -> None:
        sys.stdout.write(line + "\n")
        sys.stdout.flush()

    kept = [
        against_simulator(say),
        against_its_solver(say, FOUR_FIELDS, "four fields"),
        against_its_solver(say, WHOLE, "the contract's board"),
        against_looping(say),
    ]
    return 0 if all(kept) else 1


if __name__ == "__main__":
    sys.exit(main())

"""Faults put in on purpose, and whether the tests notice: ``python tests/benchmarks/mutation.py [formula or check ...]``.

Each fault changes one operator, number or sign of one public formula, or of one check, in memory; the worked examples of
``tests/check_values``, the cards and the tests that import the file are then run in a process of their own. The circuit simulator is
kept out of their sight: it would only make them slow. A fault that no test notices is printed. Aim: 95 of 100 noticed, and at least one
in every formula and in every check.
"""

import ast
import os
import random
import subprocess
import sys
import tempfile
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FORMULAS, CHECKS = ROOT / "service" / "derating" / "formulas", ROOT / "service" / "derating" / "checks"
ALWAYS = {
    FORMULAS: ("tests/check_values/test_cited_examples.py", "tests/derating/test_cards.py"),
    CHECKS: ("tests/derating/test_contract_board.py", "tests/derating/test_weighing.py", "tests/derating/test_rule_sets.py"),
}
EACH = 3
SEED = 7
SMALLEST = 1e-6
SWAPS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Pow: ast.Mult,
}
# Put in front of the tests' own start: it hands out the faulty source for one module.
LOADER = """
import importlib, importlib.abc, importlib.util, pathlib, sys

class Faulty(importlib.abc.SourceLoader):
    def get_filename(self, name): return {path!r}
    def get_data(self, path): return pathlib.Path({faulty!r}).read_bytes()

class Finder(importlib.abc.MetaPathFinder):
    def find_spec(self, name, path=None, target=None):
        return importlib.util.spec_from_loader(name, Faulty()) if name == {module!r} else None

sys.meta_path.insert(0, Finder())
sys.dont_write_bytecode = True
importlib.import_module({module!r})
import pytest
sys.exit(pytest.main([*{tests!r}, "-q", "-x", "-p", "no:cacheprovider", "--no-header", "--tb=no"]))
"""


@dataclass(frozen=True)
class Fault:
    """One change to one formula."""

    path: Path
    formula: str
    said: str
    source: str


def faults(path: Path, dice: random.Random) -> Iterator[Fault]:
    """Some faults of each public formula of a file, or of a whole check."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    functions = [node for node in tree.body if isinstance(node, ast.FunctionDef)]
    formulas = [node for node in functions if not node.name.startswith("_") and "Source:" in (ast.get_docstring(node) or "")]
    for name, nodes in [("run", functions)] if path.parent == CHECKS else [(node.name, [node]) for node in formulas]:
        places = [place for node in nodes for place in ast.walk(node) if changes(place)]
        for place in dice.sample(places, min(EACH, len(places))):
            yield from applied(path, tree, name, place)


def changes(node: ast.AST) -> bool:
    """Whether a fault can be put in here."""
    number = isinstance(node, ast.Constant) and isinstance(node.value, int | float) and not isinstance(node.value, bool)
    # Why none this small: it is a tolerance, and half as much again is as good a one.
    number = number and not 0 < abs(node.value) < SMALLEST
    return number or (isinstance(node, ast.BinOp) and type(node.op) in SWAPS) or (isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub))


def applied(path: Path, tree: ast.Module, formula: str, node: ast.AST) -> Iterator[Fault]:
    """The file with the fault in it; the tree is put right again afterwards."""
    before = ast.unparse(node)
    if isinstance(node, ast.BinOp):
        kept_op, node.op = node.op, SWAPS[type(node.op)]()
        yield Fault(path, formula, f"{before}  ->  {ast.unparse(node)}", ast.unparse(tree))
        node.op = kept_op
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        kept, node.value = node.value, node.value * 1.5 + (1 if node.value == 0 else 0)
        yield Fault(path, formula, f"{before}  ->  {ast.unparse(node)}", ast.unparse(tree))
        node.value = kept
    elif isinstance(node, ast.UnaryOp):
        kept_sign, node.op = node.op, ast.UAdd()
        yield Fault(path, formula, f"{before}  ->  {ast.unparse(node)}", ast.unparse(tree))
        node.op = kept_sign


def noticed(fault: Fault, tests: tuple[str, ...]) -> bool:
    """Whether a test fails with the fault in place."""
    with tempfile.NamedTemporaryFile("w", suffix=".py", encoding="utf-8") as faulty:
        faulty.write(fault.source)
        faulty.flush()
        module = package(fault.path) + "." + fault.path.stem
        start = LOADER.format(path=str(fault.path), faulty=faulty.name, module=module, tests=[str(ROOT / test) for test in tests])
        done = subprocess.run(
            [sys.executable, "-c", start],
            cwd=ROOT,
            capture_output=True,
            timeout=900,
            check=False,
            env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1", "PATH": ""},
        )
    return done.returncode == 1


def package(path: Path) -> str:
    """The package that a file belongs to."""
    return f"service.derating.{path.parent.name}"


def relevant(path: Path) -> tuple[str, ...]:
    """Test files that import a formula's or a check's file, and what stands for all of them; running others proves nothing."""
    tests = [*sorted((ROOT / "tests").glob("check_values/test_*.py")), *sorted((ROOT / "tests").glob("derating/test_*.py"))]
    found = [test for test in tests if path.stem in imported(test, package(path))]
    return tuple(dict.fromkeys([*ALWAYS[path.parent], *(str(test.relative_to(ROOT)) for test in found)]))


def imported(test: Path, parent: str) -> set[str]:
    """Names of the files of a package that a test file imports."""
    froms = [node for node in ast.walk(ast.parse(test.read_text(encoding="utf-8"))) if isinstance(node, ast.ImportFrom) and node.module]
    names = {alias.name for node in froms if node.module == parent for alias in node.names}
    return names | {node.module.removeprefix(parent + ".") for node in froms if node.module and node.module.startswith(parent + ".")}


def to_be_tried() -> list[Path]:
    """Every file that holds a formula with a card, and every check."""
    formulas = [path for path in sorted(FORMULAS.glob("*.py")) if "    Source:" in path.read_text(encoding="utf-8")]
    return formulas + [path for path in sorted(CHECKS.glob("*.py")) if path.stem != "__init__"]


def main() -> int:
    """Put faults in, count what is noticed, and print what is not."""
    dice = random.Random(SEED)  # noqa: S311 - faults, not secrets
    chosen = [path for path in to_be_tried() if not sys.argv[1:] or path.stem in sys.argv[1:]]
    killed: dict[str, int] = defaultdict(int)
    tried: dict[str, int] = defaultdict(int)
    for path in chosen:
        tests = relevant(path)
        whole = Fault(path, "", "no fault", ast.unparse(ast.parse(path.read_text(encoding="utf-8"))))
        if noticed(whole, tests):
            sys.stdout.write(f"the tests of {path.stem} fail without any fault: mend that first\n")
            return 2
        for fault in faults(path, dice):
            name = f"{path.parent.name}.{path.stem}.{fault.formula}"
            found = noticed(fault, tests)
            tried[name] += 1
            killed[name] += found
            sys.stdout.write("" if found else f"not noticed in {name}: {fault.said}\n")
            sys.stdout.flush()
    untouched = [name for name in tried if not killed[name]]
    total, dead = sum(tried.values()), sum(killed.values())
    sys.stdout.write(f"{dead} of {total} faults noticed ({dead / max(total, 1):.1%}) in {len(tried)} formulas and checks\n")
    sys.stdout.write("".join(f"no fault noticed in {name}\n" for name in untouched))
    return 1 if untouched or dead < 0.95 * total else 0


if __name__ == "__main__":
    sys.exit(main())

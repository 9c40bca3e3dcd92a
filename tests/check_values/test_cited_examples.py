"""Every worked example of the data files beside this file, and the rule that no formula enters without one."""

import re
import tomllib
from importlib import import_module
from pathlib import Path

import pytest

from service.derating.card import public_formulas

HERE = Path(__file__).parent
EXAMPLES = [
    pytest.param(example, id=f"{example['id']}: {example['formula']}")
    for path in sorted(HERE.glob("*.toml"))
    for example in tomllib.loads(path.read_text(encoding="utf-8"))["example"]
]


@pytest.mark.parametrize("example", EXAMPLES)
def test_a_formula_gives_what_its_source_prints(example):
    """The figure of a published or independently solved example comes out within its own digits."""
    module, name = example["formula"].split(".")
    formula = getattr(import_module(f"service.derating.formulas.{module}"), name)

    assert formula(**example["args"]) == pytest.approx(example["expect"], abs=example.get("abs", 0), rel=example.get("rel", 0)), example["source"]


@pytest.mark.parametrize("example", EXAMPLES)
def test_an_example_names_its_source(example):
    """A figure without an origin proves nothing."""
    assert len(example["source"]) > 10


@pytest.mark.parametrize("formula", public_formulas(), ids=lambda formula: formula.__name__)
def test_every_formula_has_a_worked_example(formula):
    """No formula enters without an answer worked out elsewhere, as data or in a test of this folder."""
    words = {word for path in HERE.iterdir() if path.suffix in {".toml", ".py"} for word in re.findall(r"\w+", path.read_text(encoding="utf-8"))}

    assert formula.__name__ in words

"""What the tests of the formats share."""

import json
import tomllib
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator


@pytest.fixture
def every_key() -> dict[str, object]:
    """A board that writes every key of the contract."""
    return tomllib.loads(Path(__file__).with_name("every-key.toml").read_text(encoding="utf-8"))


@pytest.fixture
def least() -> dict[str, object]:
    """The least that a board needs."""
    return {"claim": {"continuous": "80 A"}, "cells": {"in_series": 8}, "discharge_bank": {"part": "AB75N40", "switches": 6}}


@pytest.fixture
def validator():
    """Gives the validator of a published schema."""

    def of(name: str) -> Draft202012Validator:
        schema = json.loads(files("service.api").joinpath("schemas", f"{name}.json").read_text(encoding="utf-8"))
        Draft202012Validator.check_schema(schema)
        return Draft202012Validator(schema)

    return of

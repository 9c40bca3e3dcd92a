"""Every template is walked: it loads, and has a title where it is a page."""

from pathlib import Path

import pytest

import service.web

FOLDER = Path(service.web.__file__).parent / "templates"
TEMPLATES = sorted(str(path.relative_to(FOLDER)) for path in FOLDER.rglob("*.html"))


@pytest.mark.parametrize("name", TEMPLATES)
def test_every_template_loads(client, name):
    """A template with a fault is found before a person meets it."""
    client.application.jinja_env.get_template(name)


@pytest.mark.parametrize("name", [name for name in TEMPLATES if '{% extends "base.html" %}' in (FOLDER / name).read_text(encoding="utf-8")])
def test_every_page_has_a_title_and_one_heading(name):
    """A tab, a bookmark and a screen reader can tell the pages apart."""
    text = (FOLDER / name).read_text(encoding="utf-8")

    assert "{% block title %}" in text
    assert text.count("<h1>") == 1


@pytest.mark.parametrize("name", TEMPLATES)
def test_no_template_has_script_or_style_of_its_own(name):
    """Pages work without JavaScript, and the content policy lets in our own style sheet alone."""
    text = (FOLDER / name).read_text(encoding="utf-8")

    assert "<script" not in text
    assert " style=" not in text

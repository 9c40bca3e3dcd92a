"""A result as a PDF file, with the extra ``pdf`` and without it."""

import importlib.util
import io
import sys

import pdfplumber
import pytest

FOUR = {"discharge_bank.part": "QX80N50", "discharge_bank.switches": "6", "cells.in_series": "8", "claim.continuous": "80"}


@pytest.fixture
def result(send, dropped):
    """The address of a result from four fields and one sheet."""
    send("/", {"sheet": dropped()}, to="/start")
    return send("/", FOUR, to="/start").location


@pytest.mark.skipif(importlib.util.find_spec("weasyprint") is None, reason="the extra pdf is not installed")
def test_a_result_is_printed_without_a_browser(result, client):
    """The file says what the page says: the outcome with its number (worked by hand in the contract), pictures, working, cautions."""
    assert f"{result}.pdf" in client.get(result).get_data(as_text=True)
    answer = client.get(f"{result}.pdf?working=open")

    assert answer.mimetype == "application/pdf"
    with pdfplumber.open(io.BytesIO(answer.data)) as pdf:
        text = " ".join(" ".join(page.extract_text() for page in pdf.pages).split())
    assert "59.48 K/W" in text
    assert "no certification" in text
    assert "enough" in text.split("How far each limit lies")[1].split("Limit over demand")[0], (
        "the picture of the margins is fetched from our own pages"
    )


def test_without_the_extra_the_page_offers_no_file_and_says_how_to_get_one(result, client, monkeypatch):
    """Nobody meets a link that cannot work."""
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    monkeypatch.setattr("service.web.printing.find_spec", lambda _: None)

    assert f"{result}.pdf" not in client.get(result).get_data(as_text=True)
    answer = client.get(f"{result}.pdf")
    assert answer.status_code == 501
    assert "needs the extra pdf" in answer.get_data(as_text=True)

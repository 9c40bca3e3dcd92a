"""A marking as read off a board, known and unknown."""


def test_a_doubtful_marking_finds_the_part_with_its_reason(client, send, dropped):
    """O for 0 and a question mark are explained away, and said."""
    send("/", {"sheet": dropped()}, to="/start")
    page = client.get("/parts/?marking=QX8ON5?").get_data(as_text=True)

    assert 'href="/parts/QX80N50"' in page


def test_an_unknown_marking_gets_a_phrase_and_a_place_on_the_list(client, send):
    """Nothing leaves the machine: the phrase is there to copy."""
    page = client.get("/parts/?marking=ZZ12A9&package=TO-263&pins=3").get_data(as_text=True)
    assert "No kept part explains this marking" in page
    send("/parts/?marking=ZZ12A9", {"marking": "ZZ12A9", "package": "TO-263", "pins": "3"}, to="/parts/want")

    bench = client.get("/").get_data(as_text=True)
    assert "ZZ12A9" in bench
    assert "TO-263" in bench


def test_a_doubtful_marking_waits_until_a_person_says_that_its_sheet_has_come(client, send, dropped):
    """QX80N?0 may be the part whose sheet came; only a person knows, and one press says so."""
    send("/parts/?marking=QX80N?0", {"marking": "QX80N?0", "package": "", "pins": ""}, to="/parts/want")
    assert "whose sheet has come" not in client.get("/").get_data(as_text=True)
    send("/", {"sheet": dropped()}, to="/start")

    assert "It is QX80N50, whose sheet has come" in client.get("/").get_data(as_text=True)
    answer = send("/", {"marking": "QX80N?0", "key": "QX80N50"}, to="/parts/came")
    assert answer.location == "/parts/QX80N50"
    assert "QX80N?0" not in client.get("/").get_data(as_text=True)


def test_a_marking_can_be_taken_off_the_list(client, send):
    """Nobody wants it any more."""
    send("/parts/?marking=ZZ12A9", {"marking": "ZZ12A9", "package": "", "pins": ""}, to="/parts/want")
    answer = send("/", {"marking": "ZZ12A9", "key": ""}, to="/parts/came")

    assert answer.location == "/"
    assert "ZZ12A9" not in client.get("/").get_data(as_text=True)


def test_a_package_that_does_not_fit_is_shown(client, send, dropped):
    """The board carries a TO-263, the sheet is of a TO-220."""
    send("/", {"sheet": dropped()}, to="/start")

    assert "another part" in client.get("/parts/?marking=QX80N50&package=TO-263").get_data(as_text=True)


def test_a_refused_sheet_says_what_it_seems_to_be(client, send, dropped):
    """A diode's sheet is no switch's."""
    path = send("/", {"sheet": dropped(b"%PDF-1.7 diode")}, to="/start").location
    page = client.get(path).get_data(as_text=True)

    assert "Not read" in page
    assert "diode tvs" in page
    assert "Could not be read" in client.get("/").get_data(as_text=True)


def test_a_part_can_be_typed_without_a_sheet(client, send):
    """Five figures are enough for a provisional result; a missing one is named."""
    typed = {"marking": "HM75X", "vds_max": "80 V", "rds_on": "5 mΩ", "tj_max": "175 °C", "rth_jc": "0.75 K/W"}
    refused = send("/parts/type?marking=HM75X", typed, to="/parts/type")
    assert refused.status_code == 400
    assert 'value="5 mΩ"' in refused.get_data(as_text=True)

    kept = send("/parts/type?marking=HM75X", {**typed, "id_cont": "120 A"}, to="/parts/type")
    assert kept.location == "/parts/HM75X"
    four = {"discharge_bank.part": "HM75X", "discharge_bank.switches": "6", "cells.in_series": "8", "claim.continuous": "80"}
    result = client.get(send("/", four, to="/start").location).get_data(as_text=True)
    assert "typed without its sheet" in result


def test_an_unknown_board_says_what_its_part_would_have_to_be(client):
    """29.2 V of eight cells (3.65 V each, LiFePO4 cell specifications) ask for at least that rating."""
    page = client.get("/boards/needed?discharge_bank.switches=6&cells.in_series=8&claim.continuous=80").get_data(as_text=True)

    assert "at least 29.2 V" in page
    assert "At most" in page

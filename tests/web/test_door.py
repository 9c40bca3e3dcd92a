"""The door: who is let in, what a browser may do with a page, and what is refused."""


def test_a_foreign_host_is_refused(client):
    """A name that points to this machine from outside does not open the pages (DNS rebinding)."""
    assert client.get("/", headers={"Host": "packs.example"}).status_code == 400


def test_a_form_without_its_token_is_refused(client):
    """Another site's form cannot act for the person at this machine."""
    assert client.post("/start", data={"discharge_bank.part": "X1"}).status_code == 400


def test_a_form_from_another_site_is_refused(client, send):
    """Even with a token: the origin must be ours."""
    assert client.post("/start", headers={"Origin": "http://packs.example"}).status_code == 403
    assert send("/", {"discharge_bank.part": "X1"}, to="/start").status_code == 303


def test_every_answer_forbids_what_no_page_needs(client):
    """No script, no frame, no outside picture."""
    policy = client.get("/").headers["Content-Security-Policy"]

    assert "default-src 'none'" in policy
    assert "script-src" not in policy
    assert client.get("/").headers["X-Content-Type-Options"] == "nosniff"


def test_a_sheet_leaves_as_a_download_only(client, send, dropped):
    """A foreign PDF never opens in the browser's own viewer."""
    path = send("/", {"sheet": dropped()}, to="/start").location
    answer = client.get(path.split("?")[0] + "/file")

    assert answer.headers["Content-Disposition"].startswith("attachment")
    assert "sandbox" in answer.headers["Content-Security-Policy"]
    assert answer.data.startswith(b"%PDF-")


def test_a_way_back_leads_to_our_own_pages_alone(send, dropped):
    """A forged way back ends on the bench."""
    send("/", {"sheet": dropped()}, to="/start")
    for forged in ("https://packs.example/", "//packs.example/", "/\\packs.example"):
        answer = send("/", {"seen": "r-vsd-1.2 1", "back": forged}, to="/parts/readings/confirm")
        assert answer.location == "/"


def test_what_is_not_there_says_so(client):
    """A page that does not exist says what to do."""
    for path in ("/parts/NOSUCH", "/results/none", "/boards/none", "/sheets/none", "/sheets/crops/none.png"):
        answer = client.get(path)
        assert answer.status_code == 404
        assert "Back to the bench" in answer.get_data(as_text=True)

"""What goes wrong on the machine is told in words: what, where, and what to do; never a stack of the program's own."""

import pytest

from service.facts.keeping_error import StoreError
from service.wiring import looking_up


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (StoreError("The data folder lies on a network; name one on this machine."), "The data folder lies on a network; name one on this machine."),
        (PermissionError(13, "Permission denied", "/somewhere"), "Permission denied: /somewhere"),
    ],
)
def test_what_goes_wrong_is_told_without_a_stack(run, monkeypatch, error, words):
    """Code 2 and one line."""

    def fail(*_arguments: object, **_how: object) -> None:
        raise error

    monkeypatch.setattr(looking_up, "lookup", fail)
    ended = run("lookup", "AB75N40")

    assert (ended.code, ended.err) == (2, f"switchbank: {words}\n")


@pytest.mark.parametrize("command", ["serve", "demo"])
@pytest.mark.parametrize("host", ["0.0.0.0", "192.0.2.7", "example.org"])  # noqa: S104  what is refused
def test_the_pages_listen_on_this_machine_alone(run, command, host):
    """Without accounts nobody else may reach them."""
    ended = run(command, "--host", host)

    assert ended.code == 2
    assert "127.0.0.1, ::1 or localhost" in ended.err


def test_the_example_never_goes_into_a_folder_of_one_s_own(run, tmp_path):
    """Invented data and one's own never mix."""
    (tmp_path / "switchbank.sqlite3").touch()
    ended = run("demo", "--data-dir", tmp_path)

    assert ended.code == 2
    assert "holds data of your own" in ended.err


def test_the_doctor_names_versions_the_folder_and_the_jail(run, tmp_path):
    """A question can be answered from what is pasted; asking leaves nothing behind."""
    shown = run("doctor")

    assert shown.code == 0
    assert f"{tmp_path / 'data'} (not made yet" in shown.out
    assert "reading child, seccomp" in shown.out
    assert not (tmp_path / "data").exists()

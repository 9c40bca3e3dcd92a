"""A desk in memory, a reader that sees one invented sheet, and a browser without a window."""

import hashlib
import io
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from flask.testing import FlaskClient

import parsers.marking
from datastore.memory import MemoryStore
from service.facts.reading import Conditions, Limit, Reading, Refused, Sheet, Status
from service.usecases.keep_sheet import read_in
from service.web.app import create_app
from service.web.desk import Desk

PDF = b"%PDF-1.7 an invented sheet"
EVIDENCE = ("second_reader", "row", "column", "unit", "condition")


def printed(key: str, value: float, unit: str, si: float, **more: object) -> Reading:
    """A reading of the invented sheet."""
    place = float(len(key) * 10 + value % 7)
    first = Reading(
        id=f"r-{key}-{value:g}",
        key=key,
        limit=Limit.MAX,
        value=value,
        unit=unit,
        printed=f"{value:g}",
        si=si,
        cond=Conditions(),
        status=Status.ACCEPTED,
        evidence=EVIDENCE,
        why="row, column, unit and condition agree",
        page=1,
        bbox=(100.0, place, 120.0, place + 8.0),
        row_bbox=(40.0, place, 500.0, place + 10.0),
        quote=f"{key} {value:g} {unit}",
    )
    return replace(first, **more)


INVENTED = (
    printed("vds_max", 80, "V", 80),
    printed("vgs_max", 20, "V", 20, cond=Conditions(sign="+-")),
    printed("rds_on", 5, "mohm", 0.005, cond=Conditions(vgs=10, id=50)),
    printed("rds_on", 4, "mohm", 0.004, cond=Conditions(vgs=10, id=50), limit=Limit.TYP),
    printed("id_cont", 120, "A", 120, cond=Conditions(tc=25)),
    printed("id_pulse", 480, "A", 480),
    printed("pd", 200, "W", 200, cond=Conditions(tc=25)),
    printed("rth_jc", 0.75, "K/W", 0.75),
    printed("tj_max", 175, "degC", 175),
    printed("vsd", 1.2, "V", 1.2, status=Status.REVIEW, why="the column does not say which end it is"),
)


class InventedReader:
    """Sees the invented sheet in every file, unless the file says that it is none."""

    version = "test-1"

    def read(self, name: str, data: bytes) -> Sheet:
        """Read one file."""
        sheet = Sheet(reader_version=self.version, file=name, sha256=hashlib.sha256(data).hexdigest(), pages=1, text_layer="good")
        if b"diode" in data:
            return replace(sheet, refused=Refused(kind="other_component", seems_to_be="diode_tvs", detail="No switch: a diode's sheet."))
        return replace(sheet, part="QX80N50", manufacturer="Quill Devices", polarity="N", package="TO-220", readings=INVENTED)


class BlankCropper:
    """Draws nothing, but remembers what it was asked for."""

    def __init__(self) -> None:
        self.asked: list[tuple[int, object, object]] = []

    def crop(self, data: bytes, *, page: int, box: object, mark: object = None) -> bytes:
        """A picture's first bytes."""
        assert data == PDF
        self.asked.append((page, box, mark))
        return b"\x89PNG\r\n\x1a\n"


@pytest.fixture
def cropper() -> BlankCropper:
    """The renderer."""
    return BlankCropper()


@pytest.fixture
def store() -> MemoryStore:
    """The store behind the pages."""
    return MemoryStore()


@pytest.fixture
def client(store: MemoryStore, cropper: BlankCropper) -> FlaskClient:
    """A browser without a window; files are read while it waits."""
    reader = InventedReader()
    desk = Desk(
        store=store,
        cropper=cropper,
        markings=parsers.marking,
        clock=lambda: datetime(2026, 11, 2, 9, 0, tzinfo=UTC),
        who=lambda: "Ada",
        read_later=lambda sha256: read_in(sha256, store=store, reader=reader, markings=parsers.marking, change=desk.change("read")) and None,
    )
    return create_app(desk, secret_key="for tests alone").test_client()  # noqa: S106  signs nothing outside this test


@pytest.fixture
def send(client: FlaskClient) -> Callable[..., object]:
    """Fill in a form of a page and send it, as a person would."""

    def act(path: str, fields: dict[str, object], *, to: str) -> object:
        page = client.get(path, follow_redirects=True).get_data(as_text=True)
        token = re.search(r'name="csrf_token" value="([^"]+)"', page)
        assert token, f"no form on {path}"
        return client.post(to, data={"csrf_token": token.group(1), **fields}, content_type="multipart/form-data")

    return act


@pytest.fixture
def dropped() -> Callable[..., tuple[io.BytesIO, str]]:
    """A file as a browser sends it."""
    return lambda data=PDF: (io.BytesIO(data), "sheet.pdf")

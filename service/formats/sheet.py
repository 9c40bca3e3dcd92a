"""A sheet as switchbank.sheet/1, and back."""

from collections.abc import Mapping
from typing import Any

from service.facts.reading import Box, Conditions, Limit, Reading, Refused, Sheet, Status, Unaccounted
from service.formats.conditions import attribute, conditions_json

SCHEMA = "switchbank.sheet/1"


def sheet_json(sheet: Sheet) -> dict[str, object]:
    """Write a sheet in the order of the contract.

    Args:
        sheet: As read. How its reading was jailed is no part of it: that depends on the machine.

    Returns:
        Plain tables; no times, hosts or paths.
    """
    return {
        "schema": SCHEMA,
        "reader_version": sheet.reader_version,
        "file": sheet.file,
        "sha256": sheet.sha256,
        "part": sheet.part,
        "also": list(sheet.also),
        "manufacturer": sheet.manufacturer,
        "polarity": sheet.polarity,
        "package": sheet.package,
        "revision": sheet.revision,
        "pages": sheet.pages,
        "text_layer": sheet.text_layer,
        "readings": [reading_json(reading) for reading in sheet.readings],
        # Why empty: graphs are not read yet; the contract has their place.
        "curves": [],
        "unaccounted": [{"page": row.page, "bbox": list(row.bbox), "quote": row.quote} for row in sheet.unaccounted],
        "flags": list(sheet.flags),
        "refused": _refused_json(sheet.refused),
    }


def reading_json(reading: Reading) -> dict[str, object]:
    """Write one reading in the order of the contract."""
    return {
        "id": reading.id,
        "key": reading.key,
        "limit": reading.limit.value,
        "value": reading.value,
        "unit": reading.unit,
        "printed": reading.printed,
        "si": reading.si,
        "cond": conditions_json(reading.cond),
        "status": reading.status.value,
        "evidence": list(reading.evidence),
        "why": reading.why,
        "flags": list(reading.flags),
        "page": reading.page,
        "bbox": list(reading.bbox),
        "row_bbox": list(reading.row_bbox),
        "quote": reading.quote,
    }


def sheet_from(written: Mapping[str, Any]) -> Sheet:
    """Take a sheet back that this program wrote.

    Args:
        written: As `sheet_json` writes it.

    Returns:
        The sheet without the state of its jail.
    """
    refused = written["refused"]
    return Sheet(
        reader_version=written["reader_version"],
        file=written["file"],
        sha256=written["sha256"],
        part=written["part"],
        also=tuple(written["also"]),
        manufacturer=written["manufacturer"],
        polarity=written["polarity"],
        package=written["package"],
        revision=written["revision"],
        pages=written["pages"],
        text_layer=written["text_layer"],
        readings=tuple(reading_from(reading) for reading in written["readings"]),
        unaccounted=tuple(Unaccounted(page=row["page"], bbox=_box(row["bbox"]), quote=row["quote"]) for row in written["unaccounted"]),
        flags=tuple(written["flags"]),
        refused=Refused(**refused) if refused else None,
    )


def reading_from(written: Mapping[str, Any]) -> Reading:
    """Take a reading back that this program wrote."""
    lists = {"evidence": tuple(written["evidence"]), "flags": tuple(written["flags"])}
    kinds = {"limit": Limit(written["limit"]), "status": Status(written["status"])}
    boxes = {"bbox": _box(written["bbox"]), "row_bbox": _box(written["row_bbox"])}
    cond = Conditions(**{attribute(name): value for name, value in written["cond"].items()})
    return Reading(**{**written, **lists, **kinds, **boxes, "cond": cond})


def _refused_json(refused: Refused | None) -> dict[str, object] | None:
    """Why nothing could be read."""
    return None if refused is None else {"kind": refused.kind, "seems_to_be": refused.seems_to_be, "detail": refused.detail}


def _box(written: list[float]) -> Box:
    """Four numbers."""
    x0, top, x1, bottom = written
    return (x0, top, x1, bottom)

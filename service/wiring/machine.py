"""What this machine gives the program."""

from collections.abc import Iterator
from pathlib import Path

from service.wiring.ground import folder_of


def examine(data_dir: Path | None) -> Iterator[tuple[str, str]]:
    """Name what this machine gives: versions, the data folder, how well reading children are locked in.

    Args:
        data_dir: The data folder.

    Yields:
        What, and how it stands.
    """
    import platform
    import shutil
    from importlib.metadata import version
    from importlib.util import find_spec

    from datastore.store import DATABASE
    from parsers import process
    from parsers.version import READER_VERSION
    from service.derating.version import ENGINE_VERSION

    folder = folder_of(data_dir)
    ground = next(path for path in (folder, *folder.parents) if path.exists())
    yield "switchbank", f"{version('switchbank')}, reader {READER_VERSION}, engine {ENGINE_VERSION}"
    yield "Python", f"{platform.python_version()} on {platform.system()} {platform.machine()}"
    yield (
        "data folder",
        f"{folder} ({'in use' if (folder / DATABASE).exists() else 'not made yet'}, {shutil.disk_usage(ground).free / 1e9:.0f} GB free)",
    )
    yield "scanned sheets", "can be read" if find_spec("rapidocr") else "cannot be read: the extra 'ocr' is not installed"
    yield "reports as PDF", "can be made" if find_spec("weasyprint") else "are printed from the browser: the extra 'pdf' is not installed"
    process.start()
    sheet = process.read_document("nothing.pdf", b"%PDF-1.4\n%%EOF\n")
    yield from ((f"reading child, {step.replace('_', ' ')}", state) for step, state in sheet.isolation.items())

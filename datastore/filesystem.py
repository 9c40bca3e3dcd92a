"""Whether a folder lies on this machine's own disk: SQLite's locks do not hold on shared folders of a network."""

from pathlib import Path

from service.facts.keeping_error import StoreError

NETWORK = frozenset(
    {"9p", "afs", "ceph", "cifs", "davfs", "fuse.davfs", "fuse.rclone", "fuse.sshfs", "glusterfs", "lustre", "ncpfs", "nfs", "nfs4", "smb3", "smbfs"}
)
MOUNTS = Path("/proc/self/mounts")


def refuse_network_folder(folder: Path, *, mounts: Path = MOUNTS) -> None:
    """Refuse a data folder on a network file system, where that can be told.

    Args:
        folder: The data folder.
        mounts: The kernel's list of mounts; where there is none (other systems than Linux) nothing is refused.

    Raises:
        StoreError: The folder lies on a network file system; says which and what to do.
    """
    kind, point = kind_of(folder.resolve(), mounts=mounts)
    if kind in NETWORK:
        raise StoreError(
            f"the data folder {folder} lies on a network file system ({kind}, mounted at {point}): its locks cannot be trusted "
            "and the database would be damaged sooner or later; choose a folder on a disk of this machine"
        )


def kind_of(folder: Path, *, mounts: Path) -> tuple[str, str]:
    """Tell the type and the mount point of the file system that a folder lies on; empty where nobody can tell."""
    if not mounts.is_file():
        return "", ""
    lines = (line.split() for line in mounts.read_text(encoding="utf-8", errors="replace").splitlines())
    found = [(point.replace("\\040", " "), kind) for _device, point, kind, *_rest in lines]
    above = [(point, kind) for point, kind in found if folder.is_relative_to(point)]
    # Why the last of the deepest: what is mounted later over the same point hides what was there.
    point, kind = max(enumerate(above), key=lambda numbered: (len(Path(numbered[1][0]).parts), numbered[0]), default=(0, ("", "")))[1]
    return kind, point

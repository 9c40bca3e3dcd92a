"""Errors of keeping that use cases tell people about."""


class MovedOnError(Exception):
    """Somebody else changed the thing meanwhile; look again and decide anew."""


class DamagedFileError(Exception):
    """A stored file no longer has the contents that its name promises."""


class StoreError(Exception):
    """The store cannot be opened where it is; says what to do."""

"""The reader's version; it moves whenever a reading may move."""

READER_VERSION = "0.5.0"

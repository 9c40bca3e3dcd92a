"""The engine's version; it moves whenever a result may move."""

ENGINE_VERSION = "1.1.0"

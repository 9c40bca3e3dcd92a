"""Forms of the pages, one subject a file."""

"""The one place that joins the store, the readers, the use cases and the pages; one wish of the command line a file."""

"""The same subjects as the pages, as JSON; and the published schemas of everything that leaves the program as JSON."""

"""Pictures of a result, one a file: each is an SVG of its own, drawn alike each time."""

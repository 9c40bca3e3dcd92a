"""Layout families: what the heading of a table says about the columns below it, one family a file."""

from parsers.family import Family
from parsers.layouts import channel_columns, duration_columns, min_typ_max, part_columns, single_value

FAMILIES: tuple[Family, ...] = (
    channel_columns.FAMILY,
    duration_columns.FAMILY,
    part_columns.FAMILY,
    min_typ_max.FAMILY,
    single_value.FAMILY,
)
"""In the order in which they are asked: the first that knows the heading names the columns."""

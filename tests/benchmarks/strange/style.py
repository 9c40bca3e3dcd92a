"""How the tables of one sheet look: which columns in which order, what is merged, where conditions stand, what is ruled."""

from dataclasses import dataclass
from random import Random

RATING_COLUMNS = (
    ("symbol", "label", "value", "unit"),
    ("label", "symbol", "value", "unit"),
    ("symbol", "label", "cond", "value", "unit"),
    ("label", "symbol", "cond", "value", "unit"),
    ("label", "cond", "symbol", "value", "unit"),
    ("label", "symbol", "cond", "min", "max", "unit"),
    ("symbol", "label", "cond", "min", "typ", "max", "unit"),
    ("label", "symbol", "unit", "value"),
    ("label", "value", "unit"),
    ("symbol", "value", "unit"),
    ("label", "symbol", "value"),
)
LIMIT_COLUMNS = (
    ("symbol", "label", "cond", "min", "typ", "max", "unit"),
    ("label", "symbol", "cond", "min", "typ", "max", "unit"),
    ("label", "symbol", "min", "typ", "max", "unit", "cond"),
    ("symbol", "label", "cond", "min", "typ", "max", "unit"),
    ("label", "cond", "symbol", "min", "typ", "max", "unit"),
    ("label", "symbol", "cond", "unit", "min", "typ", "max"),
    ("symbol", "cond", "min", "typ", "max", "unit"),
    ("label", "symbol", "cond", "max", "typ", "min", "unit"),
    ("label", "symbol", "min", "typ", "max", "unit"),
)
WIDTHS = {"label": 150.0, "symbol": 56.0, "cond": 135.0, "min": 40.0, "typ": 40.0, "max": 42.0, "value": 74.0, "unit": 42.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """The look of one sheet's tables.

    Attributes:
        ratings: Columns of the ratings, left to right.
        limits: Columns of the characteristics.
        conditions: Where ratings without a column for conditions put them: behind or below the name, in the symbol, or aside without a heading.
        names: How names and symbols of several lines stand: middle, top, first or repeated.
        units: How units stand: merged (over equal neighbours), item, line or first.
        align: Alignment of numbers.
        level: Where a single number stands beside a name of several lines: middle, top or bottom.
        rules: grid, items, lines, half, none, zebra or columns.
        empty: What stands where there is no number.
        spanned: Whether one heading stands over min, typ and max.
        sections: Whether bold lines part the characteristics.
        in_name: Whether units stand behind the names instead.
        marked: How footnote marks stand: raised with or without brackets, level with the text, or as a note in words.
        marks_at: Beside what they stand: label, symbol or value.
        caption_says: Whether the caption of the ratings gives their temperature.
        repeats: Whether currents and powers at that temperature repeat it.
        size: Size of the letters. [pt]
        padding: Room above and below a line. [pt]
        left: Whether names are set to the left.
        font: Font of the text.
        beside: Whether the thermal table stands at the right of the ratings.
        joined: Whether characteristics are one table.
        common: Whether equal conditions of neighbours are one cell.
        stretch: How much wider than usual each column is. [1]
        shift: How far below the line the text of each column is set, as a share of its size. [1]
    """

    ratings: tuple[str, ...]
    limits: tuple[str, ...]
    conditions: str
    names: str
    units: str
    align: str
    level: str
    rules: str
    empty: str
    spanned: bool
    sections: bool
    in_name: bool
    marked: str
    marks_at: str
    caption_says: bool
    repeats: bool
    size: float
    padding: float
    left: bool
    font: str
    beside: bool
    joined: bool
    common: bool
    stretch: dict[str, float]
    shift: dict[str, float]


def drawn_style(rng: Random) -> Style:
    """Draw a style at random."""
    ratings, limits = rng.choice(RATING_COLUMNS), rng.choice(LIMIT_COLUMNS)
    unitless = "unit" not in ratings
    caption_says = rng.random() < 0.6
    return Style(
        ratings=ratings,
        limits=limits,
        conditions=rng.choice(("behind", "behind", "below", "symbol", "aside", "aside")),
        names=rng.choices(("middle", "top", "first", "repeated"), (4, 2, 2, 2))[0],
        units=rng.choices(("line", "item", "merged", "first"), (4, 3, 2, 1))[0],
        align=rng.choices(("centre", "right", "left"), (6, 1, 1))[0],
        level=rng.choices(("middle", "top", "bottom"), (6, 2, 1))[0],
        rules=rng.choices(("grid", "items", "lines", "half", "none", "zebra", "columns"), (5, 3, 2, 2, 2, 1, 1))[0],
        empty=rng.choices(("", "-", "--", "—", "---", "N/A"), (4, 3, 2, 2, 1, 0.3))[0],
        spanned=rng.random() < 0.15,
        sections=rng.random() < 0.3,
        in_name=not unitless and rng.random() < 0.06,
        marked=rng.choice(("raised", "bare", "bracketed", "level", "noted")),
        marks_at=rng.choice(("label", "label", "symbol", "value")),
        caption_says=caption_says,
        repeats=not caption_says or rng.random() < 0.5,
        size=rng.choice((6.5, 7.0, 7.5, 8.0, 8.5)),
        padding=rng.choice((0.3, 1.0, 1.6, 2.2, 3.0)),
        left=rng.random() < 0.8,
        font=rng.choice(("Helvetica", "Helvetica", "Times-Roman", "Vera")),
        beside=rng.random() < 0.12,
        joined=rng.random() < 0.5,
        common=rng.random() < 0.35,
        stretch={name: rng.uniform(0.75, 1.35) for name in WIDTHS},
        shift={name: rng.uniform(-0.3, 0.3) for name in ("cond", "unit", "symbol")} if rng.random() < 0.12 else {},
    )

"""Sets parameters into the cells of a table as a style wants them."""

from collections.abc import Sequence
from dataclasses import dataclass

from strange.item import Item, Line
from strange.speech import Speech
from strange.style import WIDTHS, Style

LIMITS = ("min", "typ", "max")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One cell; its lines are parted by a stroke ``|``.

    Attributes:
        text: What stands in it.
        rows: How many rows it spans.
        columns: How many columns it spans.
        align: left, centre or right.
        level: top, middle or bottom.
        bold: Whether it is a heading.
    """

    text: str = ""
    rows: int = 1
    columns: int = 1
    align: str = "centre"
    level: str = "middle"
    bold: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A table of cells; None is covered by a span.

    Attributes:
        cells: Rows from the top.
        widths: Of the columns, before they are stretched.
        ends: Rows after which a parameter ends.
        heads: How many rows are the heading.
        shifts: How far below the line each column's text is set, as a share of its size. [1]
    """

    cells: list[list[Cell | None]]
    widths: list[float]
    ends: frozenset[int]
    heads: int
    shifts: tuple[float, ...] = ()


class Setter:
    """Sets tables of one sheet."""

    def __init__(self, style: Style, speech: Speech) -> None:
        self.style, self.speech = style, speech

    def grid(self, items: Sequence[Item | str], columns: tuple[str, ...], heads: tuple[str, ...] = ()) -> Grid:
        """A heading, then the lines of every parameter; text among the items is a bold line; heads are those of several value columns."""
        shown = self._shown(columns, heads)
        head = self._head(shown, heads)
        cells: list[list[Cell | None]] = [*head]
        ends = {len(head) - 1}
        for item in items:
            if isinstance(item, str):
                cells.append([Cell(text=item, columns=len(shown), align="left", bold=True), *[None] * (len(shown) - 1)])
            else:
                cells += self._rows(item, shown, columns)
            ends.add(len(cells) - 1)
        if self.style.units == "merged" and "unit" in shown:
            _merge(cells, shown.index("unit"), len(head))
        if self.style.common and "cond" in shown:
            _merge(cells, shown.index("cond"), len(head))
        widths = [80.0 if name == "aside" else 58.0 if name[-1].isdigit() else WIDTHS[name] * self.style.stretch[name] for name in shown]
        return Grid(
            cells=cells, widths=widths, ends=frozenset(ends), heads=len(head), shifts=tuple(self.style.shift.get(name, 0.0) for name in shown)
        )

    def _shown(self, columns: tuple[str, ...], heads: tuple[str, ...]) -> list[str]:
        out: list[str] = []
        for name in columns:
            if name in {"value", "max"} and heads and name == "value":
                out += [f"max:{at}" for at in range(len(heads))]
            elif not (name == "unit" and self.style.in_name):
                out.append(name)
            if name == "label" and self._aside(columns):
                out.append("aside")
        return out

    def _aside(self, columns: tuple[str, ...]) -> bool:
        return "cond" not in columns and "label" in columns and self.style.conditions == "aside"

    def _head(self, shown: list[str], heads: tuple[str, ...]) -> list[list[Cell | None]]:
        row: list[Cell | None] = []
        for name in shown:
            if name == "aside":
                row.append(None)
            elif ":" in name:
                row.append(Cell(text=heads[int(name[-1])], bold=True))
            else:
                align = "left" if name == "label" and self.style.left else "centre"
                row.append(Cell(text=self.speech.title(name), columns=2 if "aside" in shown and name == "label" else 1, bold=True, align=align))
        if not (self.style.spanned and all(limit in shown for limit in LIMITS)):
            return [row]
        first = min(shown.index(limit) for limit in LIMITS)
        over: list[Cell | None] = [Cell(text=cell.text, rows=2, columns=cell.columns, bold=True, align=cell.align) if cell else None for cell in row]
        over[first : first + 3] = [Cell(text=self.speech.title("values"), columns=3, bold=True), None, None]
        return [over, [cell if name in LIMITS else None for name, cell in zip(shown, row, strict=True)]]

    def _rows(self, item: Item, shown: list[str], columns: tuple[str, ...]) -> list[list[Cell | None]]:
        count = len(item.lines)
        rows: list[list[Cell | None]] = [[None] * len(shown) for _ in item.lines]
        for at, name in enumerate(shown):
            if name in {"label", "symbol"}:
                self._set_name(rows, at, name, item, columns)
            elif name == "unit":
                self._set_unit(rows, at, item)
            else:
                for n, line in enumerate(item.lines):
                    rows[n][at] = self._cell(line, name, item, last=n == count - 1, unitless="unit" not in columns)
        return rows

    def _set_name(self, rows: list[list[Cell | None]], at: int, name: str, item: Item, columns: tuple[str, ...]) -> None:
        count, style = len(rows), self.style
        texts = [self._name(item, name, line, columns) for line in item.lines]
        align = "left" if name == "label" and style.left else "centre"
        if count == 1 or style.names == "repeated" or len(set(texts)) > 1:
            follow = count > 1 and style.names != "repeated" and self._inline(columns) and name == "label" and style.conditions == "behind"
            for n, text in enumerate(texts):
                said = self.speech.conditions(item.lines[n].cond, item.lines[n].extra)
                rows[n][at] = Cell(text=said if follow and n and said else text, align=align, level=style.level)
        elif style.names == "first":
            for n, text in enumerate(texts):
                rows[n][at] = Cell(text="" if n else text, align=align)
        else:
            rows[0][at] = Cell(text=texts[0], rows=count, align=align, level="top" if style.names == "top" else "middle")

    def _inline(self, columns: tuple[str, ...]) -> bool:
        return "cond" not in columns and not self._aside(columns)

    def _name(self, item: Item, name: str, line: Line, columns: tuple[str, ...]) -> str:
        """A parameter's name or symbol, with conditions, unit and mark where they stand there."""
        style = self.style
        text = item.label if name == "label" else item.symbol
        said = self.speech.conditions(line.cond, line.extra)
        limited = {"silicon": "Silicon Limited", "package": "Package Limited", None: ""}[None if line.noted else line.limited_by]
        if limited and name == ("label" if "label" in columns else "symbol"):
            text += f" ({limited})"
        if item.mark and style.marks_at == name:
            text += mark(item.mark, style.marked)
        inline = self._inline(columns)
        in_symbol = "label" not in columns or (style.conditions == "symbol" and "symbol" in columns)
        if said and inline and name == ("symbol" if in_symbol else "label"):
            text += {"behind": f", {said}", "below": f"|{said}", "symbol": f" @ {said}"}.get(style.conditions, f" ({said})")
        if style.in_name and name == ("label" if "label" in columns else "symbol"):
            text += f" ({self.speech.units(item.unit)})"
        return text

    def _set_unit(self, rows: list[list[Cell | None]], at: int, item: Item) -> None:
        unit, style = self.speech.units(item.unit), self.style.units
        for n in range(len(rows)):
            rows[n][at] = Cell(text=unit if style in {"line", "merged"} or n == 0 else "")
        if style == "item" and len(rows) > 1:
            rows[0][at] = Cell(text=unit, rows=len(rows))
            rows[1:] = [[None if c == at else cell for c, cell in enumerate(row)] for row in rows[1:]]

    def _cell(self, line: Line, name: str, item: Item, *, last: bool, unitless: bool) -> Cell:
        style = self.style
        if name in {"cond", "aside"}:
            return Cell(text=self.speech.conditions(line.cond, line.extra), align="left" if style.left else "centre")
        text = line.values.get("max" if name == "value" else name, "")
        if name == "value" and not text:
            text = next(iter(line.values.values()))
        text = self.speech.number(text) if text else style.empty
        if text and unitless and text != style.empty:
            text += ("" if self.speech.spaced is False else " ") + self.speech.units(item.unit)
        if line.noted and text not in {"", style.empty}:
            text += mark(line.noted, style.marked)
        elif item.mark and style.marks_at == "value" and last and text not in {"", style.empty}:
            text += mark(item.mark, style.marked)
        return Cell(text=text, align=style.align, level=style.level)


def mark(letter: str, how: str) -> str:
    """A footnote mark."""
    return {
        "raised": f"^{{{letter})}}",
        "bare": f"^{{{letter}}}",
        "bracketed": f"^{{({letter})}}",
        "level": f"({letter})",
        "noted": f" (Note {letter})",
    }[how]


def _merge(cells: list[list[Cell | None]], column: int, first: int) -> None:
    """Equal neighbours of a column become one cell."""
    start = first
    for n in range(first + 1, len(cells) + 1):
        top, this = cells[start][column], cells[n][column] if n < len(cells) else None
        if top and this and this.text == top.text and top.rows == this.rows == 1 and top.columns == this.columns == 1:
            continue
        if top and top.text and n - start > 1:
            cells[start][column] = Cell(text=top.text, rows=n - start, align=top.align)
            for covered in range(start + 1, n):
                cells[covered][column] = None
        start = n

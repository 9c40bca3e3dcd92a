"""Puts a table of cells on a canvas, with as many lines and shades as its style has."""

from collections.abc import Iterator

from drawing.ink import Pen
from reportlab.pdfgen.canvas import Canvas

from strange.setting import Cell, Grid
from strange.style import Style

_OTHER = set("℃①②③ⅡⅢ・")


class Ink(Pen):
    """The fixtures' pen, which takes the signs that Latin fonts lack from the Chinese one."""

    def _font(self, character: str, *, bold: bool) -> str:
        return "STSong-Light" if character in _OTHER else super()._font(character, bold=bold)


def draw_grid(canvas: Canvas, pen: Pen, style: Style, grid: Grid, *, x: float, top: float, width: float) -> float:
    """Draw a table below ``top`` (points from the bottom); give back where it ends."""
    left, edges = _places(pen, style, grid, x=x, top=top, width=width)
    if style.rules == "zebra":
        canvas.setFillGray(0.9)
        for n in range(grid.heads, len(grid.cells), 2):
            canvas.rect(x, edges[n + 1], width, edges[n] - edges[n + 1], stroke=0, fill=1)
        canvas.setFillGray(0)
    for r, row in enumerate(grid.cells):
        for c, cell in enumerate(row):
            if cell is not None:
                box = (left[c], edges[r + cell.rows], left[c + cell.columns], edges[r])
                shift = grid.shifts[c] * style.size if grid.shifts and r >= grid.heads else 0.0
                _write(canvas, pen, style, cell, (box[0], box[1] - shift, box[2], box[3] - shift))
                if style.rules == "grid":
                    canvas.rect(box[0], box[1], box[2] - box[0], box[3] - box[1])
    _rule(canvas, style, grid, left, edges)
    return edges[-1]


def height_of(pen: Pen, style: Style, grid: Grid, width: float) -> float:
    """How high a table will be [pt]."""
    _, edges = _places(pen, style, grid, x=0, top=0, width=width)
    return edges[0] - edges[-1]


def _places(pen: Pen, style: Style, grid: Grid, *, x: float, top: float, width: float) -> tuple[list[float], list[float]]:
    """Left edges of the columns, upper edges of the rows."""
    share = width / sum(grid.widths)
    left = [x + share * sum(grid.widths[:n]) for n in range(len(grid.widths) + 1)]
    heights = [style.size * 1.2 + 2 * style.padding] * len(grid.cells)
    for spans in (False, True):
        for r, row in enumerate(grid.cells):
            for c, cell in enumerate(row):
                if cell is None or (cell.rows > 1) is not spans:
                    continue
                lines = len(wrapped(pen, cell, style.size, left[c + cell.columns] - left[c] - 6))
                short = lines * style.size * 1.2 + 2 * style.padding - sum(heights[r : r + cell.rows])
                heights[r + cell.rows - 1] += max(0.0, short)
    edges = [top - sum(heights[:n]) for n in range(len(heights) + 1)]
    return left, edges


def wrapped(pen: Pen, cell: Cell, size: float, width: float) -> list[str]:
    """The lines of a cell's text, broken at spaces, commas and Chinese signs where it is too long."""
    out: list[str] = []
    for text in cell.text.split("|"):
        line = ""
        for word in text.split(" "):
            longer = f"{line} {word}" if line else word
            if line and pen.width(longer, size, bold=cell.bold) > width:
                out.append(line)
                line = word
            else:
                line = longer
        out.append(line)
    return out


def _write(canvas: Canvas, pen: Pen, style: Style, cell: Cell, box: tuple[float, float, float, float]) -> None:
    x0, bottom, x1, top = box
    leading = style.size * 1.2
    lines = wrapped(pen, cell, style.size, x1 - x0 - 6)
    height = len(lines) * leading
    first = {"top": top - style.padding, "middle": (top + bottom + height) / 2, "bottom": bottom + style.padding + height}[cell.level]
    at = {"left": x0 + 3, "centre": (x0 + x1) / 2, "right": x1 - 4}[cell.align]
    for n, line in enumerate(lines):
        pen.write(canvas, at, first - n * leading - 0.9 * style.size, line, style.size, bold=cell.bold, align=cell.align)


def _rule(canvas: Canvas, style: Style, grid: Grid, left: list[float], edges: list[float]) -> None:
    """The lines of all but a full grid."""
    canvas.setLineWidth(0.5)
    if style.rules in {"items", "lines", "half", "columns"}:
        for n in (0, grid.heads, len(grid.cells)):
            canvas.line(left[0], edges[n], left[-1], edges[n])
    if style.rules == "items":
        for n in grid.ends:
            canvas.line(left[0], edges[n + 1], left[-1], edges[n + 1])
    if style.rules == "lines":
        for n, first, last in _feet(grid):
            canvas.line(left[first], edges[n], left[last], edges[n])
    if style.rules == "columns":
        for place in left:
            canvas.line(place, edges[0], place, edges[-1])


def _feet(grid: Grid) -> Iterator[tuple[int, int, int]]:
    """The lower edge of every cell: its row, and the columns between which it lies."""
    for r, row in enumerate(grid.cells):
        for c, cell in enumerate(row):
            if cell is not None:
                yield r + cell.rows, c, c + cell.columns

"""One strange sheet: its pages with all that stands on them, and the readings that they print."""

from dataclasses import replace
from io import BytesIO
from random import Random
from typing import Any

from drawing.ink import register_fonts
from reportlab import rl_config
from reportlab.pdfgen.canvas import Canvas

from strange import wording
from strange.item import Fact, Item, facts_of
from strange.paper import Ink, draw_grid, height_of
from strange.part import Part, invented, rounded
from strange.rows import Rows, plain, side_by_side
from strange.setting import Cell, Grid, Setter
from strange.speech import Speech
from strange.style import drawn_style

WIDTH, HEIGHT, MARGIN = 595.0, 842.0, 42.0
INNER = WIDTH - 2 * MARGIN
NOTES = {
    "1": "Repetitive rating; pulse width limited by maximum junction temperature.",
    "2": "Starting {tj} = 25 °C, L = 0.1 mH, {rg} = 25 Ω.",
    "3": "Surface mounted on 1 in^{{2}} FR4 board.",
    "4": "Package limited.",
}


class Sheet:
    """A sheet under way; its facts are what was printed so far."""

    def __init__(self, rng: Random) -> None:
        """Choose what the sheet will be: of one part, of two channels side by side or one below the other, of two parts."""
        register_fonts()
        rl_config.useA85 = 0
        self.rng, self.page, self.y = rng, 1, 0.0
        self.facts: list[Fact] = []
        self.kind = self.rng.choices(("single", "channels", "blocks", "parts"), (16, 1, 1, 1))[0]
        self.speech, self.style = Speech(self.rng), drawn_style(self.rng)
        if self.kind in {"channels", "parts"} and "value" not in self.style.ratings:
            self.style = replace(self.style, ratings=("label", "symbol", "cond", "value", "unit"))
        if self.kind != "single":
            self.style = replace(self.style, beside=False)
        self.part = invented(self.rng, small=True if self.kind in {"channels", "blocks"} else None)
        self.other = self._other()
        self.pen, self.set = Ink(regular=self.style.font, bold="Helvetica-Bold"), Setter(self.style, self.speech)
        self._bytes = BytesIO()
        self.canvas = Canvas(self._bytes, pagesize=(WIDTH, HEIGHT), invariant=1)
        self.maker = self.rng.choice(wording.MAKERS)
        self._open_page()

    def _other(self) -> Part:
        if self.kind in {"channels", "blocks"}:
            return replace(invented(self.rng, polarity=self.rng.choice("NP"), small=True, gates=self.part.gates), name=self.part.name)
        like = replace(self.part, name=self.part.name + "F", rds=tuple((rounded(a * 1.2), rounded(b * 1.2)) for a, b in self.part.rds))
        return replace(like, rth_jc=(rounded(self.part.rth_jc[0] * 3), rounded(self.part.rth_jc[1] * 3))) if self.part.rth_jc else like

    def drawn(self) -> bytes:
        """Draw the whole sheet."""
        self._front()
        if self.kind == "single":
            self._single(Rows(self.part, self.speech, self.rng))
        elif self.kind == "blocks":
            for channel, part in (("Q1", self.part), ("Q2", self.other)):
                self._block(channel, Rows(part, self.speech, self.rng, {"ch": channel}))
        else:
            self._pairs()
        for thing in (self._dimensions, self._model, self._packaging):
            if self.rng.random() < (0.5 if thing == self._dimensions else 0.15):
                thing()
        self.canvas.showPage()
        self.canvas.save()
        return self._bytes.getvalue()

    # --- pages

    def _open_page(self) -> None:
        self.y = HEIGHT - 40
        self._write(MARGIN, self.part.name, 11, bold=True)
        self._write(WIDTH - MARGIN, self.maker, 8, align="right")
        self.canvas.line(MARGIN, self.y - 4, WIDTH - MARGIN, self.y - 4)
        self.pen.write(self.canvas, MARGIN, 28, f"Rev. 1.{self.page}", 6.5)
        self.pen.write(self.canvas, WIDTH / 2, 28, f"{self.page}", 6.5, align="centre")
        self.y -= 20

    def _next_page(self) -> None:
        self.canvas.showPage()
        self.page += 1
        self._open_page()

    def _write(self, x: float, text: str, size: float, *, bold: bool = False, align: str = "left") -> None:
        self.pen.write(self.canvas, x, self.y, text, size, bold=bold, align=align)

    def _line(self, text: str, size: float = 7.5, *, bold: bool = False) -> None:
        self._write(MARGIN, text, size, bold=bold)
        self.y -= size * 1.35

    def _table(self, grid: Grid, x: float = MARGIN, width: float = INNER) -> None:
        if self.y - height_of(self.pen, self.style, grid, width) < 60:
            self._next_page()
        self.y = draw_grid(self.canvas, self.pen, self.style, grid, x=x, top=self.y, width=width) - 16

    # --- front page

    def _front(self) -> None:
        polarity = {"single": self.part.polarity, "parts": self.part.polarity}.get(self.kind, f"Dual {self.part.polarity}")
        self._line(f"{polarity}-Channel Enhancement Mode Power MOSFET", 10, bold=True)
        self.y -= 4
        if self.rng.random() < 0.4:
            self._line(self._praise())
        for feature in self.rng.sample(
            ("Low gate charge", "100 % UIS tested", "RoHS compliant", "Fast switching", "Logic level", "Battery management"), 3
        ):
            self._line(f"• {feature}")
        self.y -= 8
        for thing, chance in ((self._summary, 0.4), (self._ordering, 0.4)):
            if self.rng.random() < chance:
                thing()

    def _praise(self) -> str:
        """Headline figures in a line of words."""
        p, most = self.part, plain(self.part.rds[0][1])
        current = plain(p.current(p.spot, 25))
        for key, value, unit in (("vds_max", p.vds, "V"), ("rds_on", float(most), "mohm"), ("id_cont", float(current), "A")):
            self.facts.append(Fact(key=key, limit="max", value=value, unit=unit, cond={"where": "headline"}, page=self.page))
        return self.speech.index(f"V_{{DS}} = {p.vds} V, I_{{D}} = {current} A, R_{{DS(on)}} < {most} mΩ @ V_{{GS}} = {p.gates[0]:g} V")

    def _summary(self) -> None:
        """A box of headline figures."""
        p, s, rng = self.part, self.speech, self.rng
        most = plain(p.rds[0][1])
        rows = [("V_{DS}", f"{p.vds}", "V"), ("R_{DS(on)}, max", most, "mΩ"), ("I_{D}", plain(p.current(p.spot, 25)), "A")]
        for key, value, unit in (("vds_max", p.vds, "V"), ("rds_on", float(most), "mohm"), ("id_cont", float(rows[2][1]), "A")):
            self.facts.append(Fact(key=key, limit="max", value=value, unit=unit, cond={"where": "headline"}, page=self.page))
        if rng.random() < 0.4:
            at = s.condition("vgs", p.gates[0])
            cells: list[list[Cell | None]] = [
                [Cell(text=s.index(n), bold=True) for n in ("V_{DSS}", f"R_{{DS(on)}} max ({at})", "I_{D}")],
                [Cell(text=f"{value} {unit}") for _, value, unit in rows],
            ]
            self._table(Grid(cells=cells, widths=[60, 90, 60], ends=frozenset({0, 1}), heads=1), width=260)
            return
        cells = [[Cell(text=head, bold=True) for head in rng.choice((("Parameter", "Value", "Unit"), ("Product Summary", "", "")))]]
        cells += [[Cell(text=s.index(name)), Cell(text=value), Cell(text=unit)] for name, value, unit in rows]
        self._table(Grid(cells=cells, widths=[90, 60, 40], ends=frozenset(range(4)), heads=1), width=230)

    def _ordering(self) -> None:
        """Other parts of the family, with figures that are not this part's."""
        rng, p = self.rng, self.part
        names = [p.name, f"{p.name[:-1]}8", f"{p.name}-TR"]
        heads = rng.choice(
            (
                ("Part Number", "Package", "Marking", "Packing"),
                ("Device", "V_{DS} (V)", "R_{DS(on)} (mΩ)", "Package"),
                ("Ordering code", "Package", "Reel size", "Quantity"),
                ("Type", "V_{DS}", "I_{D}", "R_{DS(on)}"),
            )
        )
        body = {
            "Package": "TO-252",
            "Marking": p.name[:6],
            "Packing": "2500 / reel",
            "V_{DS} (V)": "45",
            "R_{DS(on)} (mΩ)": "7.7",
            "Reel size": '13"',
            "Quantity": "3000",
            "V_{DS}": "45 V",
            "I_{D}": "77 A",
            "R_{DS(on)}": "7.7 mΩ",
        }
        cells: list[list[Cell | None]] = [[Cell(text=self.speech.index(head), bold=True) for head in heads]]
        for name in names:
            own = {"V_{DS} (V)": str(p.vds), "V_{DS}": f"{p.vds} V"} if name == p.name else {}
            cells.append([Cell(text=name), *(Cell(text=(body | own)[head]) for head in heads[1:])])
            if own:
                self.facts.append(Fact(key="vds_max", limit="max", value=p.vds, unit="V", cond={"where": "headline"}, page=self.page))
        self._line(rng.choice(("Ordering information", "Product portfolio", "Device summary")), 9, bold=True)
        self.y += 4
        self._table(Grid(cells=cells, widths=[80] * 4, ends=frozenset(range(4)), heads=1), width=340)

    # --- the tables that are read

    def _single(self, rows: Rows) -> None:
        said: dict[str, Any] = {self.part.spot: 25} if self.style.caption_says else {}
        self._ratings([*rows.ratings()], [*rows.thermal()], said)
        for caption, items in self._grouped(rows):
            self._caption(caption, {"tj": 25})
            self._print(items, self.style.limits)
        self._notes()

    def _ratings(self, ratings: list[Item], thermal: list[Item], said: dict[str, Any]) -> None:
        both = {"min", "max"} <= set(self.style.ratings) and not self.style.beside and self.rng.random() < 0.6
        ratings = [_from_to(bare) if both else bare for item in ratings for bare in [self._bare(item, said)]]
        self._caption("ratings", said)
        columns = ("symbol", "value", "unit") if self.style.beside else self.style.ratings
        warm = (
            ("label", "symbol", "typ", "max", "unit")
            if self.speech.typical_thermal
            else tuple(name for name in columns if name not in {"min", "typ"})
        )
        warm = tuple(name for name in warm if name != "cond" or any(line.cond or line.extra for item in thermal for line in item.lines))
        if not self.style.beside:
            self._print(ratings, columns)
            self._caption("thermal", {})
            self._print(thermal, warm)
            return
        top, page, half = self.y, self.page, INNER * 0.5 - 8
        self._print(ratings, columns, width=half)
        below, self.y = self.y, top if page == self.page else HEIGHT - 60
        self._print(thermal, ("symbol", "typ", "max", "unit") if self.speech.typical_thermal else columns, x=MARGIN + half + 16, width=half)
        self.y = min(self.y, below)

    def _bare(self, item: Item, said: dict[str, Any]) -> Item:
        """A rating that leaves to the caption what the caption says; which facts it states is the same."""
        if item.key not in {"id_cont", "pd"} or not said:
            return item
        item = replace(item, said=item.said | said)
        if self.style.repeats or len({name for line in item.lines for name in line.cond} & {"t"}):
            return item
        lines = tuple(replace(line, cond={name: value for name, value in line.cond.items() if said.get(name) != value}) for line in item.lines)
        return replace(item, lines=lines)

    def _grouped(self, rows: Rows) -> list[tuple[str, list[Item | str]]]:
        groups: list[tuple[str, list[Item | str]]] = [("static", [*rows.static()]), ("dynamic", [*rows.dynamic()]), ("diode", [*rows.diode()])]
        if not self.style.joined:
            return groups
        joined: list[Item | str] = []
        for name, items in groups:
            joined += [self.speech.caption(name), *items] if self.style.sections else items
        return [("static", joined)]

    def _print(self, items: list[Any], columns: tuple[str, ...], *, x: float = MARGIN, width: float = INNER) -> None:
        self._table(self.set.grid(items, columns), x, width)
        for item in items:
            if isinstance(item, Item):
                self.facts += facts_of(self._visible(item, columns), self.page)

    def _visible(self, item: Item, columns: tuple[str, ...]) -> Item:
        """The item as far as these columns print it."""
        if "typ" in columns or "min" in columns:
            shown = {"min", "typ", "max"} & set(columns)
            lines = tuple(replace(line, values={limit: text for limit, text in line.values.items() if limit in shown}) for line in item.lines)
            return replace(item, lines=lines)
        return item

    def _caption(self, table: str, said: dict[str, Any]) -> None:
        text = self.speech.caption(table)
        if said and self.rng.random() < (1.0 if table == "ratings" else 0.7):
            ((name, value),) = said.items()
            text += f" ({self.speech.condition(name, value)} {self.rng.choice(wording.OTHERWISE)})"
        if self.y < 160:
            self._next_page()
        self.y -= 4
        self._line(text, 9, bold=True)
        self.y += 4

    def _notes(self) -> None:
        if self.y < 110:
            self._next_page()
        self._line(self.rng.choice(("Notes:", "Note", "Notes")), 7, bold=True)
        s = self.speech
        names = {"tj": s.index(s.junction), "rg": s.index("R_{G}")}
        for letter, text in NOTES.items():
            opened = (
                f"({letter})" if self.style.marked in {"bracketed", "level"} else f"^{{{letter}}}" if self.style.marked == "bare" else f"{letter}."
            )
            self._line(f"{opened} {text.format(**names)}", 6.5)

    # --- two of a kind

    def _block(self, channel: str, rows: Rows) -> None:
        name = self.rng.choice((channel, f"{channel} {rows.part.polarity}-Channel"))
        for table, items, columns in (("ratings", rows.ratings(), self.style.ratings), ("static", rows.static(), self.style.limits)):
            grid = self.set.grid(items, columns)
            if self.y - height_of(self.pen, self.style, grid, INNER) < 80:
                self._next_page()
            self._line(f"{name} {self.speech.caption(table)}", 9, bold=True)
            self._print([*items], columns)

    def _pairs(self) -> None:
        """Tables with a column for each channel or part."""
        channels = self.kind == "channels"
        heads = ("N-Channel", "P-Channel") if channels else (self.part.name, self.other.name)
        first, second = (replace(self.part, polarity="N"), replace(self.other, polarity="P")) if channels else (self.part, self.other)
        says: tuple[dict[str, Any], ...] = ({"ch": "Q1"}, {"ch": "Q2"}) if channels else ({"part": heads[0]}, {"part": heads[1]})
        seed = self.rng.random()
        left, right = (Rows(part, self.speech, Random(seed)) for part in (first, second))  # noqa: S311  nothing secret is drawn
        ratings = [*side_by_side(left.ratings(), right.ratings())]
        thermal = [*side_by_side([self._largest(item) for item in left.thermal()], [self._largest(item) for item in right.thermal()])]
        for table, items in (("ratings", ratings), ("thermal", thermal)):
            self._caption(table, {})
            self._table(self.set.grid(items, self.style.ratings, heads))
            for item in items:
                self.facts += facts_of(item, self.page, says)

    @staticmethod
    def _largest(item: Item) -> Item:
        return replace(item, lines=tuple(replace(line, values={"max": [*line.values.values()][-1]}) for line in item.lines))

    # --- what must not be read

    def _model(self) -> None:
        """A thermal model for simulators: resistances that nobody may take for the part's."""
        if self.y < 200:
            self._next_page()
        self._line(self.rng.choice(("SPICE thermal model", "Transient thermal model", "Thermal network")), 9, bold=True)
        heads = self.rng.choice(
            (("Symbol", "Value", "Unit", "Symbol", "Value", "Unit"), ("Parameter", "Value", "Unit"), ("Element", "R_{th} (K/W)", "C_{th} (J/K)"))
        )
        cells: list[list[Cell | None]] = [[Cell(text=self.speech.index(head), bold=True) for head in heads]]
        for n in range(1, 5):
            row = {6: (f"R_{{th{n}}}", f"0.0{n}7", "K/W", f"C_{{th{n}}}", f"0.00{n}2", "Ws/K"), 3: (f"RTHERM{n}", f"0.0{n}7", "K/W")}[len(heads)]
            cells.append([Cell(text=self.speech.index(text)) for text in row])
        self._table(Grid(cells=cells, widths=[50] * len(heads), ends=frozenset(range(5)), heads=1), width=300)

    def _packaging(self) -> None:
        """A reel: more numbers below Value and Unit."""
        if self.y < 160:
            self._next_page()
        cells: list[list[Cell | None]] = [[Cell(text=head, bold=True) for head in ("Item", "Symbol", "Value", "Unit")]]
        cells += [
            [Cell(text=text) for text in row]
            for row in (("Reel diameter", "D", "330", "mm"), ("Pitch", "P0", "4.0", "mm"), ("Pieces", "Q", "2500", "pcs"))
        ]
        self._table(Grid(cells=cells, widths=[70] * 4, ends=frozenset(range(4)), heads=1), width=280)

    def _dimensions(self) -> None:
        """A package outline: numbers in columns headed Min. and Max."""
        if self.y < 200:
            self._next_page()
        self._line("Package outline", 9, bold=True)
        heads = self.rng.choice((("Symbol", "Min.", "Nom.", "Max."), ("DIM", "MIN", "MAX", "UNIT"), ("Symbol", "Min", "Typ", "Max")))
        cells: list[list[Cell | None]] = [[Cell(text=head, bold=True) for head in heads]]
        for letter in ("A", "A1", "b", "c", "D", "E", "e", "L"):
            low = round(self.rng.uniform(0.3, 9), 2)
            cells.append([Cell(text=letter), *(Cell(text=f"{low + 0.1 * n:.2f}") for n in range(len(heads) - 1))])
        self._table(Grid(cells=cells, widths=[50] * len(heads), ends=frozenset(range(len(cells))), heads=1), width=220)


def _from_to(item: Item) -> Item:
    """A rating with both ends in columns of their own."""
    line = item.lines[0]
    if item.key not in {"vgs_max", "tj_max"} or not line.values["max"].startswith(("±", "-55")):
        return item
    most = line.values["max"].lstrip("±").removeprefix("-55").lstrip(" to~.…-+")
    return replace(item, lines=(replace(line, values={"min": "-55" if item.key == "tj_max" else f"-{most.strip()}", "max": most}),))

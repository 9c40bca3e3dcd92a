"""The rows of a sheet's tables, in the order in which makers print them, with what each of them states."""

from collections.abc import Iterator
from random import Random
from typing import Any

from strange.item import Item, Line
from strange.part import Part, rounded
from strange.speech import Speech

Cond = dict[str, Any]


class Rows:
    """Rows of one part as one sheet words them."""

    def __init__(self, part: Part, speech: Speech, rng: Random, said: Cond | None = None) -> None:
        self.part, self.speech, self.rng, self.said = part, speech, rng, said or {}
        self.sign = "-" if part.polarity == "P" and speech.signed else ""
        self.warm = {"tc": 100, "ta": 70}[part.spot]
        self.test_a = rounded(part.current(part.spot, self.warm) * 0.6)
        self.rated_a = rounded(part.current(part.spot, 25), 3 if part.rds[0][1] < 5 else 2)
        self.in_ohms = rng.random() < (0.5 if part.rds[0][1] >= 60 else 0.06)
        self.conditioned = rng.random() < 0.35  # whether currents name their gate voltage
        self.twice = rng.random() < 0.3  # whether ratings in free air stand beside those of a case
        self.brief = part.rth_jc is None and rng.random() < 0.5  # whether ten seconds and steady state are told apart
        self.limited = part.rth_jc is not None and rng.random() < 0.35
        self.hot = rng.random() < 0.15  # whether characteristics are given at several junction temperatures
        self.derated = rng.random() < 0.1  # whether a second line of the power gives its slope
        self.package_a = rounded(self.rated_a * rng.uniform(0.45, 0.85))

    def item(self, name: str, lines: list[Line] | Line, unit: str, *kept: str, key: str | None = "", mark: str = "") -> Item:
        """One parameter; a name without a key is one that nobody reads."""
        return Item(
            key=name if key == "" else key,
            label=self.speech.name(name),
            symbol=self.speech.symbol(name),
            unit=unit,
            lines=tuple(lines) if isinstance(lines, list) else (lines,),
            kept=kept,
            said=self.said,
            mark=mark,
        )

    def ratings(self) -> list[Item]:
        """Absolute maximum ratings."""
        p, s, rng = self.part, self.sign, self.rng
        one = lambda value, **cond: Line(values={"max": value}, cond=cond)  # noqa: E731  the shortest way to say it
        out = [self.item("vds_max", one(f"{s}{p.vds}"), "V")]
        if rng.random() < 0.2:
            out.append(self.item("vdgr", one(f"{s}{p.vds}"), "V", key=None))
        out.append(self.item("vgs_max", one(self._gate()), "V"))
        if rng.random() < 0.12:
            out.append(self.item("vgs_transient", one(f"±{p.vgs + 10}"), "V", key="vgs_max"))
        out += [self._currents(), self.item("id_pulse", one(s + plain(self.rated_a * 4)), "A", mark=rng.choice(("", "1")))]
        if rng.random() < 0.3:
            out.append(self.item("id_aval", one(s + plain(self.rated_a * 0.5)), "A", mark=rng.choice(("", "2"))))
        if rng.random() < 0.7:
            out.append(
                self.item(
                    "eas",
                    Line(values={"max": plain(0.05 * (self.rated_a * 0.5) ** 2)}, extra=rng.choice(("", "L = 0.1 mH", "R_{G} = 25 Ω"))),
                    "mJ",
                    mark=rng.choice(("", "2")),
                )
            )
        if rng.random() < 0.15:
            out.append(self.item("ear", one(plain(p.power(p.spot, 25) / 10)), "mJ"))
        out.append(self._powers())
        if self.derated:
            out.append(
                Item(
                    key="pd_slope",
                    label=self.rng.choice(("- Derate above 25 °C", "Derate above 25 °C", "Derating Factor")),
                    symbol="",
                    unit="W/°C",
                    lines=(Line(values={"max": plain(1 / (p.rth_jc or p.rth_ja)[1])}),),
                    said=self.said,
                )
            )
        if p.rth_jc and rng.random() < 0.4 and not self.derated:
            out.append(self.item("pd_slope", one(plain(1 / p.rth_jc[1])), "W/°C"))
        out += [*self._left_alone(), self._temperature()]
        return out if rng.random() < 0.85 else self._moved(out)

    def _left_alone(self) -> Iterator[Item]:
        """Ratings that nobody reads."""
        rows = (
            ("dvdt", plain(self.rng.choice((4.5, 5, 15, 50))), "V/ns", 0.2),
            ("lead", self.rng.choice(("260", "300")), "°C", 0.2),
            ("esd", "2", "kV", 0.08),
            ("ism", self.sign + plain(self.rated_a * 4), "A", 0.2),
        )
        for name, value, unit, chance in rows:
            if self.rng.random() < chance:
                yield self.item(name, Line(values={"max": value}), unit, key=None)

    def _moved(self, items: list[Item]) -> list[Item]:
        """Temperatures and power first: no order is a law."""
        return [*items[-1:], *items[:-1]]

    def _gate(self) -> str:
        v = self.part.vgs
        low = self.rng.choice((v - 4, v // 2, v))
        return self.rng.choices((f"±{v}", f"+/-{v}", f"± {v}", f"+{v}/-{low}", f"+{v}, -{low}", f"-{v} to +{v}", f"{v}"), (8, 2, 2, 1, 1, 1, 2))[0]

    def _temperature(self) -> Item:
        j = self.part.tj
        text = self.rng.choice((f"-55 to {j}", f"-55 to +{j}", f"-55~{j}", f"-55 ~ +{j}", f"-55...+{j}", f"{j}", f"-55…{j}", f"-55 - {j}"))
        item = self.item("tj_max", Line(values={"max": text}), "°C")
        if text == f"{j}":
            return Item(
                key="tj_max", label=self.speech.lone_junction(), symbol=self.speech.lone_symbol(), unit="°C", lines=item.lines, said=self.said
            )
        return item

    def _gated(self) -> Cond:
        return {"vgs": float(f"{self.sign}{self.part.gates[0]}")} if self.conditioned else {}

    def _currents(self) -> Item:
        p, s, spot = self.part, self.sign, self.part.spot
        at = lambda where, celsius, **more: Line(values={"max": s + plain(p.current(where, celsius))}, cond=self._gated() | {where: celsius} | more)  # noqa: E731
        lines = [Line(values={"max": s + plain(self.rated_a)}, cond=self._gated() | {spot: 25}), at(spot, self.warm)]
        if self.brief:
            lines = [at("ta", 25, t="10 s"), at("ta", 70, t="10 s"), at("ta", 25, t="steady"), at("ta", 70, t="steady")]
        elif self.limited:
            cold = Line(values=lines[0].values, cond=lines[0].cond, limited_by="silicon")
            lines = [cold, lines[1], Line(values={"max": s + plain(self.package_a)}, cond=lines[0].cond, limited_by="package")]
            lines = lines if self.rng.random() < 0.5 else [cold, lines[2], lines[1]]
        elif spot == "tc" and self.rng.random() < 0.2:
            lines = [Line(values={"max": s + plain(self.package_a)}, cond=lines[0].cond, limited_by="package", noted="4"), lines[1]]
        if self.twice and spot == "tc":
            lines += [at("ta", 25), at("ta", 70)]
        return self.item("id_cont", lines, "A", "tc", "ta", "vgs", "t")

    def _powers(self) -> Item:
        p, spot = self.part, self.part.spot
        at = lambda where, celsius, **more: Line(  # noqa: E731
            values={"max": plain(p.power(where, celsius, short=more.get("t") == "10 s"))}, cond={where: celsius} | more
        )
        lines = [at(spot, 25)]
        if self.brief:
            lines = [at("ta", 25, t="10 s"), at("ta", 70, t="10 s"), at("ta", 25, t="steady"), at("ta", 70, t="steady")]
        elif self.rng.random() < 0.4:
            lines.append(at(spot, self.warm))
        if self.twice and spot == "tc":
            lines.append(at("ta", 25))
        return self.item("pd", lines, "W", "tc", "ta", "t")

    def thermal(self) -> list[Item]:
        """Thermal resistances."""
        p, out = self.part, []
        both = self.speech.typical_thermal
        if p.rth_jc:
            values = {"typ": plain(p.rth_jc[0]), "max": plain(p.rth_jc[1])} if both else {"max": plain(p.rth_jc[1])}
            out.append(self.item("rth_jc", Line(values=values), self.speech.per_watt))
        if p.rth_jc and self.rng.random() < 0.15:
            out.append(self.item("rth_cs", Line(values={"typ" if both else "max": "0.5"}), self.speech.per_watt, key="rth_cs"))
        if self.brief:
            lines = [Line(values={"max": plain(p.rth_ja[0])}, cond={"t": "10 s"}), Line(values={"max": plain(p.rth_ja[1])}, cond={"t": "steady"})]
        elif self.rng.random() < 0.2:
            lines = [
                Line(values={"max": plain(p.rth_ja[1])}, extra="minimal footprint"),
                Line(values={"max": plain(p.rth_ja[0])}, extra="6 cm^{2} cooling area"),
            ]
        else:
            lines = [Line(values={"max": plain(p.rth_ja[1])})]
        out.append(self.item("rth_ja", lines, self.speech.per_watt, "t", mark=self.rng.choice(("", "", "3"))))
        return out

    def static(self) -> list[Item]:
        """Characteristics at rest."""
        p, s, rng = self.part, self.sign, self.rng
        small, neg = float(f"{s}0.00025"), -1.0 if s else 1.0
        low, typ, high = (1.0, 1.7, 2.5) if p.gates[-1] < 5 else (2.0, 3.0, 4.0)
        if p.gates[0] < 5:
            low, typ, high = 0.4, 0.7, 1.0
        th = {"min": f"{s}{low}", "typ": f"{s}{typ}", "max": f"{s}{high}"}
        if rng.random() < 0.3:
            del th["typ"]
        breaking = [Line(values={"min": f"{s}{p.vds}"}, cond={"vgs": 0.0, "id": small} | ({"tj": 25} if self.hot else {}))]
        if self.hot:
            breaking.append(Line(values={"min": f"{s}{round(p.vds * 0.9)}"}, cond={"vgs": 0.0, "id": small, "tj": -55}))
        out = [self.item("vbr_dss", breaking, "V", "vgs", "id", "tj")]
        if rng.random() < 0.2:
            out.append(self.item("tempco", Line(values={"typ": "0.06"}, extra="I_{D} = 1 mA"), "V/°C", key=None))
        leak = [Line(values={"max": f"{s}1"}, cond={"vds": neg * p.vds, "vgs": 0.0})]
        if rng.random() < 0.5:
            leak.append(Line(values={"max": f"{s}{rng.choice((10, 25, 100))}"}, cond={"vds": neg * p.vds, "vgs": 0.0, "tj": 125}))
        out += [
            self.item("idss", leak, "µA", key=None),
            self.item("igss", Line(values={"max": "±100"}, cond={"vgs": float(p.vgs), "vds": 0.0}), "nA", key=None),
        ]
        if rng.random() < 0.5:
            out.reverse()
        thresholds = [Line(values=th, cond={"id": small}, extra="V_{DS} = V_{GS}")]
        if self.hot:
            thresholds = [
                Line(values=th, cond={"id": small, "tj": 25}, extra="V_{DS} = V_{GS}"),
                Line(values={"min": f"{s}{plain(low / 2)}"}, cond={"id": small, "tj": p.tj}, extra="V_{DS} = V_{GS}"),
                Line(values={"max": f"{s}{plain(high * 1.15)}"}, cond={"id": small, "tj": -55}, extra="V_{DS} = V_{GS}"),
            ]
        out.append(self.item("vgs_th", thresholds, "V", "id", "tj"))
        out.append(self._resistance())
        if rng.random() < 0.5:
            out.append(self.item("gfs", Line(values={"typ": plain(self.test_a * 2)}, cond={"vds": neg * 5, "id": neg * self.test_a}), "S", key=None))
        return out

    def _resistance(self) -> Item:
        p, neg, scale = self.part, -1.0 if self.sign else 1.0, 1e-3 if self.in_ohms else 1.0
        lines = [
            Line(
                values={"typ": plain(typ * scale), "max": plain(most * scale)},
                cond={"vgs": neg * gate, "id": neg * rounded(self.test_a * (1 - 0.2 * at))},
            )
            for at, (gate, (typ, most)) in enumerate(zip(p.gates, p.rds, strict=True))
        ]
        if self.rng.random() < 0.2:
            typ, most = (plain(value * scale * 1.6) for value in p.rds[0])
            lines.insert(1, Line(values={"typ": typ, "max": most}, cond=lines[0].cond | {"tj": 125}))
        if self.hot:
            cold = {"tj": 25}
            lines = [Line(values=line.values, cond=line.cond | ({} if "tj" in line.cond else cold)) for line in lines]
            lines.append(Line(values={"max": plain(p.rds[0][1] * scale * 2.1)}, cond=lines[0].cond | {"tj": p.tj}))
        if self.rng.random() < 0.15:
            lines = [Line(values={"max": line.values["max"]}, cond=line.cond) for line in lines]
        return self.item("rds_on", lines, "Ω" if self.in_ohms else "mΩ", "vgs", "id", "tj")

    def dynamic(self) -> list[Item]:
        """Capacitances, charges and times."""
        p, rng, neg = self.part, self.rng, -1.0 if self.sign else 1.0
        half, base = neg * p.vds / 2, 9000 / p.rds[0][1] ** 0.8
        caps = [plain(base), plain(base / 6), plain(base / 40)]
        out = [
            self.item(
                key,
                Line(
                    values={"typ": value} | ({"max": plain(float(value) * 1.4)} if rng.random() < 0.2 else {}),
                    cond={"vds": half, "vgs": 0.0},
                    extra="f = 1 MHz",
                ),
                "pF",
                "vds",
                "vgs",
            )
            for key, value in zip(("ciss", "coss", "crss"), caps, strict=True)
        ]
        charge = base / 45
        load: Cond = {"vds": half, "id": neg * self.test_a}
        lines = [Line(values={"typ": plain(charge)}, cond=load | {"vgs": neg * p.gates[0]})]
        if len(p.gates) > 1 and rng.random() < 0.5:
            lines.append(Line(values={"typ": plain(charge / 2)}, cond=load | {"vgs": neg * p.gates[1]}))
        out.append(self.item("qg", lines, "nC", "vgs", "vds", "id"))
        out += [
            self.item(name, Line(values={"typ": plain(charge * share)}, cond=lines[0].cond), "nC", key=None)
            for name, share in (("qgs", 0.25), ("qgd", 0.2))
        ]
        if rng.random() < 0.2:
            out.append(self.item("qsync", Line(values={"typ": plain(charge * 0.9)}, cond={"vds": 0.1}), "nC", key="qg"))
        if rng.random() < 0.2:
            out.append(self.item("plateau", Line(values={"typ": "4.6"}, cond=load), "V", key=None))
        if rng.random() < 0.4:
            out.append(self.item("rg", Line(values={"typ": "1.6"}, extra="f = 1 MHz"), "Ω", key=None))
        for name in ("tdon", "tr", "tdoff", "tf"):
            out.append(self.item(name, Line(values={"typ": plain(rng.uniform(4, 60))}, cond=load, extra="R_{G} = 3 Ω"), "ns", key=None))
        return out

    def diode(self) -> list[Item]:
        """The body diode."""
        s, rng, neg = self.sign, self.rng, -1.0 if self.sign else 1.0
        spot = self.part.spot
        out = [self.item("is_cont", Line(values={"max": s + plain(self.rated_a)}, cond=rng.choice(({spot: 25}, {}))), "A", "tc", "ta")]
        if rng.random() < 0.5:
            out.append(self.item("ism", Line(values={"max": s + plain(self.rated_a * 4)}), "A", key=None))
        values = rng.choice(({"typ": f"{s}0.8", "max": f"{s}1.2"}, {"max": f"{s}1.3"}, {"typ": f"{s}0.9", "max": f"{s}1.1"}))
        out.append(self.item("vsd", Line(values=values, cond={"is": neg * self.test_a, "vgs": 0.0}), "V", "is", "vgs"))
        out.append(
            self.item(
                "trr", Line(values={"typ": plain(rng.uniform(20, 300))}, cond={"is": neg * self.test_a}, extra="di/dt = 100 A/µs"), "ns", key=None
            )
        )
        out.append(
            self.item(
                "qrr", Line(values={"typ": plain(rng.uniform(20, 300))}, cond={"is": neg * self.test_a}, extra="di/dt = 100 A/µs"), "nC", key=None
            )
        )
        return out


def plain(value: float) -> str:
    """A number in two or three digits without an exponent."""
    value = float(f"{value:.{3 if abs(value) >= 100 else 2}g}")
    return f"{value:.0f}" if value >= 100 or value == int(value) else f"{value:.4f}".rstrip("0").rstrip(".")


def side_by_side(left: list[Item], right: list[Item]) -> Iterator[Item]:
    """Rows of two parts or channels joined: the same rows with a value for each."""
    for one, other in zip(left, right, strict=True):
        lines = tuple(
            Line(
                values={f"{limit}:0": text for limit, text in mine.values.items()} | {f"{limit}:1": text for limit, text in yours.values.items()},
                cond=mine.cond,
                extra=mine.extra,
                limited_by=mine.limited_by,
            )
            for mine, yours in zip(one.lines, other.lines, strict=True)
        )
        yield Item(key=one.key, label=one.label, symbol=one.symbol, unit=one.unit, lines=lines, kept=one.kept, mark=one.mark)

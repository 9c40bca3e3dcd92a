"""What every check works on: one board with its defaults filled in, one rule set, and all quantities at their ends."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum

from service.derating import conduction_figures as conduction
from service.derating.formulas.elementwise import lesser
from service.derating.formulas.network import Die, Network
from service.derating.formulas.ratio_model import Curve, PowerLaw, RatioModel
from service.derating.formulas.settling import Settled, settle
from service.derating.quantity import Point, Quantity
from service.derating.rule_set import RuleSet
from service.facts.board import Board, Port
from service.facts.sourced import Sourced
from service.facts.switch import Switch

DISCHARGE, CHARGE = "discharge", "charge"


class Corner(StrEnum):
    """The three ends at which a board is judged: every quantity at its best, its typical and its worst."""

    FAVOURABLE = "favourable"
    NOMINAL = "nominal"
    WORST = "worst"


@dataclass(frozen=True, slots=True, kw_only=True)
class BankCase:
    """One switch bank under judgement.

    Attributes:
        name: discharge or charge.
        switch: Its part, narrowed to the channel and part number that the board uses.
        switches: How many in parallel.
        claimed_a: Largest continuous current claimed through it. [A]
        prefix: Of the keys of its part's quantities in a point; empty where both banks use one part.
        curve: The sheet's own curve of on-resistance, where there is one.
        drive: Which on-resistance rows count; None where no bound exists at the board's gate voltage.
    """

    name: str
    switch: Switch
    switches: int
    claimed_a: Sourced
    prefix: str
    curve: Curve | None
    drive: conduction.GateDrive | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A board ready to be judged under one rule set.

    Attributes:
        board: With its defaults filled in.
        rules: The rule set.
        banks: Discharge bank, then charge bank.
        quantities: By key: everything that a point holds.
    """

    board: Board
    rules: RuleSet
    banks: tuple[BankCase, BankCase]
    quantities: Mapping[str, Quantity]

    @property
    def discharge(self) -> BankCase:
        """The bank that carries and cuts discharge."""
        return self.banks[0]

    @property
    def charge(self) -> BankCase:
        """The bank that carries and cuts charge."""
        return self.banks[1]

    @property
    def banks_alike(self) -> bool:
        """Whether both banks are equal and carry equal currents, so that one judgement serves both."""
        one, two = self.banks
        alike = one == replace(two, name=one.name, claimed_a=one.claimed_a) and one.claimed_a.value == two.claimed_a.value
        return alike and "charge_current" not in self.quantities

    @property
    def is_chain(self) -> bool:
        """Whether the switches share a board, or each has its own way to the air."""
        return "board_to_air" in self.quantities

    def point(self, corner: Corner, moved: Mapping[str, float] | None = None) -> Point:
        """A number for every quantity.

        Args:
            corner: Which end.
            moved: Quantities, by key, that stand elsewhere; a moved gate voltage takes its own row of on-resistance along.

        Returns:
            The point.
        """
        point = {key: float(getattr(item, corner)) for key, item in self.quantities.items()}
        for bank in self.banks:
            gate_v = (moved or {}).get(bank.prefix + "gate_voltage")
            if gate_v is not None and bank.drive:
                ends = conduction.on_resistance(bank.drive.row(gate_v))
                point[bank.prefix + "on_resistance"] = float(getattr(ends, corner))
        return {**point, **(moved or {})}

    def with_quantities(self, more: Iterable[Quantity]) -> "Case":
        """The same case with quantities that only one check knows."""
        return replace(self, quantities={**self.quantities, **{item.key: item for item in more}})

    def under(self, rules: RuleSet) -> "Case":
        """The same board under another rule set."""
        return replace(self, rules=rules)

    def with_switches(self, switches: int) -> "Case":
        """The same board with as many switches in each bank."""
        one, two = self.banks
        return replace(self, banks=(replace(one, switches=switches), replace(two, switches=switches)))

    def other(self, bank: BankCase) -> BankCase:
        """The bank in series with this one."""
        return self.charge if bank.name == DISCHARGE else self.discharge

    def conducting(self, bank: BankCase) -> tuple[BankCase, ...]:
        """The banks that carry a current with this one, itself first."""
        return (bank, self.other(bank)) if self.board.port is Port.COMMON else (bank,)

    def claimed_a(self, bank: BankCase, point: Point) -> float:
        """Continuous current claimed through a bank; an open quantity where a charge port's current is claimed by nobody [A]."""
        if bank.name == CHARGE and "charge_current" in self.quantities:
            return point["charge_current"]
        return bank.claimed_a.value

    def junction_limit_c(self, bank: BankCase, point: Point) -> float:
        """The junction limit: the rule set's, or the user's where it is lower [degC]."""
        limit = self.rules.junction_limit_c(point[bank.prefix + "junction_max"])
        own = self.board.junction_limit_c
        return limit if own is None else lesser(limit, own.least)

    def ratio(self, bank: BankCase, point: Point) -> RatioModel:
        """How the on-resistance of a bank's part grows with temperature."""
        if bank.curve is not None and not self._has_hot_row(bank):
            return bank.curve
        item = self.quantities[bank.prefix + "on_resistance_exponent"]
        exponent = point[item.key]
        # Why mirrored: below 25 degC it is the smaller exponent that makes the larger resistance.
        return PowerLaw(exponent, exponent if not item.is_open else item.favourable + item.worst - exponent)

    def network(self, bank: BankCase, point: Point, *, low_switch: bool = False) -> Network:
        """The conducting dies and their way to the air, the bank under examination first.

        Args:
            bank: Under examination.
            point: A number for each quantity.
            low_switch: Whether one switch of that bank is low and all others are high.

        Returns:
            The network; the low switch, where there is one, is its first kind of die.
        """
        banks = self.conducting(bank) if self.is_chain else (bank,)
        dies: list[Die] = []
        for number, item in enumerate(banks):
            die = self._die(item, number, point)
            if low_switch and item is bank and item.switches > 1:
                low_ohm = die.cold_resistance_ohm / point[bank.prefix + "current_spread"]
                dies.append(replace(die, count=1, cold_resistance_ohm=low_ohm))
                die = replace(die, count=item.switches - 1, track_ohm=point.get("track_asymmetry", 0.0))
            dies.append(die)
        return Network(
            dies=tuple(dies),
            ambient_c=point["ambient"],
            board_to_air_kpw=point["board_to_air"] if self.is_chain else 0.0,
            board_ohm=self._board_ohm(point),
        )

    def settle(self, bank: BankCase, point: Point, *, current_a: float, low_switch: bool = False) -> Settled:
        """Where temperatures settle while a current flows through a bank and all that lies in series with it.

        Args:
            bank: Under examination; its dies come first.
            point: A number for each quantity.
            current_a: Through the bank. [A]
            low_switch: Whether one switch of that bank is low and all others are high.

        Returns:
            The state of rest. The first die is the low switch where one is asked for and the bank has more than one switch.
        """
        return settle(self.network(bank, point, low_switch=low_switch), current_a=current_a)

    def lacks_conduction(self, bank: BankCase) -> tuple[str, ...]:
        """Data without which no bound on the bank's heat exists; empty where there is none."""
        lacking = [
            f"{item.name}: rds_on at a gate voltage that the board reaches"
            for item in self.conducting(bank)
            if item.prefix + "on_resistance" not in self.quantities
        ]
        if self.is_chain:
            lacking += [f"{item.name}: rth_jc" for item in self.conducting(bank) if item.prefix + "junction_case" not in self.quantities]
        return tuple(lacking)

    def _die(self, bank: BankCase, number: int, point: Point) -> Die:
        """The equal switches of a bank."""
        chain_kpw = point[bank.prefix + "junction_case"] + point["case_to_board"] if self.is_chain else point["junction_to_air"]
        return Die(
            bank=number,
            count=bank.switches,
            cold_resistance_ohm=point[bank.prefix + "on_resistance"],
            to_board_kpw=chain_kpw,
            ratio=self.ratio(bank, point),
        )

    def _board_ohm(self, point: Point) -> float:
        """Shunt and joints that heat the board with the switches."""
        shunt = point.get("shunt_resistance", 0.0) if self.board.shunt_on_board else 0.0
        return shunt + point.get("joints", 0.0)

    def _has_hot_row(self, bank: BankCase) -> bool:
        """Whether the sheet prints a hot on-resistance, which goes before its curve."""
        return not self.quantities[bank.prefix + "on_resistance_exponent"].is_default

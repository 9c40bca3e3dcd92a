"""What stands where a board says nothing; each default is named, and shown with what it rests on."""

from service.facts.sourced import Known, Sourced

CHARGE_VOLTAGE = Sourced(value=3.65, unit="V", known=Known.CLASS_DEFAULT, name="usual charge voltage of a LiFePO4 cell, common practice")
EMPTY_VOLTAGE = Sourced(value=2.5, unit="V", known=Known.CLASS_DEFAULT, name="usual end of discharge of a LiFePO4 cell, common practice")
AMBIENT = Sourced(value=40.0, unit="degC", known=Known.ASSUMED, name="warm air around the board")
# Why this band: about 50 to 60 K/W for one part on the copper of a plain FR4 board, a little less with copper of its own (Nexperia AN90003).
JUNCTION_TO_AIR = Sourced(
    value=50.0,
    unit="K/W",
    low=40.0,
    high=60.0,
    known=Known.ASSUMED,
    name="one part on a plain board with copper of its own, no neighbours",
)

"""How each open quantity is spoken of, and how a person pins it down; one table for every check."""

from service.derating.quantity import Wording

WORDINGS: dict[str, Wording] = {
    "recloses_on_current": Wording(
        phrase="the protection closes a blocked bank when current flows through its diodes",
        how="Block one bank, draw a small current the other way and see whether the drop falls from about 0.7 V to millivolts.",
        effort=1, lowest=0.0, highest=1.0,
    ),
    "charger_reversed": Wording(
        phrase="the charger cannot be connected the wrong way round",
        how="Look at the plug: is it keyed, or is there a diode or fuse against reversal?",
        effort=1, lowest=0.0, highest=1.0,
    ),
    "gate_voltage": Wording(
        phrase="the gates get {value} or more, also from an empty pack",
        how="Measure from gate to source of one switch with a voltmeter while the board is on and the pack nearly empty.",
        effort=2, lowest=0.5, highest=30.0,
    ),
    "junction_to_air": Wording(
        phrase="each switch sheds heat at {value} or better into air of {ambient}",
        how="Run a known current for an hour and measure the hottest switch: rise over heat of one switch is the figure.",
        effort=3, lowest=0.01, highest=1e4,
    ),
    "board_to_air": Wording(
        phrase="the board sheds heat to the air at {value} or better",
        how="Run a known current for an hour and measure the board beside the switches: rise over the heat of all is the figure.",
        effort=3, lowest=0.001, highest=1e3,
    ),
    "case_to_board": Wording(
        phrase="each case reaches the board through {value} or less",
        how="Run a known current for an hour and measure a switch's tab and the board beside it: difference over heat of one switch.",
        effort=4, lowest=0.0, highest=1e3,
    ),
    "board_heat_capacity": Wording(
        phrase="board and plate hold {value} or more",
        how="Weigh the plate: aluminium holds 0.9 J/K a gram, a bare board 1.1 J/K a gram.",
        effort=3, lowest=0.01, highest=1e5,
    ),
    "board_limit": Wording(
        phrase="the board stands {value} or more",
        how="Look for the laminate's name on the board or in the maker's documents and take its temperature index.",
        effort=6, lowest=30.0, highest=300.0,
    ),
    "shunt_resistance": Wording(
        phrase="the shunt has {value} or less",
        how="Read its marking, or measure the millivolts across it at a known current.",
        effort=2, lowest=0.0, highest=1.0,
    ),
    "joints": Wording(
        phrase="joints and tracks have {value} or less",
        how="Measure the millivolts from terminal to terminal at a known current and take off banks and shunt.",
        effort=3, lowest=0.0, highest=1.0,
    ),
    "on_resistance": Wording(
        phrase="each switch has {value} or less at 25 \N{DEGREE SIGN}C",
        how="Measure the millivolts across the cold bank at a known current: volts over amperes, times the number of switches.",
        effort=4, lowest=1e-6, highest=10.0,
    ),
    "current_spread": Wording(
        phrase="the highest switch of the bank has no more than {value} times the on-resistance of the lowest",
        how="Run a known current and compare the temperatures of the switches, or measure the millivolts along their tracks.",
        effort=5, lowest=1.0, highest=5.0,
    ),
    "track_asymmetry": Wording(
        phrase="the copper to the other switches has no more than {value} over that to the nearest one",
        how="Measure the millivolts along the copper from the terminal to the nearest and to the farthest switch at a known current.",
        effort=4, lowest=0.0, highest=0.1,
    ),
    "on_resistance_exponent": Wording(
        phrase="the on-resistance grows with temperature by a power of {value} or less",
        how="Read the curve of on-resistance over temperature in the datasheet, or type two of its points.",
        effort=5, lowest=0.0, highest=6.0,
    ),
    "junction_case": Wording(
        phrase="junction to case is {value} or less",
        how="Read the largest thermal resistance from junction to case in the datasheet.",
        effort=4, lowest=1e-4, highest=1e3,
    ),
    "junction_max": Wording(
        phrase="the sheet allows a junction of {value} or more",
        how="Read the highest junction temperature in the datasheet.",
        effort=3, lowest=50.0, highest=300.0,
    ),
    "package_current": Wording(
        phrase="the package carries {value} or more",
        how="Look through the footnotes of the datasheet's current ratings for a package or bond-wire limit.",
        effort=4, lowest=0.1, highest=2e3,
    ),
    "ambient": Wording(
        phrase="the air around the board stays at {value} or below",
        how="Lay a thermometer beside the board inside the closed case during an hour of load.",
        effort=7, lowest=-60.0, highest=300.0,
    ),
    "cold_rating_loss": Wording(
        phrase="the drain-source rating loses {value} or less for each kelvin below 25 \N{DEGREE SIGN}C",
        how="Read the curve of breakdown voltage over temperature in the datasheet.",
        effort=6, lowest=0.0, highest=0.01,
    ),
    "charge_current": Wording(
        phrase="charging takes {value} or less",
        how="Read the largest charge current on the label or on the charger.",
        effort=2, lowest=0.0, highest=1e5,
    ),
}

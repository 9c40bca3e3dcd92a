"""Drain-source on-resistance at a gate voltage; says little without it."""

from parsers.parameter import Card

CARD = Card(
    key="rds_on",
    symbols=(r"RDSON[0-9]*", r"RDSONMAX", r"RDSONTYP", r"RDS", r"RONDS?", r"RDSONSTATIC", r"RSSON"),
    words=(
        r"onresistance",
        r"onstateresistance",
        r"导通电阻",
        r"導通電阻",
        r"通态电阻",
        r"オン抵抗",
        r"resistancedrain(?:to)?source",
        r"onstater?esist",
        r"drain(?:to)?source(?:on)?(?:state)?resistance",
        r"staticdrain(?:to)?sourceon",
    ),
    never=(r"coefficient", r"(?:delta|ratio)", r"gateresistance", r"match", r"onvoltage", r"temperature"),
    units=("ohm", "mohm"),
    low=0.0001,
    high=200,
    keeps=("vgs", "id", "tj", "tc", "ta"),
    needs=("vgs",),
)

"""Forward voltage of the body diode."""

from parsers.parameter import Card

CARD = Card(
    key="vsd",
    symbols=(r"VSDF?", r"VDSF", r"VDF", r"VFSD", r"VF", r"VSDQ?\d?"),
    words=(
        r"diodeforwardvoltage",
        r"forwardonvoltage",
        r"forwardvoltage",
        r"bodydiodevoltage",
        r"source(?:to)?drain(?:diode)?(?:forward)?(?:on)?voltage",
        r"正向(?:导通)?(?:压降|电压)",
        r"順方向電圧",
        r"順向(?:電壓|壓降)",
        r"diode.{0,12}voltage",
        r"drainsourcediodeforwardvoltage",
        r"forwarddrop",
    ),
    never=(r"current$", r"recovery", r"breakdown", r"^drain(?:to)?sourcevoltage", r"gate"),
    units=("V", "mV"),
    low=0.2,
    high=8,
    keeps=("is_", "tj", "vgs"),
)

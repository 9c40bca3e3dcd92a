"""The drain-source voltage rating: ``VDS``, ``VDSS``, ``Drain-Source Voltage``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="vds_max",
    symbols=(r"VDSS?(?:MAX|X)?", r"VDSMAX", r"VDSST?J?"),
    words=(
        r"drain(?:to)?sourcevoltage",
        r"漏源?极?(?:至|到|-)?源极?电压",
        r"ドレイン.{0,2}ソース間電圧",
        r"汲極?(?:至|到)?源極?電壓",
        r"drainsourcevoltagevdss?",
    ),
    never=(
        r"breakdown",
        r"onstate",
        r"onvoltage",
        r"forward",
        r"transient",
        r"spike",
        r"repetitive",
        r"temperature(?:coeff)",
        r"击穿",
        r"coefficient",
        r"diode",
        r"draingate",
    ),
    units=("V",),
    low=8,
    high=3300,
    limits=(Limit.MAX,),
)

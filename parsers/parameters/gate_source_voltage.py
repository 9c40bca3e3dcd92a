"""The gate-source voltage rating: ``VGS``, ``VGSS``, nearly always of both signs."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="vgs_max",
    symbols=(r"VGSS?(?:MAX|M|X)?", r"VGSSM?", r"VI?NMAX"),
    words=(
        r"gate(?:to)?sourcevoltage",
        r"gate(?:to)?source(?:peak)?voltage",
        r"栅极?源极?电压",
        r"栅源电压",
        r"閘極?(?:至|到)?源極?電壓",
        r"ゲート.{0,2}ソース間電圧",
    ),
    never=(r"threshold", r"cutoff", r"阈值", r"plateau"),
    units=("V",),
    low=4,
    high=60,
    limits=(Limit.MAX,),
    renames={Limit.MIN: Limit.MAX, Limit.TYP: Limit.TYP},
)

"""Highest junction temperature, often the upper end of an operating and storage range."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="tj_max",
    symbols=(
        r"TJ(?:MAX)?(?:TSTG|TSTO?R?G?E?)?",
        r"TVJ(?:MAX)?",
        r"TCH",
        r"TOP(?:R)?",
        r"TJTSTG",
        r"TSTGTJ",
        r"TJANDTSTG",
        r"TJANDTST",
        r"TJSTG",
        r"TOPR",
        r"TJM",
    ),
    words=(
        r"junctiontemperature",
        r"(?:operating|operation).{0,20}temperature",
        r"结温",
        r"チャネル温度",
        r"channeltemperature",
        r"工作.{0,8}温度",
        r"temperaturerange",
        r"junctionandstorage",
        r"operatingjunction",
        r"operatingand",
    ),
    never=(
        r"^storage",
        r"^tstgstorage",
        r"lead",
        r"solder",
        r"coefficient",
        r"^tstg",
        r"^maximumstorage",
        r"ambienttemperature",
        r"casetemperature",
        r"^储存",
        r"^保存",
        r"^t?stg?range",
        r"^maximumlead",
        r"thermal",
    ),
    units=("degC",),
    low=100,
    high=300,
    limits=(Limit.MAX,),
)

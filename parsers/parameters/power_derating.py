"""Power lost for each degree above the rated temperature: ``Derate above 25 °C``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="pd_slope",
    symbols=(),
    words=(r"derat", r"降额", r"线性降额", r"linearderatingfactor"),
    units=("W/degC", "mW/degC"),
    low=0.0001,
    high=20,
    limits=(Limit.MAX,),
)

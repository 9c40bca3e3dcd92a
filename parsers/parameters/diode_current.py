"""Continuous current of the body diode."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="is_cont",
    symbols=(r"IS(?:D)?(?:DC)?", r"IDR", r"IF", r"ISC?", r"ISDC"),
    words=(
        r"continuous(?:bodydiode|diode|source|forward|reversedrain).{0,26}current",
        r"(?:source|diode|bodydiode)(?:drain)?(?:diode)?(?:forward)?current",
        r"reversedraincurrent",
        r"continuous(?:source|diode)",
        r"二极管.{0,6}电流",
        r"二極體.{0,6}電流",
        r"ドレイン逆電流",
        r"sourcecurrent",
        r"maxbodydiodecontinuous",
    ),
    never=(
        r"puls",
        r"peak",
        r"recovery",
        r"leakage",
        r"voltage$",
        r"脉冲",
        r"パルス",
        r"脈衝",
        r"surge",
        r"gate(?:to)?source",
        r"gatebody",
        r"zerogate",
        r"repetitive",
    ),
    units=("A", "mA"),
    low=0.02,
    high=1500,
    limits=(Limit.TYP, Limit.MAX),
    keeps=("tc", "ta", "t"),
)

"""Pulsed drain current: ``IDM``, ``ID,pulse``."""

from parsers.parameter import Card
from service.facts.reading import Limit

CARD = Card(
    key="id_pulse",
    symbols=(r"IDM(?:PULSE)?", r"IDPULSED?", r"IDP(?:ULSE|K)?", r"IDSM?PULSE", r"IDPEAK"),
    words=(
        r"pulsed?draincurrent",
        r"draincurrent.{0,8}puls",
        r"peakdraincurrent",
        r"drainpeakcurrent",
        r"draincurrent.{0,8}peak",
        r"脉冲漏极?电流",
        r"漏极?脉冲电流",
        r"maximumdraincurrentpulsed",
        r"脈衝汲極電流",
        r"汲極脈衝電流",
        r"ドレイン電流パルス",
        r"パルスドレイン電流",
    ),
    never=(r"avalanche", r"leakage", r"diode", r"sourcecurrent", r"雪崩", r"sourcedrain", r"reverse"),
    units=("A", "mA"),
    low=0.05,
    high=6000,
    limits=(Limit.MAX,),
    keeps=("tc", "ta", "t", "vgs"),
)

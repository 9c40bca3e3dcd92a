"""Rows that sheets print and that are left on purpose: what this reader does not read, so that nothing is passed over in silence."""

import re

_LEFT = tuple(
    re.compile(pattern)
    for pattern in (
        r"transconductance|admittance|跨导|順方向伝達",
        r"leakage|zerogatevoltage|cutoffcurrent|gatebody|gatesource.{0,12}current|idss|igss|漏电流|遮断電流|零栅压",
        r"turno(?:n|ff)|risetime|falltime|delaytime|switchingtime|上升时间|下降时间|延迟时间|开启.{0,4}时间|关断.{0,4}时间",
        r"recovery|恢复",
        r"gate(?:to)?(?:source|drain).{0,14}charge|miller|gatecharge|plateau|qsync|栅源电荷|栅漏电荷|outputcharge",
        r"gate.{0,14}resistance|inductance|栅极?电阻",
        r"effective.{0,30}capacitance|equivalentcapacitance|capacitancecharge",
        r"solder|leadtemperature|torque|mounting|isolation|insulation|weight|creepage|焊接",
        r"storage.{0,4}temp|^tstg|储存|保存",
        r"draintogatevoltage|draingate|vdgr|漏栅",
        r"dvdt|didt|ruggedness|esd|electrostatic|humanbody",
        r"onstatedraincurrent|draincurrentonstate|saturationcurrent",
        r"temperaturecoeff|tempco|coefficient|温度系数",
        r"puls.{0,30}(?:source|diode|reverse|forward|body)|(?:source|diode|reverse|forward|body).{0,30}puls|peak.{0,12}(?:diode|source)",
        r"energyloss|switchingenergy|storedenergy|switchingloss",
        r"onstatevoltage|drainsourceonvoltage|onvoltage",
        r"gatecurrent|packing|reel|quantity|marking|ordering",
    )
)


def left_on_purpose(name: str) -> bool:
    """Whether a row's squeezed name is one that this reader leaves on purpose.

    Args:
        name: Small letters only, as :func:`parsers.grammar.spelling.squeezed_name` gives them.

    Returns:
        True where the row is known and not read.
    """
    return any(pattern.search(name) for pattern in _LEFT)

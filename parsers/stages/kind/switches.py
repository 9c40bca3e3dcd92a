"""Quantities that only the datasheet of a field-effect switch puts into its tables."""

import re

_QUANTITIES = (
    r"drain[- ]*(to[- ]*|[&] ?)?source[- ]*(breakdown )?volt|漏极?[-—–~ ]*源极?(击穿)?电压|ドレイン.ソース間",
    r"gate[- ]*(to[- ]*)?source[- ]*volt|栅极?[- ]*源极?电压|ゲート.ソース間",
    r"drain[- ]*current|漏极?电流|ドレイン電流",
    r"puls\w*[- ]*(drain[- ]*)?current|drain current[- ]*\(?puls|\bidm\b|脉冲",
    r"avalanche|\beas\b|雪崩",
    r"gate[- ]*(to[- ]*source[- ]*|source[- ]*)?thres?hold|\bv ?gs ?\( ?th ?\)|阈值电压|开启电压",
    r"zero[- ]*gate[- ]*volt|drain[- ]*(to[- ]*source[- ]*)?(leakage|cut-?off)|\bidss\b",
    r"gate[- ]*(to[- ]*)?(source|body|body)?[- ]*leakage|\bigss\b|\bigssf\b",
    r"on[- ]*(state[- ]*)?resist|\br ?ds ?\(? ?on ?\)?|导通电阻",
    r"transconductance|transfer admittance|\bgfs\b",
    r"input capacit|\bc ?iss\b|输入电容",
    r"reverse transfer capacit|\bc ?rss\b",
    r"gate charge|\bq ?g\b|栅极?电荷",
    r"(diode|source[- ]*drain|drain[- ]*source)[- ]*forward|\bv ?sd\b|forward on[- ]*voltage|正向(导通)?(电压|压降)",
    r"\bv ?\( ?br ?\) ?dss\b|\bb ?v ?dss\b|\bvdss\b",
)
_TITLE = re.compile(
    r"\bmos ?fets?\b|\bmos (transistor|type)|field[- ]effect|\bdmos\b|trench ?mos"
    r"|\bn[- ]*(and|&|/)?[- ]*p?[- ]*chan|\bp[- ]*chan|power[- ]transistor|场效应|沟道"
)

_DEPLETED = re.compile(r"\bj-?fets?\b|junction (gate )?field")


def quantities_of(text: str) -> set[str]:
    """Which quantities of a switch a plain text names, by their patterns; fifteen are known."""
    return {one for one in _QUANTITIES if re.search(one, text)}


def is_titled_switch(opening: str) -> bool:
    """Whether a document begins as one about a field-effect switch."""
    return bool(_TITLE.search(opening)) and not _DEPLETED.search(opening)

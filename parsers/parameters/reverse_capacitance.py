"""Reverse transfer capacitance."""

from parsers.parameter import Card

CARD = Card(
    key="crss",
    symbols=(r"CRSS?",),
    words=(r"reversetransfer", r"反向传输电容", r"反向(?:轉移|傳輸)電容", r"帰還容量", r"millercapac", r"feedbackcapac", r"transfercapac"),
    never=(r"effective", r"timerelated", r"energyrelated", r"charge", r"有效", r"equivalent"),
    units=("pF", "nF"),
    low=1e-13,
    high=1e-06,
    keeps=("vgs", "vds"),
)

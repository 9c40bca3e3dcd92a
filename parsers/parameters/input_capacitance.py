"""Input capacitance."""

from parsers.parameter import Card

CARD = Card(
    key="ciss",
    symbols=(r"C[IL1]SS?", r"CIES"),
    words=(r"inputcapac", r"输入电容", r"輸入電容", r"入力容量"),
    never=(r"effective", r"timerelated", r"energyrelated", r"charge", r"有效", r"equivalent"),
    units=("pF", "nF"),
    low=1e-13,
    high=1e-06,
    keeps=("vgs", "vds"),
)

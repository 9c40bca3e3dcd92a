"""Output capacitance."""

from parsers.parameter import Card

CARD = Card(
    key="coss",
    symbols=(r"C[O0]SS?",),
    words=(r"outputcapac", r"输出电容", r"輸出電容", r"出力容量"),
    never=(r"effective", r"timerelated", r"energyrelated", r"charge", r"有效", r"equivalent"),
    units=("pF", "nF"),
    low=1e-13,
    high=1e-06,
    keeps=("vgs", "vds"),
)

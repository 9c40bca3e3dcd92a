"""Gate threshold voltage."""

from parsers.parameter import Card

CARD = Card(
    key="vgs_th",
    symbols=(r"VGSTH", r"VTH", r"VGSTO", r"VGSOFF", r"VGSTHN?", r"VT", r"VGSTHMIN"),
    words=(r"threshold", r"阈值电压", r"臨界電壓", r"閾值電壓", r"开启电压", r"ゲート.{0,6}しきい値", r"gate(?:to)?sourcecutoff"),
    never=(r"coefficient", r"temperature", r"tempco", r"charge", r"drift"),
    units=("V", "mV"),
    low=0.1,
    high=12,
    keeps=("vgs", "id", "tj", "vds"),
)

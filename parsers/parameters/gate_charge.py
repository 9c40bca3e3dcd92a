"""Total gate charge."""

from parsers.parameter import Card

CARD = Card(
    key="qg",
    symbols=(r"QG(?:TOT|T|10V?|45V?|5V?|4V5|\d*)?", r"QGTOTAL", r"QG\d+V?", r"QGVGS.*"),
    words=(r"totalgatecharge", r"gatechargetotal", r"栅极?总?电荷", r"总栅极?电荷", r"總閘極電荷", r"閘極總電荷", r"ゲート(?:総|入力)電荷"),
    never=(
        r"gatesource",
        r"gatedrain",
        r"qgqgd",
        r"gatechargeatvth",
        r"qsync",
        r"threshold",
        r"miller",
        r"overdrive",
        r"plateau",
        r"gatetosource",
        r"gatetodrain",
        r"gateto",
    ),
    units=("nC", "pC", "uC"),
    low=1e-11,
    high=5e-06,
    keeps=("vgs", "id", "vds"),
)

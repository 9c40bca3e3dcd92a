"""What each key of a reading is called: in plain words, and by its letter symbol (IEC 60747-8)."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """The names of a datasheet parameter.

    Attributes:
        key: As in a reading.
        words: In plain words.
        symbol: Letter symbol.
    """

    key: str
    words: str
    symbol: str


PARAMETERS = {
    parameter.key: parameter
    for parameter in (
        Parameter(key="vds_max", words="drain-source voltage rating", symbol="VDS"),
        Parameter(key="vgs_max", words="gate-source voltage rating", symbol="VGS"),
        Parameter(key="id_cont", words="continuous drain current", symbol="ID"),
        Parameter(key="id_pulse", words="pulsed drain current", symbol="IDM"),
        Parameter(key="id_aval", words="avalanche current", symbol="IAS"),
        Parameter(key="eas", words="single-pulse avalanche energy", symbol="EAS"),
        Parameter(key="ear", words="repetitive avalanche energy", symbol="EAR"),
        Parameter(key="pd", words="power dissipation", symbol="Ptot"),
        Parameter(key="pd_slope", words="power derating per degree", symbol="1/Rth"),
        Parameter(key="tj_max", words="highest junction temperature", symbol="Tj"),
        Parameter(key="rth_jc", words="thermal resistance, junction to case", symbol="Rth(j-c)"),
        Parameter(key="rth_ja", words="thermal resistance, junction to air", symbol="Rth(j-a)"),
        Parameter(key="rth_cs", words="thermal resistance, case to sink", symbol="Rth(c-s)"),
        Parameter(key="rth_jl", words="thermal resistance, junction to lead", symbol="Rth(j-sp)"),
        Parameter(key="vbr_dss", words="drain-source breakdown voltage", symbol="V(BR)DSS"),
        Parameter(key="vgs_th", words="gate threshold voltage", symbol="VGS(th)"),
        Parameter(key="rds_on", words="on-resistance", symbol="RDS(on)"),
        Parameter(key="qg", words="total gate charge", symbol="QG"),
        Parameter(key="ciss", words="input capacitance", symbol="Ciss"),
        Parameter(key="coss", words="output capacitance", symbol="Coss"),
        Parameter(key="crss", words="reverse transfer capacitance", symbol="Crss"),
        Parameter(key="vsd", words="body-diode forward voltage", symbol="VSD"),
        Parameter(key="is_cont", words="continuous diode current", symbol="IS"),
    )
}

# What a judgement of a board starts from; a person who checks a sheet begins here.
JUDGED = ("vds_max", "rds_on", "id_cont", "pd", "rth_jc", "tj_max", "vgs_max", "id_pulse", "vsd")

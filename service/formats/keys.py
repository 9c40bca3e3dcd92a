"""What a datasheet's figures measure, by key: the closed list that readings and typed parts share."""

from service.formats import dimensions as d

DIMENSIONS: dict[str, d.Dimension] = {
    "vds_max": d.VOLTAGE,
    "vgs_max": d.VOLTAGE,
    "id_cont": d.CURRENT,
    "id_pulse": d.CURRENT,
    "id_aval": d.CURRENT,
    "eas": d.ENERGY,
    "ear": d.ENERGY,
    "pd": d.POWER,
    "pd_slope": d.HEAT_SLOPE,
    "tj_max": d.TEMPERATURE,
    "rth_jc": d.THERMAL_RESISTANCE,
    "rth_ja": d.THERMAL_RESISTANCE,
    "rth_cs": d.THERMAL_RESISTANCE,
    "rth_jl": d.THERMAL_RESISTANCE,
    "vbr_dss": d.VOLTAGE,
    "vgs_th": d.VOLTAGE,
    "rds_on": d.RESISTANCE,
    "qg": d.CHARGE,
    "ciss": d.CAPACITANCE,
    "coss": d.CAPACITANCE,
    "crss": d.CAPACITANCE,
    "vsd": d.VOLTAGE,
    "is_cont": d.CURRENT,
}

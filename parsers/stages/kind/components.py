"""Words by which the datasheets of other components are known."""

from parsers.stages.kind.vocabulary import Vocabulary

COMPONENTS = (
    Vocabulary(
        kind="igbt",
        title=(r"\bigbts?\b|insulated gate bipolar",),
        opening=(r"\bigbt", r"insulated gate bipolar", r"vce ?\(?(sat|on)"),
        body=(
            r"collector[- ](to[- ])?emitter", r"gate[- ](to[- ])?emitter", r"vce ?\(? ?(sat|on)", r"\bvces\b", r"\bvges\b", r"\bvge ?\(? ?th",
            r"\bices\b", r"total switching (loss|energy)", r"\beoff\b", r"collector current", r"turn-?on switching loss", r"集电极",
        ),
    ),
    Vocabulary(
        kind="rf_transistor",
        opening=(
            r"\brf power\b", r"\brf\b.{0,40}(transistor|mos|fet|ldmos)", r"(vhf|uhf)[ /-]", r"power gain", r"m?hz.{0,12}band", r"output power",
            r"drain eff", r"\d ?mhz", r"amplifier application",
        ),
        body=(
            r"output power", r"power gain|\bgps?\b", r"drain effi|ηd", r"\bvswr\b", r"load mismatch|load pull", r"input return loss|\birl\b",
            r"\bpin ?=", r"\bidq ?=", r"s[- ]?parameter|\bs21\b", r"\bpout\b|\bpo\b", r"zin|source impedance",
        ),
    ),
    Vocabulary(
        kind="current_sensor",
        title=(r"current sensor|current transducer",),
        opening=(r"current sensor", r"hall[- ]effect", r"current transducer", r"电流传感器"),
        body=(
            r"hall[- ](effect|sensor|ic|element)", r"primary (conductor|current)", r"sensitivity.{0,40}mv/a",
            r"zero current output|quiescent output", r"nonlinearity|linearity error",
        ),
    ),
    Vocabulary(
        kind="ic",
        title=(
            r"\b(batter(y|ies)|cell) (charger|monitor)|(gate|mosfet|igbt) drivers?\b", r"integrated circuit|集成电路",
            r"(dc-?dc|step-?(down|up)|buck|boost) (converter|regulator)|voltage regulator|microcontroller|transceiver",
        ),
        opening=(
            r"(battery|cell|charg)\w* (protection|management|charg|monitor|balanc|front)", r"\bdrivers?\b", r"converter\b|regulator",
            r"controller", r"analog front|amplifier,|current[- ](shunt|sense) (monitor|amplifier)", r"\bic\b|\bics\b|integrated circuit",
            r"supply voltage|input voltage range|quiescent current", r"under-?voltage (lockout|detect)|uvlo",
            r"microcontroller|comparator|timer|memory|interface|transceiver", r"charger", r"overcharge|over-?discharge|over-?charge",
            r"保护(ic|电路|芯片|器)|充电(管理|器)|驱动(器|芯片)|稳压|集成电路", r"芯片|控制器", r"high-?side|low-?side|half-?bridge",
            r"logic input|cmos",
        ),
        body=(
            r"pin (description|configuration|function|assignment|name|out)s?", r"(functional )?block diagram|功能框图|方框图",
            r"supply voltage|\bvcc\b|\bvdd\b", r"quiescent|supply current", r"under-?voltage|uvlo",
            r"functional description|detailed description|theory of operation|operation description",
            r"typical application (circuit|diagram|schematic)", r"logic (high|low|input)|input (high|low) (voltage|level|threshold)",
            r"thermal shutdown", r"oscillat|clock", r"propagation delay", r"recommended operating (conditions|range)", r"引脚|管脚",
            r"典型应用|工作电压|输入电压|静态电流|待机", r"\bvin\b|\bvss\b", r"enable|shutdown|standby",
        ),
    ),
    Vocabulary(
        kind="diode_tvs",
        opening=(
            r"transient voltage suppress|\btvs\b|transil|transzorb", r"schottky", r"\b(diodes?|rectifiers?|zener)\b(?! (recovery|forward))",
            r"(esd|surge) protect", r"peak pulse power", r"二极管|肖特基|瞬态抑制",
        ),
        body=(
            r"(reverse|working)[ -]+(peak )?(stand-?off|reverse voltage)|stand-?off voltage|\bvrwm\b", r"clamping voltage|\bvc\b",
            r"peak pulse (current|power)|\bippm?\b|\bpppm?\b|\bppk\b", r"average (rectified )?(forward|output) current|\bif ?\(av",
            r"(repetitive )?peak reverse voltage|\bvrrm\b|\bvrm\b", r"forward surge current|\bifsm\b", r"8[./]20 ?[µu]s|10/1000",
            r"forward voltage( drop)?", r"anode|cathode", r"reverse (leakage )?current|\bir\b", r"bi-?directional|uni-?directional",
            r"zener (voltage|impedance)",
        ),
    ),
    Vocabulary(
        kind="resistor",
        title=(r"\bresistors?\b",),
        opening=(
            r"\bresistors?\b", r"shunts?\b(?! regulator)", r"metal (strip|plate|element|foil|film)|carbon film|thick film",
            r"current sens(e|ing) resist", r"电阻器|贴片电阻",
        ),
        body=(
            r"resistance (range|value|tolerance)", r"ppm ?/? ?°? ?[ck]|\btcr\b|temperature coefficient of resistance",
            r"power rating|rated power|p70", r"short[- ]time overload", r"resistance change|δr|dr/r|\bchange in resistance", r"resistors?\b",
            r"moisture (load|resistance)|load life", r"terminal strength|solderability",
        ),
    ),
    Vocabulary(
        kind="thermistor",
        title=(r"thermistors?\b",),
        opening=(r"thermistors?\b", r"\bntc\b", r"temperature (measurement|sensor)", r"inrush current", r"热敏电阻"),
        body=(
            r"\br25\b|\br ?25 ", r"\bb ?25/(85|50|100)|\bb ?value|b-?constant|beta",
            r"r/t (characteristic|curve)|\brt/r25|resistance[- ]temperature", r"dissipation factor|δth", r"thermal (cooling )?time constant",
            r"thermistors?\b",
        ),
    ),
    Vocabulary(
        kind="fuse",
        title=(r"\bfuses?\b|resettable|pptc",),
        opening=(
            r"\bfuses?\b", r"poly-?(switch|fuse)|resettable|pptc|\bptc\b", r"overcurrent protection device",
            r"circuit breaker|thermal cut-?off|breaker", r"保险丝|熔断",
        ),
        body=(
            r"hold current|\bihold\b|\bi ?h\b", r"trip current|\bitrip\b|time[- ]to[- ]trip|max(imum)? time", r"\bpptc|polymeric|resettable",
            r"i²t|i2t|melting|blow|clearing", r"breaking capacity|interrupting rating", r"\bvmax\b|\bimax\b", r"\br ?1 ?max\b|\bfuses?\b",
        ),
    ),
    Vocabulary(
        kind="battery_cell",
        title=(
            r"\bcr\d{4}\b|\b(18650|21700|26650|32700)\b",
            r"(lithium|li-?ion|nimh|primary|lifepo4)[^.]{0,30}\b(cells?|batter(y|ies))\b(?! (charg|protect|pack|manag|pow))",
            r"battery specification|cell specification|电芯|电池规格",
        ),
        opening=(
            r"\b(primary|secondary|rechargeable|lithium|li-?ion|nimh|coin)[^.]{0,30}\b(cells?|batter(y|ies))\b(?! (charg|protect|pack|manag|pow))",
            r"cell (specification|size|type|model)", r"battery specification", r"nominal (voltage|capacity)",
            r"\bcr\d{4}|18650|21700|26650|32700", r"电池规格|电芯",
        ),
        body=(
            r"nominal (voltage|capacity)", r"\d ?m?ah\b", r"(end|cut-?off|charge|charging) voltage", r"cycle life|cycles",
            r"self[- ]discharge|shelf life|storage", r"internal (resistance|impedance)", r"standard (charge|discharge)|discharge current",
            r"lithium content|\bcells?\b",
        ),
    ),
    Vocabulary(
        kind="module",
        opening=(r"power module", r"\bmodules?\b", r"(half|full|three|six)[- ]?(bridge|pack|phase) module", r"模块"),
        body=(
            r"insulation (test )?voltage|isolation voltage|\bvisol\b", r"base ?plate", r"mounting torque", r"module", r"creepage",
            r"stray inductance|lsce",
        ),
    ),
    Vocabulary(
        kind="other",
        title=(
            r"\bconnectors?\b|\brelays?\b", r"(npn|pnp)\b|bipolar (junction )?transistor|darlington", r"\bjfet\b|junction field",
            r"thyristor|triac|\bscr\b|optocoupler|photocoupler", r"(electrolytic|ceramic|film) capacitor|power inductor",
            r"light[- ]emitting|\bleds?\b[^.]{0,30}(lens|lamp|0603|0805)|\bsmd leds?\b|\bchip leds?\b",
        ),
        opening=(
            r"\bconnectors?\b", r"\brelays?\b|contactor", r"capacitors?\b", r"inductors?\b|ferrite|choke", r"crystal|oscillator",
            r"\bleds?\b|light emitting|optocoupler|photocoupler", r"\bswitch(es)? \(|tactile|push ?button", r"\bterminals?\b|crimp|housing",
            r"(npn|pnp)\b|bipolar|darlington|\bbjt\b", r"\bjfet|junction (field|fet)", r"thyristor|triac|\bscr\b", r"heat ?sinks?|wire|cable",
        ),
        body=(
            r"crimp|contact resistance|withstand(ing)? voltage|insulation resistance", r"pitch|housing|wafer|header",
            r"capacitance tolerance|ripple current|dissipation factor|esr", r"inductance|saturation current|dcr\b", r"coil (voltage|resistance)",
            r"luminous|wavelength|\bcd\b", r"vceo|vcbo|hfe|collector[- ]base", r"\bitsm\b|vdrm|gate trigger", r"idss.{0,40}vgs ?\(off",
        ),
    ),
)  # fmt: skip

"""The forms of a test on the bench; a bare number is taken in the unit that its field asks for."""

from collections.abc import Mapping

from service.usecases.take_measurement import BANKS, LID_OFF, LID_ON, SHUNT, SPOTS, DropSaid, HeatSaid
from service.web.forms.board import YES_NO, Field

HEAT = (
    Field(key="heat.current", label="Current", hint="in A, until nothing grew warmer any more"),
    Field(key="heat.probe", label="Hottest spot", hint="in °C; with doubt as in 61 °C to 63 °C"),
    Field(key="heat.air", label="Air around it", hint="in °C; with a closed case the air outside"),
    Field(key="heat.spot", label="Where the probe sat", hint="on the metal tab is best", kind="choice", choices=tuple(SPOTS)),
    Field(
        key="heat.lid",
        label="Case during the test",
        hint="open: type the air inside the closed case as air around the board",
        kind="choice",
        choices=(LID_ON, LID_OFF),
    ),
    Field(key="heat.bank", label="Bank", hint="that the current passed; discharge when nothing is chosen", kind="choice", choices=BANKS),
    Field(key="heat.with", label="Measured with", hint="the thermometer", kind="text"),
)
DROP = (
    Field(key="drop.drop", label="Drop", hint="in mV, between the two probes"),
    Field(key="drop.current", label="Current", hint="in A, while it was read"),
    Field(key="drop.across", label="Across", hint="what lay between the probes", kind="choice", choices=(*BANKS, SHUNT)),
    Field(key="drop.warm", label="Switches at", hint="in °C on their tabs; not needed for a shunt"),
    Field(key="drop.with", label="Measured with", hint="the meter", kind="text"),
)


def heat_said(form: Mapping[str, str]) -> HeatSaid:
    """What the form of a heat test says."""
    typed = {field.key: form.get(field.key, "").strip() for field in HEAT}
    return HeatSaid(
        current=in_unit(typed["heat.current"], "A"),
        probe=in_unit(typed["heat.probe"], "°C"),
        air=in_unit(typed["heat.air"], "°C"),
        spot=typed["heat.spot"],
        lid=typed["heat.lid"],
        bank=typed["heat.bank"] or BANKS[0],
        instrument=typed["heat.with"],
    )


def drop_said(form: Mapping[str, str]) -> DropSaid:
    """What the form of a drop says."""
    typed = {field.key: form.get(field.key, "").strip() for field in DROP}
    return DropSaid(
        drop=in_unit(typed["drop.drop"], "mV"),
        current=in_unit(typed["drop.current"], "A"),
        across=typed["drop.across"],
        warm=in_unit(typed["drop.warm"], "°C"),
        instrument=typed["drop.with"],
    )


def fact_of(text: str, *, by: str, on: str, instrument: str) -> dict[str, str] | bool:
    """What was typed as a fact of the board document; yes and no stay facts without a unit."""
    if text.lower() in YES_NO:
        return YES_NO[text.lower()]
    return {"value": text, "known": "measured", "by": by, "on": on, **({"with": instrument} if instrument else {})}


def in_unit(text: str, unit: str) -> str:
    """A bare number with the unit that its field asks for."""
    return f"{text} {unit}" if text.isascii() and text.replace(".", "", 1).isdigit() else text

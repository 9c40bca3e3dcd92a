"""Openings of documents that are no switch's datasheet, in our own words, one for each kind that a drawer may hold."""

import pytest

from parsers.errors import NotADatasheetError, OtherComponentError
from parsers.stages.kind import kind_of_text

COMPONENTS = {
    "ic": (
        "Low-power dual operational amplifiers. Wide supply voltage range. Low quiescent current. Pin configuration: output, inputs, "
        "ground, VCC. Absolute maximum ratings. Supply voltage 32 V. Electrical characteristics. Input offset voltage. Min Typ Max "
        "Unit. Block diagram"
    ),
    "igbt": (
        "IGBT with fast diode, 600 V, 30 A. Absolute maximum ratings. Collector-emitter voltage VCES. Gate-emitter voltage VGES. "
        "Collector current. Collector-emitter saturation voltage VCE(sat). Total switching energy"
    ),
    "diode_tvs": (
        "Transient voltage suppressor, 600 W. Peak pulse power. Reverse stand-off voltage VRWM. Clamping voltage. Peak pulse current IPP. 10/1000 us"
    ),
    "resistor": "Current sense resistors of metal strip. Resistance range. Tolerance. TCR 50 ppm/°C. Power rating at 70 °C. Load life",
    "thermistor": (
        "NTC thermistors for temperature measurement. R25 10 kOhm. B25/85 3435 K. Dissipation factor. Thermal time constant. Ordering code"
    ),
    "fuse": "Resettable fuses, surface mount. Hold current and trip current. Maximum time to trip. Vmax. Imax. PPTC polymeric",
    "battery_cell": (
        "Cell specification. Rechargeable lithium ion cell. Nominal capacity 2500 mAh. Nominal voltage 3.6 V. Cut-off voltage. Cycle "
        "life. Standard charge"
    ),
    "current_sensor": (
        "Hall effect current sensor. Primary conductor resistance. Sensitivity 40 mV/A. Zero current output voltage. Linearity error. "
        "Absolute maximum ratings"
    ),
    "module": (
        "Half-bridge power module with base plate. Insulation test voltage 4 kV. Mounting torque. Stray inductance. Creepage distance. "
        "Modules in parallel"
    ),
    "other": "Power relay, 12 A. Coil voltage 12 V. Coil resistance. Contact resistance. Insulation resistance. Crimp terminals",
    "rf_transistor": (
        "RF power MOS FET for UHF amplifiers. Output power 7 W at 520 MHz. Power gain. Drain efficiency. Load VSWR tolerance. Drain- "
        "source voltage 30 V"
    ),
}
DOCUMENTS = {
    "application_note": (
        "Application note. Introduction. This application note describes how to drive the gates of switches in parallel. Figure 2 "
        "shows the circuit. We assume that each carries its share. References. Conclusion"
    ),
    "manual": (
        "User manual of a battery protection board. Please read this manual before installation. Warning: connect the balance lead "
        "last. Warranty. Click the menu to see the state of the charge switch"
    ),
    "bill_of_materials": (
        "Bill of materials. Item Qty Reference Value Part Description Manufacturer Part Number. 1 4 C1 100n CAP CER Murata. 2 8 Q1 MOSFET Vishay"
    ),
    "cross_reference": "Cross reference of power MOSFETs. Part number VDSS RDS(on) ID package replacement. Equivalent types of other vendors",
    "schematic": "Title: cell balancer. Sheet: 1/1. Rev: 1.0. KiCad E.D.A. R1 10k R2 10k C1 100n C2 100n U1 Q1 Q2 GND VBAT GND +5V",
    "article": (
        "How we built a charger for the club. We decided to use four switches, because the builder of the boat had them in a drawer. "
        "The author of the plan says that the project was done in a week. We found that the heat of the board was the limit, and that "
        "a fan in the lid was of no use to the parts in the middle."
    ),
}
LONG = 2  # times said, so that a page holds as much as a real one


@pytest.mark.parametrize(("kind", "said"), COMPONENTS.items(), ids=COMPONENTS)
def test_another_component_is_named(kind: str, said: str):
    """By the words of its own trade."""
    with pytest.raises(OtherComponentError) as refusal:
        kind_of_text([" ".join([said] * LONG)])

    assert refusal.value.seems_to_be == kind


@pytest.mark.parametrize(("kind", "said"), DOCUMENTS.items(), ids=DOCUMENTS)
def test_a_document_about_parts_is_no_datasheet(kind: str, said: str):
    """However much it talks of switches."""
    with pytest.raises(NotADatasheetError) as refusal:
        kind_of_text([" ".join([said] * LONG)])

    assert refusal.value.seems_to_be == kind

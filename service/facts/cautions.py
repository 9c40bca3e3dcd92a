"""What is said wherever the work can hurt; never dismissable for good."""

BEFORE_OPENING = (
    "A pack cannot be switched off. Discharge it first, and work where it may burn without harm, never alone.",
    "Take off rings and watches; use insulated tools and eye protection; cover bus bars that you are not working on.",
    "Leave a pack closed that is swollen, hot, wet, or smells of solvent.",
    "Never charge cells below 0 °C, and never bridge a switch or a fuse to see whether it works.",
)

ON_EVERY_RESULT = (
    "A calculation from printed and typed figures. It cannot see a poor joint, a counterfeit part, a blocked vent or a sensor that is not connected.",
    "It speaks of parts built like the one described, not of every pack sold under a name; one opened pack is a sample of one.",
    "No certification, and no leave to exceed what the maker of the pack permits. Local electrical and fire codes and licensed practice come first.",
)

ON_STACKING = (
    "Packs may be put in series only where their maker permits it: every part that meets the string's voltage counts, "
    "not the switches alone (gate driver, monitor, surge suppressor, communication lines)."
)

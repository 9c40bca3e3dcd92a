"""What is said before the work that can hurt; what a result cannot know is said by the engine with each report."""

BEFORE_OPENING = (
    "A pack cannot be switched off. Discharge it first, and work where it may burn without harm, never alone.",
    "Take off rings and watches; use insulated tools and eye protection; cover bus bars that you are not working on.",
    "Leave a pack closed that is swollen, hot, wet, or smells of solvent.",
    "Never charge cells below 0 °C, and never bridge a switch or a fuse to see whether it works.",
)

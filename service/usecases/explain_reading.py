"""Explain one printed value: the stages that it went through, its evidence, and why its status is what it is."""

from dataclasses import dataclass

from service.facts.reading import Reading, Status

NEEDED = {
    "second_reader": ("two readers see the same characters", "only one reader is sure of the characters"),
    "row": ("the row names the quantity", "the row is not certain"),
    "column": ("the column says which end it is", "the column is not certain"),
    "unit": ("the unit is printed with it", "the unit is not certain"),
    "condition": ("what it holds for was read, as far as it is printed", "what it holds for was not read whole"),
}
"""The evidence that every value needs: in words where it is there, and where it is not."""
MORE = {
    "headline": "the front of the sheet says the same",
    "sibling": "another revision or maker says the same",
    "person": "a person looked",
}
"""Evidence that may come on top."""
FLAGS = {
    "preliminary": "the sheet calls itself preliminary",
    "obsolete": "the part is no longer made",
    "limit_unclear": "nothing says whether it is a typical or a largest value",
    "repaired_glyphs": "characters of a font of signs were mended",
    "reduced_isolation": "this machine could not lock the reader away as it should",
    "contradicts:headline": "the front of the sheet and its tables do not agree",
    "contradicts:power": "power, thermal resistance and junction temperature of the sheet do not fit each other",
}
STAGES = {
    "layout": "Table",
    "row": "Row",
    "column": "Column",
    "unit": "Unit",
    "figure": "Figure",
    "conditions": "Holds for",
    "relations": "Sheet's other numbers",
    "front": "Front of the sheet",
    "characters": "Characters",
}
"""The stages by the word with which their notes begin, in the order in which they work."""
_VERDICTS = {Status.ACCEPTED: "It may be used unseen", Status.REVIEW: "A person has to look first"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """What one stage found.

    Attributes:
        stage: Its name for people.
        found: What it found, in words.
    """

    stage: str
    found: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """One kind of evidence.

    Attributes:
        given: Whether it is there.
        words: What it says, or what is missing.
    """

    given: bool
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """How one value was read.

    Attributes:
        steps: What each stage found, in their order; of a value that was kept before notes were taken there are few.
        grounds: The five kinds of evidence that a value needs, then those that came on top.
        oddities: What is odd about the sheet here.
        verdict: Whether it may be used, and why.
    """

    steps: tuple[Step, ...]
    grounds: tuple[Ground, ...]
    oddities: tuple[str, ...]
    verdict: str


def explain_reading(reading: Reading) -> Explanation:
    """Explain a reading.

    Args:
        reading: As the reader gave it.

    Returns:
        Its way through the stages in plain words; the same words on pages and on the command line.
    """
    needed = [Ground(given=code in reading.evidence, words=said[code not in reading.evidence]) for code, said in NEEDED.items()]
    more = [Ground(given=True, words=evidence_words(code)) for code in reading.evidence if code not in NEEDED]
    return Explanation(
        steps=(Step(stage="Page", found=f"page {reading.page}, in the words: {reading.quote}"), *_steps(reading.trace)),
        grounds=(*needed, *more),
        oddities=tuple(flag_words(flag) for flag in reading.flags),
        verdict=f"{_VERDICTS[reading.status]}. {reading.why}",
    )


def evidence_words(code: str) -> str:
    """Say an evidence code in words."""
    if code.startswith("identity:"):
        return f"it fits the sheet's other numbers ({code.removeprefix('identity:')})"
    return NEEDED[code][0] if code in NEEDED else MORE.get(code, code)


def flag_words(flag: str) -> str:
    """Say a flag in words."""
    return FLAGS.get(flag, flag.replace("contradicts:", "its numbers contradict each other: ").replace("_", " "))


def _steps(trace: tuple[str, ...]) -> list[Step]:
    """The stages' notes in the order in which the stages work; a note of no known stage stands last, as it is."""
    names = list(STAGES)
    notes = [(stage, found) if stage in STAGES else ("", line) for line in trace for stage, _, found in [line.partition(": ")]]
    ordered = sorted(notes, key=lambda note: names.index(note[0]) if note[0] else len(names))
    return [Step(stage=STAGES.get(stage, "Also"), found=found) for stage, found in ordered]

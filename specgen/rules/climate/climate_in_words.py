"""CLI010 The ambient conditions an inspector accepts are those of the job

Checks
    The acceptance criterion in words of an inspection point that reads the ambient conditions: the humidity it accepts at most and the dew point margin it accepts at least, and the lowest or highest temperature where it lies beyond both air and surface of the job, against the ambient conditions of the job. Stricter words are accepted; a sentence that names several figures of one kind is not read.
Why
    The one at the part reads the sentence of his point, not the table on another page: a margin of 2 K there lets him coat steel on which water condenses.
Passes
    Given second good
    jobs.rails.inspection.climate.criterion.text: "Surface at least 6 °F above the dew point, humidity at most 80 %."

    Given second good
    jobs.rails.inspection.climate.criterion.text: "Surface 4 K above the dew point, relative humidity not above 70 %; air 55 to 77 degF."

    Given second good
    jobs.rails.inspection.climate.criterion.text: "Relative humidity above 40 %; recorded every 4 h."

    Given second good
    jobs.lids.climate.dew_point_margin: min 3 K
    products.gloss.climate.dew_point_margin: min 3 K
    jobs.lids.inspection.climate.criterion.text: "At least 5 °F above the dew point."

    Given second good
    jobs.rails.inspection.climate.criterion.text: "Air at least 60 °F, paint above 5 °C."
Fails
    Given second good
    jobs.rails.inspection.climate.criterion.text: "Air and steel above 5 °C."    # at jobs.rails.inspection.climate.criterion.text

    Given second good
    jobs.rails.inspection.climate.criterion.text: "Surface at least 5 °F above the dew point."    # at jobs.rails.inspection.climate.criterion.text

    Given second good
    jobs.rails.inspection.climate.criterion.text: "Dew point margin 2 K, humidity 40 to 81 %."    # at jobs.rails.inspection.climate.criterion.text    # at jobs.rails.inspection.climate.criterion.text
To put right
    State the limits of the job in both places, or refer to the ambient conditions of the job.
"""

import re
from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.job.dew_point import both_general
from specgen.facts.job.in_words import of_another_state, quantities_said
from specgen.facts.texts import CLAUSE
from specgen.model.product import ApplicationClimate
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, unless_rounded

_DEW = re.compile(r"dew.?point", re.I)
_MARGIN = re.compile(r"(?<![\w.,])(\d+(?:\.\d+)?) ?(K|°C|°F|degC|degF)(?!\w)")
_BESIDE = re.compile(r"margin|above|over|higher than|warmer than", re.I)
_HUMIDITY = re.compile(r"humid|\bRH\b|\br\.h\b", re.I)
_SHARE = re.compile(r"(?<![\w.,])(\d+(?:\.\d+)?) ?%")
_LEAST = re.compile(r"(?:(?<!not )(?:above|over|more than)|at least|min(?:imum|\.)?(?: of)?|not below) ?$", re.I)
_OF_AIR = re.compile(r"\b(?:air|steel|metal|surface|parts?|substrate|temperatures?)\b", re.I)
_FIGURE = r"(?=-?\d[\d.]* ?(?:°|deg))"
_BOUNDS = (
    re.compile(rf"(?:\b(?:above|over|at least|from|min(?:imum|\.)?(?: of)?|not below|warmer than)|≥) ?{_FIGURE}", re.I),
    re.compile(rf"(?:\b(?:below|under|at most|up to|max(?:imum|\.)?(?: of)?|not above)|≤) ?{_FIGURE}", re.I),
)
_UNITS = {"°C": "degC", "°F": "degF"}


@rule("CLI010", on=Job, severity=WARNING, source=LOGIC)
def climate_in_words(job: Job, spec: Spec, on: date) -> Problems:
    climate = job.climate
    if climate is None:
        return
    margin = climate.dew_point_margin.low if climate.dew_point_margin is not None else None
    humid = climate.humidity.high if climate.humidity is not None else None
    for point in job.inspection:
        path, text = ("inspection", point.id, "criterion", "text"), point.criterion.text or ""
        margins, shares = set(_margins(text)), set(_shares(text))
        said = next(iter(margins)) if len(margins) == 1 else None
        if said is not None and margin is not None and said < margin and not both_general(said, margin):
            what = f"{point.id} accepts a dew point margin of {said}; the job asks for at least {margin}"
            yield unless_rounded(Problem(path, what), said, margin)
        most = next(iter(shares)) if len(shares) == 1 else None
        if most is not None and humid is not None and most > humid:
            yield Problem(path, f"{point.id} accepts a relative humidity of {most}; the job allows at most {humid}")
        for what in _beyond(text, climate):
            yield Problem(path, f"{point.id} accepts {what}")


def _margins(text: str) -> Iterator[Quantity]:
    for clause in CLAUSE.split(text):
        if _DEW.search(clause) and _BESIDE.search(clause):
            for digits, unit in _MARGIN.findall(clause):
                yield Quantity.of("temperature_difference", Fraction(digits), _UNITS.get(unit, unit), digits)


def _shares(text: str) -> Iterator[Quantity]:
    """The humidity that each clause accepts at most; a range counts by its upper end."""
    for clause in CLAUSE.split(text):
        if _HUMIDITY.search(clause):
            found = [match for match in _SHARE.finditer(clause) if not _LEAST.search(clause[: match.start()])]
            if found:
                yield max(Quantity.of("humidity", Fraction(one[1]), "%", one[1]) for one in found)


def _beyond(text: str, climate: ApplicationClimate) -> Iterator[str]:
    """The lowest and the highest temperature that a text accepts, where both air and surface of the job end before it."""
    known = [one for one in (climate.air, climate.surface) if one is not None]
    lows = [one.low for one in known if one.low is not None]
    highs = [one.high for one in known if one.high is not None]
    for clause in CLAUSE.split(text):
        said = quantities_said(clause, "temperature") if _OF_AIR.search(clause) and not _DEW.search(clause) else []
        least, most = _BOUNDS[0].search(clause), _BOUNDS[1].search(clause)
        if len(said) != 1 or (least is None) == (most is None) or of_another_state(clause):
            continue
        if least is not None and lows and all(said[0] < low for low in lows):
            yield f"{said[0]}; the ambient conditions begin at {min(lows, key=lambda low: low.base)}"
        if most is not None and highs and all(said[0] > high for high in highs):
            yield f"{said[0]}; the ambient conditions end at {max(highs, key=lambda high: high.base)}"

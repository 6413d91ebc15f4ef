"""INS027 The words of an inspection point accept what its figures accept

Checks
    The acceptance criterion in words of each point that reads film: the film it accepts, against the figures of the same criterion and what its acceptance rule makes of them; where it states none, against the film specified. The voltage in the words of a holiday test, against the one stated beside it. Readings of each item named in the frequency, against the number of readings stated: three quarters of it at least. Words that name several films, of which one agrees, are accepted; stricter words are a note, unless they ask for more than the figures allow at most. Where a published acceptance rule counts, the mean and the single reading that the words accept are held apart against what it makes of the figures.
Why
    The inspector signs by the sentence. A figure beside it that asks for more protects nobody, and when the film fails each side points to its own number.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "No reading outside 40 to 80 µm."}

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "Mean at least 40 µm, no single reading below 32 µm."}

    jobs.refit.inspection.primer-film.criterion: {rule: 80-20, nominal: 60 um, max: 80 um, text: "No reading below 48 µm."}

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "No reading outside; the zinc below has at least 20 µm."}

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "After deducting the DFT measured before, every point 20 to 30 µm."}

    Given second good
    jobs.rails.inspection.film.criterion.text: "No reading below 178 µm."

    Given second good
    jobs.rails.inspection.film.readings: {readings: 70}
    without jobs.rails.items.LOCKER
    jobs.rails.inspection.film.criterion: {rule: ISO-19840, edition: "2012", low_readings: fewer-than, nominal: 9 mil, max: 14 mil, text: "Mean at least 9 mil, no reading below 7.2 mil."}

    jobs.refit.inspection.primer-film.readings: {spots: 10, readings: 30}
    jobs.refit.inspection.primer-film.frequency: "3 readings a spot on ten spots"
    jobs.refit.items.DOOR.name: Spot on the door
    jobs.refit.inspection.primer-film.items: [DOOR]

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um, text: "In each area of 10 m2 no spot below 32 µm."}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um, text: "Area at least 1.6 mil, each reading of a spot at least 25 µm."}
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um, text: "Mean of the spots in an area at least 30 µm."}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um, text: "Each area 40 to 80 µm, each spot at least 30 µm."}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um, text: "Mean of the three readings of a spot at least 30 µm."}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um, text: "Mean of each area 30 to 80 µm, each spot 32 to 96 µm."}    # at jobs.refit.inspection.primer-film.criterion.text

    Given second good
    jobs.rails.inspection.film.readings: {readings: 70}
    without jobs.rails.items.LOCKER
    jobs.rails.inspection.film.criterion: {rule: ISO-19840, edition: "2012", low_readings: fewer-than, nominal: 9 mil, max: 14 mil, text: "Mean of each rail at least 7.2 mil, no reading below 5.8 mil."}    # at jobs.rails.inspection.film.criterion.text    # at jobs.rails.inspection.film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "No reading below 20 µm."}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "Every reading 20 to 120 µm."}    # at jobs.refit.inspection.primer-film.criterion.text    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "At least 80 µm."}    # note at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, max: 80 um, text: "At least 81 µm."}    # at jobs.refit.inspection.primer-film.criterion.text

    jobs.refit.inspection.primer-film.criterion: {text: "At least 1 mil."}    # at jobs.refit.inspection.primer-film.criterion.text
    jobs.refit.inspection.primer-film.gauge: {principle: magnetic}

    jobs.refit.inspection.primer-film.readings: {readings: 40}
    jobs.refit.inspection.primer-film.frequency: "1 reading a door"    # at jobs.refit.inspection.primer-film.frequency
    jobs.refit.inspection.primer-film.items: [DOOR]

    Given second good
    jobs.rails.inspection.pores: {id: pores, check: Pores, at: completion, method: "High voltage, 12 kV", voltage: 3 kV, criterion: {text: no pore}}    # at jobs.rails.inspection.pores.voltage
To put right
    Write one figure in both places, or refer in words to the limits of this document.
"""

import re
from fractions import Fraction

from specgen.facts.job.counting import COUNTED_FROM_NOMINAL, counting
from specgen.facts.job.film_in_words import film_said
from specgen.facts.job.film_read import films_read
from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.looked_for import words_of
from specgen.facts.job.points import principle_of
from specgen.facts.texts import CLAUSE
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.rules.kit import (
    LOGIC,
    NOTE,
    WARNING,
    Job,
    Problem,
    Problems,
    Quantity,
    Spec,
    date,
    rule,
    show,
    unless_rounded,
)
from specgen.standards.tables import table
from specgen.units.between_units import explained_by_rounding

_MEAN = re.compile(r"\b(?:means?|averages?|averaged)\b", re.I)
_ONE = re.compile(
    r"\b(?:no|none|single|individual|lowest)\b|\b(?:each|every|any) (?:reading|spot|value|place|point|measurement)",
    re.I,
)
_AREA, _SPOT = re.compile(r"\bareas?\b", re.I), re.compile(r"\bspots?\b(?! (?:a|in|per|of) )", re.I)
# what is read within it has a limit of its own
_SPOT_IN_AREA = re.compile(r"\b(?:no|each|every|any|single|lowest) spot\b|\bspot (?:means?|averages?)\b", re.I)
_READING_IN_SPOT = re.compile(r"^(?!.*\b(?:mean|average)).*\breadings?\b", re.I)
_EACH = re.compile(
    r"^(\d+) (?:gauge )?readings? (?:a|an|per|each|every|on each|on every) (?!(?:\w+ )?(?:spots?|areas?|places?)\b)(?:\w+ )?(part|item|piece|\w+)\b",
    re.I,
)


@rule("INS027", on=Job, severity=WARNING, source=LOGIC)
def words_and_figures_agree(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        if principle_of(point) is not GaugePrinciple.COMB and point.criterion.text:
            yield from _film(point, job, spec)
        yield from _readings(point, job, spec)
    for point in job.inspection:
        said = set(quantities_said(words_of(point), "voltage"))
        if point.voltage is not None and len(said) == 1 and point.voltage not in said:
            what = (
                f"{point.id} names {show(next(iter(said)))} in words; the test voltage stated is {show(point.voltage)}"
            )
            yield Problem(("inspection", point.id, "voltage"), what)


def _apart(point: InspectionPoint) -> Problems:
    """The mean and the single reading that words accept, below what a published rule asks of each."""
    counted, path = counting(point.criterion), ("inspection", point.id, "criterion", "text")
    for clause in CLAUSE.split(point.criterion.text or ""):
        for of_what, word, within, asked in (
            ("area", _AREA, _SPOT_IN_AREA, point.criterion.area_min),
            ("spot", _SPOT, _READING_IN_SPOT, point.criterion.spot_min),
        ):
            least = film_said(clause)[0]
            if not least or asked is None or not word.search(clause) or within.search(clause):
                continue
            if min(least) < asked:
                what = f"{point.id} accepts a mean of {show(min(least))} for each {of_what} in words; its figures ask for at least {show(asked)}"
                yield unless_rounded(Problem(path, what), min(least), asked)
    if counted is None or point.criterion.rule not in COUNTED_FROM_NOMINAL:
        return
    for clause in CLAUSE.split(point.criterion.text or ""):
        least = film_said(clause)[0]
        of_mean, of_one = _MEAN.search(clause), _ONE.search(clause)
        asked = counted.mean_min if of_mean else counted.single_min
        if least and asked is not None and bool(of_mean) != bool(of_one) and min(least) < asked:
            of_what = "mean" if of_mean else "single reading"
            what = f"{point.id} accepts a {of_what} of {show(min(least))} in words; its figures ask for a {of_what} of at least {show(asked)}"
            yield unless_rounded(Problem(path, what), min(least), asked)


def _film(point: InspectionPoint, job: Job, spec: Spec) -> Problems:
    path = ("inspection", point.id, "criterion", "text")
    apart = list(_apart(point))
    if apart:
        yield from apart
        return
    least, most = film_said(point.criterion.text or "")
    low, high = _limits(point, job, spec)
    if least and low:
        said = max(least)
        if said < min(low):
            what = f"{point.id} accepts a DFT of {show(said)} in words; its figures ask for at least {show(min(low))}"
            yield unless_rounded(Problem(path, what), said, min(low))
        elif min(least) > max(low) and not explained_by_rounding(min(least), max(low)):
            asked = f"{point.id} asks for a DFT of at least {show(min(least))} in words"
            if high and min(least) > max(high):
                yield Problem(path, f"{asked}; its figures allow at most {show(max(high))}, so no film passes both")
            else:
                yield Problem(path, f"{asked}; its figures ask for {show(max(low))}", severity=NOTE)
    if most and high and min(most) > max(high):
        what = f"{point.id} accepts a DFT of {show(min(most))} in words; its figures allow at most {show(max(high))}"
        yield unless_rounded(Problem(path, what), min(most), max(high))


def _limits(point: InspectionPoint, job: Job, spec: Spec) -> tuple[list[Quantity], list[Quantity]]:
    """All least and all most films that the figures of a criterion accept; those of the coats where it states none."""
    criterion, counted = point.criterion, counting(point.criterion)
    low = [criterion.min, criterion.nominal, criterion.spot_min, criterion.area_min]
    high = [criterion.max, criterion.spot_max, criterion.area_max]
    if counted is not None:
        low += [counted.single_min, counted.spot_min, counted.mean_min]
        high += [counted.single_max, counted.spot_max, counted.mean_max]
    if not any(low) and not any(high):
        films = [film for read in films_read(point, job, spec) for film in read.films]
        low += [end for film in films for ends in (film.least, film.nominal) if ends is not None for end in ends]
        high += [end for film in films if film.most is not None for end in film.most]
    return [one for one in low if one is not None], [one for one in high if one is not None]


def _readings(point: InspectionPoint, job: Job, spec: Spec) -> Problems:
    stated = point.readings.readings if point.readings is not None else None
    found = _EACH.match(point.frequency or "")
    items = list({item.id: item for item, _ in places(point, job, spec)}.values())
    if found is None or stated is None or not items:
        return
    unit = found[2].lower()
    named = [item for item in items if unit in {"part", "item", "piece"} or re.search(rf"\b{unit}\b", item.name, re.I)]
    if len(named) != len(items) or any(item.count is None for item in items):
        return
    total = int(found[1]) * sum(int(item.count) for item in items)
    share = Fraction(table("inspection_in_words").row("id", "readings")["value"]) / 100
    if total < stated * share:
        what = f"{point.id}: {point.frequency} on {sum(int(item.count) for item in items)} items gives {total} readings; {stated} are stated"
        yield Problem(("inspection", point.id, "frequency"), what)

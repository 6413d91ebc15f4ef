"""INS013 A criterion accepts the DFT specified, no more and no less

Checks
    The limits of each DFT criterion against the film under the gauge: the limits of the coat, the sums of the coats up to it, or the stated total, less what sanding and polishing may remove; where the part has existing coats, also with these. For an own wording or a destructive method the coat by itself also counts. A criterion wider than the film is an error where its acceptance rule counts by figures and the coats state the limit themselves, else a warning; as is a nominal DFT for ISO 19840 below the one that the system itself states; a narrower one is a note, and one that does not meet the film at all an error. Limits of spots and areas are assessed by the level of SSPC-PA 2; those of areas stated alone count as the film accepted. What the acceptance rule itself allows on a limit that is right, as a spot at 80 % of the minimum, is no finding and is printed.
Why
    The inspector accepts by the criterion, not by the coat table: a limit below the film specified lets thin paint into service, with a signature under it.
Passes
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: 80-20, nominal: 60 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {rule: 90-10, nominal: 40 um, max: 80 um}

    jobs.refit.inspection.primer-film.criterion: {min: 40 um, text: at least 40 um at every spot}

    jobs.refit.inspection.primer-film.criterion: {as_specified: yes, rule: SSPC-PA-2, edition: "2012", level: 3}

    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of all coats, after: clear, gauge: {principle: destructive}, criterion: {rule: own, min: 40 um, max: 70 um, text: the clear in the cut}}

    jobs.refit.inspection.whole: {id: whole, check: Film of all coats, at: completion, gauge: {principle: destructive}, items: [DOOR], criterion: {rule: own, min: 95 um, max: 180 um, text: every reading}}

    systems.cab.layers.primer.sanding_removes: 10 um
    systems.cab.layers.primer.remaining_min: 30 um
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 30 um, max: 80 um, text: every reading}

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 100 um}]
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 140 um, max: 180 um, text: every reading}

    Given second good
    systems.deck.total: {min: 8 mil, max: 16 mil}
    jobs.rails.inspection.whole: {id: whole, check: Film of all coats, after: gloss, gauge: {principle: destructive}, criterion: {rule: own, min: 8 mil, max: 16 mil, text: every reading}}

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 32 um, spot_max: 96 um}
Fails
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 40 um, area_max: 80 um, spot_min: 16 um, spot_max: 96 um}    # warning at jobs.refit.inspection.primer-film.criterion.spot_min

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, area_min: 30 um, area_max: 90 um}    # at jobs.refit.inspection.primer-film.criterion.area_min    # at jobs.refit.inspection.primer-film.criterion.area_max

    jobs.refit.inspection.primer-film.criterion: {as_specified: yes, max: 90 um}    # warning at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 39 um, max: 81 um, text: every reading}    # warning at jobs.refit.inspection.primer-film.criterion.min    # warning at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 41 um, max: 79 um, text: every reading}    # note at jobs.refit.inspection.primer-film.criterion.min    # note at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 81 um, max: 90 um, text: every reading}    # at jobs.refit.inspection.primer-film.criterion.min    # warning at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 39 um, max: 80.1 um}    # at jobs.refit.inspection.primer-film.criterion.min    # at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: 80-20, nominal: 39 um, max: 80 um}    # at jobs.refit.inspection.primer-film.criterion.nominal

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 59 um, max: 80 um, low_readings: fewer-than}    # at jobs.refit.inspection.primer-film.criterion.nominal
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, low_readings: fewer-than}    # warning at jobs.refit.inspection.primer-film.criterion.max
    jobs.refit.substrate.material: steel_blasted

    jobs.refit.inspection.primer-film.criterion: {rule: 80-20, max: 80 um}    # warning at jobs.refit.inspection.primer-film.criterion.nominal

    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 40 um, text: every reading}    # note at jobs.refit.inspection.primer-film.criterion.max

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um, spot_min: 31 um, area_min: 39 um, area_max: 81 um, spot_max: 97 um}    # warning at jobs.refit.inspection.primer-film.criterion.area_max    # warning at jobs.refit.inspection.primer-film.criterion.area_min    # warning at jobs.refit.inspection.primer-film.criterion.spot_max    # warning at jobs.refit.inspection.primer-film.criterion.spot_min

    systems.cab.layers.primer.film: {nominal: 60 um}
    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 39 um, max: 81 um}    # warning at jobs.refit.inspection.primer-film.criterion.min    # warning at jobs.refit.inspection.primer-film.criterion.max

    Given second good
    jobs.rails.inspection.film.criterion.max: 14.1 mil    # warning at jobs.rails.inspection.film.criterion.max

    Given second good
    jobs.lids.inspection.film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 2.5 mil, max: 3.6 mil}    # at jobs.lids.inspection.film.criterion.max
To put right
    Write the limits of the coat, of the sum or of the total into the criterion, and say at the point which items and coats it covers; or correct the coat.
"""

from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.job.counting import COUNTED_FROM_NOMINAL, most_of_nominal, share_of, specified
from specgen.facts.job.criteria import criterion_of
from specgen.facts.job.film_read import Asked, Ends, films_read
from specgen.facts.job.inspected import film_points
from specgen.model.acceptance import AcceptanceRule, Criterion, InspectionPoint
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    NOTE,
    WARNING,
    Job,
    Path,
    Problem,
    Problems,
    Quantity,
    Row,
    Severity,
    Spec,
    date,
    rule,
    show,
    table,
    unless_rounded,
)


@rule("INS013", on=Job, severity=ERROR, source=LOGIC)
def criterion_fits_film(job: Job, spec: Spec, on: date) -> Problems:
    for point in film_points(job):
        path = ("inspection", point.id, "criterion")
        yield from _of_its_level(point, path)
        told: set[Problem] = set()
        for read in films_read(point, job, spec):
            # what is as specified fits; what is stated beside it has to
            criterion = criterion_of(point, read.system, job, spec)
            lent = _of_areas(criterion)
            filled = point.model_copy(update={"criterion": criterion.model_copy(update=lent)})
            against = [
                [_at_area(problem) if problem.path[-1] in lent else problem for problem in _against(filled, film, path)]
                for film in read.films
            ]
            # another film than the first is meant only where it lets no wider limit stand
            meant = min((found for found in against if not _wider(found)), key=len, default=against[0])
            for problem in meant:
                if problem not in told:
                    told.add(problem)
                    yield problem


def _of_areas(criterion: Criterion) -> dict[str, Quantity]:
    """The limits of areas where they are stated alone: SSPC-PA 2 holds the mean of each area to the film specified."""
    by_areas = criterion.rule is AcceptanceRule.PA_2
    of_areas = {"min": criterion.area_min, "max": criterion.area_max} if by_areas else {}
    return {name: limit for name, limit in of_areas.items() if limit is not None and getattr(criterion, name) is None}


def _at_area(problem: Problem) -> Problem:
    return problem._replace(path=(*problem.path[:-1], f"area_{problem.path[-1]}"))


def _wider(problems: list[Problem]) -> bool:
    return any(problem.severity is not NOTE for problem in problems)


def _against(point: InspectionPoint, film: Asked, path: Path) -> Problems:
    criterion = point.criterion
    if criterion.rule in COUNTED_FROM_NOMINAL or (criterion.below_nominal is not None and criterion.min is None):
        yield from _nominal(point, film, path)
    elif criterion.min is not None:
        yield from _limit(point, film, "min", (*path, "min"), criterion.min)
    elif film.least is not None and criterion.max is not None and criterion.nominal is None:
        what = f"{point.id} states no minimum DFT; {film.of} must have at least {show(film.least[0])}"
        yield Problem((*path, "min"), what, "write the minimum DFT", WARNING)
    yield from _most(point, film, path)


def _most(point: InspectionPoint, film: Asked, path: Path) -> Problems:
    criterion, at = point.criterion, (*path, "max")
    if criterion.max is not None:
        yield from _limit(point, film, "max", at, criterion.max)
    elif criterion.rule is AcceptanceRule.ISO_19840 and criterion.nominal is not None:
        most = most_of_nominal(criterion.nominal)
        what = f"{point.id} states no maximum DFT: by ISO 19840 it is three times the nominal DFT, {show(most)}"
        wider = film.most is not None and most > film.most[1]
        if wider and film.most is not None:
            what = f"{what}; {film.of} may have at most {show(film.most[1])}"
        yield Problem(at, what, "write the maximum DFT", WARNING if wider else NOTE, table("iso_19840_limits").citation)
    elif film.most is not None and criterion.rule in {*COUNTED_FROM_NOMINAL, AcceptanceRule.OWN}:
        # a plain minimum is a criterion of its own, a rule that counts is not whole without its other end
        if criterion.min is None and criterion.nominal is None:
            return
        weight = WARNING if criterion.rule in COUNTED_FROM_NOMINAL else NOTE
        what = f"{point.id} states no maximum DFT; {film.of} may have at most {show(film.most[1])}"
        yield Problem(at, what, "write the maximum DFT", weight)


def _limit(point: InspectionPoint, film: Asked, limit: str, at: Path, stated: Quantity) -> Problems:
    ends: Ends | None = film.least if limit == "min" else film.most
    if ends is None:
        return
    low, high = ends
    beyond = film.most if limit == "min" else film.least
    other = "max" if limit == "min" else "min"
    if beyond is not None and not {limit, other} & film.lent:
        apart = stated > beyond[1] if limit == "min" else stated < beyond[0]
        if apart:
            word, bound = ("least", "most") if limit == "min" else ("most", "least")
            asked = beyond[1] if limit == "min" else beyond[0]
            what = f"{point.id} accepts no part that is right: a DFT of at {word} {show(stated)}; specified for {film.of}: at {bound} {show(asked)}"
            yield unless_rounded(Problem(at, what), stated, asked)
            return
    wider, narrower = (stated < low, stated > high) if limit == "min" else (stated > high, stated < low)
    if not wider and not narrower:
        return
    if limit == "min":
        asked, word = (low if wider else high), "at least"
    else:
        asked, word = (high if wider else low), "at most"
    verb = "accepts" if wider else "accepts only"
    what = f"{point.id} {verb} a DFT of {word} {show(stated)}; specified for {film.of}: {word} {show(asked)}"
    if narrower and limit in film.lent:
        return  # the coats leave the limit to the product, and a criterion may ask more than that
    yield unless_rounded(Problem(at, what, severity=_weight(point, film, limit, wider=wider)), stated, asked)


def _weight(point: InspectionPoint, film: Asked, limit: str, *, wider: bool) -> Severity | None:
    if not wider:
        return NOTE
    # an own wording may tell spots and means apart, and a limit of the product alone may be left by the system
    by_words = point.criterion.rule in {None, AcceptanceRule.OWN}
    return WARNING if by_words or limit in film.lent else None


def _nominal(point: InspectionPoint, film: Asked, path: Path) -> Problems:
    criterion, at = point.criterion, (*path, "nominal")
    iso = criterion.rule is AcceptanceRule.ISO_19840
    if criterion.nominal is None:
        if not iso:  # the rule on the field of ISO 19840 says so
            what = f"{point.id} states no nominal DFT, from which {criterion.rule} counts"
            yield Problem(at, what, "write the nominal DFT", WARNING)
        return
    stated = criterion.nominal
    counted = f"{point.id} counts from a nominal DFT of {show(stated)}"
    least, nominal = film.least, film.nominal
    if least is not None and stated < least[0]:
        what = f"{counted}, below the minimum of {film.of}, {show(least[0])}"
        problem = Problem(at, what, severity=WARNING if "min" in film.lent else None)
        yield unless_rounded(problem, stated, least[0])
    elif nominal is not None and stated < nominal[0] and (iso or least is None or stated > least[1]):
        what = f"{counted}; nominal DFT of {film.of}: {show(nominal[0])}"
        # ISO 19840 counts from the film that is specified: a system that states another one contradicts it
        mild = None if iso and "nominal" not in film.lent else WARNING
        yield unless_rounded(Problem(at, what, severity=mild), stated, nominal[0])
    elif nominal is not None and stated > nominal[1]:
        what = f"{counted}; nominal DFT of {film.of}: {show(nominal[1])}"
        yield unless_rounded(Problem(at, what, severity=NOTE), stated, nominal[1])


def _of_its_level(point: InspectionPoint, path: Path) -> Problems:
    """Written limits of spots and areas that are wider than the level gives: the criterion then states two limits for one thing."""
    criterion = point.criterion
    if criterion.rule is not AcceptanceRule.PA_2:
        return
    held = table("sspc_pa_2_levels")
    row = next((row for row in held.rows if row["level"] == str(criterion.level)), None)
    for name, limit, share in _shares(criterion, row):
        stated: Quantity | None = getattr(criterion, name)
        if stated is None or limit is None or share is None:
            continue
        due = share_of(limit, share)
        if stated < due if name.endswith("min") else stated > due:
            bound = "below" if name.endswith("min") else "above"
            what = f"{name} {show(stated)} of {point.id} is {bound} {show(due)}, which level {criterion.level} gives"
            source = held.citation if name.startswith("spot") else LOGIC
            problem = Problem((*path, name), what, "leave the limit out, or write that of the level", WARNING, source)
            yield unless_rounded(problem, stated, due)


def _shares(criterion: Criterion, row: Row | None) -> Iterator[tuple[str, Quantity | None, Fraction | None]]:
    least, most = specified(criterion)
    if row is not None:
        yield "spot_min", least, Fraction(row["spot_min_pct"])
        yield "spot_max", most, Fraction(row["spot_max_pct"]) if row["spot_max_pct"] else None
    yield "area_min", criterion.min, Fraction(100)
    yield "area_max", criterion.max, Fraction(100)

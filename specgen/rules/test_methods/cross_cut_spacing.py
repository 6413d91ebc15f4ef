"""TST020 The cuts of a cross-cut are as far apart as the film asks for

Checks
    Each cross-cut to ISO 2409 or ASTM D3359 that is asked, claimed or reported with its spacing and its film, against table cross_cut_spacing. A film that reaches over a border may have either spacing. Films on an existing coating are not judged, for what lies beneath counts too. Of an inspection point that names such a cut and one spacing in words, the DFT specified of the coats it cuts.
Why
    Cuts too close tear a thick film whatever its adhesion; cuts too far apart let a poor one pass.
Passes
    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, details: [{id: spacing, value: 2 mm}], condition: {film: 61..120 um}, limit: class 0..1, statistic: each}]

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, details: [{id: spacing, value: 1 mm}], condition: {film: 40..70 um}, limit: class 0..1, statistic: each}]

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, details: [{id: spacing, value: 2 mm}], condition: {substrate: grp, film: 40..60 um}, limit: class 0..1, statistic: each}]

    Given a claim with its report
    reports.lab-12.tests.cut: {id: cut, series: scribed, method: cross_cut, standard: ISO 2409, edition: "2020", details: [{id: spacing, value: 2 mm}], results: [{id: P1, value: class 0}, {id: P2, value: class 1}, {id: P3, value: class 0}]}

    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, items: [DOOR], method: "Cross-cut to ISO 2409, 2 mm spacing", criterion: {text: Class 0 or 1.}}

    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, items: [DOOR], method: "Cross-cut to ISO 2409, 1 mm spacing up to 60 µm, 2 mm spacing up to 120 µm, 3 mm spacing above", criterion: {text: Class 0 or 1.}}

    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, items: [DOOR], method: "Cross-cut to ISO 2409, 3 mm spacing", criterion: {text: Class 0 or 1.}}

    jobs.refit.inspection.cut: {id: cut, check: Adhesion of the primer, after: primer, items: [DOOR], method: "Cross-cut to ISO 2409, 1 mm spacing", criterion: {text: Class 0 or 1.}}

    jobs.refit.inspection.cut: {id: cut, check: Score marks, at: completion, items: [DOOR], method: "Lines 1 mm apart, ISO 2409 beside it", criterion: {text: None through the film.}}

    systems.chassis.layers.barrier.film: {min: 70 um, nominal: 80 um, max: 120 um}
    jobs.refit.items.STEP.old_coats: [{id: old, family: epoxy_2k, thickness: 80 um, sound: yes, rub: resistant}]
    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, items: [STEP], method: "Cross-cut to ISO 2409, 1 mm spacing", criterion: {text: Class 0 or 1.}}

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, details: [{id: spacing, value: 1 mm}], condition: {film: 80..110 um, substrate: old_paint}, limit: class 0..1, statistic: each}]
Fails
    systems.chassis.layers.barrier.film: {min: 70 um, nominal: 80 um, max: 120 um}
    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, items: [STEP], method: "Cross-cut to ISO 2409, spacing of 1 mm", criterion: {text: Class 0 or 1.}}    # at jobs.refit.inspection.cut.method

    jobs.refit.items.STEP.system: cab
    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, method: "Cross-cut to ISO 2409, 1 mm spacing", criterion: {text: Class 0 or 1.}}    # at jobs.refit.inspection.cut.method

    jobs.refit.inspection.cut: {id: cut, check: Adhesion, at: completion, items: [DOOR], method: "Cross-cut to ISO 2409, 1 mm spacing", criterion: {text: Class 0 or 1.}}    # at jobs.refit.inspection.cut.method

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, details: [{id: spacing, value: 1 mm}], condition: {film: 80..110 um}, limit: class 0..1, statistic: each}]    # at jobs.refit.tests.cut.details.spacing

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ASTM D3359, variant: method B, details: [{id: spacing, value: 1 mm}], condition: {film: 60..80 um}, limit: min 4B, statistic: each}]    # at jobs.refit.tests.cut.details.spacing

    Given a claim with its report
    reports.lab-12.tests.cut: {id: cut, series: scribed, method: cross_cut, standard: ISO 2409, edition: "2020", details: [{id: spacing, value: 3 mm}], results: [{id: P1, value: class 0}, {id: P2, value: class 1}, {id: P3, value: class 0}]}    # at reports.lab-12.tests.cut.details.spacing
To put right
    Write the spacing that was cut, or ask for the one of the film.
"""

import re
from collections.abc import Iterator, Sequence

from specgen.facts.job.inspected import places
from specgen.facts.job.looked_for import words_of
from specgen.facts.job.points import layers_read
from specgen.facts.layer.sums import film_sum_of
from specgen.facts.tests.fit import tests_of, total_film
from specgen.facts.tests.spoken import asked_tests
from specgen.facts.tests.standards import standards_in
from specgen.facts.tests.values import amount
from specgen.model.test_report import LabReport, PanelSeries
from specgen.model.test_required import AskedTest, Detail
from specgen.model.test_value import Measured, read_result
from specgen.rules.kit import WARNING, Job, Node, Path, Problem, Problems, Quantity, Range, Spec, date, rule, table

_TABLE = table("cross_cut_spacing")
_CUT, _HARD, _SOFT = "cross_cut", "hard", "soft"
_GROUNDS = {"metal": _HARD, "wood": _SOFT, "plastic": _SOFT}
_OVER_PAINT = "paint"
_CUTS = re.compile(r"\bcross[- ]?(?:cut|hatch)", re.I)
_SPACING = re.compile(r"\b(\d+(?:\.\d+)?) ?mm (?:spacing|apart)|\bspac\w+ (?:of )?(\d+(?:\.\d+)?) ?mm\b", re.I)


@rule("TST020", on=Node, severity=WARNING, source=_TABLE.citation)
def cross_cut_spacing(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        if asked.test.method == _CUT:
            substrate = asked.test.condition.substrate if asked.test.condition is not None else None
            film = _ends(asked.test)
            yield from _told(asked.path, asked.test.standard, asked.test.details, substrate, film)
    if isinstance(subject, Job):
        yield from _in_words(subject, spec)
    if isinstance(subject, LabReport):
        for tested in tests_of(subject):
            if tested.done.method == _CUT:
                at = ("tests", tested.done.id)
                film = _measured(tested.series)
                yield from _told(at, tested.done.standard, tested.done.details, tested.series.substrate, film)


def _in_words(job: Job, spec: Spec) -> Problems:
    for point in job.inspection:
        spacings = list(_SPACING.finditer(point.method or ""))
        # several are said of several films
        if len(spacings) != 1 or not _CUTS.search(words_of(point)):
            continue
        said = spacings[0]
        for item, system in places(point, job, spec):
            layers, substrate = layers_read(point, system), spec.substrate_of(job, item)
            ends = [film_sum_of(system, layers, spec, end) for end in ("min", "max")]
            if None in ends or substrate is None or item.old_coats:
                continue
            film = tuple(one.value for one in ends if one is not None)
            for problem in _misfits(point.method or "", said[1] or said[2], substrate.material, (film[0], film[1])):
                yield Problem(("inspection", point.id, "method"), f"{point.id} {problem}")


def _told(
    path: Path,
    standard: str | None,
    details: Sequence[Detail],
    substrate: str | None,
    film: tuple[Quantity, Quantity] | None,
) -> Problems:
    spacing = next((one for one in details if one.id == "spacing"), None)
    if spacing is None or film is None:
        return
    cut = _millimetres(spacing.value)
    for what in _misfits(standard or "", cut, substrate, film):
        yield Problem((*path, "details", "spacing"), what)


def _misfits(standards: str, cut: str | None, substrate: str | None, film: tuple[Quantity, Quantity]) -> Iterator[str]:
    """What is wrong with cuts so many millimetres apart, by each standard that a text names."""
    kind = table("materials").row("id", substrate)["kind"] if substrate is not None else "metal"
    if cut is None or kind == _OVER_PAINT:
        return
    for named in standards_in(standards):
        rows = [
            row
            for row in _TABLE.rows
            if row["standard"] == named.standard
            and row["ground"] in {"", _GROUNDS.get(kind, _HARD)}
            and Quantity.of("thickness", int(row["from_um"]), "um") <= film[1]
            and film[0] <= Quantity.of("thickness", int(row["to_um"]), "um")
        ]
        right = list(dict.fromkeys(f"{row['mm']} mm" for row in rows))
        if right and f"{cut} mm" not in right:
            yield f"cuts {cut} mm apart on a film of {film[0]} to {film[1]}; {named.standard} has {' or '.join(right)} there"


def _ends(test: AskedTest) -> tuple[Quantity, Quantity] | None:
    film = test.condition.film if test.condition is not None else None
    if isinstance(film, Range):
        return (film.low, film.high) if film.low is not None and film.high is not None else None
    return (film, film) if film is not None else None


def _measured(series: PanelSeries) -> tuple[Quantity, Quantity] | None:
    """Lowest and highest film of the panels; the mean where neither is stated."""
    of = series if series.film is not None or len(series.coats) > 1 else series.coats[0]
    mean = total_film(series)
    low, high = of.film_min or mean, of.film_max or mean
    return (low, high) if low is not None and high is not None else None


def _millimetres(text: str) -> str | None:
    try:
        value = read_result(text)
    except ValueError:
        return None
    length = amount("scribe_creep", value) if isinstance(value, Measured) else None
    return f"{float(length.to('mm')):g}" if length is not None else None

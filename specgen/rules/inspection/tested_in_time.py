"""INS031 A test of the coat stands where it can tell something

Checks
    The words of each inspection point: an adhesion or holiday test sooner than a day after the last coat, a pull-off sooner than three days (table inspection_in_words); a solvent rub of ASTM D4752 or with MEK on an alkyd, an acrylic that dries by itself or another paint that solvent dissolves; a holiday test on parts none of which conducts; soluble salts, the profile or the grade of preparation looked at at completion, unless it is the records of them that are looked at.
Why
    Such a test passes or fails whatever the coat is like: soft paint tears in itself, solvent dissolves a sound alkyd, plastic lets no spark through, and nobody can measure salt beneath the finish.
Passes
    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409, 7 days after the last coat", criterion: {text: Class 0 or 1.}}

    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Pull-off, ISO 4624, 3 days after the last coat", criterion: {text: At least 5 MPa.}}

    jobs.refit.inspection.spray: {id: spray, check: Salt spray on a panel, at: completion, method: "ISO 9227, 480 h", criterion: {text: No blister.}}

    jobs.refit.inspection.film: {id: film, check: Film, at: completion, method: "Magnetic, less the surface profile read before", criterion: {text: At least 100 µm.}}

    Given second good
    jobs.rails.inspection.salt: {id: salt, check: Soluble salt, at: after-preparation, method: "Patch, ISO 8502-6", criterion: {text: At most 20 mg/m2.}}

    jobs.refit.inspection.papers: {id: papers, check: "Records of blasting, salt and surface profile", at: completion, criterion: {text: "Sa 2 1/2, ISO 8501-1, recorded for each part."}}

    jobs.refit.inspection.gloss: {id: gloss, check: Gloss grade, at: completion, method: "By eye beside the comparator panel", criterion: {text: As the panel.}}

    jobs.refit.inspection.steel: {id: steel, check: Grade of the blasted steel, at: after-preparation, method: "ISO 8501-1 pictures", criterion: {text: Sa 2 1/2.}}

    jobs.refit.inspection.edges: {id: edges, check: "Edges, welds and corners coated", at: completion, method: "By eye, ISO 8501-3 beside it", criterion: {text: No bare steel.}}
Fails
    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409, one hour after the last coat", criterion: {text: Class 0 or 1.}}    # at jobs.refit.inspection.adhesion.method    # also JOB018 at jobs.refit.inspection.adhesion.method

    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, test: {method: cross_cut, standard: ISO 2409, limit: class 0 or 1}, frequency: "One panel, after 12 h", criterion: {text: Class 0 or 1.}}    # at jobs.refit.inspection.adhesion.frequency

    jobs.refit.inspection.salt: {id: salt, check: Soluble salt, at: completion, method: "Patch, ISO 8502-6", criterion: {text: At most 20 mg/m2.}}    # at jobs.refit.inspection.salt.at

    jobs.refit.inspection.steel: {id: steel, check: Grade and profile of the blasted steel, at: completion, method: "ISO 8501-1 pictures", criterion: {text: Sa 2 1/2.}}    # at jobs.refit.inspection.steel.at

    jobs.refit.inspection.profile: {id: profile, check: Surface profile, at: completion, method: "Replica tape, ISO 8503-5", criterion: {text: 25 to 50 µm.}}    # at jobs.refit.inspection.profile.at
To put right
    Move the test to where what it measures is open and the film is hard, or choose a test that fits paint and part.
"""

import re
from collections.abc import Iterator

from specgen.facts.job.inspected import places
from specgen.facts.job.looked_for import SALT, words_of
from specgen.facts.job.points import layers_read
from specgen.facts.pairs.families import binder_family
from specgen.facts.pairs.parts import parts_of
from specgen.facts.product.spans_said import spans_said
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule
from specgen.standards.tables import table

_TABLE = table("inspection_in_words")
_OF_FILM = re.compile(
    r"cross.?(?:cut|hatch)|\b2409\b|pull.?off|\b4624\b|D4541|D3359|holiday|high.voltage|29601|D5162", re.I
)
_FILM_TESTS = {"cross_cut", "x_cut", "pull_off", "holiday_low", "holiday_high"}
_AFTER = re.compile(r"\bafter (?:the )?(?:last|final|top|second|third|clear)? ?coat", re.I)
_PROFILE = re.compile(r"(?:surface|blast|anchor) profile|8503", re.I)
_PREPARED = re.compile(r"\b(?:grade|prepar\w*|blast\w*|cleanliness)\b", re.I)
_GRADE = re.compile(r"\b(?:8501|Sa [123]|St [23]|SP ?\d+|VIS ?\d)\b|\bSa ?2 ?½|\b(?:profile|surface) comparator", re.I)
_ON_PAPER = re.compile(
    r"\b(?:records?|papers?|documents?|reports?|certificates?|files?|photographs?|photos|hand(?:ed|ing)?[ -]?over)\b",
    re.I,
)
_RUB = re.compile(r"D4752|\bMEK\b|solvent rub", re.I)
_DISSOLVED, _NOT_CROSSLINKED = {"soluble", "softens"}, {"oxidative", "physical"}
_PULL_OFF = re.compile(r"pull.?off|\b4624\b|D4541", re.I)
_PORES = re.compile(r"holiday|high.voltage|spark|wet sponge|29601|D5162", re.I)
_CONDUCTIVE = re.compile(r"conduct|earth", re.I)
_NO_METAL = ("plastic", "grp", "wood", "rubber")


@rule("INS031", on=Job, severity=WARNING, source=PRACTICE)
def tested_in_time(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        for leaf, what in _misplaced(point, job, spec):
            yield Problem(("inspection", point.id, leaf), f"{point.id} {what}")


def _misplaced(point: InspectionPoint, job: Job, spec: Spec) -> Iterator[tuple[str, str]]:
    said, method = words_of(point), point.method or ""
    covered = point.at is Stage.COMPLETION and _ON_PAPER.search(point.check) is None
    if covered and SALT.search(f"{point.check} {method}") and not _OF_FILM.search(said):
        yield "at", "measures soluble salts at completion, when they lie beneath the finish"
    if covered and _PROFILE.search(point.check):
        yield "at", "measures the profile at completion, when it lies beneath the paint"
    elif covered and _PREPARED.search(point.check) and _GRADE.search(said):
        yield "at", "looks at the prepared surface at completion, when it lies beneath the paint"
    shortest = int(_TABLE.row("id", "pull_off_test" if _PULL_OFF.search(said) else "film_test")["value"])
    of_film = _OF_FILM.search(said) or (point.test is not None and point.test.method in _FILM_TESTS)
    for leaf, text in (("method", method), ("frequency", point.frequency or "")):
        spans = [
            span
            for words, span in spans_said(text)
            if span is not None and (_AFTER.search(text) or f"after {words}" in text)
        ]
        if of_film and spans and spans[0].to("h") < shortest:
            yield leaf, f"tests the coat {spans[0]} after it was laid; it has not cured then"
            break
    if not _RUB.search(said) and not _PORES.search(said):
        return
    found = list(places(point, job, spec))
    read = [layer for _, system in found for layer in layers_read(point, system)[-1:]]
    binders = {spec.product_of(layer).binder for layer in read}
    if _RUB.search(said) and binders and all(_dissolves(binder) for binder in binders):
        yield "method", "rubs with solvent a paint that solvent dissolves, however well it has dried"
    items = {item.id for item, _ in found}
    materials = {part.material for part in parts_of(job, spec) if part.item.id in items}
    if (
        _PORES.search(said)
        and not _CONDUCTIVE.search(said)
        and materials
        and all(one.startswith(_NO_METAL) for one in materials)
    ):
        yield "method", "looks for pores by a current through parts that do not conduct"


def _dissolves(binder: str) -> bool:
    family = binder_family(binder)
    return family["cured_rub"] in _DISSOLVED and family["cure"] in _NOT_CROSSLINKED

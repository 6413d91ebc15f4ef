"""OLD016 Lead and chromate in existing paint are known before it is disturbed

Checks
    Each item with existing paint whose preparation strips, blasts, sands, drills or cuts it: for a coat of unknown type, and for an oil or alkyd paint of unknown age or of ten years and more, it is stated whether it contains lead and chromate, or a test step or a hold point before the work asks for both. Where the paint contains either, a hold point for it is planned, and not one that is passed only where none is found.
Why
    Dust of lead or chromate paint poisons whoever works in it, their families and the ground, and cannot be taken back once it is made.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant, lead: no, chromate: no}]

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant}]
    jobs.refit.inspection.lead: {id: lead, check: Existing paint free of lead and chromate, at: receipt, criterion: {text: test kit shows neither}, hold_point: yes}

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant, lead: no, chromate: yes}]
    jobs.refit.inspection.lead: {id: lead, check: Plan of work for chromate paint, at: receipt, criterion: {text: "Wet sanding, P3 masks and sheeting in place; no dust escapes."}, hold_point: yes}

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant}]
    preparations.sand-steel.steps: [{id: lead, do: test, text: Test a chip for lead and chromate; stop if either is found.}, {id: degrease, do: degrease, text: Degrease with two clean cloths., acceptance: A white cloth stays white.}, {id: sand, do: sand, text: Sand to an even matt surface., abrasive: P180, grade: P Ma, acceptance: No gloss left.}, {id: dust, do: dust-off, text: Wipe with a tack cloth.}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant}]    # at jobs.refit.items.DOOR.old_coats.found.lead

    Given second good
    without jobs.rails.items.LOCKER.old_coats.works.family    # at jobs.rails.items.LOCKER.old_coats.works.lead    # also OLD002 at jobs.rails.items.LOCKER.old_coats.works.family

    Given second good
    jobs.rails.items.LOCKER.old_coats.works.chromate: yes    # at jobs.rails.items.LOCKER.old_coats.works.chromate

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant, lead: no}]    # at jobs.refit.items.DOOR.old_coats.found.chromate

    Given second good
    jobs.rails.items.LOCKER.old_coats.works.family: oil_alkyd
    jobs.rails.items.LOCKER.old_coats.works.age: 10 years    # at jobs.rails.items.LOCKER.old_coats.works.lead

    jobs.refit.items.DOOR.old_coats: [{id: found, thickness: 90 um, rub: resistant, lead: no, chromate: yes}]    # at jobs.refit.items.DOOR.old_coats.found.chromate
    jobs.refit.inspection.lead: {id: lead, check: Lead and chromate in the old paint, at: receipt, criterion: {text: None found before anybody sands.}, hold_point: yes}
To put right
    Plan a hold point at receipt that tests a chip down to the metal for lead and chromate, and state what is found. Where either is in it, a contractor licensed for it takes it off.
"""

import re

from specgen.facts.job.old_paint import disturbs, old_coats_of, tested_before
from specgen.model.acceptance import Stage
from specgen.model.job import OldCoat
from specgen.rules.kit import LOGIC, PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule, table

_NAMES = {"lead": re.compile(r"\blead\b", re.I), "chromate": re.compile(r"chromate|chromium|hexavalent", re.I)}

_ABSENT = re.compile(
    r"\b(?:none|neither|free (?:of|from)|not (?:found|detected|present)|absent|negative|no (?:lead|chrom\w+))\b", re.I
)
_PROTECT = "write what has to be in place before it is disturbed: wet method or extraction, masks, sheeting, permit, disposal of the waste"


@rule("OLD016", on=Job, severity=WARNING, source=PRACTICE)
def lead_known(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        preparation = spec.preparation_of(job, item)
        if preparation is None or not disturbs(preparation):
            continue
        for coat, path in old_coats_of(job, item, spec):
            for name, pattern in _NAMES.items():
                held = [
                    point
                    for point in job.inspection
                    if point.hold_point
                    and point.at is Stage.RECEIPT
                    and (not point.items or item.id in point.items)
                    and pattern.search(f"{point.check} {point.method or ''} {point.criterion.text or ''}")
                ]
                stated = getattr(coat, name)
                if stated and not held:
                    what = f"{item.id}: the existing coat {coat.id} contains {name}, and no hold point stops the work for it"
                    yield Problem((*path, name), what, absolute=True)
                elif stated and all(_ABSENT.search(point.criterion.text or "") for point in held):
                    what = f"{item.id}: the existing coat {coat.id} contains {name}, but {held[0].id} is passed only where none is found"
                    yield Problem((*path, name), what, _PROTECT, absolute=True, source=LOGIC)
                elif stated is None and _unknown(coat) and not held and not tested_before(preparation, pattern):
                    what = f"{item.id}: whether the existing coat {coat.id} contains {name} is not known, and it is disturbed"
                    yield Problem((*path, name), what, absolute=True)
                    break


def _unknown(coat: OldCoat) -> bool:
    if coat.family != "oil_alkyd":
        return coat.family is None
    return coat.age is None or coat.age.to("years") >= int(table("lead_paint_age").rows[0]["value"])

"""INS019 An acceptance criterion in words asks what the preparation asks

Checks
    The acceptance criterion in words of an inspection point after the preparation: a limit for soluble salts, a dust rating, a grade of welds and edges, a preparation grade or a profile that they name, against those typed in the preparation of each item the point looks at. Stricter words pass; so do words that name several limits, a grade that another step of the preparation states, and a point that one of its items meets. Grades are compared over the ladder of common practice.
Why
    The inspector signs by the sentence beside the point, not by the preparation pages before: twice the salt or a weaker blast is then accepted with a signature under it, and the film blisters or lifts over it.
Passes
    Given second good
    jobs.rails.inspection.blasted.criterion.text: "SP 10, 1 to 1.5 mil."

    Given second good
    jobs.rails.inspection.blasted.criterion.text: "Sa 3; profile 26 to 38 µm."

    Given second good
    jobs.rails.inspection.salt: {id: salt, check: Soluble salt, at: after-preparation, items: [RAIL], criterion: {text: No more than 2 µg/cm2.}}

    Given second good
    jobs.rails.inspection.salt: {id: salt, check: Soluble salt, at: after-preparation, items: [RAIL], criterion: {text: "At most 20 mg/m2; at 40 mg/m2 and more call the technical service."}}

    Given second good
    jobs.rails.inspection.blasted: {id: blasted, check: Surface, at: after-preparation, items: [LOCKER], criterion: {text: "P Ma, feathered."}, hold_point: yes}
Fails
    Given second good
    jobs.rails.inspection.salt: {id: salt, check: Soluble salt, at: after-preparation, items: [RAIL], criterion: {text: At most 21 mg/m2.}}    # at jobs.rails.inspection.salt.criterion.text

    Given second good
    jobs.rails.inspection.salt: {id: salt, check: Patch test, method: ISO 8502-6, at: after-preparation, items: [RAIL], criterion: {text: 5 µg/cm² or less}}    # at jobs.rails.inspection.salt.criterion.text

    Given second good
    jobs.rails.inspection.blasted: {id: blasted, check: Steel, at: after-preparation, items: [RAIL], criterion: {text: "SP 6, 1 to 1.5 mil."}, hold_point: yes}    # at jobs.rails.inspection.blasted.criterion.text

    Given second good
    jobs.rails.inspection.blasted: {id: blasted, check: Steel, at: after-preparation, items: [RAIL], criterion: {text: "Sa 2 1/2; profile 25 to 50 µm."}, hold_point: yes}    # at jobs.rails.inspection.blasted.criterion.text

    Given second good
    preparations.blast.dust_quantity: 2
    jobs.rails.inspection.dust: {id: dust, check: Dust, at: after-preparation, items: [RAIL], criterion: {text: "Quantity 3, size 2 at most."}}    # at jobs.rails.inspection.dust.criterion.text    # also INS014 at preparations.blast.dust_quantity
To put right
    Write the limit of the preparation in both places, or leave it out of the sentence and refer to the preparation.
"""

from specgen.facts.job.in_words import looser
from specgen.facts.job.looked_for import SALT, words_of
from specgen.model.acceptance import InspectionPoint, Stage
from specgen.rules.kit import LOGIC, WARNING, Job, Preparation, Problem, Problems, Spec, date, rule


@rule("INS019", on=Job, severity=WARNING, source=LOGIC)
def accepted_in_words(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if point.at is not Stage.PREPARED or not point.criterion.text:
            continue
        of_salt = SALT.search(words_of(point)) is not None
        for said, asked in looser(point.criterion.text, _preparations(point, job, spec), of_salt=of_salt):
            what = f"{point.id} accepts {said}; {asked}"
            yield Problem(("inspection", point.id, "criterion", "text"), what)


def _preparations(point: InspectionPoint, job: Job, spec: Spec) -> list[Preparation]:
    looked_at = [item for item in job.items if not point.items or item.id in point.items]
    found = {one.id: one for item in looked_at if (one := spec.preparation_of(job, item)) is not None}
    return list(found.values())

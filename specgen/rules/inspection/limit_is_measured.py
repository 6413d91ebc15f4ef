"""INS014 A limit for salt or dust is measured somewhere

Checks
    Each preparation of a job with a limit for soluble salts or for dust: a test step or an acceptance criterion of the preparation, or an inspection point of the job, names it.
Why
    A limit that is measured at no point is found out when the film blisters over the salt.
Passes
    preparations.sand-steel.dust_quantity: 2
    jobs.refit.inspection.prepared.check: Surface matt, dust by adhesive tape

    Given second good
    preparations.blast.steps.wash.acceptance: Grease-free.
    preparations.blast.steps.salt: {id: salt, do: test, text: "Measure soluble salts by the patch method, ISO 8502-6."}
Fails
    preparations.sand-steel.dust_size: 2    # at preparations.sand-steel.dust_size
    preparations.sand-steel.steps.dust.text: Blow off.

    preparations.sand-steel.salt_limit: 40 mg/m2    # at preparations.sand-steel.salt_limit

    Given second good
    preparations.blast.steps.wash.acceptance: Grease-free.    # at preparations.blast.salt_limit
To put right
    Add a test step or an inspection point after the preparation that measures it, with the method and how often.
"""

from specgen.facts.job.looked_for import DUST, SALT, words_of
from specgen.model.preparation import StepKind
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule

_LIMITS = {"salt_limit": ("soluble salts", SALT), "dust_quantity": ("dust", DUST), "dust_size": ("dust", DUST)}


@rule("INS014", on=Job, severity=WARNING, source=LOGIC)
def limit_is_measured(job: Job, spec: Spec, on: date) -> Problems:
    used = {found.id: found for item in job.items if (found := spec.preparation_of(job, item)) is not None}
    said = [words_of(point) for point in job.inspection]
    for preparation in used.values():
        steps = [
            f"{step.text if step.do is StepKind.TEST else ''} {step.acceptance or ''}" for step in preparation.steps
        ]
        told: set[str] = set()
        for leaf, (name, pattern) in _LIMITS.items():
            stated = getattr(preparation, leaf)
            if stated is None or name in told or any(pattern.search(text) for text in (*said, *steps)):
                continue
            told.add(name)
            what = f"{preparation.id} limits {name} to {stated}, and no test step or inspection point measures it"
            yield Problem(("preparations", preparation.id, leaf), what, absolute=True)

"""AIR003 The fresh-air flow meets the explosive limit and the exposure limits

Checks
    Where a job states its fresh-air flow and the quantity sprayed per hour: the flow against what the lower explosive limit and the occupational exposure limits require, product by product. What a blocked hardener releases during cure is counted among the vapours. A vapour without published data cannot be assessed, and no flow is assessed for a confined space.
Why
    Occupational exposure limits require many times the air flow that the lower explosive limit requires.
Passes
    jobs.refit.vehicles: [T-01]

    Given a job that states its spray air
    jobs.refit.ventilation: {room: 60 m3, changes: 15, spraying_rate: 241 g/h, mixing: 3}
Fails
    jobs.refit.ventilation: {flow: 5000 m3/h}    # note at jobs.refit.ventilation    # also AIR003 note at jobs.refit.ventilation    # also AIR003 note at jobs.refit.ventilation    # also AIR003 note at jobs.refit.ventilation

    Given a job that states its spray air
    jobs.refit.ventilation.flow: 899 m3/h    # warning at jobs.refit.ventilation

    Given a job that states its spray air
    jobs.refit.ventilation.flow: 4 m3/h    # at jobs.refit.ventilation    # warning at jobs.refit.ventilation

    Given a job that states its spray air
    jobs.refit.ventilation: {room: 60 m3, flow: 900 m3/h}    # note at jobs.refit.ventilation

    Given a job that states its spray air
    jobs.refit.ventilation: {room: 60 m3, spraying_rate: 241 g/h}    # note at jobs.refit.ventilation

    Given a job that states its spray air
    without products.barrier.composition.acetate.cas    # note at jobs.refit.ventilation    # note at jobs.refit.ventilation    # also HAZ045 note at products.barrier.composition.acetate

    jobs.refit.ventilation: {room: 60 m3, changes: 15}    # note at jobs.refit.ventilation    # note at jobs.refit.ventilation    # note at jobs.refit.ventilation    # note at jobs.refit.ventilation

    Given cans sprayed at a stated rate
    without products.primer.hazards.cure_release_share    # note at jobs.refit.ventilation

    Given cans sprayed at a stated rate
    without products.primer.hazards.cure_release_cas    # note at jobs.refit.ventilation    # note at jobs.refit.ventilation

    Given a job that states its spray air
    jobs.refit.workplace: confined-space    # note at jobs.refit.ventilation    # also AIR006 at jobs.refit.confined_space
To put right
    Where the flow is too low, raise it or spray less per hour. Wear respiratory protection at any flow.
"""

from specgen.facts.job.air import air_of_job
from specgen.facts.job.confined import is_confined
from specgen.rules.kit import ERROR, NOTE, WARNING, Basis, Job, Problem, Problems, Severity, Spec, cite, date, rule
from specgen.trade.known import NotKnown
from specgen.trade.working import Working

_NOT_ASSESSED = "state what is missing, or have the air measured; no air flow is shown to be enough until then"


def _weight(wanted: Working) -> Severity | None:
    """What rests on the arithmetic of a mixed room alone is no ground for an error."""
    return WARNING if wanted.source.basis is Basis.ARITHMETIC else None


@rule("AIR003", on=Job, severity=ERROR, source=cite("OSHA-LFL-READING"), waivable=False)
def air_is_enough(job: Job, spec: Spec, on: date) -> Problems:
    if job.ventilation is None or (
        job.ventilation.flow is None and job.ventilation.changes is None and job.ventilation.spraying_rate is None
    ):
        return
    if is_confined(job):
        what = f"no ventilation is assessed for {job.id}: in a confined space the atmosphere test decides, not a calculated flow"
        yield Problem(("ventilation",), what, severity=NOTE)
        return
    for found in air_of_job(job, spec, on):
        who = f"{found.product} under {found.jurisdiction}"
        gap = next((part for part in (found.stated, found.spraying) if isinstance(part, NotKnown)), None)
        if gap is not None or isinstance(found.spraying, NotKnown) or isinstance(found.stated, NotKnown):
            if gap is not None:
                what = f"the ventilation for {who} cannot be assessed: {gap.why}"
                yield Problem(("ventilation",), what, _NOT_ASSESSED, severity=NOTE)
            continue
        hazards = spec.products[found.product].hazards
        if hazards is not None and hazards.cure_releases is not None and hazards.cure_release_share is None:
            what = f"the {hazards.cure_releases} that {found.product} releases during cure is not counted: how much is not stated"
            yield Problem(("ventilation",), what, severity=NOTE)
        have = found.stated.quantity
        for wanted, ground in (
            (found.spraying.explosion, "lower explosive limit"),
            (found.spraying.needed, "occupational exposure limits"),
        ):
            if isinstance(wanted, NotKnown):
                missing = ", ".join(wanted.missing)
                what = f"the ventilation for {who} cannot be assessed against the {ground}: {wanted.why}; missing: {missing}"
                yield Problem(("ventilation",), what, _NOT_ASSESSED, severity=NOTE)
            elif have < wanted.quantity:
                what = f"fresh-air flow {have} is below the {wanted.printed()} required by the {ground} for {who}"
                yield Problem(("ventilation",), what, severity=_weight(wanted), source=wanted.source)

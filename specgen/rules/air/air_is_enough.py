"""AIR003 The fresh-air flow meets the explosive limit and the exposure limits

Checks
    Where a job states its fresh-air flow and the quantity sprayed per hour: the flow against what the lower explosive limit and the occupational exposure limits require, product by product. What a blocked hardener releases during cure is counted among the vapours. Where a vapour has no published data, the known ones tell the least that is needed and more is not assessed; water and what is stated not to burn ask for no air against explosion. No flow is assessed for a confined space. A flow below a limit that is indicative or recommended, or that rests on a mixing factor nobody stated, is a warning.
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
    jobs.refit.ventilation.flow: 4 m3/h    # warning at jobs.refit.ventilation    # warning at jobs.refit.ventilation

    Given a job that states its spray air
    project.jurisdictions: [US]    # also VOC004 at products.base.voc    # also VOC004 at products.clear.voc    # also VOC004 at products.primer.voc
    jobs.refit.ventilation.flow: 4 m3/h    # at jobs.refit.ventilation    # at jobs.refit.ventilation

    Given a job that states its spray air
    project.jurisdictions: [EU, FR]
    jobs.refit.ventilation.flow: 899 m3/h    # warning at jobs.refit.ventilation    # warning at jobs.refit.ventilation

    Given a job that states its spray air
    products.barrier.composition.unlisted: {id: unlisted, name: solvent without data, kind: solvent, mass_share: 1 %, density: 0.88 g/mL}
    products.barrier.composition.resin.mass_share: 69 %
    jobs.refit.ventilation.flow: 899 m3/h    # warning at jobs.refit.ventilation    # note at jobs.refit.ventilation

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
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Job, Problem, Problems, Spec, date, rule
from specgen.trade.known import NotKnown
from specgen.trade.working import Working

_NOT_ASSESSED = "state what is missing, or have the air measured; no air flow is shown to be enough until then"


@rule("AIR003", on=Job, severity=ERROR, source=LOGIC, waivable=False)
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
        have, flow = found.stated.quantity, found.spraying
        mixes = job.ventilation.mixing is not None
        for wanted, ground, binding in (
            (flow.explosion, "lower explosive limit", _known(flow.explosion)),
            (flow.needed, "occupational exposure limits", found.binding if mixes else ()),
        ):
            for least in _known(wanted):
                if have >= least.quantity:
                    continue
                most = "at least " if isinstance(wanted, NotKnown) else ""
                what = f"fresh-air flow {have} is below the {most}{least.printed()} required by the {ground} for {who}"
                # an error needs a binding limit, confirmed figures and a stated mixing factor; a model of a mixed room is none
                broken = [asked for asked in binding if have < asked.quantity and asked.source.basis.confirmed]
                weight, source = (None, broken[0].source) if broken else (WARNING, least.source)
                yield Problem(("ventilation",), what, severity=weight, source=source)
                break
            else:
                if isinstance(wanted, NotKnown):
                    missing = ", ".join(wanted.missing)
                    what = f"the ventilation for {who} cannot be assessed against the {ground}: {wanted.why}; missing: {missing}"
                    yield Problem(("ventilation",), what, _NOT_ASSESSED, severity=NOTE)


def _known(wanted: Working | NotKnown) -> tuple[Working, ...]:
    """The flow asked for, or what the known vapours ask for at the least."""
    return (wanted,) if isinstance(wanted, Working) else wanted.workings

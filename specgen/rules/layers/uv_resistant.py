"""LAY008 The last coat outdoors is UV-resistant

Checks
    Items stated to be outdoors, or in the sun: the binder of the last coat does not chalk or yellow in sunlight, as epoxies and aromatic polyurethanes do. Tank linings, antifoulings, underbody coatings and cavity wax are not judged: sunlight does not reach them; nor are items immersed, buried, hollow inside, or stated to be out of the sun, whatever exposure is stated beside that. In the splash zone, where the film protects and colour is not asked of it, and of a zinc-rich last coat, as on a repaired spot of galvanised steel, it is a note.
Why
    Sunlight breaks the binder down to powder: colour and gloss are lost after one summer, and the coat becomes thinner year by year.
Passes
    jobs.refit.items.DOOR.exposure: exterior

    jobs.refit.items.STEP.exposure: interior

    Given second good
    jobs.lids.exposure: exterior

    Given second good
    jobs.rails.exposure: interior
    jobs.rails.items.RAIL.exposure: exterior

    jobs.refit.exposure: exterior
    jobs.refit.items.STEP.environment: {kind: buried, category: Im3}

    jobs.refit.environment: {kind: atmosphere, sun: no}
    jobs.refit.exposure: exterior

    jobs.refit.environment: {kind: cavity}
    jobs.refit.items.STEP.exposure: exterior

    jobs.refit.items.STEP.environment: {kind: buried}
    jobs.refit.items.STEP.exposure: exterior

    Given second good
    products.gloss.binder: pu_2k_aromatic
    products.gloss.roles: [antifouling]
    systems.deck.layers.gloss.role: antifouling
Fails
    jobs.refit.items.STEP.exposure: exterior    # at jobs.refit.items.STEP.exposure

    jobs.refit.exposure: exterior    # at jobs.refit.exposure

    Given second good
    products.gloss.binder: pu_2k_aromatic    # at jobs.rails.exposure    # at jobs.lids.items.FRAME.exposure

    jobs.refit.exposure: exterior    # at jobs.refit.exposure
    jobs.refit.items.DOOR.exposure: interior

    jobs.refit.exposure: exterior
    jobs.refit.items.DOOR.system: chassis
    jobs.refit.items.DOOR.exposure: exterior    # at jobs.refit.items.DOOR.exposure    # at jobs.refit.exposure
    without jobs.refit.inspection.primer-film    # also JOB006 at jobs.refit.inspection

    jobs.refit.items.STEP.environment: {kind: splash, sun: yes}    # note at jobs.refit.items.STEP.environment.sun

    Given a zinc-rich primer on blasted steel
    products.barrier.binder: zinc_organic
    jobs.refit.items.STEP.exposure: exterior    # note at jobs.refit.items.STEP.exposure

    jobs.refit.environment: {kind: underside, category: C3}
    jobs.refit.items.STEP.exposure: exterior    # at jobs.refit.items.STEP.exposure
To put right
    Finish with an aliphatic polyurethane or another UV-resistant coat; or write sun: no where none reaches the part; or accept the chalking by a waiver that names who accepts it.
"""

from specgen.facts.job.exposure import environment_of, sun_on
from specgen.facts.job.stack import stacks
from specgen.facts.pairs.families import binder_family
from specgen.model.environment import EnvironmentKind
from specgen.rules.kit import NOTE, WARNING, Job, Path, Problem, Problems, Role, Spec, cell_citation, date, rule, table

_SUFFERS = {"chalks": "chalks in the sun", "poor": "breaks down and yellows in the sun"}


@rule(
    "LAY008",
    on=Job,
    severity=WARNING,
    source=cell_citation("binder_families", "epoxy_2k", "uv"),
)
def uv_resistant(job: Job, spec: Spec, on: date) -> Problems:
    told: set[tuple[Path, str]] = set()
    for stack in stacks(job, spec):
        last, found = stack.last, sun_on(job, stack.item)
        if last is None or found is None or not found[0] or last.layer.role is Role.BASECOAT:
            continue  # a basecoat without clearcoat has a rule of its own
        if table("coat_places").row("role", last.layer.role.value)["sun"] == "no":
            continue
        suffers, path = _SUFFERS.get(binder_family(last.family)["uv"]), found[1]
        if suffers is None or (path, stack.system.id) in told:
            continue
        told.add((path, stack.system.id))
        what = f"{stack.item.id} is in the sun; its last coat {last.layer.id} ({binder_family(last.family)['name']}) {suffers}"
        held = environment_of(job, stack.item)
        splashed = held is not None and held.kind is EnvironmentKind.SPLASH
        weight = NOTE if splashed or last.family == "zinc_organic" else None
        yield Problem(path, what, severity=weight, source=cell_citation("binder_families", last.family, "uv"))

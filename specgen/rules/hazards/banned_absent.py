"""HAZ040 No banned substance is used

Checks
    Each job against the substances that its project, its systems and the job itself ban (`banned`): the components of every product by CAS number and by name, above the limit stated or at all. A cleaning or conversion step that names a banned substance gives a warning. A product whose composition is not stated cannot be assessed, which is noted.
Why
    A ban that nobody holds against the contents is found out when the waste, the dust or the inspector is tested.
Passes
    Given second good
    systems.touch.banned: [{id: lead, substance: lead}, {id: chrome, substance: chromium-vi}]
    products.touch-up.composition.solids.name: resin and lead-free pigment
    preparations.sand.steps.sand.text: Sand to an even matt face; test for lead first.

    Given second good
    systems.touch.banned: [{id: acetone, substance: 67-64-1, limit: 5 %}]
    products.touch-up.composition.solvent: {id: solvent, name: acetone, cas: 67-64-1, kind: solvent, mass_share: 5 %, density: 6.6 lb/gal}
    products.touch-up.composition.solids.mass_share: 60 %
Fails
    jobs.refit.banned: [{id: chrome, substance: chromium-vi}]
    products.primer.composition.solids.name: resin and zinc chromate    # at products.primer.composition.solids.name    # note at products.base.composition    # note at products.clear.composition    # note at products.barrier.composition

    Given second good
    systems.touch.banned: [{id: acetone, substance: 67-64-1, limit: 5 %}]
    products.touch-up.composition.solvent: {id: solvent, name: acetone, cas: 67-64-1, kind: solvent, mass_share: 6 %, density: 6.6 lb/gal}    # at products.touch-up.composition.solvent.name
    products.touch-up.composition.solids.mass_share: 59 %

    Given second good
    systems.touch.banned: [{id: pcbtf, substance: halogenated-solvents}]
    products.touch-up.composition.solvent: {id: solvent, name: p-chlorobenzotrifluoride, cas: 98-56-6, kind: solvent, mass_share: 40 %, density: 11 lb/gal}    # at products.touch-up.composition.solvent.name

    Given second good
    systems.touch.banned: [{id: solvents, substance: halogenated-solvents}]
    preparations.sand.steps.degrease.text: Degrease with trichloroethylene.    # warning at preparations.sand.steps.degrease.text    # also AIR013 at preparations.sand.steps.degrease.text
To put right
    Choose a product without it, or have whoever banned it state the limit that is accepted.
"""

import re

from specgen.facts.job.banned import bans_of_job, is_banned, name_of, named_in
from specgen.model.banned import Banned
from specgen.model.preparation import StepKind
from specgen.model.system import System
from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Job, Problem, Problems, Product, Spec, date, rule

# What is put on the part by a step; other steps take something off, and name it for that.
_APPLIES = {StepKind.DEGREASE, StepKind.WASH, StepKind.STEAM, StepKind.CONVERT}
_RULED_OUT = re.compile(r"\b(?:no|not|never|without|free of)\b|-free\b", re.I)


@rule("HAZ040", on=Job, severity=ERROR, source=LOGIC)
def banned_absent(job: Job, spec: Spec, on: date) -> Problems:
    unknown: dict[str, list[str]] = {}
    for ban, system in bans_of_job(job, spec):
        limit = f", accepted at most {ban.limit}" if ban.limit is not None else ""
        for product in _products(job, system, spec):
            if not product.composition:
                unknown.setdefault(product.id, []).append(name_of(ban))
            for line in product.composition:
                if is_banned(line, ban):
                    what = f"{product.id} contains {line.name}, {line.mass_share}; banned: {name_of(ban)}{limit}"
                    yield Problem(("products", product.id, "composition", line.id, "name"), what, absolute=True)
        yield from _steps(job, ban, system, spec)
    for product_id, names in unknown.items():
        banned = ", ".join(dict.fromkeys(names))
        what = f"whether {product_id} contains what is banned ({banned}) cannot be told: its composition is not stated"
        yield Problem(("products", product_id, "composition"), what, severity=NOTE, absolute=True)


def _products(job: Job, system: System | None, spec: Spec) -> tuple[Product, ...]:
    if system is None:
        return tuple(spec.products_of(job))
    return spec.products_in(system)


def _steps(job: Job, ban: Banned, system: System | None, spec: Spec) -> Problems:
    items = [item for item in job.items if system is None or spec.system_of(job, item) is system]
    used = {found.id: found for item in items if (found := spec.preparation_of(job, item)) is not None}
    for preparation in used.values():
        for step in preparation.steps:
            clauses = re.split(r"[.;,]", step.text) if step.do in _APPLIES else ()
            if any(named_in(clause, ban) and not _RULED_OUT.search(clause) for clause in clauses):
                what = f"the step {step.id} names what is banned: {name_of(ban)}"
                path = ("preparations", preparation.id, "steps", step.id, "text")
                yield Problem(path, what, severity=WARNING, absolute=True)

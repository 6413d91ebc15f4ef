"""HAZ043 Thinners and cleaners are declared like the coatings

Checks
    Each job that lists its supplies: a thinner or cleaner among them names its safety data sheet and its hazard statements, each of them known, and none of its gloves is latex or vinyl. A job that thins a coat has a thinner among them, and one that degreases a cleaner; that no cleaner is listed is a note, for it may be water with a soap of the works, or ordered with another job.
Why
    Degreaser and thinner start more fires, and pass through more gloves, than the coating itself, and nobody at the part has their sheet.
Passes
    jobs.refit.consumption.supplies: [{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225, H336], safety_data_sheet: {number: SDS-7, revision: 2, date: 2026-01-31}}]

    Given second good
    jobs.lids.consumption.supplies: [{id: wipe, what: degreaser, amount: 1 gal, kind: cleaner, statements: [H225], gloves: nitrile 0.4 mm for splashes; no latex, safety_data_sheet: {number: SDS-7}}, {id: thin, what: thinner SA-900, amount: 1 gal, kind: thinner, statements: [H226], safety_data_sheet: {number: SDS-9}}]
Fails
    jobs.refit.consumption.supplies: [{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, gloves: latex}]    # at jobs.refit.consumption.supplies.wipe.safety_data_sheet    # at jobs.refit.consumption.supplies.wipe.statements    # at jobs.refit.consumption.supplies.wipe.gloves

    jobs.refit.consumption.supplies: [{id: discs, what: P320 discs, amount: "20", kind: abrasive}]    # note at jobs.refit.consumption.supplies
    systems.chassis.layers.barrier.thinner: 0 %

    Given second good
    jobs.rails.consumption.supplies: [{id: wipe, what: degreaser, amount: 1 gal, kind: cleaner, statements: [H225, H999], safety_data_sheet: {number: SDS-7}}]    # at jobs.rails.consumption.supplies    # at jobs.rails.consumption.supplies.wipe.statements
To put right
    List the thinner and the cleaner with kind, hazard statements and safety data sheet, as their supplier states them.
"""

import re

from specgen.facts.job.chemicals import chemicals
from specgen.model.job import SupplyKind
from specgen.model.preparation import StepKind
from specgen.rules.kit import NOTE, WARNING, Basis, Job, Problem, Problems, Spec, cite, date, rule, table

_UNFIT = re.compile(r"\b(?:latex|natural rubber|vinyl)\b", re.I)
_RULED_OUT = re.compile(r"\b(?:no|not|never)\b", re.I)


@rule("HAZ043", on=Job, severity=WARNING, source=cite("REACH", "Art. 31", Basis.REGULATION))
def chemicals_declared(job: Job, spec: Spec, on: date) -> Problems:
    supplies = job.consumption.supplies if job.consumption is not None else ()
    if not supplies:
        return
    at = ("consumption", "supplies")
    known = {row["id"] for row in table("h_statements").rows}
    for entry in chemicals(job):
        if entry.safety_data_sheet is None:
            yield Problem((*at, entry.id, "safety_data_sheet"), f"{entry.what} names no safety data sheet")
        if not entry.statements:
            yield Problem((*at, entry.id, "statements"), f"{entry.what} states no hazard statements")
        unknown = [code for code in entry.statements if code not in known]
        if unknown:
            yield Problem(
                (*at, entry.id, "statements"), f"{entry.what}: unknown hazard statements: {', '.join(unknown)}"
            )
        gloves = re.split(r"[;,.]", entry.gloves or "")
        if any(_UNFIT.search(part) and not _RULED_OUT.search(part) for part in gloves):
            what = f"gloves for {entry.what}: {entry.gloves}; solvents pass through these within minutes"
            yield Problem((*at, entry.id, "gloves"), what)
    kinds = {entry.kind for entry in supplies}
    layers = [layer for system in spec.systems_of(job) for layer in system.layers]
    thinned = any(layer.thinner is not None and layer.thinner.base > 0 for layer in layers)
    if thinned and SupplyKind.THINNER not in kinds:
        yield Problem(at, f"{job.id} thins a coat, and no thinner is among its supplies")
    used = [spec.preparation_of(job, item) for item in job.items]
    degreased = any(step.do is StepKind.DEGREASE for found in used if found is not None for step in found.steps)
    if degreased and SupplyKind.CLEANER not in kinds:
        what = f"{job.id} degreases its parts, and no cleaner is among its supplies"
        yield Problem(at, what, severity=NOTE)

"""AIR009 Dust of lead paint is drawn off or enclosed

Checks
    Each job in which an existing coat that contains lead is blasted, abraded or worked with tools: the job states its ventilation, or a step, the scope or an inspection point speaks of an enclosure, extraction, vacuum tools or wet work.
Why
    Whoever breathes the dust of lead paint is poisoned over weeks without noticing, and it reaches everyone around an open blasting place.
Passes
    Given second good
    jobs.rails.items.LOCKER.old_coats.works.lead: yes
    jobs.rails.inspection.lead: {id: lead, check: Lead in the existing coat, at: receipt, criterion: {text: results on file}, hold_point: yes}
    preparations.abrade.steps.sand.text: Sand with vacuum extraction to an even matt face.

    Given second good
    jobs.rails.items.LOCKER.old_coats.works.lead: yes
    jobs.rails.inspection.lead: {id: lead, check: Lead in the existing coat, at: receipt, criterion: {text: results on file}, hold_point: yes}
    jobs.rails.ventilation: {statement: Fan-drawn enclosure with filters; air-fed masks inside.}
Fails
    Given second good
    jobs.rails.items.LOCKER.old_coats.works.lead: yes
    jobs.rails.inspection.lead: {id: lead, check: Lead in the existing coat, at: receipt, criterion: {text: results on file}, hold_point: yes}    # at jobs.rails.ventilation
    jobs.rails.inspection.face.method: wet film comb

    Given second good
    jobs.rails.items.LOCKER.old_coats.works.lead: yes
    jobs.rails.inspection.lead: {id: lead, check: Lead in the existing coat, at: receipt, criterion: {text: results on file}, hold_point: yes}    # at jobs.rails.ventilation
To put right
    State the enclosure with its air flow, or vacuum-shrouded tools, and the respiratory protection worn.
"""

import re

from specgen.facts.job.air_wording import states_air
from specgen.facts.job.looked_for import words_of
from specgen.facts.job.old_paint import disturbs, old_coats_of
from specgen.rules.kit import WARNING, Basis, Job, Problem, Problems, Spec, cite, date, rule

_HELD = re.compile(
    r"\b(?:enclos|contain(?:ment|ed in)|extract|vacuum|shroud|wet(?![ -]?film)|sealed tent|sheeted)", re.I
)


@rule("AIR009", on=Job, severity=WARNING, source=cite("29-CFR-1926-62", "", Basis.MEMORY))
def lead_dust_held(job: Job, spec: Spec, on: date) -> Problems:
    if states_air(job) or any(_HELD.search(text) for text in (job.scope, *map(words_of, job.inspection))):
        return
    for item in job.items:
        preparation = spec.preparation_of(job, item)
        if preparation is None or not disturbs(preparation):
            continue
        coat = next((coat for coat, _ in old_coats_of(job, item, spec) if coat.lead), None)
        if coat is not None and not any(_HELD.search(step.text) for step in preparation.steps):
            what = f"{item.id}: the existing coat {coat.id} contains lead and is worked to dust; no ventilation or enclosure is stated"
            yield Problem(("ventilation",), what)
            return

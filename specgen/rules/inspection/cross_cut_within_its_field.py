"""INS024 A cross-cut is made on films it is meant for

Checks
    Each inspection point whose words call for a cross-cut to ISO 2409: the nominal DFT of all coats of the items it looks at is within the table test_fields. An X-cut, a cross-cut to another standard, and a pull-off test are not judged.
Why
    In a thick film the blade does not reach the metal in one cut and tears the edges: a sound coating is refused, and a poor one cannot be told from it.
Passes
    jobs.refit.inspection.holds: {id: holds, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409", frequency: one part, criterion: {text: Class 1 or better.}, if_failed: Ask.}

    jobs.refit.inspection.holds: {id: holds, check: Adhesion, at: completion, items: [STEP], method: "X-cut, ISO 16276-2", frequency: one part, criterion: {text: Level 2 or better.}, if_failed: Ask.}
    products.barrier.film: {min: 200 um, nominal: 260 um, max: 320 um, max_single_coat: 320 um}
    systems.chassis.layers.barrier.film: {min: 200 um, nominal: 260 um, max: 320 um}
Fails
    jobs.refit.inspection.holds: {id: holds, check: Adhesion, at: completion, items: [STEP], method: "Cross-cut, ISO 2409", frequency: one part, criterion: {text: Class 1 or better.}, if_failed: Ask.}    # at jobs.refit.inspection.holds
    products.barrier.film: {min: 200 um, nominal: 260 um, max: 320 um, max_single_coat: 320 um}
    systems.chassis.layers.barrier.film: {min: 200 um, nominal: 260 um, max: 320 um}
To put right
    Test by X-cut or by pull-off (ISO 16276-2, ISO 4624), or make the cross-cut on a panel with a thinner film.
"""

import re

from specgen.facts.job.looked_for import words_of
from specgen.facts.layer.sums import total_film
from specgen.facts.pairs.overcoat import table_row
from specgen.facts.pairs.parts import parts_of
from specgen.rules.kit import WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table

_CUT = re.compile(r"\bISO 2409\b", re.IGNORECASE)
_OTHER = re.compile(r"X-?cut|16276|D ?3359|4624|panel|plate", re.IGNORECASE)


@rule("INS024", on=Job, severity=WARNING, source=table_row("test_fields", "cross_cut"))
def cross_cut_within_its_field(job: Job, spec: Spec, on: date) -> Problems:
    most = Quantity.of("thickness", int(table("test_fields").row("id", "cross_cut")["most_um"]), "um")
    for point in job.inspection:
        if not _CUT.search(words_of(point)) or _OTHER.search(words_of(point)):
            continue
        looked_at = [part for part in parts_of(job, spec) if not point.items or part.item.id in point.items]
        films = {part.system.id: total_film(part.system, spec, "nominal") for part in looked_at}
        thick = [(key, film) for key, film in films.items() if film is not None and film > most]
        if thick and len(thick) == len(films):
            what = f"{point.id} makes a cross-cut to ISO 2409 on the {thick[0][1]} of {thick[0][0]}; it is meant for at most {most}"
            yield Problem(("inspection", point.id), what)

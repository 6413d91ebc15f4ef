"""Records of a job judged: every item at every inspection point, with reasons, what is missing and what to do.

Limits are those in force, asked of `facts`. What is missing or could not be read leaves an item not decided. Called by the command
`assess` and by documents on what was built.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from specgen.assessing.air import air_read
from specgen.assessing.batches import batches_used, tell_expired, tell_missing
from specgen.assessing.beneath import figures_among, what_is_beneath
from specgen.assessing.cells import Dates
from specgen.assessing.conceded import Grants
from specgen.assessing.concessions_seen import concessions_seen
from specgen.assessing.difference import less_before
from specgen.assessing.faults import Faults
from specgen.assessing.film import lots_at
from specgen.assessing.instruments import unchecked
from specgen.assessing.one_item import Judge
from specgen.assessing.order_of_days import applied, tell_days_to_come, tell_wrong_days
from specgen.assessing.persons_named import tell_people
from specgen.assessing.readings import File
from specgen.assessing.records import Record, columns
from specgen.assessing.releases import tell_releases
from specgen.assessing.repairs import Repairs, deviations, not_read_again
from specgen.assessing.results import Assessment, At
from specgen.assessing.sorting import Sorted
from specgen.assessing.waited import waited
from specgen.assessing.work import work_done
from specgen.facts.job.inspected import film_points, places
from specgen.facts.job.looked_for import CLIMATE, words_of
from specgen.facts.job.points import BEFORE_PAINT, layers_read, principle_of
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.register.people import People


def assess(
    job: Job,
    spec: Spec,
    records: Sequence[Record],
    faults: Faults,
    *,
    day: date,
    files: Iterable[File] = (),
    dates: Dates = Dates.ISO,
    people: People | None = None,
) -> Assessment:
    """The verdict on everything that is inspected."""
    film = {point.id for point in film_points(job) if _is_film(point, job, spec)}
    sorted_ = Sorted(job, spec, film, faults)
    for record in records:
        sorted_.take(record)
    climate = _climate_points(job, film)
    air = tuple(air_read(sorted_.air, job, spec, dates, faults))
    batches = tuple(batches_used(sorted_.batches, job, spec, dates, faults))
    work = tuple(work_done(sorted_.work, dates, faults))
    repairs = Repairs(work, dates)
    standing = {
        point.id: repairs.standing(point, sorted_.with_values(point.id, film=True))
        for point in job.inspection
        if point.id in film
    }
    beneath = what_is_beneath(job, sorted_, faults)
    lots = {
        point.id: lots_at(point, standing[point.id], job, spec, faults, beneath.under[point.id])
        for point in job.inspection
        if point.id in film
    }
    tell_wrong_days(job, sorted_, film, applied(air, batches, work), dates, faults)
    tell_days_to_come(records, day, dates, faults)
    doubted = unchecked(job, sorted_, film, dates, faults)
    tell_missing(job, spec, batches, records, faults)
    tell_expired(batches, work, faults)
    tell_releases(job, work, records, dates, faults)
    tell_people(records, people or People(), dates, faults)
    between = tuple(waited(job, spec, air, batches, work, faults))
    grants = Grants(job, spec, day, dates)
    results: list[At] = []
    for point in job.inspection:
        read, said = (sorted_.with_values(point.id, film=figures) for figures in (True, False))
        who = dict.fromkeys(map(_who, read))
        again = not_read_again(read, standing[point.id]) if point.id in film else {}
        less = less_before(point, lots, film, job, spec) if point.id in film else {}
        held = grants.by_item(standing[point.id]) if point.id in film else {}
        for item, system in places(point, job, spec):
            judge = Judge(point, item, system, held.get(item.id, grants), faults)
            mine = repairs.standing(point, said, item.id)
            if point.id in film:
                by = ", ".join(name for of, name in who if of == item.id and name)
                result = judge.film(
                    lots[point.id],
                    less.get(item.id),
                    mine,
                    by,
                    repaired=again.get(item.id, ()),
                    doubts=doubted.get((point.id, item.id), {}),
                )
            elif point.id in climate:
                result = judge.climate(air, mine, work, batches)
            elif point.id in beneath.zinc:
                result = judge.zinc(beneath.zinc[point.id], mine)
            else:
                # what was read of an existing coating decides nothing by itself
                figures = figures_among(mine) if point.id in beneath.existing else []
                result = judge.looked_at([one for one in mine if one not in figures])
            results.append(result)
    seen = tuple(concessions_seen(results, air, sorted_, film, grants, dates, faults))
    return Assessment(
        job=job,
        day=day,
        files=tuple((file.name, file.digest) for file in files),
        records=tuple(records),
        results=tuple(results),
        lots=tuple(lot for of_point in lots.values() for lot in of_point),
        air=air,
        batches=batches,
        work=work,
        waited=between,
        deviations=tuple(deviations(repairs, results, sorted_, film, beneath.under, job, spec)),
        findings=tuple(faults),
        concessions=seen,
    )


_who = columns("item", "by")


def _is_film(point: InspectionPoint, job: Job, spec: Spec) -> bool:
    """True where figures of dry film decide; a comb, or words alone, leave it to a person."""
    criterion = point.criterion
    figures = (criterion.rule, criterion.min, criterion.nominal, criterion.max)
    counted = criterion.as_specified or any(figure is not None for figure in figures)
    if not counted or principle_of(point) is GaugePrinciple.COMB:
        return False
    return any(layers_read(point, system) for _, system in places(point, job, spec))


def _climate_points(job: Job, film: set[str]) -> set[str]:
    """The points at which air is recorded while work goes on."""
    return {
        point.id
        for point in job.inspection
        if point.id not in film and point.at not in BEFORE_PAINT and CLIMATE.search(words_of(point))
    }

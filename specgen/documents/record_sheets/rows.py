"""The rows of the record sheets of a job, numbered through, and the fields of each. Called by `view`.

What a row is about (point, item, part, spot, coat, product) is printed and stands in hidden fields; the rest is filled in. A row of
the form is a row of the CSV beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from specgen.assessing.forms import aside_name
from specgen.documents.parts.climate import climate
from specgen.documents.parts.coats import coat_name, numbered
from specgen.documents.parts.concessions import concession_cells, concession_heads
from specgen.documents.parts.inspection import passes
from specgen.documents.parts.pictures import marked_pictures
from specgen.documents.parts.wording import Words
from specgen.documents.record_sheets.lines import Rows, SheetLine, SheetTable
from specgen.documents.record_sheets.spots import Spots, named
from specgen.documents.record_sheets.work import acceptance_and_release, looked_at_again, repairs, work_done_on
from specgen.facts.job.builds import builds_of
from specgen.facts.job.by_difference import by_difference
from specgen.facts.job.concessions import concessions_in, in_force
from specgen.facts.job.existing_beneath import measures_existing
from specgen.facts.job.inspected import film_points, numbers_of, places
from specgen.facts.job.looked_for import CLIMATE, words_of
from specgen.facts.job.points import layers_read, principle_of
from specgen.facts.job.zinc_beneath import measures_zinc, zinc_asked
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.model.concession import Concession
from specgen.model.job import Job
from specgen.model.spec import Spec

# as many measurements of the air before one coat, and as many batches of it on one item, as a sheet has boxes for
_AIR, _BATCHES = 3, 2


def tables(job: Job, spec: Spec, rows: Rows, words: Words, day: date) -> Iterator[SheetTable]:
    """What is conceded on the day, air, work, batches, what is looked at, the readings of each film point, repairs and release."""
    if held := [one for one in concessions_in(job, spec) if in_force(one, day)]:
        yield _conceded(held, job, spec, words)
    film = [point for point in film_points(job) if _is_film(point, job, spec)]
    air = next((one for one in job.inspection if one not in film and CLIMATE.search(words_of(one))), None)
    yield _air(air, job, spec, rows, words)
    yield work_done_on(job, spec, rows, words)
    yield _batches(job, spec, rows, words)
    zinc = [point for point in job.inspection if measures_zinc(point, job)]
    by_figures = [
        *(one for one in zinc if zinc_asked(one)),
        *(one for one in film if not _in_words(one, film, job, spec)),
    ]
    looked_at = [one for one in job.inspection if one is not air and one not in by_figures]
    if looked_at:
        yield _results(looked_at, job, spec, rows, words)
    shown: set[str] = set()
    existing = [point for point in job.inspection if measures_existing(point, job)]
    sheet = Spots(job, spec, rows, words)
    for point in (*zinc, *existing, *film):
        pictures = tuple(one for one in marked_pictures([point], job, spec, words) if one.number not in shown)
        shown |= {one.number for one in pictures}
        yield from sheet.readings(point, pictures)
    inspected = [one for one in job.inspection if one is not air and one not in zinc]
    yield repairs(inspected, film, job, rows, words)
    if looked_at:
        yield looked_at_again(looked_at, job, rows, words)
    yield acceptance_and_release(job, rows, words)


def _in_words(point: InspectionPoint, film: Sequence[InspectionPoint], job: Job, spec: Spec) -> bool:
    """True where the criterion says in words what no reading answers: a difference follows from the readings themselves."""
    read = {one.id for one in film}
    found = (by_difference(point, item, system, job, spec, read) for item, system in places(point, job, spec))
    return point.criterion.text is not None and any(one is None for one in found)


def _is_film(point: InspectionPoint, job: Job, spec: Spec) -> bool:
    """True for a dry film; a wet one is read while it is sprayed."""
    return principle_of(point) is not GaugePrinciple.COMB and any(
        layers_read(point, system) for _, system in places(point, job, spec)
    )


def _coats(job: Job, spec: Spec, words: Words) -> Iterator[tuple[str, str]]:
    """(id of the coat, its name), each coat of the job once; of several systems with the letters of those that have it."""
    listed = builds_of(job, spec)
    letters: dict[tuple[str, str], dict[str, list[str]]] = {}
    for build in listed:
        for number, layer in numbered(build.system):
            names = letters.setdefault((layer.id, spec.product_of(layer).id), {})
            names.setdefault(coat_name(number, layer, words), []).append(build.letter)
    for (coat, _), names in letters.items():
        said = (words("{systems}: {coat}").format(systems=", ".join(of), coat=name) for name, of in names.items())
        yield coat, "; ".join(said) if len(listed) > 1 else next(iter(names))


def _conceded(held: Sequence[Concession], job: Job, spec: Spec, words: Words) -> SheetTable:
    """Printed alone: nothing of it is filled in."""
    return SheetTable(
        title=words("Concessions in force"),
        note=words(
            "Enter readings and results as they are. Where words are met under a concession alone, write: conforming under, and its name."
        ),
        heads=concession_heads(words),
        widths=("w-12", "w-15", "w-12", "w-12", "w-15"),
        shared=(),
        lines=tuple(SheetLine(printed=concession_cells(one, job, spec, words), fields=()) for one in held),
    )


def _air(point: InspectionPoint | None, job: Job, spec: Spec, rows: Rows, words: Words) -> SheetTable:
    lines = []
    for coat, name in _coats(job, spec, words):
        for _ in range(_AIR):
            number = rows.enter(point=point.id if point is not None else "", coat=coat)
            *before, by = rows.fields(number, "on", "air", "humidity", "surface", "dew_point", "by")
            lines.append(SheetLine(printed=(name,), fields=(*before, aside_name("margin", number), by)))
    stated = "; ".join(f"{name} {limit}" for name, limit in climate(job.climate, words))
    return SheetTable(
        title=words("Ambient conditions before each coat"),
        widths=("w-15",),
        note=stated,
        heads=(
            words("System: coat") if len(builds_of(job, spec)) > 1 else words("Coat"),
            words("Date, time"),
            words("Air, °C"),
            words("Humidity, %"),
            words("Surface, °C"),
            words("Dew point, °C"),
            words("Surface above dew point, K"),
            words("By"),
        ),
        shared=(),
        lines=tuple(lines),
    )


def _batches(job: Job, spec: Spec, rows: Rows, words: Words) -> SheetTable:
    lines = []
    for build in builds_of(job, spec):
        for item in build.items:
            system = spec.system_of(job, item) or build.system
            for number_of_coat, layer in numbered(system):
                product = spec.product_of(layer)
                for _ in range(_BATCHES):
                    number = rows.enter(item=item.id, coat=layer.id, product=product.id)
                    printed = (item.id, coat_name(number_of_coat, layer, words), product.name)
                    lines.append(
                        SheetLine(printed=printed, fields=rows.fields(number, "batch", "expires", "cans", "on", "by"))
                    )
    return SheetTable(
        title=words("Batches applied"),
        widths=("w-12", "w-12", "w-25"),
        note=words(
            "Every batch of every product, with its expiry date and the packs used; leave lines empty that are not needed."
        ),
        heads=(
            words("Item"),
            words("Coat"),
            words("Product"),
            words("Batch number"),
            words("Expiry date"),
            words("Packs used"),
            words("Date, time"),
            words("By"),
        ),
        shared=(),
        lines=tuple(lines),
    )


def _results(points: Sequence[InspectionPoint], job: Job, spec: Spec, rows: Rows, words: Words) -> SheetTable:
    numbers, lines = numbers_of(job), []
    for point in points:
        for item, _ in places(point, job, spec):
            number = rows.enter(point=point.id, item=item.id)
            printed = (
                named(point, numbers[point.id], words),
                item.id,
                point.criterion.text or passes(point, job, spec, words.with_one_film()),
            )
            lines.append(SheetLine(printed=printed, fields=rows.fields(number, "value", "on", "by")))
    return SheetTable(
        title=words("Results"),
        widths=("w-20", "w-12", "w-30"),
        note=words("Write conforming or not conforming, or the value with its unit."),
        heads=(
            words("Inspection"),
            words("Item"),
            words("Acceptance criterion"),
            words("Result"),
            words("Date, time"),
            words("By"),
        ),
        shared=(),
        lines=tuple(lines),
    )

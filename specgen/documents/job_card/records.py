"""The back of a job card: a box for everything the plan demands to be written down of one build.

Every reading of each film point with the mean of its spot, the batch number and expiry of each can, the climate with the dew
point before each coat, gauge and zero check, signatures. The result of an inspection is written in front, where it stands in the
work. Called by `job_card`.

Readings and packs are planned for the whole job; a card of several builds or vehicles has boxes for its share, rounded up.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from specgen.documents.parts.climate import climate
from specgen.documents.parts.coats import coats
from specgen.documents.parts.inspection import accepted, limits, method_of, run_on
from specgen.documents.parts.pictures import PictureView, marked_pictures
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import Build
from specgen.facts.job.inspected import film_points, numbers_of, points_on
from specgen.facts.job.points import principle_of
from specgen.facts.job.quantities import LayerKey, Quantities, ordered_as
from specgen.facts.job.spots import planned, spots_of_parts
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.model.job import Job
from specgen.model.product import CuringKind
from specgen.model.spec import Spec

Pairs = tuple[tuple[str, str], ...]

# As many boxes as stand together at one spot, as many units of width as are wide enough to write in (a box has one, the number of a
# spot one, its part two), and as many spots and packs as a card has boxes for.
_TOGETHER, _WIDTH, _MOST_SPOTS, _MOST_PACKS = 12, 30, 400, 120
_PART_AND_SPOT = 3
_PACKS_IN_A_ROW, _FEW_PACKS = 15, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class FilmPoint:
    """A film point over its columns: number in the plan, what is read, its limits, and what of its method it alone has.

    The limits are what the counting rule makes of them, which decides over the readings written here.
    """

    number: str
    check: str
    limits: str
    method: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingSheet:
    """Boxes for points that are read at the same number of spots. A row holds one spot or several side by side.

    `rows` are the numbers of the spots, empty where the last column is not full; `per_spot` boxes are followed by one for the
    mean, if there are several. `shared` is what of the method all points have, `planned` how much the plan asks for, and what of
    it stands here.
    """

    points: tuple[FilmPoint, ...]
    per_spot: int
    rows: tuple[tuple[str, ...], ...]
    shared: str
    planned: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchSheet:
    """A box for each pack of a coat, in rows, to hold the letter of its batch; `more` says where there are too many for boxes. Of
    `few` packs, 0 where they are more, each has its batch number written down by itself.

    `packs` names them, those of base and of hardener apart: each has its batches.
    """

    coat: str
    packs: str
    few: int
    rows: tuple[tuple[str, ...], ...]
    more: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Records:
    climate: Pairs
    coats: tuple[str, ...]
    sketches: tuple[PictureView, ...]
    readings: tuple[ReadingSheet, ...]
    gauges: Pairs
    batches: tuple[BatchSheet, ...]


def records(build: Build, job: Job, spec: Spec, figures: Quantities, words: Words) -> Records:
    """The back of one build."""
    own = points_on(build.items, job, spec)
    numbers = numbers_of(job)
    films = points_read(own, job)
    stated = dict(climate(job.climate, words.in_one_unit()))
    names = (
        words("Air temperature"),
        words("Surface temperature"),
        words("Relative humidity"),
        words("Dew point"),
        words("Surface above dew point"),
    )
    return Records(
        climate=tuple((name, stated.get(name, "")) for name in names),
        coats=tuple(coat.name for coat in coats(build.painted, spec, figures, words)),
        sketches=marked_pictures(own, job, spec, words),
        readings=tuple(_sheets(films, numbers, build, job, spec, words)),
        gauges=tuple(_gauges(films, numbers, words)),
        batches=tuple(_batches(build, job, spec, figures, words)),
    )


def points_read(own: Sequence[InspectionPoint], job: Job) -> list[InspectionPoint]:
    """Those of `own` whose readings are written down here: dry films; a wet one is read while it is sprayed."""
    return [point for point in film_points(job) if point in own and principle_of(point) is not GaugePrinciple.COMB]


def _sheets(
    films: Sequence[InspectionPoint], numbers: Mapping[str, str], build: Build, job: Job, spec: Spec, words: Words
) -> Iterator[ReadingSheet]:
    alike: dict[tuple[int, int, bool], list[InspectionPoint]] = {}
    for point in films:
        alike.setdefault(planned(point, job, spec), []).append(point)
    for (spots, per_spot, stated), points in alike.items():
        boxes = per_spot + (per_spot > 1)
        together = max(1, _TOGETHER // boxes)
        for start in range(0, len(points), together):
            some = points[start : start + together]
            share = max(_share(point, spots, build, job, spec) for point in some)
            beside = max(1, min(_WIDTH // (_PART_AND_SPOT + boxes * len(some)), ceil(share / 3)))
            here = share if share <= _MOST_SPOTS else 0
            methods = [method_of(point, words).split("\n") for point in some]
            shared = [said for said in methods[0] if said and all(said in method for method in methods[1:])]
            yield ReadingSheet(
                points=tuple(
                    _film(point, [said for said in method if said not in shared], job, spec, numbers, words)
                    for point, method in zip(some, methods, strict=True)
                ),
                per_spot=per_spot,
                rows=_columns([str(number) for number in range(1, here + 1)], beside),
                shared=run_on("\n".join(shared)),
                planned=_said(spots, per_spot, share, words) if stated else words("number of readings not stated"),
            )


def _said(spots: int, per_spot: int, share: int, words: Words) -> str:
    """`28 spots, 3 readings each`, with what is told where a card holds only a share, or none."""
    said = words("spots: {spots}, readings at each: {per_spot}").format(spots=spots, per_spot=per_spot)
    if share > _MOST_SPOTS:
        return words("{planned}; record every reading with the gauge and attach the list").format(planned=said)
    if share < spots:
        return words("{planned}, in the whole job; on this card: {share}").format(planned=said, share=share)
    return said


def _film(
    point: InspectionPoint, method: Sequence[str], job: Job, spec: Spec, numbers: Mapping[str, str], words: Words
) -> FilmPoint:
    return FilmPoint(
        number=numbers[point.id],
        check=point.check,
        limits=accepted(point, job, spec, words.with_one_film())
        or limits(point, job, spec, words.with_one_film())
        or (point.criterion.text or "").rstrip("."),
        method=run_on("\n".join(part for part in method if part)),
    )


def _share(point: InspectionPoint, spots: int, build: Build, job: Job, spec: Spec) -> int:
    """The spots on the parts of this build and of one vehicle, rounded up."""
    mine = {item.id for item in build.items}
    parts = spots_of_parts(point, job, spec)
    whole = sum(len(part.spots) for part in parts) or 1
    here = sum(len(part.spots) for part in parts if part.item.id in mine) or whole
    return max(1, ceil(spots * here / whole / max(1, len(job.vehicles))))


def _gauges(films: Sequence[InspectionPoint], numbers: Mapping[str, str], words: Words) -> Iterator[tuple[str, str]]:
    """(what it measures, what it is zeroed on), a line for each kind of gauge."""
    alike: dict[str, list[str]] = {}
    for point in films:
        gauge = point.gauge
        kind = words.word(gauge.principle) if gauge is not None and gauge.principle is not None else ""
        zero = words.word(gauge.zeroed_on) if gauge is not None and gauge.zeroed_on is not None else ""
        said = words("zeroed on {}").format(zero) if zero else ""
        alike.setdefault(", ".join(part for part in (kind, said) if part), []).append(numbers[point.id])
    for said, points in alike.items():
        named = words("DFT gauge, inspections {}") if len(points) > 1 else words("DFT gauge, inspection {}")
        yield named.format(", ".join(points)), said
    yield words("Thermometer, hygrometer"), ""


def _batches(build: Build, job: Job, spec: Spec, figures: Quantities, words: Words) -> Iterator[BatchSheet]:
    listed = coats(build.painted, spec, figures, words)
    colours = (
        (coat, layer, *colour)
        for at, (coat, layer) in enumerate(zip(listed, build.system.layers, strict=True))
        for colour in _by_colour(build, at)
    )
    for coat, layer, named, keys in colours:
        needed = figures.packs_together(keys, ordered_as(layer))
        packs = int(needed.rounded) if needed is not None else None
        share = ceil(packs / max(1, len(job.vehicles))) if packs is not None else _PACKS_IN_A_ROW
        product = spec.product_of(layer)
        mixed = product.curing is CuringKind.LIQUID_TWO_PACK
        many = share > _MOST_PACKS
        for kind in (words("base"), words("hardener")) if mixed else (words.word(product.pack.form),):
            yield BatchSheet(
                coat=coat.name + named,
                packs=kind,
                few=share if share <= _FEW_PACKS else 0,
                rows=()
                if many or share <= _FEW_PACKS
                else _rows([str(number) for number in range(1, share + 1)], _PACKS_IN_A_ROW),
                more=words("{} packs: attach a list with batch number and expiry date of each.").format(share)
                if many
                else ("" if packs is not None else words("number of packs not known")),
            )


def _by_colour(build: Build, at: int) -> Iterator[tuple[str, list[LayerKey]]]:
    """The items of each variant of one coat, to be named where there are several, with the coats of the systems that have it."""
    held: dict[str | None, list[LayerKey]] = {}
    named: dict[str | None, list[str]] = {}
    for system, items in build.painted:
        layer = system.layers[at]
        held.setdefault(layer.variant, []).append((system.id, layer.id))
        named.setdefault(layer.variant, []).extend(item.id for item in items)
    for variant, keys in held.items():
        yield (f" ({', '.join(named[variant])})" if len(held) > 1 else ""), keys


def _rows(listed: Sequence[str], beside: int) -> tuple[tuple[str, ...], ...]:
    """The entries in rows, the last one filled up with empty ones."""
    return tuple(
        tuple(listed[start : start + beside]) + ("",) * (beside - len(listed[start : start + beside]))
        for start in range(0, len(listed), beside)
    )


def _columns(listed: Sequence[str], beside: int) -> tuple[tuple[str, ...], ...]:
    """The entries counted down the columns, so that each half of a table runs on by itself."""
    high = ceil(len(listed) / beside)
    filled = [*listed, *("" for _ in range(high * beside - len(listed)))]
    return tuple(tuple(filled[row + high * column] for column in range(beside)) for row in range(high))

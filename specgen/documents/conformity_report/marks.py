"""Spots that are marked on the author's drawings: what was read at each mark, point by point. Called by `view`."""

from __future__ import annotations

from dataclasses import dataclass, replace

from specgen.assessing.results import Assessment
from specgen.assessing.wording import film_in_column
from specgen.documents.parts.pictures import PictureView, marked_pictures
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.job.pictures import marks_of
from specgen.model.spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksView:
    """The drawings with marks, and a row for each mark of each part."""

    pictures: tuple[PictureView, ...]
    read: TableView


def marks_view(found: Assessment, spec: Spec, words: Words) -> MarksView:
    """Without rows where no spot that was read is marked: a spot is found by the letter of its mark."""
    there = marks_of(found.job, spec)
    points = list({lot.point.id: lot.point for lot in found.lots if lot.point.marked and lot.area.count}.values())
    letters = [mark.letter for point in points for name in point.marked for _, mark in there.get(name, ())]
    shown: dict[tuple[str, str, str], dict[str, str]] = {}
    for lot in found.lots:
        for spot, (_, mean) in zip(lot.spots, lot.area.means, strict=True):
            if spot.spot in letters and lot.point in points:
                place = (spot.item, spot.part, spot.spot)
                shown.setdefault(place, {})[lot.point.id] = film_in_column(mean, lot.unit)
    columns = [
        Column(words("Part and mark"), "w-20"),
        *(Column(point.check, numeric=True) for point in points),
    ]
    rows = [
        (" ".join(text for text in place if text), *(by_point.get(point.id, "") for point in points))
        for place, by_point in shown.items()
    ]
    pictures = tuple(replace(picture, legend=()) for picture in marked_pictures(points, found.job, spec, words))
    return MarksView(
        pictures=pictures if rows else (),
        read=table_view(words("Spot measurements at the marks"), columns, rows),
    )

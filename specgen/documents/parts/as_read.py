"""What was read on an item at an inspection point, in a line: film by its lots, other results as they were entered.

Called by `assessed`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping

from specgen.assessing.cells import verdict_of
from specgen.assessing.records import columns
from specgen.assessing.results import Assessment, At
from specgen.assessing.wording import film_text
from specgen.documents.parts.wording import Words

Entered = Mapping[tuple[str, str], list[str]]
_MOST = 8
_cells = columns("point", "item", "value", "test")


def entered(found: Assessment) -> Entered:
    """Figures and classes by point and item, as they were entered; words that decide are left out, and film, which has its lots."""
    film = {lot.point.id for lot in found.lots}
    texts: defaultdict[tuple[str, str], list[str]] = defaultdict(list)
    for record in found.records:
        point, item, value, test = _cells(record)
        if not value or not point or point in film or verdict_of(value) is not None:
            continue
        unit = record.unit_text("value")
        figure = f"{value}\N{NO-BREAK SPACE}{unit}" if unit and value[-1:].isdigit() else value
        texts[point, item].append(f"{test} {figure}" if test else figure)
    return texts


def as_read(at: At, texts: Entered, words: Words) -> str:
    """Empty where nothing but words was entered."""
    return "\n".join((*_film(at, words), *_others(at, texts, words)))


def _film(at: At, words: Words) -> Iterator[str]:
    for lot in at.lots:
        mine = [spot for spot in lot.spots if spot.item == at.item.id]
        if not mine:
            continue
        low, high = (film_text(film, lot.unit) for film in lot.area.ends({spot.name for spot in mine}))
        text = words("{low} to {high}; spots {spots}, readings {count}")
        yield text.format(low=low, high=high, spots=len(mine), count=sum(len(spot.readings) for spot in mine))


def _others(at: At, texts: Entered, words: Words) -> Iterator[str]:
    read = [*texts.get((at.point.id, at.item.id), ()), *texts.get((at.point.id, ""), ())]
    if not read:
        return
    shown = ", ".join(read[:_MOST])
    more = len(read) - _MOST
    yield words("{shown} and {more} more").format(shown=shown, more=more) if more > 0 else shown

"""What was read on an item at an inspection point, in two lines: film by its lots, other results as they were entered.

Called by `assessed` and `instruments`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping

from specgen.assessing.cells import CellError, number_of, verdict_of
from specgen.assessing.records import columns
from specgen.assessing.results import Assessment, At
from specgen.assessing.wording import film_text
from specgen.documents.parts.wording import Words
from specgen.units.display import unit_sign
from specgen.units.kinds import UNITS

Entered = Mapping[tuple[str, str], list[str]]
_MOST = 8
_cells = columns("point", "item", "value", "test")


def entered(found: Assessment, words: Words) -> Entered:
    """Figures and classes by point and item, as they were entered; words that decide are left out, and film, which has its lots."""
    film = {lot.point.id for lot in found.lots}
    texts: defaultdict[tuple[str, str], list[str]] = defaultdict(list)
    for record in found.records:
        point, item, value, test = _cells(record)
        if not value or not point or point in film or verdict_of(value) is not None:
            continue
        figure = with_unit(value, record.unit_text("value"), words)
        texts[point, item].append(f"{test} {figure}" if test else figure)
    return texts


def with_unit(text: str, unit: str, words: Words) -> str:
    """A figure of a cell with the unit it is in, and with the decimal sign and minus of the page; any other text as it was entered."""
    try:
        _, digits, own = number_of(text)
    except CellError:
        return text
    if own and own not in UNITS:  # a class, as 4B or 0(S0), is no figure with a unit
        return text
    written = own or unit
    figure = words.figures(digits.replace("-", "\N{MINUS SIGN}"))
    return f"{figure}\N{NO-BREAK SPACE}{unit_sign(written) if written in UNITS else written}" if written else figure


def as_read(at: At, texts: Entered, words: Words) -> str:
    """Empty where nothing but words was entered."""
    return "\n".join((*_film(at, words), *_others(at, texts, words)))


def _film(at: At, words: Words) -> Iterator[str]:
    for lot in at.lots:
        mine = [spot for spot in lot.spots if spot.item == at.item.id]
        if not mine:
            continue
        low, high = (film_text(film, lot.unit) for film in lot.area.ends({spot.name for spot in mine}))
        yield words("{low} to {high}").format(low=low.partition("\N{NO-BREAK SPACE}")[0], high=high)
        text = words("spots\N{NO-BREAK SPACE}{spots}, readings\N{NO-BREAK SPACE}{count}")
        yield text.format(spots=len(mine), count=sum(len(spot.readings) for spot in mine))


def _others(at: At, texts: Entered, words: Words) -> Iterator[str]:
    read = [*texts.get((at.point.id, at.item.id), ()), *texts.get((at.point.id, ""), ())]
    if not read:
        return
    shown = ", ".join(read[:_MOST])
    more = len(read) - _MOST
    yield words("{shown} and {more} more").format(shown=shown, more=more) if more > 0 else shown

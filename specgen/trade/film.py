"""Wet film and dry film: what the comb must show, what is left when it has dried, and what sanding takes off again.

Shares are in percent. Thinner is counted by volume on the paint as supplied, ready mixed: 10 % is one litre in ten.
Called by the data sheet and the work instruction, and by the rules on film.
"""

from __future__ import annotations

from collections.abc import Sequence

from specgen.standards.citations import LOGIC, cite
from specgen.trade.given import Source, take
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_, phrase

PERCENT = N_("100: shares are in percent")
ON_AREA = N_("1 mL on 1 m² is 1 µm")

_WET_DRY = cite("MIL-HDBK-1110", "procedures 12 to 14")
_THINNED = cite("PAINT-SCHOOL-SLIDES", "wet film of thinned paint")

# A comb steps in whole micrometres; a figure in mils is given to hundredths.
_FILM_PLACES = {"um": 0, "mil": 2}


def wet_film(id: str, film: Source, volume_solids: Source, thinner: Source | None = None, unit: str = "um") -> Working:
    """The wet film that dries to `film`, in um or mil. Use the volume solids of what lies on the surface: without
    propellant.

    Raises WorkingError where the volume solids are zero. Source: MIL-HDBK-1110; with thinner, paint-school slides.
    """
    dry = take("DFT", "dry film thickness", film, "thickness", unit)
    solids = _solids(volume_solids)
    name = N_("wet film thickness")
    inputs: tuple[Input, ...] = (dry, solids)
    formula, source = "DFT * 100 / VS", _WET_DRY
    if thinner is not None:
        formula, inputs, source = "DFT * (100 + t) / VS", (dry, _thinner(thinner), solids), _THINNED
    places = _FILM_PLACES[unit]
    return work(id, name, formula, inputs, kind="thickness", unit=unit, places=places, source=source, note=PERCENT)


def dry_film(id: str, wet: Source, volume_solids: Source, thinner: Source | None = None, unit: str = "um") -> Working:
    """The dry film that a wet film leaves, in um or mil. Source: MIL-HDBK-1110; with thinner, paint-school slides."""
    return _dry_film(id, "dry film thickness", "wet film thickness", wet, volume_solids, thinner, unit)


def thinned_volume_solids(id: str, volume_solids: Source, thinner: Source) -> Working:
    """Volume solids after thinning, in percent. Source: paint-school slides.

    Thinning twice: where the second share is counted on the thinned paint, take this working's result again; where
    both are counted on the paint as supplied, take the sum of the two shares.
    """
    inputs = (_solids(volume_solids), _thinner(thinner))
    name, formula = "volume solids after thinning", "VS * 100 / (100 + t)"
    return work(id, name, formula, inputs, kind="share", unit="%", places=1, source=_THINNED, note=PERCENT)


def film_left(id: str, film: Source, removed: Sequence[Source], unit: str = "um") -> Working:
    """The film left, in um or mil, after each sanding or polishing in `removed`; below zero where more is taken off than
    lies there.
    """
    steps = _numbered("R", "DFT removed", removed, unit)
    inputs = (take("DFT", "dry film thickness", film, "thickness", unit), *steps)
    formula, places = " - ".join(entry.symbol for entry in inputs), _FILM_PLACES[unit]
    return work(id, "remaining DFT", formula, inputs, kind="thickness", unit=unit, places=places, source=LOGIC)


def _dry_film(
    id: str, name: str, wet_name: str, wet: Source, volume_solids: Source, thinner: Source | None, unit: str
) -> Working:
    film, solids = take("WFT", wet_name, wet, "thickness", unit), _solids(volume_solids)
    inputs: tuple[Input, ...] = (film, solids)
    formula, source = "WFT * VS / 100", _WET_DRY
    if thinner is not None:
        formula, inputs, source = "WFT * VS / (100 + t)", (film, solids, _thinner(thinner)), _THINNED
    places = _FILM_PLACES[unit]
    return work(id, name, formula, inputs, kind="thickness", unit=unit, places=places, source=source, note=PERCENT)


def _solids(volume_solids: Source) -> Input:
    return take("VS", "volume solids", volume_solids, "share", "%")


def _thinner(thinner: Source) -> Input:
    return take("t", "thinner added, by volume", thinner, "percentage", "%")


def _numbered(symbol: str, name: str, films: Sequence[Source], unit: str) -> tuple[Input, ...]:
    return tuple(
        take(f"{symbol}_{number}", phrase("{name} {number}", name=phrase(name), number=number), film, "thickness", unit)
        for number, film in enumerate(films, start=1)
    )

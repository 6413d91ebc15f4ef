"""USU003 A time changes with the temperature as usual

Checks
    Drying stages, sanding times, overcoating intervals and pot lives that a product states for several temperatures, each against the next warmer one: in warmer air it is no longer, and for each 10 K no more than four times as short.
Why
    Warmth speeds up every way a paint dries and cures, by about two for each 10 K. A time that breaks out of its row has a slip in the figure, the unit or the temperature, and it is the row for the cold day that is then relied on.
Passes
    products.primer.drying.dust-cold: {id: dust-cold, stage: dust-free, time: 80 min, air: 10 degC}

    products.primer.drying.dust-cold: {id: dust-cold, stage: dust-free, time: 20 min, air: 10 degC}

    products.primer.overcoat.any-hot: {id: any-hot, next_coat: any, interval: 10 min..8 h, air: 30 degC}
    systems.cab.layers.primer.overcoat_interval: 30 min..8 h

    products.primer.drying.thin: {id: thin, stage: dust-free, time: 15 min, air: 15 degC, film: 40 um}
    products.primer.drying.thick: {id: thick, stage: dust-free, time: 60 min, air: 25 degC, film: 80 um}
Fails
    products.primer.drying.dust-cold: {id: dust-cold, stage: dust-free, time: 81 min, air: 10 degC}    # at products.primer.drying.dust-cold.time

    products.primer.drying.dust-cold: {id: dust-cold, stage: dust-free, time: 19 min, air: 10 degC}    # at products.primer.drying.dust-cold.time

    products.primer.overcoat.any-hot: {id: any-hot, next_coat: any, interval: 31 min..24 h, air: 30 degC}    # at products.primer.overcoat.any-warm.interval

    products.primer.overcoat.any-hot: {id: any-hot, next_coat: any, interval: 20 min..5 h, air: 30 degC}    # at products.primer.overcoat.any-warm.interval
    systems.cab.layers.primer.overcoat_interval: 30 min..5 h
    products.primer.overcoat.any-warm.air: 20 degC    # also WIN004 at systems.cab.layers.primer.overcoat_interval

    products.primer.sandable_after: [{id: cold, sanding: dry, time: 10 h..12 h, air: 10 degC}, {id: warm, sanding: dry, time: 2 h, air: 20 degC}]    # at products.primer.sandable_after.cold.time

    Given second good
    products.gloss.pot_life.other_temperatures: [{id: hot, time: 20 min, air: 95 degF, volume: 1 gal}]    # at products.gloss.pot_life.time
To put right
    Compare the whole row with the product's own tests, and correct the time, its unit or its temperature.
"""

from collections.abc import Iterator
from itertools import pairwise
from math import ceil

from specgen.facts.usual import proportion
from specgen.rules.kit import PRACTICE, WARNING, Path, Problem, Problems, Product, Quantity, Spec, date, rule
from specgen.units.quantity import lower, upper

# where a time stands, the air it applies to, and the time
_Entry = tuple[Path, Quantity, Quantity]


@rule("USU003", on=Product, severity=WARNING, source=PRACTICE)
def times_follow_temperature(product: Product, spec: Spec, on: date) -> Problems:
    told: set[Path] = set()
    for called, entries in _rows(product):
        row = sorted(entries, key=lambda entry: entry[1])
        for (path, cold, longer), (_, warm, shorter) in pairwise(row):
            if cold == warm or path in told:
                continue
            what = f"{called} is {longer} at {cold} and {shorter} at {warm}"
            if longer < shorter:
                told.add(path)
                yield Problem(path, f"{what}; in warmer air it is no longer")
            elif _falls_too_fast(longer, shorter, cold, warm):
                told.add(path)
                yield Problem(path, f"{what}; at most {_most()} times as long is usual for each {_step()} K")


def _falls_too_fast(longer: Quantity, shorter: Quantity, cold: Quantity, warm: Quantity) -> bool:
    """Exact: the ratio to the tenth power against the factor to the power of the whole kelvins between."""
    kelvins, step = ceil(warm.to("degC") - cold.to("degC")), _step()
    most = _most() ** kelvins * shorter.base**step
    return bool(longer.base**step > most)


def _step() -> int:
    return int(proportion("step"))


def _most() -> int:
    return int(proportion("slower"))


def _rows(product: Product) -> Iterator[tuple[str, list[_Entry]]]:
    """Times of one thing at several temperatures, in one film and humidity."""
    rows: dict[tuple[str, object], list[_Entry]] = {}
    for called, case, entry in _entries(product):
        rows.setdefault((called, case), []).append(entry)
    for (called, _), entries in rows.items():
        yield called, entries


def _entries(product: Product) -> Iterator[tuple[str, object, _Entry]]:
    for stage in product.drying:
        path = ("drying", stage.id, "time")
        yield f"time to {stage.stage}", (stage.film, stage.humidity), (path, lower(stage.air), upper(stage.time))
    for sanded in product.sandable_after:
        path = ("sandable_after", sanded.id, "time")
        case = (sanded.film, sanded.humidity)
        yield f"time before {sanded.sanding} sanding", case, (path, lower(sanded.air), upper(sanded.time))
    for window in product.overcoat:
        path = ("overcoat", window.id, "interval")
        for called, end in (("minimum", window.interval.low), ("maximum", window.interval.high)):
            if end is not None:
                yield f"{called} overcoating interval for {window.next_coat}", None, (path, window.air, end)
    life = product.pot_life
    if life is not None:
        yield "pot life", life.volume, (("pot_life", "time"), lower(life.air), upper(life.time))
        for other in life.other_temperatures:
            at = ("pot_life", "other_temperatures", other.id, "time")
            yield "pot life", other.volume, (at, lower(other.air), upper(other.time))

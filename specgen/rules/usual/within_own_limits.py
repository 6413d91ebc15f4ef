"""USU002 Figures of a product apply to conditions the product allows

Checks
    The air temperature, relative humidity and DFT to which drying stages, sanding times, overcoating intervals and coverage apply, against the application conditions and DFT limits of the same product. Air of forced drying, from 40 degC, is left out where the same figure is stated for cooler air, or the coating is stoved; coverage that excludes losses is a calculation at any DFT.
Why
    A drying time for air or a film in which the product is never applied is of no use in the shop, and is most often a slip in the condition or in the limit.
Passes
    products.primer.drying.dust.air: 30 degC

    products.primer.drying.dust.film: 40 um

    products.primer.drying.forced: {id: forced, stage: dust-free, time: 8 min, air: 60 degC}

    products.base.coverage: [{id: can, area_per_pack: 4 m2, film: 10 um, losses: excluded}]

    products.primer.drying.dust: {id: dust, stage: dust-free, time: max 20 min, air: min 20 degC}

    products.primer.drying.dust: {id: dust, stage: dust-free, time: 20..40 min, air: 5..15 degC}
Fails
    products.primer.drying.dust: {id: dust, stage: dust-free, time: 60 min, air: 2..8 degC}    # at products.primer.drying.dust.air

    products.primer.drying.dust.air: 31 degC    # at products.primer.drying.dust.air

    products.primer.drying.forced: {id: forced, stage: touch-dry, time: 20 min, air: 60 degC}    # at products.primer.drying.forced.air

    products.primer.drying.dust.film: 81 um    # at products.primer.drying.dust.film

    products.base.coverage: [{id: thin, area_per_pack: 1.5 m2, film: 14 um, losses: included}]    # at products.base.coverage.thin.film

    products.primer.drying.touch: {id: touch, stage: touch-dry, time: 30 min, air: 20 degC, humidity: 34 %}    # at products.primer.drying.touch.humidity

    Given second good
    products.mastic.overcoat.any-cool.air: 40 degF    # at products.mastic.overcoat.any-cool.air
To put right
    Correct the condition or the limit from the product's own tests.
"""

from collections.abc import Iterator

from specgen.facts.usual import proportion
from specgen.model.drying import Drying, OvercoatWindow, SandableAfter
from specgen.model.product import Losses
from specgen.rules.kit import LOGIC, WARNING, Path, Problem, Problems, Product, Range, Spec, date, rule, table
from specgen.units.quantity import as_range

_Entry = Drying | SandableAfter | OvercoatWindow


@rule("USU002", on=Product, severity=WARNING, source=LOGIC)
def within_own_limits(product: Product, spec: Spec, on: date) -> Problems:
    climate = product.climate
    film = _film(product)
    for path, entry in _entries(product):
        if climate is not None and climate.air is not None and not _forced(entry, product, climate.air):
            yield from _outside((*path, "air"), "air temperature", as_range(entry.air), climate.air)
        if isinstance(entry, OvercoatWindow):
            continue
        if climate is not None and climate.humidity is not None and entry.humidity is not None:
            yield from _outside((*path, "humidity"), "relative humidity", as_range(entry.humidity), climate.humidity)
        if entry.film is not None and film is not None:
            yield from _outside((*path, "film"), "DFT", as_range(entry.film), film)
    for claim in product.coverage:
        if claim.film is not None and film is not None and claim.losses is not Losses.EXCLUDED:
            yield from _outside(("coverage", claim.id, "film"), "DFT", as_range(claim.film), film)


def _outside(path: Path, called: str, applies: Range, allowed: Range) -> Iterator[Problem]:
    if not allowed.meets(applies):
        low, high = applies.low, applies.high
        value = low if low == high else applies
        yield Problem(path, f"the figure applies to {called} {value}; the product is applied at {allowed}")


def _entries(product: Product) -> Iterator[tuple[Path, _Entry]]:
    yield from ((("drying", entry.id), entry) for entry in product.drying)
    yield from ((("sandable_after", entry.id), entry) for entry in product.sandable_after)
    yield from ((("overcoat", entry.id), entry) for entry in product.overcoat)


def _film(product: Product) -> Range | None:
    """The DFT at which the product is applied: from its minimum to its maximum, or to its maximum in one coat where that is more."""
    highs = [limit for limit in (product.film.max, product.film.max_single_coat) if limit is not None]
    high = max(highs, default=None)
    return Range("thickness", product.film.min, high) if product.film.min is not None or high is not None else None


def _forced(entry: _Entry, product: Product, allowed: Range) -> bool:
    """Drying in an oven or under lamps, of which the same figure is stated for the air of the shop, or a coating that is stoved."""
    if (
        isinstance(entry, OvercoatWindow)
        or (low := as_range(entry.air).low) is None
        or low.to("degC") < proportion("forced")
    ):
        return False
    if table("binder_families").row("id", product.binder)["cure"] == "stoved":
        return True
    cooler = (other for other in (*product.drying, *product.sandable_after) if type(other) is type(entry))
    return any(
        _case(other) == _case(entry) and allowed.holds_all_of(as_range(other.air))
        for other in cooler
        if other is not entry
    )


def _case(entry: Drying | SandableAfter) -> str:
    return entry.stage if isinstance(entry, Drying) else entry.sanding

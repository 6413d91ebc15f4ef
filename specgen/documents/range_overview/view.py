"""All products of a folder side by side on one page, for choosing, by what they are used as.

The template `range_overview/document.html.j2` prints it. How a product cures is a code of the legend. A time to handle under
other conditions than the head of its column names carries its own.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.cautions import emergency
from specgen.documents.parts.packs import pack
from specgen.documents.parts.parties import PartyView, party
from specgen.documents.parts.pot_life import pot_life
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.wording import Words
from specgen.facts.product.handling import handling
from specgen.model.product import CuringKind, Product, Role
from specgen.model.spec import Spec
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

_CODES = {
    CuringKind.LIQUID_TWO_PACK: "2K",
    CuringKind.BLOCKED_AEROSOL: "BH",
    CuringKind.CAPSULE_AEROSOL: "CA",
    CuringKind.MOISTURE: "MC",
    CuringKind.OXIDATIVE: "OX",
    CuringKind.PHYSICAL: "PD",
    CuringKind.STOVED: "ST",
    CuringKind.LIGHT: "UV",
}
# The last role in each group, in the order coats are laid down.
_GROUPS = (
    (Role.PRIMER, N_("Primers")),
    (Role.SEAM_SEALER, N_("Body fillers, surfacers and sealers")),
    (Role.UNDERBODY, N_("Intermediate and underbody coatings")),
    (Role.TANK_LINING, N_("Basecoats, topcoats and linings")),
    (Role.CAVITY_WAX, N_("Clearcoats and other finishes")),
)
_NO_POT_LIFE = "–"

Conditions = tuple[Quantity | Range, Quantity | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class RangeOverview:
    """The whole document. `groups` are (use, how many rows of the table), in its order; `legend` is (code, meaning)."""

    number: str
    title: str
    maker: PartyView
    emergency: str
    on: str
    products: TableView
    groups: tuple[tuple[str, int], ...]
    legend: tuple[tuple[str, str], ...]
    in_brackets: bool
    program: str


def range_overview(spec: Spec, context: Context) -> RangeOverview:
    """The view of a folder that checks without errors."""
    words = context.words
    products = sorted(spec.products.values(), key=_group)
    usual = _usual(products)
    dry = words("Dry to handle")
    if usual is not None:
        under = words.conditions(*usual)
        dry = words("Dry to handle at {}, nominal DFT").format(under)
    columns = (
        Column(words("Product"), "w-20"),
        Column(words("Curing"), "w-5"),
        Column(words("Use as"), "w-8"),
        Column(words("Direct to metal (DTM)"), "w-5"),
        Column(words("DFT min."), "w-8", numeric=True),
        Column(words("DFT nominal"), "w-8", numeric=True),
        Column(words("DFT max."), "w-8", numeric=True),
        Column(dry, "w-7", numeric=True),
        Column(words("Max. continuous service temperature (dry heat)"), "w-8", numeric=True),
        Column(words("Shelf life, unopened"), "w-6", numeric=True),
        Column(words("Pot life"), "w-7"),
        Column(words("Pack")),
    )
    rows = [tuple(text or words("not stated") for text in _row(product, usual, words)) for product in products]
    used = Counter(_group(product) for product in products)
    cured = {product.curing for product in products}
    return RangeOverview(
        number=f"RO-{spec.project.id}",
        title=words("Product range"),
        maker=party(spec.project.maker),
        emergency=emergency(spec.project, words),
        on=context.day.isoformat(),
        products=table_view(words("Product comparison"), columns, rows),
        groups=tuple((words(_GROUPS[group][1]), number) for group, number in sorted(used.items())),
        legend=tuple((code, words.word(kind)) for kind, code in _CODES.items() if kind in cured),
        in_brackets=words.in_brackets,
        program=context.program,
    )


def _group(product: Product) -> int:
    """The group of the first coat it may be."""
    order = list(Role)
    first = min(order.index(role) for role in product.roles)
    return next(at for at, (last, _) in enumerate(_GROUPS) if first <= order.index(last))


def _usual(products: Sequence[Product]) -> Conditions | None:
    """The conditions most times to handle are stated for at the nominal film; None where none is."""
    stated = [(product, handling(product)) for product in products]
    found = Counter(
        (entry.air, entry.humidity) for product, entry in stated if entry and entry.film == product.film.nominal
    )
    return found.most_common(1)[0][0] if found else None


def _row(product: Product, usual: Conditions | None, words: Words) -> Iterator[str]:
    film, stood = product.film, product.service_temperature
    yield product.name
    yield _CODES[product.curing]
    yield ", ".join(words.word(role) for role in product.roles)
    yield words("yes") if product.direct_to_metal else words("no")
    yield from (words.phrase(limit) for limit in (film.min, film.nominal, film.max))
    yield _handling(product, usual, words)
    yield words.phrase(stood.continuous_max) if stood is not None else ""
    yield words.phrase(product.shelf_life)
    yield _usable(product, words)
    packs = dict.fromkeys(pack(product, variant, words) for variant in product.variants)
    yield ", ".join(packs)


def _usable(product: Product, words: Words) -> str:
    """The pot life; of a can with a capsule, how long it may be used once it is activated."""
    if product.pot_life is not None:
        return pot_life(product.pot_life, words)
    stated = product.application
    if stated is not None and stated.activation is not None and stated.activation.usable_for is not None:
        return words("{} after activation").format(words.phrase(stated.activation.usable_for))
    return _NO_POT_LIFE


def _handling(product: Product, usual: Conditions | None, words: Words) -> str:
    """The time to handle nearest to 20 degC, with its conditions where they are not those of the column."""
    first = handling(product)
    if first is None:
        return ""
    if (first.air, first.humidity) == usual and first.film == product.film.nominal:
        return words.phrase(first.time)
    return words.at(first.time, first.air, first.humidity, first.film)

"""What follows from a product for its label, its cautions, its storage and its carriage, each with ground and working.

The declaration of the safety data sheet is never changed by it: rules set the two side by side, documents print the
declared one. Called by the rules on hazards and by the maker's documents.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from specgen.facts.memo import memoised
from specgen.facts.product.harmonised import as_the_law_has_it, reached, with_the_law
from specgen.facts.product.hazard_facts import (
    contents_of,
    declared_classes,
    for_the_public,
    is_known,
    isocyanates_in,
    mixture_facts,
    monomer_at_limit,
    package_of,
    spray_test,
    substances_of,
)
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.standards.tables import table
from specgen.trade.aerosol import aerosol_category
from specgen.trade.hazard_class import Classification, Element
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.labelling import LabelElements, label_elements
from specgen.trade.mixture import Ingredient
from specgen.trade.precautions import Precautions, precautions
from specgen.trade.supplemental import supplemental
from specgen.trade.working import Working
from specgen.units.display import unit_sign
from specgen.units.locale import phrase

WARMEST = "warmest"
"""The row of storage_limits that says how warm a package may be stored."""

_AEROSOLS = "aerosols"
_FLAMMABLE = ("1", "2")


class DerivedHazards(NamedTuple):
    """What follows from composition, tests and declared classes of one product.

    `aerosol` is None for what is no aerosol. `classes` are those the label is derived from: what is declared, with the
    category of an aerosol that follows from its contents in place of the declared one, where it could be judged.
    `mixture` are the classes the composition reaches by the generic limits. `storage` and `carriage` are rows of the
    tables storage_limits and transport_notes that hold for the package.
    """

    product: str
    jurisdictions: tuple[str, ...]
    aerosol: Classified | NotKnown | None
    mixture: tuple[Classified | NotKnown, ...]
    classes: tuple[Classification, ...]
    label: LabelElements | NotKnown
    precautions: Precautions | NotKnown
    supplemental: tuple[Element | NotKnown, ...]
    training: Element | NotKnown | None
    storage: tuple[Element, ...]
    carriage: Element | None

    def reasons(self) -> tuple[NotKnown, ...]:
        """Everything that could not be judged, once each."""
        parts = (self.aerosol, *self.mixture, self.label, self.precautions, *self.supplemental, self.training)
        return tuple(dict.fromkeys(part for part in parts if isinstance(part, NotKnown)))

    def workings(self) -> tuple[Working, ...]:
        """The workings behind it, each once. They hold the maker's composition."""
        judged = [part for part in (self.aerosol, *self.mixture) if part is not None]
        return tuple({working.id: working for part in judged for working in part.workings}.values())


def derive(product: Product, jurisdictions: Sequence[str], on: date, *, public: bool = False) -> DerivedHazards:
    """The label, cautions, storage and carriage that follow; `public` where it is supplied to the general public.

    Limits the law gives a substance on the day `on` are used where the law of the EU holds. Sources:
    CLP Annexes I and II, REACH Annex XVII entry 74; each part carries its own.
    """
    aerosol = aerosol_of(product)
    classes = _classes(declared_classes(product), aerosol)
    label = label_of(product, classes)
    wanted: Precautions | NotKnown
    if isinstance(label, NotKnown):
        wanted = NotKnown("precautions", label.why, label.missing, label.workings, label.source)
    else:
        wanted = precautions(classes, package_of(product), public=public)
    european = "EU" in jurisdictions
    substances = with_the_law(product, on) if european else substances_of(product)
    whole = as_the_law_has_it(product, on) if european else substances
    classed = any(entry.classes for entry in substances)
    return DerivedHazards(
        product.id,
        tuple(jurisdictions),
        aerosol,
        reached(f"{product.id}.mixture", substances) if classed else (),
        classes,
        label,
        wanted,
        _supplemental(product, whole, classes, jurisdictions),
        training_of(product, jurisdictions, public=public),
        _storage(product, classes, jurisdictions),
        _carriage(product, classes),
    )


@memoised
def hazards_of(spec: Spec, product_id: str, on: date) -> DerivedHazards:
    """What `derive` says of a product of the specification, for the laws and the users it states; worked out once a day."""
    product = spec.products[product_id]
    return derive(product, spec.project.jurisdictions, on, public=for_the_public(product, spec.project))


def warmest_storage(product: Product, spec: Spec) -> Element | None:
    """The warmest the law lets the package be stored, as a row of storage_limits; None where it says nothing."""
    classes = _classes(declared_classes(product), aerosol_of(product))
    stored = _storage(product, classes, spec.project.jurisdictions)
    return next((element for element in stored if element.code == WARMEST), None)


def aerosol_of(product: Product) -> Classified | NotKnown | None:
    """The category of an aerosol from contents and test; None for what is no aerosol."""
    if package_of(product) != "aerosol":
        return None
    if not product.composition:
        return NotKnown("aerosol category", "the composition is not stated", ("the complete composition by mass",))
    return aerosol_category(f"{product.id}.aerosol", contents_of(product), spray_test(product))


def label_of(product: Product, classes: Sequence[Classification]) -> LabelElements | NotKnown:
    """The label elements of classes on this package; NotKnown where none is stated."""
    if not classes:
        return NotKnown("label elements", "no hazard class is stated", ("classification",))
    return label_elements(tuple(classes), package_of(product))


def _classes(declared: Sequence[Classification], aerosol: Classified | NotKnown | None) -> tuple[Classification, ...]:
    if not isinstance(aerosol, Classified):
        return tuple(declared)
    others = tuple(found for found in declared if found.hazard_class != _AEROSOLS)
    return (Classification(_AEROSOLS, aerosol.category), *others)


def _supplemental(
    product: Product, substances: Sequence[Ingredient], classes: Sequence[Classification], jurisdictions: Sequence[str]
) -> tuple[Element | NotKnown, ...]:
    facts = mixture_facts(product, substances)
    found = {
        entry.code if isinstance(entry, Element) else entry.what: entry
        for market in jurisdictions
        for entry in supplemental(facts, classes, market)
    }
    return tuple(found[code] for code in sorted(found))


def training_of(product: Product, jurisdictions: Sequence[str], *, public: bool) -> Element | NotKnown | None:
    """The sentence of entry 74: it is asked of what holds the limit or more, and a share not stated counts as that."""
    if "EU" not in jurisdictions or public:
        return None
    contained = isocyanates_in(product)
    if contained is None:
        return NotKnown("training statement", "it is not stated whether it contains isocyanates", ("isocyanates",))
    at_limit = monomer_at_limit(product)
    if not contained or at_limit is False:
        return None
    row = table("isocyanate_duties").row("id", "eu_statement")
    limit = table("isocyanate_duties").row("id", "eu_threshold")
    held = f"{limit['figure']} {limit['unit']} or more of free monomeric diisocyanates"
    reason = held if at_limit else f"the free monomer content is not stated and is taken as {held}"
    return Element("training", (reason,), table("isocyanate_duties").row_citation(row), row["duty"])


def _storage(product: Product, classes: Sequence[Classification], jurisdictions: Sequence[str]) -> tuple[Element, ...]:
    found = _aerosol_class(product, classes)
    if found is None:
        return ()
    wanted = [WARMEST]
    if found.category in _FLAMMABLE:
        # A can whose contents hold a flammable gas or liquid falls under the lower of the two quantities.
        burns = any(content.flammable is not False for content in contents_of(product)) or not product.composition
        wanted.append("seveso_p3a_lower" if burns else "seveso_p3b_lower")
    rows = (table("storage_limits").row("id", id) for id in wanted)
    return tuple(
        Element(
            row["id"],
            (str(found),),
            table("storage_limits").row_citation(row),
            phrase("{what}: {figure}", what=phrase(row["what"]), figure=f"{row['figure']} {unit_sign(row['unit'])}"),
        )
        for row in rows
        if set(row["jurisdiction"].split()) & {*jurisdictions}
    )


def _carriage(product: Product, classes: Sequence[Classification]) -> Element | None:
    found = _aerosol_class(product, classes)
    if found is None:
        return None
    row = table("transport_notes").row("id", "class")
    flammable = found.category in _FLAMMABLE
    code = row["value"] if flammable else row["value"].partition(".")[0] + ".2"
    return Element(code, (str(found),), table("transport_notes").row_citation(row), "dangerous goods class")


def _aerosol_class(product: Product, classes: Sequence[Classification]) -> Classification | None:
    if package_of(product) != "aerosol":
        return None
    return next((found for found in classes if found.hazard_class == _AEROSOLS and is_known(found)), None)

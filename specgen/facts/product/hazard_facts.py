"""What of a product's hazards is stated, and what its binder tells where nothing is stated.

Called by `hazards` and by the rules on hazards. What neither states nor tells is None: not known, never no.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from specgen.facts.pairs.families import binder_family
from specgen.model.hazards import SignalWord, Users
from specgen.model.product import Component, Ingredient, PackForm, Product
from specgen.model.project import Project
from specgen.standards.tables import Row, table
from specgen.trade.aerosol import SprayTest
from specgen.trade.combustion import Content, content_of
from specgen.trade.given import Given
from specgen.trade.hazard_class import Classification, elements_of
from specgen.trade.labelling import Package
from specgen.trade.mixture import Ingredient as Substance
from specgen.trade.mixture import Limit, own_limit
from specgen.trade.physical import physical
from specgen.trade.supplemental import MixtureFacts, Sensitiser
from specgen.units.quantity import Quantity

_TELLS = {"yes": True, "no": False}
_FORM = {Ingredient.SOLIDS: "mist", Ingredient.SOLVENT: "vapour", Ingredient.PROPELLANT: "gas"}
_SENSITISING = frozenset({"skin_sensitisation", "respiratory_sensitisation"})
_TITANIUM_DIOXIDE = "13463-67-7"
_WATER = "7732-18-5"


def package_of(product: Product) -> Package:
    return "aerosol" if product.pack.form is PackForm.AEROSOL else "liquid"


def is_unclassified(product: Product) -> bool:
    """True for a liquid stated as not classified: the signal word none, no class, no H statement. An aerosol always has a class."""
    stated = product.hazards
    if stated is None or package_of(product) == "aerosol":
        return False
    return stated.signal_word is SignalWord.NONE and not stated.classification and not stated.statements


def isocyanates_in(product: Product) -> bool | None:
    """Whether the product holds isocyanate in any form: as stated, else as its binder tells."""
    stated = product.hazards.isocyanates if product.hazards is not None else None
    if stated is not None and stated.contained is not None:
        return stated.contained
    return isocyanate_by_family(product)


def isocyanate_by_family(product: Product) -> bool | None:
    """Whether paints of its binder family hold isocyanate; None where some do, or the family is not named."""
    return _TELLS.get(binder_family(product.binder)["isocyanate"])


def epoxy_in(product: Product) -> bool | None:
    """Whether the product holds epoxy constituents, as its binder tells or its molecular weight being stated."""
    light = product.hazards.epoxy_up_to_700 if product.hazards is not None else None
    if light:
        return True
    of_family = _TELLS.get(binder_family(product.binder)["epoxy"])
    return light if of_family is None else of_family


def monomer_at_limit(product: Product) -> bool | None:
    """Whether free monomeric diisocyanates reach the limit of entry 74; None where neither figure nor answer is given."""
    stated = product.hazards.isocyanates if product.hazards is not None else None
    if stated is None:
        return None
    if stated.monomer is None:
        return stated.monomer_at_limit
    row = table("isocyanate_duties").row("id", "eu_threshold")
    return stated.monomer >= Quantity.of("share", Fraction(row["figure"]), row["unit"])


def for_the_public(product: Product, project: Project) -> bool:
    """True where it is stated that the general public is supplied; not stated counts as professional use."""
    return (product.users or project.users) is Users.PUBLIC


def declared_classes(product: Product) -> tuple[Classification, ...]:
    """The classes of section 2 as declared, those that the tables do not know among them."""
    entries = product.hazards.classification if product.hazards is not None else ()
    return tuple(Classification(e.hazard_class, e.category, e.statement or "") for e in entries)


def known_classes(product: Product) -> tuple[Classification, ...]:
    """The declared classes for which the table of label elements has one row."""
    return tuple(found for found in declared_classes(product) if is_known(found))


def is_known(found: Classification) -> bool:
    try:
        elements_of(found)
    except KeyError:
        return False
    return True


def contents_of(product: Product) -> tuple[Content, ...]:
    """The composition for the category of an aerosol; a stated answer on flammability goes before the table's."""
    contents = []
    for line in product.composition:
        content = content_of(line.name, line.cas or "", _share(product, line))
        if line.flammable is not None:
            content = Content(line.name, content.share, line.flammable, content.heat, source=content.source)
        contents.append(content)
    return tuple(contents)


def spray_test(product: Product) -> SprayTest | None:
    """The spray test as stated. Without its ignition distance a test proves nothing, so the rest of it is left out."""
    test = product.hazards.aerosol_test if product.hazards is not None else None
    if test is None:
        return None
    if test.ignition_distance is None:
        return SprayTest(None)
    reached = test.ignition_distance if test.ignition_distance.base > 0 else None
    return SprayTest(reached, test.time_equivalent, test.deflagration_density)


def substances_of(product: Product) -> tuple[Substance, ...]:
    """The composition for the limits of mixtures; a component without classes counts nothing."""
    return tuple(_substance(product, line) for line in product.composition)


def mixture_facts(product: Product, substances: Sequence[Substance]) -> MixtureFacts:
    """What the supplemental statements follow from; `substances` are the composition with the limits that hold."""
    light = product.hazards.epoxy_up_to_700 if product.hazards is not None else None
    limit = Fraction(table("euh_triggers").row("id", "EUH205")["limit"])
    weight = None if light is None else limit if light else limit + 1
    white = [line.mass_share for line in product.composition if line.cas == _TITANIUM_DIOXIDE]
    return MixtureFacts(
        isocyanates_in(product),
        epoxy_in(product),
        weight,
        tuple(_sensitisers(product, substances)),
        titanium_dioxide=max(white, key=lambda share: share.base, default=None),
        contents=product.pack.fill,
    )


def boils_low(line: Component) -> bool | None:
    """Whether a component boils at or below the bound of filters of type A; a propellant does, being a gas."""
    if line.kind is not Ingredient.SOLVENT:
        return line.kind is Ingredient.PROPELLANT
    found = physical(line.cas or "")
    if found is None or found.boiling is None:
        return None
    return found.boiling <= Fraction(table("filters").row("type", "AX")["boiling_up_to"])


def is_water(line: Component) -> bool:
    return line.cas == _WATER


def table_row(name: str, column: str, text: str) -> Row | None:
    """The first row of a table whose cell is `text`, None where there is none."""
    return next((row for row in table(name).rows if row[column] == text), None)


def _share(product: Product, line: Component) -> Given:
    return Given(line.mass_share, f"products.{product.id}.composition.{line.id}.mass_share", "maker")


def _substance(product: Product, line: Component) -> Substance:
    acute = next((c.m_factor for c in line.classes if c.hazard_class == "aquatic_acute" and c.m_factor), Fraction(1))
    lasting = next(
        (c.m_factor for c in line.classes if c.hazard_class == "aquatic_chronic" and c.m_factor), Fraction(1)
    )
    own = tuple(
        Limit(c.hazard_class, c.category, c.limit, c.statement or "")
        for c in line.classes
        if c.limit is not None and c.limit.base > 0
    )
    classes = tuple(Classification(c.hazard_class, c.category, c.statement or "") for c in line.classes)
    return Substance(
        line.name, _share(product, line), classes, acute, lasting, own, line.adds_up is not False, form=_FORM[line.kind]
    )


def _sensitisers(product: Product, substances: Sequence[Substance]) -> Iterator[Sensitiser]:
    covered = "EUH204" if isocyanates_in(product) else "EUH205" if epoxy_in(product) else ""
    known = {row["category"] for row in table("elicitation_limits").rows}
    for line, substance in zip(product.composition, substances, strict=True):
        for found in substance.classes:
            if found.hazard_class in _SENSITISING and found.category in known:
                own = own_limit(substance, found.hazard_class, found.category)
                yield Sensitiser(
                    line.name,
                    line.mass_share,
                    found.hazard_class,
                    found.category,
                    # Only what makes up the film is the isocyanate or the epoxy itself; a solvent or additive is named.
                    covered if line.kind is Ingredient.SOLIDS else "",
                    own.least if own is not None else None,
                )

"""What of a product can hurt: its dangers by the statements it declares, and the traits that bring a caution at a step.

What is not known counts as held: a caution too many does no harm. Asked by the cautions at the steps and by the hazard card.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal

from specgen.facts.product.absorbed import absorbed
from specgen.facts.product.declared import names_ax
from specgen.facts.product.hazard_facts import epoxy_in, isocyanates_in, package_of
from specgen.model.product import CuringKind, Product

Danger = Literal[
    "explodes",
    "poison",
    "reacts",
    "isocyanate",
    "organs",
    "burns",
    "bursts",
    "corrodes",
    "airways",
    "blinds",
    "allergy",
    "aspiration",
    "lungs",
    "absorbed",
    "eyes",
    "self-heating",
    "irritates",
    "swallowed",
    "water",
    "ozone",
    "metals",
]
Trait = Literal["single-use-filter", "aerosol", "burns", "absorbed", "isocyanate", "epoxy", "oxidative", "two-pack"]

# The statements that name each danger, the gravest first; every code that names one is in one row. Their order of gravity is
# common practice, no source. What dries by oxidation heats up in rags, and what is absorbed
# through the skin is noted beside the limits of exposure: neither has a statement of its own.
_CODES: Mapping[Danger, str] = {
    "explodes": "EUH019 EUH044",
    "poison": "H300 H301 H310 H311 H330 H331 EUH070",
    "reacts": "EUH014 EUH029 EUH031 EUH032",
    "isocyanate": "EUH204 H334",
    "organs": (
        "H340 H341 H350 H350i H351 H360 H360D H360F H360FD H360Df H360Fd H361 H361d H361f H361fd H362 H370 "
        "H371 H372 H373 EUH201 EUH201A EUH207 EUH380 EUH381"
    ),
    "burns": ("H220 H221 H222 H223 H224 H225 H226 H227 H228 H230 H231 H232 H282 H283 EUH018 EUH209 EUH209A"),
    "bursts": "H229 H280 H281 H284",
    "corrodes": "H314",
    "airways": "EUH071",
    "blinds": "H318",
    "allergy": "H317 EUH203 EUH205 EUH208",
    "aspiration": "H304 H305",
    "lungs": "H332 H333 H335 H336 EUH211 EUH212",
    "absorbed": "",
    "eyes": "H319 H320",
    "self-heating": "",
    "irritates": "H315 H316 EUH066",
    "swallowed": "H302 H303 H312 H313",
    "water": "H400 H401 H402 H410 H411 H412 H413 EUH430 EUH431 EUH440 EUH441 EUH450 EUH451",
    "ozone": "H420",
    "metals": "H290",
}
STATEMENTS: Mapping[Danger, tuple[str, ...]] = {danger: tuple(codes.split()) for danger, codes in _CODES.items()}


def dangers_of(products: Sequence[Product], further: Sequence[str] = ()) -> Mapping[Danger, tuple[str, ...]]:
    """Every danger of the products together, the gravest first, with the codes they declare for it.

    `further` are the codes of thinners and cleaners used with them.
    """
    declared = {*further, *(code for product in products for code in _statements(product))}
    traits = frozenset(trait for product in products for trait in traits_of(product))
    brought = {danger for danger, trait in _BY_TRAIT.items() if trait in traits}
    named = {danger: tuple(code for code in codes if code in declared) for danger, codes in STATEMENTS.items()}
    return {danger: codes for danger, codes in named.items() if codes or danger in brought}


def traits_of(product: Product) -> frozenset[Trait]:
    """The traits a product has, or may have where nothing tells."""
    holds: Mapping[Trait, bool] = {
        "single-use-filter": _asks_for_ax(product),
        "aerosol": package_of(product) == "aerosol",
        "burns": product.hazards is None or bool(_IGNITES & {*_statements(product)}),
        "absorbed": absorbed(product) is not None,
        "isocyanate": isocyanates_in(product) is not False,
        "epoxy": epoxy_in(product) is not False,
        "oxidative": product.curing is CuringKind.OXIDATIVE,
        "two-pack": product.curing is CuringKind.LIQUID_TWO_PACK,
    }
    return frozenset(trait for trait, held in holds.items() if held)


# No flame near any of these; what reacts violently with water counts, for what it releases is not said.
_IGNITES = frozenset({*STATEMENTS["burns"], *STATEMENTS["explodes"], "EUH014"})

# Dangers that hold without a statement: isocyanate has none of its own outside the EU and Great Britain.
_BY_TRAIT: Mapping[Danger, Trait] = {"isocyanate": "isocyanate", "absorbed": "absorbed", "self-heating": "oxidative"}


def _asks_for_ax(product: Product) -> bool:
    entries = product.hazards.protection if product.hazards is not None else ()
    return any(names_ax(entry.respiratory) for entry in entries if entry.respiratory is not None)


def _statements(product: Product) -> tuple[str, ...]:
    return (*product.hazards.statements, *product.hazards.supplemental) if product.hazards is not None else ()

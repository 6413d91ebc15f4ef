"""LAY015 A basecoat is not sanded before the clearcoat

Checks
    Each basecoat under a clearcoat that is basecoat by its generic type as well: nothing states that it is abraded all over before the clearcoat. A two-pack colour that hardens by itself may be sanded as its manufacturer says. Nibs and dust may be taken off, and what is done once the interval has passed is not read.
Why
    Scratches in a metallic or pearl basecoat turn the flakes and show through the clearcoat as dark lines; in any basecoat they cut through to the primer.
Passes
    systems.cab.layers.base.before_next: Take off dust with a tack cloth.

    systems.cab.layers.base.before_next: Sand out single nibs with P1500, then spray a drop coat.

    systems.cab.layers.base.before_next: Let it flash off until it is evenly matt.

    products.base.binder: pu_2k_aliphatic
    products.base.hazards.isocyanates: {monomer_at_limit: no}
    products.base.hazards.supplemental: [EUH204]
    products.base.hazards.health_surveillance: before the first job and every year
    products.base.hazards.protection.spray.respiratory: air-fed half mask, EN 14594
    systems.cab.layers.base.abraded_with: P400
Fails
    systems.cab.layers.base.before_next: Sand with P400 and wipe.    # at systems.cab.layers.base.before_next

    systems.cab.layers.base.abraded_with: P600    # at systems.cab.layers.base.abraded_with
To put right
    Lay the clearcoat within the interval on the basecoat as it is; if it has been sanded, lay basecoat once more.
"""

import re

from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule

_ABRADES = re.compile(r"\b(?:sand|abrad|scuff|flat|key|matt)\w*\b", re.IGNORECASE)
# a basecoat flashes off until it is matt
_FLASHED = re.compile(
    r"\b(?:turns?|turned|become\w*|go(?:es)?|flash\w*(?: off)?|dr(?:y|ies|ied)|until|is|are)\b(?: [\w-]+){0,5}? matt\b",
    re.IGNORECASE,
)
_PARTLY = re.compile(
    r"\b(?:nibs?|dust|single|inclusions?|not|no|never|without|if|where|only|again|once more)\b", re.IGNORECASE
)

_NEVER_SANDED = {"basecoat", "not-named"}


@rule("LAY015", on=System, severity=WARNING, source=PRACTICE)
def basecoat_not_sanded(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.role is not Role.BASECOAT or above.role is not Role.CLEARCOAT:
            continue
        if spec.product_of(below).binder not in _NEVER_SANDED:
            continue
        said = below.before_next or ""
        words = _ABRADES.search(_FLASHED.sub("", said)) is not None and _PARTLY.search(said) is None
        key = "abraded_with" if below.abraded_with is not None else "before_next" if words else ""
        if key:
            yield Problem(
                ("layers", below.id, key), f"the basecoat {below.id} is abraded before the clearcoat {above.id}"
            )

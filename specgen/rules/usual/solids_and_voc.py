"""USU017 Volume solids, VOC content and density fit into one litre

Checks
    Products that state a VOC content: it is not above the density of the product. With the volume solids of the can contents: solids and the VOC, at the density of a heavy solvent blend, do not fill more than one litre; and of a liquid classified as flammable, which contains little water, they fill most of it at the density of a light one. A product that states its composition is held against that instead. Zinc silicate is left out, for its film is porous and its binder releases alcohol. What its solids weigh, density less VOC over volume solids, is that of a resin at least.
Why
    The three figures come from one formulation. Where they do not fit, one of them has a slip: with wrong volume solids every wet film target and every order is wrong, with a wrong VOC content the limit was checked on a figure that does not exist.
Passes
    products.barrier.voc.content: 522 g/L

    products.barrier.voc.content: 113 g/L

    products.barrier.voc.density: 0.9 g/mL
Fails
    products.barrier.voc.content: 523 g/L    # warning at products.barrier.solids.in_can

    products.barrier.voc.density: 0.16 g/mL    # at products.barrier.voc.density    # also USU001 warning at products.barrier.voc.density

    products.barrier.voc.content: 112 g/L    # warning at products.barrier.voc.content

    products.barrier.voc.density: 0.89 g/mL    # warning at products.barrier.voc.density

    Given second good
    products.gloss.voc: {content: 4.5 lb/gal}    # warning at products.gloss.solids.in_can
To put right
    Take all three figures from one edition of the product's formulation, ready for use.
"""

from fractions import Fraction

from specgen.facts.usual import proportion
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    PRACTICE,
    WARNING,
    Path,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    date,
    rule,
)
from specgen.units.quantity import lower, upper
from specgen.units.rounding import plain_text

_STATEMENTS = {"H224", "H225", "H226"}
# A porous film whose binder gives off alcohol, and a filler whose solvent becomes part of it.
_NOT_ADDITIVE = {"zinc_inorganic", "polyester_putty"}
_A_LITRE = Quantity.of("volume", 1, "L").to("mL")
# Where every solvent counts as VOC, acetone and the like among them.
_EU = {"EU", "GB"}


@rule("USU017", on=Product, severity=ERROR, source=LOGIC)
def solids_and_voc(product: Product, spec: Spec, on: date) -> Problems:
    voc = product.voc
    if voc is None or voc.content is None:
        return
    content = voc.content.to("g/L") / _A_LITRE  # in g/mL
    if voc.density is not None and content > voc.density.to("g/mL"):
        what = f"VOC content {voc.content} at a density of {voc.density}: a litre contains more VOC than it weighs"
        yield Problem(("voc", "density"), what)
        return
    solids = product.solids.in_can if product.solids is not None else None
    if solids is None or product.composition or product.binder in _NOT_ADDITIVE:
        return
    least, most = lower(solids).to("%"), upper(solids).to("%")
    said = f"volume solids {solids} and a VOC content of {voc.content}"
    full = least + _volume(content, "solvent_heavy")
    thin = most + _volume(content, "solvent_light")
    if full > proportion("litre_most"):
        yield _practice(
            ("solids", "in_can"),
            f"{said} fill {_share(full)} of a litre; the solvent is taken at {_given('solvent_heavy')}",
        )
    elif thin < proportion("litre_least") and _solvent_borne(product) and _EU & set(spec.project.jurisdictions):
        what = f"{said} fill only {_share(thin)} of a litre; the solvent is taken at {_given('solvent_light')}"
        yield _practice(
            ("voc", "content"),
            what,
            "correct the figure with the slip; where the rest is water, state the composition",
        )
    elif voc.density is not None and (voc.density.to("g/mL") - content) * 100 < proportion("solids_density") * least:
        what = f"{said} at a density of {voc.density}: the solids weigh less than {_given('solids_density')}"
        yield _practice(("voc", "density"), what)


def _volume(content: Fraction, solvent: str) -> Fraction:
    """Percent of the product that its solvent fills, `content` in g/mL."""
    return content / proportion(solvent) * 100


def _solvent_borne(product: Product) -> bool:
    """True for a liquid declared flammable, of which little can be water."""
    hazards = product.hazards
    if hazards is None:
        return False
    classes = {entry.hazard_class for entry in hazards.classification}
    return "flammable_liquids" in classes or bool(_STATEMENTS & set(hazards.statements))


def _practice(path: Path, what: str, remedy: str = "") -> Problem:
    return Problem(path, what, remedy, WARNING, PRACTICE)


def _share(percent: Fraction) -> str:
    return f"{plain_text(Fraction(round(percent)))} %"


def _given(name: str) -> str:
    return f"{plain_text(proportion(name))} g/mL"

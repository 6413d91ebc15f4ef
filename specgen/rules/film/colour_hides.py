"""FLM010 The colour hides within the maximum DFT of the coat

Checks
    The DFT for full hiding of the variant, or else of its product, against the maximum DFT of the coat, or else of the product; and that of a basecoat or topcoat against its nominal DFT, which is a warning, unless the same colour follows; and the minimum DFT of a basecoat, likewise.
Why
    Where full hiding needs more than the maximum DFT, either the undercoat shows through or the coat is applied too thick.
Passes
    products.base.film.hiding: 15 um

    products.primer.film.hiding: 80 um

    Given a coat with no film limits at all
    products.base.film: {hiding: 35 um}

    Given second good
    systems.deck.layers.gloss.film: {min: 1.5 mil, nominal: 1.5 mil, max: 1.5 mil}
Fails
    products.base.film.hiding: 25 um    # warning at systems.cab.layers.base.film.nominal

    products.base.film.hiding: 20 um    # warning at systems.cab.layers.base.film.min

    products.base.film.hiding: 35 um    # at systems.cab.layers.base.film.max

    products.base.variants.standard.overrides: {hiding: 40 um}    # at systems.cab.layers.base.film.max

    products.primer.film.hiding: 81 um    # at systems.cab.layers.primer.film.max

    Given second good
    products.mastic.variants.buff.overrides: {solids_in_can: 64 %, solids_sprayed: 64 %, hiding: 8.1 mil}    # at systems.deck.layers.second.film.max
To put right
    Choose an undercoat closer in colour, more coats where the product allows them, or another colour.
"""

from specgen.facts.layer.film import film_limit, film_of_variant
from specgen.rules.kit import ERROR, LOGIC, WARNING, Layer, Problem, Problems, Quantity, Role, Spec, System, date, rule


@rule("FLM010", on=System, severity=ERROR, source=LOGIC)
def colour_hides(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        hiding = film_of_variant(spec.product_of(layer), spec.variant_of(layer), "hiding")
        most = film_limit(system, layer, spec, "max")
        if hiding is not None and most is not None and hiding.value > most.value:
            what = f"{layer.variant or layer.product} needs {hiding.value} for full hiding; the maximum DFT of the coat {layer.id} is {most.value}"
            yield Problem(("layers", layer.id, "film", "max"), what)
        elif hiding is not None and _shows_through(layer, hiding.value, system):
            what = f"{layer.variant or layer.product} needs {hiding.value} for full hiding; the nominal DFT of the coat {layer.id} is {layer.film.nominal}"
            yield Problem(
                ("layers", layer.id, "film", "nominal"), what, "raise the nominal DFT to full hiding", WARNING
            )
        elif hiding is not None and _thin_base(layer, hiding.value, system):
            what = f"{layer.variant or layer.product} needs {hiding.value} for full hiding; the minimum DFT of the coat {layer.id} is {layer.film.min}"
            yield Problem(("layers", layer.id, "film", "min"), what, "raise the minimum DFT to full hiding", WARNING)


def _thin_base(layer: Layer, hiding: Quantity, system: System) -> bool:
    """True for a basecoat accepted thinner than it hides, unless the same colour follows."""
    thin = layer.role is Role.BASECOAT and layer.film.min is not None and layer.film.min < hiding
    return thin and not _followed(layer, system)


def _shows_through(layer: Layer, hiding: Quantity, system: System) -> bool:
    """True for a coat of colour whose nominal film does not hide, unless the same product follows in the same colour."""
    if layer.role not in {Role.BASECOAT, Role.TOPCOAT} or layer.film.nominal is None or layer.film.nominal >= hiding:
        return False
    return not _followed(layer, system)


def _followed(layer: Layer, system: System) -> bool:
    """True where the next coat is the same product in the same colour."""
    pairs = zip(system.layers, system.layers[1:], strict=False)
    return any(one is layer and (one.product, one.variant) == (two.product, two.variant) for one, two in pairs)

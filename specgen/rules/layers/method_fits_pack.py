"""LAY011 The application method fits the pack

Checks
    The application method of each coat against the pack of its product: an aerosol is sprayed from its can, and a liquid is not. The methods a product states are checked where a coat uses the product and states none itself.
Why
    Paint in an aerosol can neither be brushed nor filled into a spray gun, and a liquid has no propellant: the work cannot be done as specified.
Passes
    systems.cab.layers.primer.method: aerosol

    systems.chassis.layers.barrier.method: trowel

    products.primer.application.methods: [aerosol]
Fails
    systems.cab.layers.primer.method: brush    # at systems.cab.layers.primer.method

    Given second good
    systems.deck.layers.second.method: aerosol    # at systems.deck.layers.second.method

    Given second good
    products.touch-up.application.methods: [aerosol, brush]    # at systems.touch.layers.ground.product    # at systems.touch.layers.face.product
To put right
    Correct the method, or choose a product in the right pack.
"""

from specgen.model.application import Method
from specgen.model.product import PackForm
from specgen.rules.kit import PRACTICE, WARNING, Path, Problem, Problems, Spec, System, date, rule


@rule("LAY011", on=System, severity=WARNING, source=PRACTICE)
def method_fits_pack(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        product = spec.product_of(layer)
        of_product = product.application.methods if product.application is not None else ()
        path: Path = ("layers", layer.id, "product" if layer.method is None else "method")
        for method in of_product if layer.method is None else (layer.method,):
            if (method is Method.AEROSOL) is not (product.pack.form is PackForm.AEROSOL):
                yield Problem(
                    path,
                    f"the method {method} is stated for the product {product.id}, whose pack is {product.pack.form}",
                )

"""LAY010 A coat is applied by a method its product allows

Checks
    The application method of each coat is among the methods its product states.
Why
    Viscosity, solids and evaporation are set for certain methods: by another one the coat runs, pulls, or misses its DFT.
Passes
    systems.chassis.layers.barrier.method: airless

    Given second good
    products.mastic.application.methods: [airless, brush]
    systems.deck.layers.first.method: brush
    systems.deck.layers.second.method: airless

    Given second good
    systems.touch.layers.ground.method: aerosol
Fails
    Given second good
    products.mastic.application.methods: [airless, brush]
    systems.deck.layers.first.method: brush
    systems.deck.layers.second.method: roller    # at systems.deck.layers.second.method
To put right
    Choose a method the product states, or a product made for that method.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("LAY010", on=System, severity=ERROR, source=LOGIC)
def method_of_product(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        application = spec.product_of(layer).application
        methods = application.methods if application is not None else ()
        if layer.method is not None and methods and layer.method not in methods:
            what = f"the coat {layer.id} is applied by {layer.method}; methods of the product {layer.product}: {', '.join(methods)}"
            yield Problem(("layers", layer.id, "method"), what)

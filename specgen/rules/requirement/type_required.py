"""REQ002 A requirement names the generic type

Checks
    Each requirement on the product of a coat, and each alternative to it: it names a generic type.
Why
    Overcoating, substrate, minimum preparation, heat and sunlight are assessed by the generic type. Where none is required, none of this is assessed until a product is offered.
Passes
    Given three coats without products
    systems.open.layers.prime.required: {generic_type: epoxy_2k, solids: min 55 %}
Fails
    Given three coats without products
    systems.open.layers.prime.required: {solids: min 55 %}    # at systems.open.layers.prime.required.generic_type

    Given three coats without products
    without systems.open.layers.top.required.generic_type    # at systems.open.layers.top.required.generic_type
To put right
    Require a generic type, with alternatives where several will do; or leave it open and judge each offer.
"""

from specgen.facts.pairs.families import NOT_NAMED
from specgen.rules.kit import LOGIC, NOTE, Problem, Problems, Spec, System, date, rule


@rule("REQ002", on=System, severity=NOTE, source=LOGIC)
def type_required(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        required = layer.required
        if required is None or all(choice.generic_type not in {None, NOT_NAMED} for _, choice in required.choices()):
            continue
        what = f"no generic type is required for the coat {layer.id}, so nothing that depends on it is assessed before a product is offered"
        yield Problem(("layers", layer.id, "required", "generic_type"), what)

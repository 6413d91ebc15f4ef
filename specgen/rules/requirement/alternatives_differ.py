"""REQ003 Each alternative asks for something else

Checks
    Each alternative to a requirement: it differs from the requirement and from every other alternative. So many combinations of alternatives in one system that not all of them are judged.
Why
    An alternative that asks for the same lets in nothing new, and was meant to ask for something else.
Passes
    Given three coats without products
    systems.open.layers.top.required.alternatives.siloxane: {id: siloxane, generic_type: pu_2k_aliphatic, solids: min 60 %}
Fails
    Given three coats without products
    systems.open.layers.top.required.alternatives.siloxane: {id: siloxane, generic_type: pu_2k_aliphatic}    # at systems.open.layers.top.required.alternatives.siloxane

    Given three coats without products
    systems.open.layers.top.required.alternatives: [{id: siloxane, generic_type: polysiloxane}, {id: again, generic_type: polysiloxane}]    # at systems.open.layers.top.required.alternatives.again
To put right
    State what the alternative asks for, or take it out.
"""

from specgen.model.requirement import Requirement
from specgen.rules.alternatives import MOST_WAYS, number_of_ways
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("REQ003", on=System, severity=WARNING, source=LOGIC)
def alternatives_differ(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        seen: list[Requirement] = []
        for id, choice in layer.required.choices() if layer.required is not None else ():
            if choice in seen:
                what = f"the alternative {id} of the coat {layer.id} asks for the same as {'another' if seen.index(choice) else 'the requirement'}"
                yield Problem(("layers", layer.id, "required", "alternatives", id), what)
            seen.append(choice)
    if (number := number_of_ways(system)) > MOST_WAYS:
        what = f"the coats of {system.id} may be met in {number} combinations; only {MOST_WAYS} of them are assessed"
        yield Problem(("layers",), what, "leave fewer alternatives open")

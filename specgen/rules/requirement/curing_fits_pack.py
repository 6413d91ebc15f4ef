"""REQ004 The curing and the pack required exist together

Checks
    Each requirement and each alternative that states curing and pack: a product that cures so comes in such a pack.
Why
    A product that cannot exist is never offered; each bidder then reads something else into the line.
Passes
    Given three coats without products
    systems.open.layers.prime.required: {generic_type: epoxy_2k, curing: liquid-two-pack, pack: liquid}
Fails
    Given three coats without products
    systems.open.layers.prime.required: {generic_type: epoxy_2k, curing: liquid-two-pack, pack: aerosol}    # at systems.open.layers.prime.required.pack    # also LAY011 at systems.open.layers.prime.method

    Given three coats without products
    systems.open.layers.top.required.alternatives.siloxane: {id: siloxane, generic_type: polysiloxane, curing: capsule-aerosol, pack: liquid}    # at systems.open.layers.top.required.alternatives.siloxane.pack
To put right
    Require one of the two and leave the other open, or require the pack that goes with the curing.
"""

from specgen.facts.product.curing import FORM_OF_KIND
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule


@rule("REQ004", on=System, severity=ERROR, source=LOGIC)
def curing_fits_pack(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        for id, choice in layer.required.choices() if layer.required is not None else ():
            form = FORM_OF_KIND.get(choice.curing) if choice.curing is not None else None
            if form is None or choice.pack in {None, form}:
                continue
            where = ("alternatives", id) if id else ()
            what = f"the coat {layer.id} requires {choice.curing} from the pack {choice.pack}; such a product comes as {form}"
            yield Problem(("layers", layer.id, "required", *where, "pack"), what)

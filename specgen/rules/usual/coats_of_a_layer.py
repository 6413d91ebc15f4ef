"""USU014 A coat is divided into coats that can be applied

Checks
    The number of coats into which a coat is divided: no more than its cross coats; and its nominal DFT, divided among them, against half the minimum DFT of the product.
Why
    A coat much thinner than the product forms does not close, and a coat of less than one cross coat does not exist.
Passes
    systems.cab.layers.primer.coats: 2

    systems.chassis.layers.barrier.coats: 2
Fails
    systems.cab.layers.base.coats: 3    # at systems.cab.layers.base.coats

    systems.chassis.layers.barrier.coats: 3    # at systems.chassis.layers.barrier.coats
To put right
    Correct the number of coats, or of cross coats.
"""

from specgen.rules.kit import LOGIC, PRACTICE, WARNING, Problem, Problems, Quantity, Spec, System, date, rule, show


@rule("USU014", on=System, severity=WARNING, source=LOGIC)
def coats_of_a_layer(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        coats, path = layer.coats, ("layers", layer.id, "coats")
        if coats is None or coats.low < 2:
            continue
        if layer.passes is not None and layer.passes.high is not None and coats.low > layer.passes.high:
            yield Problem(path, f"{layer.id} is divided into {coats} coats of {layer.passes} cross coats together")
            continue
        nominal, least = layer.film.nominal, spec.product_of(layer).film.min
        if nominal is None or least is None:
            continue
        each = Quantity.of("thickness", nominal.number / coats.low, nominal.unit)
        if 2 * each.base < least.base:
            what = f"a DFT of {nominal} in {coats} coats is {show(each)} each; the minimum DFT of {layer.product} is {least}"
            yield Problem(path, what, source=PRACTICE)

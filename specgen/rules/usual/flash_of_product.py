"""USU007 The flash-off time of a coat is that of its product

Checks
    The flash-off time between cross coats of each coat, against the one its product states. Shorter than the product's minimum is an error, longer than its maximum a warning.
Why
    Too short, and solvent stays below the next cross coat; too long, and it lies on a skin. The manufacturer has tried one range, and the method statement prints the other.
Passes
    systems.cab.layers.primer.flash_between_passes: 5..10 min

    systems.cab.layers.primer.flash_between_passes: 6..8 min
Fails
    systems.cab.layers.primer.flash_between_passes: 4..10 min    # at systems.cab.layers.primer.flash_between_passes

    systems.cab.layers.base.flash_between_passes: 5..11 min    # warning at systems.cab.layers.base.flash_between_passes

    systems.cab.layers.clear.flash_between_passes: min 5 min    # warning at systems.cab.layers.clear.flash_between_passes
To put right
    Take the time of the product, or a part of its range.
"""

from specgen.rules.kit import ERROR, LOGIC, WARNING, Problem, Problems, Spec, System, date, rule, unless_range_rounded


@rule("USU007", on=System, severity=ERROR, source=LOGIC)
def flash_of_product(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        application = spec.product_of(layer).application
        stated = application.flash_between_passes if application is not None else None
        planned = layer.flash_between_passes
        if planned is not None and stated is not None and not stated.holds_all_of(planned):
            what = f"flash-off time {planned} between cross coats of {layer.id}; {layer.product} states {stated}"
            too_short = stated.low is not None and (planned.low is None or planned.low < stated.low)
            weight = None if too_short else WARNING
            problem = Problem(("layers", layer.id, "flash_between_passes"), what, severity=weight)
            yield unless_range_rounded(problem, planned, stated)

"""LAY016 The paper named in words is the one that is typed

Checks
    Each coat that states the paper it is abraded with: the finest paper that its instruction before the next coat names is from the same range.
Why
    The painter reads the sentence, the store issues what is typed: P240 scratches under a basecoat are seen after a week in the sun.
Passes
    systems.cab.layers.primer.abraded_with: P400, then P600
    systems.cab.layers.primer.before_next: Sand with P500 and wipe.

    systems.cab.layers.primer.abraded_with: P600
    systems.cab.layers.primer.before_next: Sand with P400, then P600.
Fails
    systems.cab.layers.primer.abraded_with: P600
    systems.cab.layers.primer.before_next: Sand with P400 and wipe.    # at systems.cab.layers.primer.before_next
To put right
    Write the same papers in both places.
"""

from specgen.facts.pairs.papers import papers_in
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("LAY016", on=System, severity=WARNING, source=LOGIC)
def paper_in_words(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        typed = sorted(map(int, papers_in(layer.abraded_with)))
        said = [int(paper) for paper in papers_in(layer.before_next)]
        if typed and said and not typed[0] <= max(said) <= typed[-1]:
            what = f"before_next of {layer.id} ends with P{max(said)}; abraded_with is {layer.abraded_with}"
            yield Problem(("layers", layer.id, "before_next"), what)

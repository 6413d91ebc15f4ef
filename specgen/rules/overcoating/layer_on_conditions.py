"""OVR002 Conditions set by the coat below are met in the system

Checks
    Each coat that the tables accept over the one below on conditions only: abraded or within a stated overcoating interval, a mist coat, a tie coat, a primer or sealer between, proof by a test patch. Where the product below states an interval for that very product above, the statement of the manufacturer is sufficient.
Why
    The pair is accepted on these conditions only; without them it is as good as refused.
Passes
    systems.cab.layers.primer.abraded_with: P400

    Given second good
Fails
    without products.primer.overcoat    # at systems.cab.layers.base.product    # also LAY006 at systems.cab.layers.primer.overcoat_interval

    Given second good
    without products.mastic.overcoat    # at systems.deck.layers.second.product    # also LAY006 at systems.deck.layers.first.overcoat_interval    # also LAY006 at systems.deck.layers.second.overcoat_interval
To put right
    State what is done between the two coats: abraded_with and a paper, mist_coat, tie_coat, or a separate coat.
"""

from specgen.facts.layer.intervals import windows_for
from specgen.facts.pairs.answers import DULLING, dulled
from specgen.facts.pairs.layers import layer_pairs
from specgen.facts.pairs.overcoat import Verdict, in_words
from specgen.facts.pairs.papers import papers_between
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule

# Assessed with the preparation, or by the rule on the film of a product.
_ELSEWHERE = {"degrease", "sound", "thin_film", "min_preparation", "baked_only", "repair_only"}


@rule("OVR002", on=System, severity=WARNING, source=PRACTICE)
def layer_on_conditions(system: System, spec: Spec, on: date) -> Problems:
    for pair in layer_pairs(system, spec):
        told = pair.told_elsewhere or pair.stated_by_name
        if pair.verdict.verdict not in {Verdict.CONDITIONAL, Verdict.SAME} or told:
            continue
        met = {*pair.answered, *_ELSEWHERE}
        if pair.below.product is None:
            met.add("in_window")  # asked of whoever offers the product
        if dulled(pair.below) is not False or windows_for(pair.below, pair.above, spec):
            met |= DULLING | {"in_window"}
        if pair.verdict.old == "zinc_inorganic":
            met.add("mist_coat")  # zinc silicate has a rule of its own
        lacking = [choice for choice in pair.verdict.needs if not set(choice) & met]
        if lacking:
            what = (
                f"{pair.above.id} over {pair.below.id}: {pair.verdict.spoken()}; not in the system: {in_words(lacking)}"
            )
            remedy = in_words(lacking, papers_between(pair.below, pair.above))
            yield Problem(("layers", pair.above.id, "product"), what, remedy, source=pair.verdict.citation)

"""Each offer is judged with its products in the place of what is required, by the same rules as a system that names them.

What is found then and was not before is told at the offer, one weight milder than of a system: an offer that does not fit is a
finding on the offer, and no fault of the specification. Called by `judge`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date

from specgen.facts.offered import coats_offered, systems_asked, with_offered
from specgen.findings import Finding, Severity
from specgen.model.guarded import NotWholeError
from specgen.model.offer import Offer
from specgen.model.parse import Loaded
from specgen.model.spec import Spec
from specgen.model.walk import Path
from specgen.rules.alternatives import concerned, judged_by_coats
from specgen.rules.declare import Rule
from specgen.units.locale import phrase

# An error with the products offered means that the offer does not comply, a warning that something is to be clarified.
# These look at the same as a clause of the requirement: coat type, method, DFT, thinner.
_OF_A_CLAUSE = frozenset({"LAY004", "LAY010", "FLM003", "FLM018"})
_MILDER = {Severity.ERROR: Severity.WARNING, Severity.WARNING: Severity.NOTE}


def on_offers(loaded: Loaded, on: date, rules: Sequence[Rule]) -> list[Finding]:
    """What the rules find with the products of each offer in place, and did not find without them."""
    spec, told = loaded.judged, list[Finding]()
    for offer in spec.offers.values() if spec is not None else ():
        if spec is not None:
            try:
                told.extend(_of(offer, spec, loaded, on, rules))
            except (NotWholeError, KeyError):
                # what it answers was not read, which is told of that
                continue
    return told


def _of(offer: Offer, spec: Spec, loaded: Loaded, on: date, rules: Sequence[Rule]) -> Iterator[Finding]:
    offered = with_offered(offer, spec)
    within = frozenset(path for system in systems_asked(offer, spec) for path in concerned(system.id, spec))
    # what is asked of a product has the place of the requirement before, and that of the product after
    without = judged_by_coats(spec, loaded, on, within, rules)
    before = {(one.id, one.path.replace(".required", ".product")) for one in without}
    entries = {(coat.system.id, coat.layer.id): coat.entry.id for coat in coats_offered(offer, spec)}
    for found in judged_by_coats(offered, loaded, on, within, rules):
        weight = _MILDER.get(found.severity)
        if weight is None or found.id in _OF_A_CLAUSE or (found.id, found.path) in before:
            continue
        steps = found.path.split(".")
        entry = entries.get((steps[1], steps[3])) if steps[0] == "systems" and len(steps) > 3 else None
        path: Path = ("offers", offer.id, "layers", entry, "product") if entry else ("offers", offer.id)
        what = phrase("with the products offered: {what}", what=found.what.partition(" (missing in ")[0])
        yield replace(found, severity=weight, place=loaded.place(path), path=".".join(path), what=what, cause="")

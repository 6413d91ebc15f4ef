"""REQ005 An offer answers the coats that its specification leaves open

Checks
    Each offer: it names one job or one system; each entry is for a coat of it, for one alone, and no coat is offered twice. A coat that names its product already and a coat that is left open and not offered are told as warnings.
Why
    A product offered for a coat of another specification is compared with the wrong requirement, and a coat without an offer is missed until the paint is ordered.
Passes
    Given an offer for a coat without a product
    offers.bid.remarks: Prices are in the cover letter.

    Given an offer for a coat without a product
    without offers.bid.job
    offers.bid.system: open
Fails
    Given an offer for a coat without a product
    offers.bid.system: open    # at offers.bid.system

    Given an offer for a coat without a product
    without offers.bid.job    # at offers.bid.job

    Given an offer for a coat without a product
    offers.bid.layers.more: {id: more, layer: prime, product: barrier, variant: standard}    # at offers.bid.layers.more.layer    # also REQ007 note at offers.bid.layers.more

    Given an offer for a coat without a product
    offers.bid.layers.more: {id: more, layer: nowhere, product: barrier, variant: standard}    # at offers.bid.layers.more.layer

    Given an offer for a coat without a product
    without offers.bid.job
    offers.bid.system: open
    offers.bid.layers.more: {id: more, layer: base, product: barrier, variant: standard}    # at offers.bid.layers.more.layer

    Given an offer for a coat without a product
    offers.bid.layers.more: {id: more, layer: base, product: barrier, variant: standard}    # warning at offers.bid.layers.more.layer

    Given an offer for a coat without a product
    offers.bid.layers: [{id: more, layer: base, product: barrier, variant: standard}]    # warning at offers.bid.layers    # also REQ005 warning at offers.bid.layers.more.layer
To put right
    Name the coats as the specification does, each once; ask the supplier for the coats that are missing.
"""

from specgen.facts.offered import coat_of, open_coats, systems_asked
from specgen.model.offer import Offer, OfferedCoat
from specgen.rules.kit import ERROR, LOGIC, WARNING, Path, Problem, Problems, Spec, date, rule


@rule("REQ005", on=Offer, severity=ERROR, source=LOGIC)
def offer_answers_coats(offer: Offer, spec: Spec, on: date) -> Problems:
    if offer.job is not None and offer.system is not None:
        yield Problem(("system",), f"the offer {offer.id} names the job {offer.job} and a system beside it")
    elif offer.job is None and offer.system is None:
        yield Problem(("job",), f"the offer {offer.id} names neither a job nor a system")
        return
    taken: dict[tuple[str, str], str] = {}
    for entry in offer.layers:
        at, path = coat_of(entry, offer, spec), _path(entry)
        if at is None:
            yield Problem(path, _nowhere(entry, offer, spec))
            continue
        system, layer = at
        other = taken.setdefault((system.id, layer.id), entry.id)
        if other != entry.id:
            yield Problem(path, f"the coat {layer.id} of {system.id} is offered twice, in {other} and {entry.id}")
        elif layer.product is not None:
            what = (
                f"{entry.id} is offered for the coat {layer.id} of {system.id}, which names the product {layer.product}"
            )
            yield Problem(path, what, severity=WARNING)
    missed = [
        f"{layer.id} of {system.id}" for system, layer in open_coats(offer, spec) if (system.id, layer.id) not in taken
    ]
    if missed:
        yield Problem(("layers",), f"no product is offered for {', '.join(missed)}", severity=WARNING)


def _path(entry: OfferedCoat) -> Path:
    return ("layers", entry.id, "id" if entry.layer is None else "layer")


def _nowhere(entry: OfferedCoat, offer: Offer, spec: Spec) -> str:
    name = entry.layer or entry.id
    asked = [system.id for system in systems_asked(offer, spec)]
    holders = [system.id for system in spec.systems.values() if any(layer.id == name for layer in system.layers)]
    inside = [id for id in holders if id in asked]
    if len(inside) > 1 and entry.system is None:
        return f"{name} is a coat of {' and '.join(inside)}; the offer does not say of which"
    if holders and not inside:
        return f"{name} is a coat of {', '.join(holders)}, which is not in the specification that {offer.id} answers"
    return f"{name} is no coat of the specification that {offer.id} answers: {', '.join(asked)}"

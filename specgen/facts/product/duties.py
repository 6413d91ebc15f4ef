"""Which duties around isocyanate and epoxy a workshop has by the law of its place. Asked by the panels and by a rule."""

from __future__ import annotations

from collections.abc import Mapping

from specgen.facts.product.hazard_facts import epoxy_in, for_the_public, isocyanates_in
from specgen.facts.product.hazards import training_of
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.standards.tables import Row, table

_TRAINING = "eu_training"
# Rows of isocyanate_duties by what is held and by law.
_ISOCYANATE: Mapping[str, tuple[str, ...]] = {
    "EU": (_TRAINING,),
    "GB": ("gb_surveillance", "gb_monitoring"),
    "DE": ("de_provision",),
    "US": ("us_supplied_air",),
    "AU": ("au_air_line",),
}
_EPOXY: Mapping[str, tuple[str, ...]] = {"DE": ("de_epoxy",)}


def duties_of(product: Product, spec: Spec) -> tuple[Row, ...]:
    """The rows of isocyanate_duties that hold: what is not known to be held asks for none.

    Training is asked for as far as the contents and the users ask for it (`DerivedHazards.training`). Each row cites its law.
    """
    asked = [
        id
        for holds, by_law in ((isocyanates_in(product), _ISOCYANATE), (epoxy_in(product), _EPOXY))
        for law in (spec.project.jurisdictions if holds else ())
        for id in by_law.get(law, ())
    ]
    public = for_the_public(product, spec.project)
    untrained = _TRAINING in asked and training_of(product, spec.project.jurisdictions, public=public) is None
    return tuple(table("isocyanate_duties").row("id", id) for id in asked if not (untrained and id == _TRAINING))

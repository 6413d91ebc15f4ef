"""Whether a product is sprayed, which decides what protection its mist asks for. Asked by rules on protection."""

from __future__ import annotations

from specgen.facts.placing import coats_of
from specgen.model.application import BY_HAND
from specgen.model.product import PackForm, Product
from specgen.model.spec import Spec


def is_sprayed(product: Product, spec: Spec) -> bool:
    """False where every method stated makes no mist: of the product, or, where it states none, of each coat it is used for."""
    if product.pack.form is PackForm.AEROSOL:
        return True
    stated = product.application.methods if product.application is not None else ()
    used = {layer.method for layer in coats_of(product, spec)}
    return not (set(stated) or used) or not (set(stated) or used) <= BY_HAND

"""The products that are sprayed on a job, or may be. Called by the rules on air."""

from __future__ import annotations

from specgen.model.application import BY_HAND
from specgen.model.job import Job
from specgen.model.product import PackForm, Product
from specgen.model.spec import Spec
from specgen.model.system import Layer


def sprayed_on(job: Job, spec: Spec) -> tuple[Product, ...]:
    """Each product that the job names of which a coat makes mist, or does not say that it makes none."""
    layers = [layer for layer in spec.layers_of(job) if layer.product is not None]
    return tuple({layer.product: spec.product_of(layer) for layer in layers if _may_be(layer, spec)}.values())


def _may_be(layer: Layer, spec: Spec) -> bool:
    """By the method of the coat, else by those of its product."""
    product = spec.product_of(layer)
    stated = product.application.methods if product.application is not None else ()
    methods = {layer.method} if layer.method is not None else set(stated)
    return product.pack.form is PackForm.AEROSOL or not methods or not methods <= BY_HAND

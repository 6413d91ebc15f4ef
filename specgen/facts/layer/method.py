"""How a coat is put on: by the method of its layer, else by those of its product. Called by the rules on air and protection."""

from __future__ import annotations

from specgen.model.application import Method
from specgen.model.product import PackForm, Product
from specgen.model.system import Layer

# Methods that put no mist into the air.
_NO_MIST = frozenset({Method.BRUSH, Method.ROLLER, Method.DIP, Method.TROWEL})


def methods_of(layer: Layer, product: Product) -> tuple[Method, ...]:
    """The ways a coat may be put on; empty where neither its layer nor its product says."""
    if layer.method is not None:
        return (layer.method,)
    if product.pack.form is PackForm.AEROSOL:
        return (Method.AEROSOL,)
    return product.application.methods if product.application is not None else ()


def may_be_sprayed(layer: Layer, product: Product) -> bool:
    """False only where every way that is stated puts no mist into the air."""
    methods = methods_of(layer, product)
    return not methods or bool(set(methods) - _NO_MIST)

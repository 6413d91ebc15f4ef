"""A path that enters the maker's data is cut where it enters."""

from __future__ import annotations

import pytest

from specgen.model.audience import customer_path


@pytest.mark.parametrize(
    ("path", "shown"),
    [
        ("products.primer.film.max", "products.primer.film.max"),
        ("products.primer.composition.resin.density", "products.primer.…"),
        ("products.primer.composition", "products.primer.…"),
        ("systems.cab.layers.composition.film", "systems.cab.layers.composition.film"),
        ("jobs.refit.items.DOOR.area", "jobs.refit.items.DOOR.area"),
        ("project.second_units.film", "project.second_units.film"),
        ("nothing.of.the.kind", "nothing.of.the.kind"),
    ],
)
def test_customer_path(path: str, shown: str) -> None:
    assert customer_path(path) == shown

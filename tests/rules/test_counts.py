"""Areas and readings that the counting rules ask for, at and beside every border of their tables."""

from __future__ import annotations

import pytest

from specgen.facts.job.counts import least_count
from specgen.standards.citations import Basis
from specgen.units.quantity import parse_quantity

PA_2 = [
    ("1.2", 1),
    ("10", 1),
    ("10.5", 2),
    ("20", 2),
    ("30", 3),
    ("30.1", 3),
    ("100", 3),
    ("100.1", 4),
    ("200", 4),
    ("500", 7),
    ("1000", 12),
]
ISO_19840 = [
    ("0.5", 5),
    ("1", 5),
    ("1.2", 10),
    ("3", 10),
    ("3.1", 15),
    ("10", 15),
    ("11", 20),
    ("30", 20),
    ("31", 30),
    ("100", 30),
    ("101", 40),
    ("200", 40),
    ("500", 70),
    ("1000", 120),
]


@pytest.mark.parametrize(("area", "count"), PA_2)
def test_areas_under_pa_2(area: str, count: int) -> None:
    assert least_count("sspc_pa_2_areas", parse_quantity("area", f"{area} m2")).number == count


@pytest.mark.parametrize(("area", "count"), ISO_19840)
def test_readings_under_iso_19840(area: str, count: int) -> None:
    assert least_count("iso_19840_readings", parse_quantity("area", f"{area} m2")).number == count


def test_smallest_area_of_iso_19840_is_from_memory() -> None:
    assert least_count("iso_19840_readings", parse_quantity("area", "1 m2")).source.basis is Basis.MEMORY
    assert least_count("iso_19840_readings", parse_quantity("area", "2 m2")).source.basis is Basis.PUBLISHED

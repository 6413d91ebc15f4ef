"""The views of the good specification, text by text: what a customer gets, to be read in review like prose."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from specgen.checking import Checked
from specgen.documents.materials_list.view import materials_list
from specgen.documents.parts.tables import Column, TableView
from specgen.documents.registry import KINDS
from specgen.rendering.csv_file import write_csv
from tests.documents.conftest import context, views_of
from tests.good_spec import good, put, spec_of

GOLDEN = Path(__file__).parent / "golden"
APART = {"comparison", "assessment", "records"}
"""What is not drawn up from sources alone has a test of its own."""


@pytest.mark.parametrize("kind", [kind.name.replace("-", "_") for kind in KINDS.values() if kind.about not in APART])
def test_views_are_as_expected(kind: str, good_views: Mapping[str, Any], golden: Callable[[Path, str], None]) -> None:
    views = {name: view for name, view in good_views.items() if name.startswith(kind)}
    assert views
    for name, view in views.items():
        golden(GOLDEN / f"{name}.txt", "\n".join(_lines(view, "")) + "\n")


def test_every_expected_text_has_its_view(good_views: Mapping[str, Any]) -> None:
    others = {kind.name.replace("-", "_") for kind in KINDS.values() if kind.about in APART}
    unlike = {file.stem for file in GOLDEN.iterdir()} ^ {*good_views, *others}
    assert not unlike, f"views without an expected text in golden, or expected texts without a view: {sorted(unlike)}"


def test_materials_list_is_as_expected(good_checked: Checked) -> None:
    spec = good_checked.loaded.spec
    assert spec is not None
    sheet = materials_list(spec.jobs["refit"], context(spec)).sheet
    assert write_csv([column.heading for column in sheet.columns], sheet.rows).decode("utf-8-sig").split("\r\n") == [
        '"Order number","Product","Variant","Colour","Pack","Shelf life, unopened","Packs required","Amount","Use"',
        '"EX-100","Example primer","grey","house card 7","400 mL aerosol can","24 months","2","",""',
        '"EX-base","Example base coat","standard","","400 mL aerosol can","36 months","1","",""',
        '"EX-clear","Example clear","standard","","400 mL aerosol can","24 months","2","",""',
        '"EX-barrier","Example barrier","standard","","1 L tin","18 months","1","",""',
        "",
    ]


def test_columns_fit_the_page() -> None:
    """Widths beyond the page are cut off in print, so they are added up with every column in use."""
    spec = good()
    variants = "[{id: a, name: a, order_number: A, colour: {standard: card, number: '1'}, gloss: 80..90 GU, overrides: {per_pass: 9 um, hiding: 30 um}}, {id: b, name: b, order_number: B, fill: 150 mL}]"
    put(spec, "products.primer.variants", variants)
    put(spec, "systems.cab.layers.primer.variant", "a")
    stages = "[{id: a, stage: dry-to-handle, time: 8 h, air: 20 degC, humidity: 55 %, film: 50 um}]"
    put(spec, "products.primer.drying", stages)
    put(spec, "products.barrier.coverage", "[{id: a, spreading_rate: 7 m2/L, area_per_pack: 7 m2, film: 80 um, losses: included, transfer_efficiency: 60 %}]")  # fmt: skip
    put(spec, "products.barrier.variants.other", "{id: other, name: other, order_number: O, overrides: {solids_in_can: 40 %, solids_sprayed: 40 %}}")  # fmt: skip
    found = {(name, table.caption): table for name, view in views_of(spec_of(spec)).items() for table in _tables(view)}
    wide = {key: sum(_width(column) for column in table.columns) for key, table in found.items()}
    assert {key: total for key, total in wide.items() if total > 100} == {}
    assert len(found["range_overview", "Product comparison"].columns) == 12
    assert len(found["data_sheet_primer", "Variants"].columns) == 7
    assert len(found["data_sheet_barrier", "Practical spreading rate"].columns) == 6


def _width(column: Column) -> int:
    # a column without a width needs some
    return int(column.width.removeprefix("w-")) if column.width else 5


def _tables(value: Any) -> Iterator[TableView]:
    if isinstance(value, TableView):
        yield value
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _tables(getattr(value, field.name))
    elif isinstance(value, tuple):
        for entry in value:
            yield from _tables(entry)


def _lines(value: Any, name: str) -> Iterator[str]:
    """One line a text, with its way in front; a table is one line a row."""
    if isinstance(value, TableView) and not value.rows:
        yield f"{name}: not printed"
    elif isinstance(value, TableView):
        yield f"{name}: {value.caption}"
        for row in (tuple(column.heading for column in value.columns), *value.rows):
            yield f"{name}|  " + " | ".join(cell.replace("\n", " / ") for cell in row)
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _lines(getattr(value, field.name), f"{name}.{field.name}".lstrip("."))
    elif isinstance(value, tuple) and value and all(isinstance(part, str) for part in value):
        yield f"{name}: " + " | ".join(value)
    elif isinstance(value, tuple):
        for number, entry in enumerate(value, 1):
            yield from _lines(entry, f"{name}.{number}")
    else:
        text = str(value)
        # figures have tests of their own
        yield f"{name}: {'<drawing>' if text.startswith('<svg ') else text}"

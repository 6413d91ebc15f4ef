"""The table of usual ranges: every row reaches a leaf, and figures as sound data sheets state them lie within."""

from __future__ import annotations

import pytest

from specgen.facts.usual import unusual
from specgen.model.spec import KINDS
from specgen.standards.tables import table
from tests.campaigns.moving.folder import record_models
from tests.good_spec import checked, given, put

ROWS = table("usual_ranges").rows


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])
def test_a_row_reaches_its_leaf_and_its_condition_a_key(row: dict[str, str]) -> None:
    around = record_models(KINDS[row["record"]], row["leaf"].split("."))
    key = row["only"].partition("=")[0].split(".")[0]
    assert not key or any(key in model.model_fields for model in around)
    assert row["least"] or row["most"]
    assert row["end"] in {"", "low", "high"}


def test_no_row_stands_behind_one_that_counts_everywhere() -> None:
    closed: set[tuple[str, str, str]] = set()
    for row in ROWS:
        ends = {row["end"]} if row["end"] else {"low", "high"}
        assert not {(row["record"], row["leaf"], end) for end in ends} <= closed, row["id"]
        if not row["only"]:
            closed |= {(row["record"], row["leaf"], end) for end in ends}


# figures as they stand on sheets of many kinds of paint; none is of a product
SOUND = [
    ("", {"products.base.application.distance": "15..20 cm"}),
    ("", {"products.base.application.distance": "25..30 cm"}),
    ("", {"products.base.application.shake": "2 min", "products.base.application.flash_between_passes": "3..5 min"}),
    ("", {"products.clear.application.flash_between_passes": "10..15 min"}),
    ("", {"products.primer.climate.surface": "10..40 degC"}),
    ("", {"products.primer.hazards.storage_max": "35 degC", "products.primer.hazards.storage_min": "0 degC"}),
    ("", {"products.primer.shelf_life": "12 months"}),
    ("", {"products.base.shelf_life": "5 years"}),
    ("", {"products.base.pack": "{form: aerosol, fill: 500 mL, dispensed: 95 %}"}),
    ("", {"products.barrier.pack.fill": "20 L"}),
    ("", {"products.primer.drying.touch": "{id: touch, stage: touch-dry, time: 1 h..2 h, air: 20 degC}"}),
    ("", {"products.primer.drying.cure": "{id: cure, stage: fully-cured, time: 7 days, air: 20 degC}"}),
    (
        "",
        {
            "products.barrier.drying": "[{id: t, stage: touch-dry, time: 4 h, air: 20 degC}, {id: c, stage: fully-cured, time: 7 days, air: 20 degC}]"
        },
    ),
    ("", {"products.primer.variants.grey.gloss": "5..15 GU", "products.primer.variants.grey.gloss_grade": "matt"}),
    (
        "",
        {
            "products.clear.variants.standard.gloss": "min 90 GU",
            "products.clear.variants.standard.gloss_grade": "high gloss",
        },
    ),
    (
        "",
        {
            "products.clear.variants.standard.gloss": "25..35 GU",
            "products.clear.variants.standard.gloss_grade": "satin",
        },
    ),
    ("", {"products.primer.service_temperature": "{continuous_max: 120 degC, short_max: 150 degC}"}),
    ("second good", {"products.gloss.application.mixing.ratio_by_volume": "10:1"}),
    ("second good", {"products.gloss.application.mixing.thinner_max": "25 %"}),
    ("second good", {"products.gloss.pot_life.time": "45 min"}),
    ("second good", {"products.mastic.application.mixing.induction": "30 min"}),
    ("second good", {"jobs.rails.substrate.thickness": "1 in"}),
    ("second good", {"preparations.blast.edge_radius": "3 mm"}),
]


@pytest.mark.parametrize(("name", "changes"), SOUND)
def test_what_sound_sheets_state_raises_nothing(name: str, changes: dict[str, str]) -> None:
    spec = given(name)
    for path, value in changes.items():
        put(spec, path, value)
    found = checked(spec)
    assert found.loaded.spec is not None
    records = [
        record
        for kind in ("products", "preparations", "systems", "jobs")
        for record in getattr(found.loaded.spec, kind).values()
    ]
    assert [one for record in records for one in unusual(record)] == []
    assert [finding for finding in found.report if finding.id.startswith("USU")] == []

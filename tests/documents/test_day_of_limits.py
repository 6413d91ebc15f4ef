"""A limit that changes between two days: the rule judges by the one the page prints on that day, and by no other."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

import specgen
from specgen.documents.method_statement.room_air import room_air
from specgen.documents.parts.voc import voc_table
from specgen.documents.parts.wording import Words
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH
from tests.good_spec import checked, good, put

CAN = "{{content: 500 g/L, reactivity: {reactivity}, factors: 2010, categories: [{{id: one, jurisdiction: {law}, category: {category}}}]}}"


def _with(puts: dict[str, str]) -> dict[str, Any]:
    spec = good()
    for path, value in puts.items():
        put(spec, path, value)
    return spec


def _spec(source: dict[str, Any], on: date) -> Spec:
    whole = checked(source, on).loaded.spec
    assert whole is not None
    return whole


def _told(source: dict[str, Any], on: date, rule: str, path: str) -> list[tuple[str, str]]:
    return [
        (entry.severity.value, entry.what)
        for entry in checked(source, on).report
        if (entry.id, entry.path) == (rule, path)
    ]


def _limit_printed(source: dict[str, Any], on: date) -> str:
    spec = _spec(source, on)
    (row,) = voc_table([spec.products["primer"]], on, Words.of(spec.project, ENGLISH)).rows
    return str(row[3]).replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("rule", "law", "category", "reactivity", "days", "printed", "told"),
    [
        pytest.param(
            "VOC003", "US-CA", "primer", "1.0",
            (date(2016, 12, 31), date(2017, 1, 1)),
            ("1.2 g O₃/g, in force since 2003-01-01", "0.7 g O₃/g, in force since 2017-01-01"),
            ([], [("error", "the reactivity of primer, 1 g O3/g, is above the 0.7 g O3/g of Primer")]),
            id="California",
        ),
        pytest.param(
            "VOC004", "US", "PCP", "1.3",
            (date(2027, 1, 16), date(2027, 1, 17)),
            ("1.2 g O₃/g", "cannot be assessed: the limit of Primers on 2027-01-17 was not read"),
            ([("warning", "the reactivity of primer, 1.3 g O3/g, is above the 1.2 g O3/g of Primers")], []),
            id="United States",
        ),
    ],
)  # fmt: skip
def test_reactivity_is_judged_by_the_limit_printed(
    rule: str,
    law: str,
    category: str,
    reactivity: str,
    days: tuple[date, date],
    printed: tuple[str, str],
    told: tuple[list[tuple[str, str]], ...],
) -> None:
    stated = CAN.format(reactivity=reactivity, law=law, category=category)
    source = _with({"project.jurisdictions": f"[{law}]", "products.primer.voc": stated})
    assert tuple(_limit_printed(source, on) for on in days) == printed
    assert tuple(_told(source, on, rule, "products.primer.voc.reactivity") for on in days) == told


def test_voc_content_has_no_limit_before_the_first() -> None:
    source, path = _with({"products.primer.voc.content": "850 g/L"}), "products.primer.voc.content"
    before, since = date(2006, 12, 31), date(2007, 1, 1)
    assert _limit_printed(source, before) == "cannot be assessed: no limit is known before 2007-01-01"
    assert _told(source, before, "VOC001", path) == []
    assert _limit_printed(source, since) == "840 g/L, in force since 2007-01-01"
    assert _told(source, since, "VOC001", path) == [
        ("error", "the VOC content of primer, 850 g/L, is above the limit of category e, 840 g/L")
    ]


def test_air_is_judged_by_the_limits_of_the_day() -> None:
    """The limit of the EU for diisocyanates is of 2024 and binds in the member states from 2026-04-09."""
    acetate = "{id: solvent, name: butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 70 %, density: 0.88 g/mL}"
    resin = "{id: solids, name: resin, kind: solids, mass_share: 30 %, density: 1.5 g/mL}"
    source = _with(
        {
            "project.jurisdictions": "[EU]",
            "jobs.refit.ventilation": "{room: 100 m3, flow: 9000 m3/h, spraying_rate: 700 g/h, mixing: 3}",
            "products.clear.composition": f"[{resin}, {acetate}]",
        }
    )
    missing, lines = [], []
    for on in (date(2026, 4, 8), date(2026, 4, 9)):
        clear = [
            what for _, what in _told(source, on, "AIR003", "jobs.refit.ventilation") if "ventilation for clear" in what
        ]
        missing.append([what.partition("missing: ")[2] for what in clear])
        spec = _spec(source, on)
        tables = room_air(spec.jobs["refit"], spec, on, Words.of(spec.project, ENGLISH), after=0).tables
        (merged,) = tables
        lines.append([row[1] for row in merged.rows if row[0].startswith("exposure limit, isocyanate")])
    assert missing == [["NCO"], ["NCO emission"]]
    assert lines[0] == []
    (since,) = lines[1]
    assert "OEL, EU, 8 h TWA, 0.01" in since


def test_nobody_judges_by_the_last_day_there_is() -> None:
    package = Path(specgen.__file__).parent
    using = {path.name for path in package.rglob("*.py") if "date.max" in path.read_text(encoding="utf-8")}
    # the policy of the register asks whether a year can be a year at all
    assert using == {"policy.py"}

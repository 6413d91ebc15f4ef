"""The report of a comparison as it is read: every part of it once, to be read in review like prose."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

from specgen.comparison.changes import Answer, Decision
from specgen.comparison.compare import compare
from specgen.findings import Place
from specgen.report import change_text
from tests.comparison.sides import RULES, changed, judged

GOLDEN = Path(__file__).parent / "golden/changes.txt"
SANDED = "preparations.sand-steel.steps.sand"


def test_report_is_as_expected(golden: Callable[[Path, str], None]) -> None:
    old = changed()
    new = changed(
        {
            "systems.cab.layers.primer.film.min": "1.5 mil",
            "systems.cab.layers.base.passes": "3",
            f"{SANDED}.acceptance": "No gloss at the edges.",
            f"{SANDED}.abrasive": "P240",
            "products.primer.hazards.statements": "[H222, H229, H319]",
            "products.primer.composition.solids.mass_share": "31 %",
            "products.barrier.film.nominal": "0.08 mm",
            "jobs.refit.items.STEP.area": "0.15 m2",
            "jobs.refit.climate.humidity": "45..70 %",
        },
        ["products.clear.hazards.cautions.training", "jobs.refit.inspection.prepared"],
    )
    new["jobs"][0]["items"][0]["id"] = "DOOR-L"
    first, second = judged(old), judged(new)
    fingerprint = next(
        change.fingerprint for change in compare(first, second).changes if change.path == f"{SANDED}.acceptance"
    )
    where = Place("decisions.yaml", 2, 6, 17)
    said = [
        Decision(fingerprint, Answer.RELAXED, "A. Body", "only the edges are looked at now", date(2026, 11, 25), where),
        Decision("0" * 16, Answer.NEUTRAL, "A. Body", "no longer there", date(2026, 11, 25), replace(where, line=3)),
    ]
    found = compare(
        replace(first, tables={"table comb": "1", "document ISO": "1"}),
        replace(second, tables={"table comb": "2", "document ISO": "1"}, unread=frozenset({("products", "base")})),
        decisions=said,
        concern_of_rule=RULES,
    )
    text = change_text.write(found, old="old", new="new", old_prefix="old/", new_prefix="new/")
    golden(GOLDEN, text.replace("\N{NO-BREAK SPACE}", " "))


def test_nothing_changed_is_one_line() -> None:
    found = compare(judged(changed()), judged(changed()))
    text = change_text.write(found, old="a", new="b", old_prefix="", new_prefix="")
    assert text == "a -> b: no value changed.\n"

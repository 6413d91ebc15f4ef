"""Mixtures whose classes were worked out by hand from the text of the law, each step written in `mixtures_by_hand.yaml` beside this."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.facts.product.harmonised import as_the_law_has_it
from specgen.facts.product.hazards import derive
from specgen.model.product import Product
from specgen.trade.acute_toxicity import acute_classes
from specgen.trade.hazard_class import Element
from specgen.trade.judged import Classified
from specgen.trade.mixture import mixture_classes
from tests.good_spec import good_with, spec_of

# Every scalar is text, as specgen itself reads it.
CASES: dict[str, Any] = yaml.load(
    (Path(__file__).parent / "mixtures_by_hand.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader
)


def _classes(named: list[str], limits: dict[str, str]) -> list[dict[str, str]]:
    found = []
    for number, text in enumerate(named):
        entry = dict(zip(("hazard_class", "category", "statement"), text.split("/"), strict=False))
        found.append({"id": f"class-{number}"} | entry | ({"limit": limits[text]} if text in limits else {}))
    return found


def product_of(case: dict[str, Any]) -> Product:
    """A product whose composition is that of the case."""
    lines = []
    for number, part in enumerate(case["holds"]):
        line = {"id": f"part-{number}", "name": part["name"], "kind": "solvent", "mass_share": part["share"]}
        known = {key: part[key] for key in ("cas", "adds_up") if key in part}
        classes = _classes(part.get("classes", []), part.get("limits", {}))
        lines.append(line | known | {"density": "1 g/mL"} | ({"classes": classes} if classes else {}))
    declared = _classes(case.get("declares", ["flammable_liquids/3"]), {})
    changes = {"products.primer.composition": lines, "products.primer.hazards.classification": declared}
    return spec_of(good_with(changes)).products["primer"]


def _named(found: Classified) -> str:
    return "/".join(part for part in (found.hazard_class, found.category, found.statement) if part)


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_mixture_by_hand(case: dict[str, Any]) -> None:
    product, on = product_of(case), date.fromisoformat(case.get("on", "2026-11-25"))
    found = mixture_classes("m", as_the_law_has_it(product, on))
    judged = [entry for entry in found if isinstance(entry, Classified)]
    assert [_named(entry) for entry in judged] == case["reaches"]
    assert [_named(entry) for entry in judged if not entry.source.basis.confirmed] == case.get("unconfirmed", [])
    if "acute" in case:
        acute = acute_classes("m", as_the_law_has_it(product, on))
        assert [_named(entry) for entry in acute] == case["acute"]
    if "named" in case:
        supplemental = derive(product, ["EU"], on).supplemental
        texts = [reason for e in supplemental if isinstance(e, Element) and e.code == "EUH208" for reason in e.reasons]
        assert list(dict.fromkeys(text.rsplit(", ", 2)[0] for text in texts)) == case["named"]


def test_every_case_names_its_clauses_and_steps() -> None:
    assert len(CASES) >= 20
    for name, case in CASES.items():
        assert case["document"].startswith("CLP"), name
        assert any(sign in case["steps"] for sign in "<>="), name

"""Figures of a product among those that moved: one of each group, and nothing that gives the maker's data back."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.comparison.changes import FigureMoved
from specgen.comparison.compare import compare
from specgen.comparison.edition import for_customer
from specgen.comparison.figures import figures_of_job
from specgen.report import change_json, change_text
from tests.comparison.sides import changed, judged
from tests.good_spec import ON, good, good_with, spec_of

LINES = "products.primer.composition"
STATED: dict[str, Any] = {
    "products.primer.voc": {"content": "615 g/L", "density": "0.883 g/mL"},
    f"{LINES}.solvent.name": "butyl acetate",
    f"{LINES}.solvent.cas": "123-86-4",
    f"{LINES}.solvent.classes": "[{id: drowsy, hazard_class: stot_single, category: '3', statement: H336}]",
    f"{LINES}.gas.cas": "74-98-6",
}


def _moved(puts: dict[str, Any], *, customer: bool = False) -> dict[str, FigureMoved]:
    found = compare(judged(changed(STATED)), judged(changed(STATED | puts)))
    return {entry.id: entry for entry in (for_customer(found) if customer else found).figures}


@pytest.mark.parametrize(
    ("path", "value", "figure", "was", "now"),
    [
        # 80 um over 50 % solids are 160 um wet; 10 times the solids over the film are 6.25 m2/L
        pytest.param("products.barrier.film.nominal", "90 um", "wet.barrier", "160 µm", "180 µm", id="comb"),
        pytest.param(
            "products.barrier.film.nominal", "90 um", "spreading.barrier", "6.25 m²/L", "5.56 m²/L", id="coverage"
        ),
        # 14 % of 400 mL and of 300 mL
        pytest.param("products.base.pack.fill", "300 mL", "solids.base", "56.0 mL", "42.0 mL", id="solids of a can"),
        # 70 % of 883 g/L and of 800 g/L
        pytest.param("products.primer.voc.density", "0.8 g/mL", "voc.primer", "618 g/L", "560 g/L", id="VOC"),
    ],
)
def test_a_figure_of_a_product_names_its_cause(path: str, value: str, figure: str, was: str, now: str) -> None:
    moved = _moved({path: value})[figure]
    assert (moved.old.replace("\N{NO-BREAK SPACE}", " "), moved.new.replace("\N{NO-BREAK SPACE}", " ")) == (was, now)
    assert moved.products == (path.split(".")[1],)
    assert (moved.causes, moved.makers_cause) == ((path,), False)


# Solids 29 % and solvent 41 % in place of 30 % and 40 %.
_RECIPE = {f"{LINES}.solids.mass_share": "29 %", f"{LINES}.solvent.mass_share": "41 %"}
# By hand: 618 to 627 g/L are 70 % and 71 % of 883; a share that stands alone is itself.
_BEHIND_THE_LABEL = {
    "primer.aerosol.flammable": ("70.0 %", "71.0 %"),
    "primer.mixture.stot_single_3_narcosis": ("40.00 %", "41.00 %"),
}


def test_figures_behind_the_label_are_told_to_the_maker_alone() -> None:
    whole, shown = _moved(_RECIPE), _moved(_RECIPE, customer=True)
    for figure, ends in _BEHIND_THE_LABEL.items():
        moved = whole[figure]
        assert (moved.old.replace("\N{NO-BREAK SPACE}", " "), moved.new.replace("\N{NO-BREAK SPACE}", " ")) == ends
        assert moved.products == ("primer",)
    assert whole["primer.aerosol.heat"].old != whole["primer.aerosol.heat"].new
    assert not [figure for figure in shown if figure.startswith("primer.")]
    # a result of several of the maker's figures is shown, with nothing of where it comes from
    voc = shown["voc.primer"]
    assert (voc.causes, voc.makers_cause) == ((), True)


def test_a_result_that_is_a_share_told_again_is_the_makers() -> None:
    water = {f"{LINES}.solvent.cas": "7732-18-5"}
    found = compare(
        judged(changed(STATED | water)),
        judged(changed(STATED | water | {f"{LINES}.gas.mass_share": "31 %", f"{LINES}.solids.mass_share": "29 %"})),
    )
    # water is taken out with two figures of the maker's beside the one of the gas: three in all
    assert "voc.primer" in {entry.id for entry in for_customer(found).figures}
    alone = {f"{LINES}.solvent.kind": "solids"}
    found = compare(
        judged(changed(STATED | alone)),
        judged(changed(STATED | alone | {f"{LINES}.gas.mass_share": "31 %", f"{LINES}.solids.mass_share": "29 %"})),
    )
    assert "voc.primer" in {entry.id for entry in found.figures}
    assert "voc.primer" not in {entry.id for entry in for_customer(found).figures}


def test_no_input_of_the_maker_reaches_a_customer() -> None:
    old, new = judged(changed(STATED)), judged(changed(STATED | _RECIPE))
    shown = for_customer(compare(old, new))
    assert shown.figures
    told = change_json.write(shown, old="A", new="B") + change_text.write(
        shown, old="A", new="B", old_prefix="", new_prefix=""
    )
    for text in ("butyl acetate", "123-86-4", "41 %", "41.00", "29 %", "mass_share", "narcosis"):
        assert text not in told.replace("\N{NO-BREAK SPACE}", " "), text


def test_voc_a_job_lets_off_moves_with_the_contents_of_its_packs() -> None:
    moved = _moved({"products.clear.voc.content": "680 g/L"})
    assert moved["voc.refit.clear"].jobs == ("refit",)
    assert moved["voc.refit.clear"].causes == ("products.clear.voc.content",)
    more = _moved({"jobs.refit.items.STEP.area": "20 m2"})
    assert "jobs.refit.items.STEP.area" in more["volume.refit.barrier"].causes


def test_a_product_that_is_gone_is_told_as_such_and_moves_no_figure() -> None:
    (clear,) = (entry for entry in good()["products"] if entry["id"] == "clear")
    more = changed()
    more["products"].append(clear | {"id": "spare"})
    assert "products.spare" in {change.path for change in compare(judged(more), judged(changed())).changes}
    assert compare(judged(more), judged(changed())).figures == ()


def test_the_air_for_one_vapour_is_the_makers_and_the_air_for_all_is_not() -> None:
    changes = {
        "jobs.refit.items": "[{id: STEP, name: Step, count: 4, area: 0.12 m2, system: chassis}]",
        "jobs.refit.system": "chassis",
        "products.barrier.composition": "[{id: resin, name: resin, kind: solids, mass_share: 70 %, density: 1.4 g/mL}, "
        "{id: acetate, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 30 %, density: 0.88 g/mL}]",
        "jobs.refit.ventilation": "{room: 60 m3, flow: 2000 m3/h, spraying_rate: 1000 g/h, mixing: 3}",
    }
    spec = spec_of(good_with(changes))
    found = figures_of_job(spec.jobs["refit"], spec, ON)
    air = {figure for figure in found.shown if figure.startswith("air.")}
    of_all = {figure for figure in air if figure.endswith((".needed", ".longest"))}
    assert of_all
    assert found.makers == air - of_all != set()


@pytest.mark.parametrize(
    ("figure", "old", "new", "listed"),
    [
        ("comb.primer", "1 mm", "2 mm", True),
        ("comb.primer", "", "2 mm", False),
        ("comb.primer", "1 mm", "", False),
        ("packs.refit.primer", "", "2 cans", True),
    ],
)
def test_a_figure_that_came_or_went_is_listed_only_where_it_is_an_order(
    figure: str, old: str, new: str, listed: bool
) -> None:
    assert FigureMoved(figure, "figure", old, new, ("refit",), (), ("MS-001",), ()).is_listed is listed

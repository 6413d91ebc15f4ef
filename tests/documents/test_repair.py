"""Old paint in the section on preparation: what is drawn, with which widths, and what is masked."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.documents.method_statement.old_coats import RepairView
from specgen.documents.method_statement.view import MethodStatement
from tests.documents.conftest import views_of
from tests.good_spec import good, put, spec_of

NB = "\N{NO-BREAK SPACE}"
PRINCIPLE = "Repair edge, schematic: the source data state no widths, so none are shown."
STATED = "Repair edge, not to scale. Widths shown are minimum widths."


def _repairs(**changes: str) -> tuple[RepairView, ...]:
    spec: dict[str, Any] = good()
    put(spec, "jobs.refit.items.DOOR.old_coats", "[{id: a, family: oil_alkyd, thickness: 80 um, condition: sound}, {id: b}]")  # fmt: skip
    for path, value in changes.items():
        put(spec, path.replace("__", "."), value)
    view = views_of(spec_of(spec))["method_statement_refit"]
    assert isinstance(view, MethodStatement)
    return view.builds[0].repairs


def test_items_without_old_coats_have_none() -> None:
    assert _repairs(jobs__refit__items__DOOR__old_coats="[]") == ()


def test_old_paint_that_is_sanded_over_has_no_edge() -> None:
    (repair,) = _repairs(jobs__refit__items__DOOR__masked="[{id: lock, what: lock face}, {id: seal, what: seal, area: 0.1 m2}]")  # fmt: skip
    assert repair == RepairView(
        items="DOOR Door skin",
        stays=True,
        old_coats=(f"alkyd, drying oil, 80{NB}µm (3.1{NB}mil), sound", "existing coating, type unknown"),
        steps=repair.steps,
        masked=("lock face", f"seal, 0.1{NB}m²"),
        section="",
        caption="",
        drawn_above="",
    )


@pytest.mark.parametrize(
    ("changes", "caption", "said", "unsaid"),
    [
        (
            {
                "preparations__sand-steel__steps__sand": "{id: sand, do: feather-edge, text: Grind back., abrasive: P180}"
            },
            PRINCIPLE,
            ["one ring per coat", "C: sound existing coating abraded matt<", "1 primer – 3 clearcoat"],
            ["at least"],
        ),
        (
            {"jobs__refit__items__DOOR__repair": "{feather: 20 mm, lap: 1 in}"},
            STATED,
            [f"each at least 20{NB}mm wide", f"at least 1{NB}in beyond B", "C: sound existing coating abraded matt<"],
            ["one ring per coat<"],
        ),
        (
            {"jobs__refit__items__DOOR__repair": "{sanded: 60 mm}"},
            STATED,
            [f"abraded matt, at least 60{NB}mm wide", "one ring per coat"],
            ["beyond B"],
        ),
    ],
)
def test_edge(changes: dict[str, str], caption: str, said: list[str], unsaid: list[str]) -> None:
    (repair,) = _repairs(**changes)
    assert repair.caption == caption
    assert [text for text in said if text not in repair.section] == []
    assert [text for text in unsaid if text in repair.section] == []


def test_items_alike_share_an_entry() -> None:
    flap = "{id: FLAP, name: Flap, count: 1, area: 1 m2, old_coats: [{id: a, family: oil_alkyd, thickness: 80 um, condition: sound}, {id: b}], masked: [{id: h, what: hinge}]}"
    (repair,) = _repairs(jobs__refit__items__FLAP=flap)
    assert (repair.items, repair.masked) == ("DOOR Door skin, FLAP Flap", ("FLAP: hinge",))


def test_same_edge_is_drawn_once() -> None:
    first, second = _repairs(
        jobs__refit__items__DOOR__repair="{feather: 20 mm, lap: 30 mm}",
        jobs__refit__items__FLAP="{id: FLAP, name: Flap, count: 1, area: 1 m2, repair: {feather: 20 mm, lap: 30 mm}, old_coats: [{id: a, family: oil_alkyd, thickness: 80 um, condition: dull}, {id: b}]}",
    )
    assert (first.drawn_above, second.section, second.caption) == ("", "", "")
    assert second.drawn_above == first.items == "DOOR Door skin"
    assert first.section.startswith("<svg ")


def test_an_edge_is_drawn_where_the_same_edge_was_drawn() -> None:
    """Not above the first edge of all, which has other widths."""
    flap = "{{id: {0}, name: {0}, count: 1, area: 1 m2, repair: {{feather: 40 mm, lap: 50 mm}}, old_coats: [{{id: a, family: oil_alkyd, thickness: 80 um, condition: {1}}}, {{id: b}}]}}"
    views = _repairs(
        jobs__refit__items__DOOR__repair="{feather: 20 mm, lap: 30 mm}",
        jobs__refit__items__FLAP=flap.format("FLAP", "sound"),
        jobs__refit__items__STEP=flap.format("STEP", "dull"),
    )
    assert [view.drawn_above for view in views] == ["", "", "STEP STEP"]

"""The label code by code: what is declared, what follows, and where each precaution goes."""

from __future__ import annotations

import re
from datetime import date
from typing import Any

from specgen.facts.product.label import Label, LabelCode, Place, label_of_product
from tests.good_spec import good_with, spec_of

# Flammable, irritating and sensitising: more precautions follow than the six of a label.
CLASSES = (
    "[{id: can, hazard_class: aerosols, category: '1'}, {id: eyes, hazard_class: eye_damage, category: '2'}, "
    "{id: skin, hazard_class: skin_sensitisation, category: '1'}]"
)


def _label(product: str, changes: dict[str, Any], without: tuple[str, ...] = ()) -> Label:
    spec = spec_of(good_with(changes, without))
    return label_of_product(spec.products[product], spec, date(2026, 2, 1))


def _places(label: Label) -> dict[str, Place | None]:
    return {entry.code: entry.place for entry in label.precautions}


def _codes(entries: tuple[LabelCode, ...]) -> list[tuple[str, bool, bool]]:
    return [(entry.code, entry.declared, entry.ground is not None) for entry in entries]


def test_each_precaution_has_its_place() -> None:
    stated = "[P210, P251, P261, P271, P280, P302+P352, P410+P412]"
    label = _label(
        "base", {"products.base.hazards.classification": CLASSES, "products.base.hazards.precautions": stated}
    )
    places = _places(label)
    assert label.printed_precautions == tuple(code for code, place in places.items() if place is Place.LABEL)
    assert len(label.printed_precautions) == 6
    # declared and asked for, but ranked behind the six that are declared
    assert places["P211"] is Place.NOT_DECLARED
    # no class of this product asks for it
    assert places["P271"] is Place.NOT_ASKED_FOR
    beyond = next(entry for entry in label.precautions if entry.place is Place.BEYOND)
    assert re.fullmatch(r"rank \d", beyond.note)


def test_a_declared_precaution_without_room_is_told_so() -> None:
    """Six that no class asks for leave none for the seventh; where nothing can be judged all have room."""
    stated = "[P102, P103, P201, P202, P220, P222, P223]"
    free = {"products.base.hazards.precautions": stated}
    label = _label("base", free | {"products.base.hazards.classification": "[]"})
    assert set(_places(label).values()) == {Place.LABEL}
    assert len(label.printed_precautions) == 7
    judged = _label("base", free | {"products.base.hazards.classification": CLASSES})
    assert len(judged.printed_precautions) == 6
    assert _places(judged)["P223"] is Place.NOT_ASKED_FOR


def test_what_gives_way_is_told_with_what_it_gives_way_to() -> None:
    """P260, of repeated exposure, says more than P261, of the sensitiser; seven are declared and six have room."""
    classes = CLASSES.replace("eye_damage", "stot_repeated")
    stated = "[P261, P210, P211, P251, P410+P412, P260, P280]"
    label = _label(
        "base", {"products.base.hazards.classification": classes, "products.base.hazards.precautions": stated}
    )
    (gone,) = [entry for entry in label.precautions if entry.place is Place.REDUNDANT]
    assert (gone.code, gone.declared, gone.note) == ("P261", True, "P260 makes it redundant")
    assert "P261" in {element.code for element in label.left_out}


def test_codes_that_follow_stand_after_those_declared() -> None:
    changes = {
        "products.base.hazards.classification": CLASSES,
        "products.base.hazards.statements": "[H336, H229]",
        "products.base.hazards.pictograms": "[GHS07, GHS05]",
    }
    label = _label("base", changes)
    assert _codes(label.pictograms) == [("GHS02", False, True), ("GHS05", True, False), ("GHS07", True, True)]
    assert _codes(label.statements) == [
        ("H336", True, False),
        ("H229", True, True),
        ("H222", False, True),
        ("H317", False, True),
        ("H319", False, True),
    ]
    assert label.signal_word is not None
    assert label.signal_word.ground is not None


def test_a_ground_that_names_the_contents_is_the_makers() -> None:
    codes = {code: LabelCode(code, True, None).held_by_maker for code in ("H222", "P210", "EUH204", "EUH205", "EUH208")}
    assert codes == {"H222": False, "P210": False, "EUH204": False, "EUH205": False, "EUH208": True}


def test_without_hazards_there_is_no_label() -> None:
    label = _label("base", {}, ("products.base.hazards",))
    assert label == Label(None, (), (), (), (), ())

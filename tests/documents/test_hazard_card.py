"""The hazard card: one side, the gravest first, room for the climate kept."""

from __future__ import annotations

import io
from typing import Any

import pypdf
import pytest

from specgen.checking import Checked
from specgen.documents.hazard_card.view import CUTS, Cut, HazardCard, hazard_card
from specgen.documents.parts.cautions import chemical_hazards
from specgen.documents.registry import KINDS
from specgen.model.spec import Spec
from specgen.printing.documents import print_documents
from specgen.printing.fit import fitted
from specgen.rendering.failure import RenderError, TooLongError
from tests.documents.conftest import context
from tests.good_spec import checked, good, good_with, put, spec_of, take_out


def _said(node: Any) -> list[str]:
    """The texts that stand for drawings in the structure of a PDF."""
    found = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(found, list):
        return [said for part in found for said in _said(part)]
    if not isinstance(found, dict):
        return []
    own = [str(found["/Alt"])] if "/Alt" in found else []
    return own + _said(found.get("/K"))


def _card(spec: Spec, cut: Cut = CUTS[0]) -> HazardCard:
    return hazard_card(spec.jobs["refit"], context(spec), [cut])


def _spec(changes: dict[str, str]) -> Spec:
    return spec_of(good_with(changes))


def test_six_things_that_hurt_the_gravest_first() -> None:
    card = _card(_spec({"products.base.hazards.statements": "[H222, H229, H319, H336, H350]"}))
    assert [codes for _, codes in card.hurts] == [
        "EUH204",
        "H350",
        "H222, H226",
        "H229",
        "H317, EUH205",
        "H336",
    ]
    assert card.more is True


def test_the_card_keeps_air_on_until_the_booth_is_cleared() -> None:
    worn = [row[:2] for row in _card(_spec({})).wear.rows]
    assert worn[-1] == ("Spraying, Clean-up\nExample clear", "air-fed half mask, EN 14594")


def test_oxidative_paint_hurts_by_its_rags() -> None:
    simple = {
        f"products.{product}.hazards.{key}": value
        for product in ("primer", "base", "clear", "barrier")
        for key, value in {"statements": "[H222, H229]", "supplemental": "[]"}.items()
    }
    card = _card(_spec(simple | {"products.base.curing": "oxidative"}))
    assert [text.split(":")[0] for text, _ in card.hurts] == [
        # of the clear, which holds isocyanate whatever it declares
        "Spray mist can cause permanent asthma",
        "Flammable",
        "Pressurised, may burst",
        "Soaked rags can self-heat and catch fire",
    ]
    assert card.more is False


def test_room_for_the_climate_is_kept() -> None:
    source: dict[str, Any] = good()
    take_out(source, "jobs.refit.climate")
    card = _card(spec_of(checked(source)))
    assert card.climate == (
        ("Air temperature", ""),
        ("Surface temperature", ""),
        ("Relative humidity", ""),
        ("Surface above dew point", ""),
    )


def test_breathing_protection_is_never_cut() -> None:
    spec = _spec({})
    whole, cut = _card(spec), _card(spec, CUTS[-1])
    assert [column.heading for column in whole.wear.columns] == ["Task", "Respiratory", "Hands", "Eyes", "Body"]
    assert [column.heading for column in cut.wear.columns] == ["Task", "Respiratory"]
    assert [row[:2] for row in whole.wear.rows] == list(cut.wear.rows)
    assert cut.wear_cut is True
    assert (cut.hurts, cut.climate, cut.first_aid) == (whole.hurts, whole.climate, whole.first_aid)


def test_the_mildest_cut_that_fits_is_taken() -> None:
    tried: list[str] = []

    def write(card: HazardCard) -> bytes:
        tried.append(f"{card.size} {card.wear_cut}")
        # a card in close type without what hands and eyes wear takes more room than one in tight type with it
        if card.size != "tight":
            raise TooLongError("two pages")
        return f"{card.size} {card.wear_cut}".encode()

    assert _fitted(write) == b"tight False"
    assert tried == ["large False", "plain False", "close False", "tight False"]


def test_a_card_that_never_fits_says_what_to_do() -> None:
    def write(card: HazardCard) -> bytes:
        raise TooLongError("two pages")

    with pytest.raises(RenderError) as refused:
        _fitted(write)
    assert str(refused.value) == (
        "The hazard card of the job refit does not fit on one side of A4, not even cut as far as it may be. "
        "Shorten protection and first aid of its products, or divide the work into two jobs."
    )


def _fitted(write: Any) -> bytes:
    spec, kind = _spec({}), KINDS["hazard-card"]
    assert kind.sides is not None
    return fitted(kind, kind.sides, spec.jobs["refit"], context(spec), write)


@pytest.mark.parametrize("page", ["A4", "Letter"])
def test_it_is_printed_on_one_side(page: str) -> None:
    source: dict[str, Any] = good()
    put(source, "project.page_size", page)
    put(source, "project.emergency_phone", "'+00 999'")
    result: Checked = checked(source)
    printed = print_documents(result, documents=["hazard-card"])
    (data,) = printed.values()
    reader = pypdf.PdfReader(io.BytesIO(data))
    (side,) = reader.pages
    text = side.extract_text()
    # a pictogram says what it shows to who cannot see it
    assert [said for said in _said(reader.trailer["/Root"]["/StructTreeRoot"]) if "Pictogram" in said] == [
        "Pictogram: flame (GHS02)",
        "Pictogram: exclamation mark (GHS07)",
    ]
    assert list(printed) == ["MS-001-hazard-card.pdf"]
    assert "In an emergency, call: +00 999" in text
    assert "Danger" in text


def test_a_cleaner_puts_its_signal_word_and_pictograms_on_the_card_and_has_a_panel_of_its_own() -> None:
    wipe = "[{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225, H304, H336], gloves: nitrile 0.4 mm, safety_data_sheet: {number: SDS-7}}, {id: tape, what: tape, amount: 2 rolls, kind: masking}]"
    spec = _spec({"jobs.refit.consumption.supplies": wipe})
    (panel,) = chemical_hazards(spec.jobs["refit"], context(spec).words)
    assert (panel.product, panel.signal_word, panel.data_sheets) == ("degreaser EX-7", "Danger", ("SDS-7",))
    assert [drawn.code for drawn in panel.pictograms] == ["GHS02", "GHS07", "GHS08"]
    assert [said.code for said in panel.statements] == ["H225", "H304", "H336"]
    before, after = _card(_spec({})), _card(spec)
    assert {drawn.code for drawn in after.pictograms} - {drawn.code for drawn in before.pictograms} == {"GHS08"}


def test_the_graver_signal_word_is_that_of_the_card() -> None:
    mild = {f"products.{key}.hazards.signal_word": "Warning" for key in ("primer", "base", "clear", "barrier")}
    thin = "[{id: thin, what: thinner EX-900, amount: 1 L, kind: thinner, statements: [H225]}]"
    assert _card(_spec(mild)).signal_word == "Warning"
    assert _card(_spec(mild | {"jobs.refit.consumption.supplies": thin})).signal_word == "Danger"

"""Pages say nothing that nobody stated: no figure under another name, no interval that is not there, no paper on a blasted tank."""

from __future__ import annotations

from typing import Any

from specgen.documents.method_statement.view import MethodStatement
from specgen.facts.pairs.old_paint import pass_limits
from specgen.printing.documents import print_documents
from tests.documents.conftest import views_of
from tests.good_spec import checked, good_with, spec_of

NB = "\N{NO-BREAK SPACE}"
JOB = "method_statement_refit"


def _views(changes: dict[str, Any] | None = None, without: tuple[str, ...] = ()) -> dict[str, Any]:
    return views_of(spec_of(checked(good_with(changes, without))))


def _statement(changes: dict[str, Any] | None = None, without: tuple[str, ...] = ()) -> MethodStatement:
    view = _views(changes, without)[JOB]
    assert isinstance(view, MethodStatement)
    return view


def _page(kind: str, changes: dict[str, Any] | None = None, without: tuple[str, ...] = (), at: int = 0) -> str:
    """One document of a kind as HTML."""
    files = print_documents(checked(good_with(changes, without)), documents=(kind,), formats=("html",))
    return list(files.values())[at].decode()


def _plain(text: str) -> str:
    return text.replace(NB, " ")


def _repair(view: MethodStatement) -> tuple[list[str], list[str]]:
    """The steps of the first repair and the abrasives of its table."""
    (repair, *_) = view.repairs
    at = [column.heading for column in repair.coats.columns].index("Final abrasive")
    return [step.text for step in repair.steps], [row[at] for row in repair.coats.rows]


def test_a_blasted_part_is_not_repaired_with_the_papers_of_a_vehicle_body() -> None:
    blasted = {"preparations.sand-steel.steps": "[{id: blast, do: blast, text: Blast., grade: Sa 2 1/2}]"}
    remedy = "products.primer.overcoat.any-warm.if_exceeded"
    steps, papers = _repair(_statement(blasted, (remedy,)))
    assert papers == ["as in the surface preparation", "abraded to an even matt", "abraded to an even matt"]
    assert [text for text in steps if "with P" in text] == []
    # what the author names himself is printed all the same
    _, papers = _repair(_statement(blasted | {"systems.cab.layers.primer.abraded_with": "P400"}))
    assert papers[1] == "P400"
    steps, papers = _repair(_statement())
    assert len([text for text in steps if "with P" in text]) == 2
    assert all(paper.startswith("P") for paper in papers)


def test_a_drawing_says_which_film_it_is_drawn_from() -> None:
    nominal = _statement().builds[0]
    assert nominal.section_caption == "Section through system A at nominal DFT. Thickness to scale, width not to scale."
    changed = {"systems.cab.layers.primer.film": "{min: 40 um, max: 80 um}"}
    without = ("products.primer.film.nominal",)
    limit = _statement(changed, without).builds[0]
    assert "max. DFT 80 µm" in _plain(limit.section)
    assert limit.section_caption.startswith(
        "Section through system A, coats without a nominal DFT drawn at the limit shown."
    )


def test_a_coat_is_not_counted_as_a_cross_coat() -> None:
    table = _statement().builds[0].coats
    at = [column.heading for column in table.columns].index("Application")
    wet = [column.heading for column in table.columns].index("WFT by comb gauge")
    assert table.rows[0][at].split(",")[0].endswith(" cross coats")
    assert table.rows[0][wet].endswith("per cross coat")
    one = _statement({"systems.cab.layers.primer.coats": "1"}, ("systems.cab.layers.primer.passes",)).builds[0].coats
    assert one.rows[0][at].split(",")[0] == "1 coat"
    assert one.rows[0][wet].endswith("per coat")


def _after_primer(view: MethodStatement) -> str:
    return " ".join(step.text for step in view.builds[0].between[0].steps)


def test_no_interval_is_spoken_of_that_is_not_stated() -> None:
    own, product = "systems.cab.layers.primer.overcoat_interval", "products.primer.overcoat"
    assert "30 min to 24 h after the last cross coat of 1 primer" in _plain(_after_primer(_statement()))
    # the job goes down to 15 degC: what the product states for 20 degC would be printed as if it held
    for view in (_statement(without=(own,)), _statement(without=(own, product))):
        assert "interval" not in _after_primer(view)
    cold = {product: "[{id: any, next_coat: any, interval: 60 min..24 h, air: 10 degC}]"}
    of_product = "60 min to 24 h after the last cross coat of 1 primer, as its product data state for 10 °C"
    assert of_product in _plain(_after_primer(_statement(cold, (own,))))


def test_an_annex_with_withheld_inputs_does_not_promise_that_all_can_be_calculated_again() -> None:
    promise, told = "Each result can be recalculated by hand", "cannot be recalculated from this document"
    withheld, open_to_all = _page("method-statement"), _page("data-sheet", at=3)
    assert ("inputs withheld" in withheld, promise in withheld, told in withheld) == (True, False, True)
    assert ("inputs withheld" in open_to_all, promise in open_to_all, told in open_to_all) == (False, True, False)


def test_a_class_of_a_test_is_that_or_better() -> None:
    assert "or rating 4A or better (method A) or 4B or better (method B)" in pass_limits()

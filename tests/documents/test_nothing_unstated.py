"""Pages say nothing that nobody stated: no figure under another name, no interval that is not there, no paper on a blasted tank."""

from __future__ import annotations

import re
from typing import Any

import pytest

from specgen.checking import Checked
from specgen.documents.data_sheet.goes_over import goes_over
from specgen.documents.method_statement.view import MethodStatement
from specgen.documents.parts.issue_block import IssueView
from specgen.documents.parts.wording import Words
from specgen.documents.registry import KINDS
from specgen.facts.pairs.old_paint import pass_limits
from specgen.findings import Severity
from specgen.printing.documents import print_documents
from specgen.rendering.environment import fill
from specgen.trade.combustion import Content, heat_of_combustion
from specgen.trade.given import Given
from specgen.units.locale import ENGLISH
from specgen.units.quantity import Quantity
from tests.documents.conftest import context, views_of
from tests.good_spec import checked, good, good_with, spec_of

NB = "\N{NO-BREAK SPACE}"
JOB = "method_statement_refit"


def _views(changes: dict[str, Any] | None = None, without: tuple[str, ...] = ()) -> dict[str, Any]:
    return views_of(spec_of(good_with(changes, without)))


def _statement(changes: dict[str, Any] | None = None, without: tuple[str, ...] = ()) -> MethodStatement:
    view = _views(changes, without)[JOB]
    assert isinstance(view, MethodStatement)
    return view


def printed_of(spec: Checked, kind: str) -> dict[str, str]:
    return {name: page.decode() for name, page in print_documents(spec, documents=(kind,), formats=("html",)).items()}


def _page(kind: str, changes: dict[str, Any] | None = None, without: tuple[str, ...] = (), at: int = 0) -> str:
    """One document of a kind as HTML."""
    return list(printed_of(checked(good_with(changes, without)), kind).values())[at]


def _plain(text: str) -> str:
    return text.replace(NB, " ")


def _repair(view: MethodStatement) -> tuple[list[str], list[str]]:
    """The steps of repair for the first system and the abrasives of its table."""
    assert view.repair is not None
    coats = view.repair.coats[0]
    at = [column.heading for column in coats.columns].index("Final abrasive")
    lines = [line for step in view.repair.steps for line in step.text.split("\n")]
    # those of the first system and those of all
    return [line for line in lines if not line.startswith("System B")], [row[at] for row in coats.rows]


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
    assert nominal.section_caption == "Section through system A at nominal DFT, to scale."
    changed = {"systems.cab.layers.primer.film": "{min: 40 um, max: 80 um}"}
    without = ("products.primer.film.nominal",)
    limit = _statement(changed, without).builds[0]
    assert "max. DFT 80 µm" in _plain(limit.section)
    assert limit.section_caption.startswith(
        "Section through system A, coats without a nominal DFT drawn at the limit shown;"
    )


def test_a_coat_is_not_counted_as_a_cross_coat() -> None:
    table = _statement().builds[0].coats
    at = [column.heading for column in table.columns].index("Application")
    wet = [column.heading for column in table.columns].index("WFT per cross coat")
    assert table.rows[1][at].split(",")[0].endswith(" cross coats")
    one = _statement({"systems.cab.layers.primer.coats": "1"}, ("systems.cab.layers.primer.passes",)).builds[0].coats
    assert one.rows[1][at].split(",")[0] == "1 coat"
    assert one.columns[wet].heading == "WFT"
    assert [row[wet].partition("\n")[2] for row in one.rows[1:4]] == ["per coat", "per cross coat", "per cross coat"]


def _after_primer(view: MethodStatement) -> str:
    return " ".join(step.text for step in view.builds[0].between[0].steps)


def test_no_interval_is_spoken_of_that_is_not_stated() -> None:
    own, product = "systems.cab.layers.primer.overcoat_interval", "products.primer.overcoat"
    assert "30 min to 24 h after the last cross coat of 1 primer" in _plain(_after_primer(_statement()))
    # the job goes down to 15 degC: what the product states for 20 degC would be printed as if it held
    warm = {product: "[{id: any, next_coat: any, interval: 30 min..24 h, air: 20 degC}]"}
    for view in (_statement(warm, (own,)), _statement(without=(own, product))):
        assert "interval" not in _after_primer(view)
    cold = {product: "[{id: any, next_coat: any, interval: 60 min..24 h, air: 10 degC}]"}
    of_product = "at least 60 min at 10 °C (50 °F), maximum not stated for 25 °C (77 °F), counted from the last cross coat of 1 primer"
    assert of_product in _plain(_after_primer(_statement(cold, (own,))))
    hot = {
        product: "[{id: cold, next_coat: any, interval: 60 min..24 h, air: 10 degC}, {id: hot, next_coat: any, interval: 20 min..16 h, air: 25 degC}]"
    }
    both = (
        "at least 60 min at 10 °C (50 °F), at most 16 h at 25 °C (77 °F), counted from the last cross coat of 1 primer"
    )
    assert both in _plain(_after_primer(_statement(hot, (own,))))
    wide = {product: "[{id: any, next_coat: any, interval: min 60 min, air: 10 degC}]"}
    open_end = "at least 60 min after the last cross coat of 1 primer, as its product data state for 10 °C"
    assert open_end in _plain(_after_primer(_statement(wide, (own,))))


def test_an_annex_with_withheld_inputs_does_not_promise_that_all_can_be_calculated_again() -> None:
    promise, told = "Each result can be recalculated by hand", "cannot be recalculated from this document"
    withheld, open_to_all = _page("method-statement"), _page("data-sheet", at=3)
    assert ("inputs withheld" in withheld, promise in withheld, told in withheld) == (True, False, True)
    assert ("inputs withheld" in open_to_all, promise in open_to_all, told in open_to_all) == (False, True, False)


def test_a_class_of_a_test_is_that_or_better() -> None:
    assert "or rating 4A or better (method A) or 4B or better (method B)" in pass_limits()


HEADING = re.compile(r"<h([2-5])[^>]*>(.*?)</h\1>\s*(?=<(h[1-5]|/section|/main))(?!<h[3-5])", re.DOTALL)


def test_a_heading_over_nothing_is_seen() -> None:
    assert HEADING.findall("<section><h2>Empty</h2> </section><h2>Full</h2><p>a</p>")[0][1] == "Empty"
    assert len(HEADING.findall("<h2>A</h2><h2>B</h2><p>a</p>")) == 1


NO_INTERVALS = (
    "preparations.sand-steel.coat_within",
    "systems.cab.handle_after",
    "systems.cab.service_after",
    "systems.cab.layers.primer.overcoat_interval",
    "systems.cab.layers.base.overcoat_interval",
)
NO_STORAGE = ("products.primer.shelf_life", "products.primer.overcoat", "products.barrier.shelf_life")


@pytest.mark.parametrize("kind", ["method-statement", "data-sheet", "label-sheet", "range-overview", "order-list"])
@pytest.mark.parametrize("without", [(), NO_INTERVALS, NO_STORAGE], ids=["all", "no intervals", "little on a product"])
def test_no_heading_stands_over_nothing(kind: str, without: tuple[str, ...]) -> None:
    spec = checked(good_with({}, without))
    for name, view in printed_of(spec, kind).items():
        assert [found[1] for found in HEADING.findall(view)] == [], name


def test_generic_overcoating_tables_are_printed_only_where_the_author_asks() -> None:
    caption = "Suitability over existing coatings and metals"
    control = "{number: DS-9, title: Example primer, owner: Desk%s}"
    assert caption not in _page("data-sheet")
    assert caption not in _page("data-sheet", {"products.primer.document": control % ""})
    assert caption in _page("data-sheet", {"products.primer.document": control % ", add: [generic-overcoating]"})


def test_a_pair_that_the_manufacturer_states_is_not_called_not_recommended() -> None:
    given = {
        "products.base.binder": "nitrocellulose",
        "products.base.overcoat": "[{id: clear, next_coat: clear, interval: 20 min..24 h, air: 20 degC}]",
    }

    def refused(changes: dict[str, Any]) -> str:
        spec = spec_of(good_with(given | changes))
        table = goes_over(spec.products["clear"], spec, Words.of(spec.project, ENGLISH)).table
        return " ".join(row[1] for row in table.rows if row[0] == "Not recommended")

    assert "nitrocellulose" not in refused({})
    # stated for any coat it is no statement on this pair: the tables speak
    anyone = "[{id: any, next_coat: any, interval: 20 min..24 h, air: 20 degC}]"
    assert "nitrocellulose" in refused({"products.base.overcoat": anyone})


LEAVES = {
    "repair": "Repair of the new coating",
    "defects": "Coating defects and remedies",
    "materials": "Materials to order",
    "drawings": "Section through system A",
}


@pytest.mark.parametrize("section", LEAVES)
def test_a_section_is_left_out_by_its_name_and_the_page_says_so(section: str) -> None:
    whole, cut = _page("method-statement"), _page("method-statement", {"jobs.refit.document.leave_out": f"[{section}]"})
    assert LEAVES[section] in whole
    assert LEAVES[section] not in cut
    assert "Sections left out by the author:" in cut
    assert "Sections left out" not in whole
    for kept in ("<h2>Safety</h2>", "HOLD POINT", "Waivers and document control", "In an emergency"):
        assert (kept in cut) == (kept in whole)


@pytest.mark.parametrize(
    ("project", "document", "place"),
    [(None, None, "annex"), (None, "none", "none"), ("none", None, "none"), ("none", "annex", "annex"), ("apart", None, "apart"), (None, "apart", "apart")],
)  # fmt: skip
@pytest.mark.parametrize("name", ["method_statement_refit", "data_sheet_base"])
def test_calculations_stand_where_the_author_wants_them(
    name: str, project: str | None, document: str | None, place: str
) -> None:
    changes: dict[str, object] = {} if project is None else {"project.calculations": project}
    if document is not None:
        changes["jobs.refit.document.calculations"] = document
        changes["products.base.document"] = f"{{number: DS-base, title: Base, owner: Desk, calculations: {document}}}"
    kind = KINDS["method-statement" if name.startswith("method") else "data-sheet"]
    page = fill(kind.template, language="en", medium="screen", view=_views(changes)[name], draft=True)
    apart = kind.apart(_views(changes)[name]) if kind.apart else None
    assert ("Annex: calculations" in page) == (place == "annex")
    # a number that leads nowhere does not stand in the text
    if place == "none":
        assert re.search(r"\bW\d+\b", page) is None
    assert (apart is not None) == (place == "apart")
    assert ("in a file of their own" in page) == (place == "apart")
    if apart is not None:
        annexed = _views({})[name].workings
        assert [line.number for line in apart.workings] == [line.number for line in annexed]
        assert apart.file in page


@pytest.mark.parametrize("section", ["safety", "inspection", "waivers", "emergency", "document-control"])
def test_what_protects_cannot_be_left_out(section: str) -> None:
    told = checked(good_with({"jobs.refit.document.leave_out": f"[{section}]"})).report
    assert [one.path for one in told if one.severity is Severity.ERROR] == ["jobs.refit.document.leave_out.[0]"]


@pytest.mark.parametrize("name", ["method_statement_refit", "data_sheet_primer"])
def test_an_issued_page_gives_one_reason_for_change(name: str) -> None:
    control = "{number: DS-9, title: Example primer, owner: Desk, reason_for_change: as the author wrote}"
    changes = {"products.primer.document": control, "jobs.refit.document.reason_for_change": "as the author wrote"}
    kind = KINDS["method-statement" if name.startswith("method") else "data-sheet"]
    issue = IssueView(
        revision="B",
        issued="2026-11-25",
        reason="as it was issued",
        approvals=(),
        fingerprint="1a",
        code="<svg ></svg>",
    )
    spec = spec_of(good_with(changes))
    subject = spec.jobs["refit"] if kind.about == "job" else spec.products["primer"]
    pages = [
        fill(
            kind.template,
            language="en",
            medium="screen",
            view=kind.view(subject, context(spec, issue=issued)),
            draft=issued is None,
            issue=issued,
        )
        for issued in (None, issue)
    ]
    assert [(page.count("as the author wrote"), page.count("as it was issued")) for page in pages] == [(1, 0), (0, 1)]


def test_a_heat_of_combustion_with_unknown_parts_is_said_to_be_at_least_that() -> None:
    known = [
        Content("gas", Given(Quantity.of("share", 40, "%"), "x"), True, Given(Quantity.of("heat", 28, "kJ/g"), "x"))
    ]
    unknown = Content("resin", Given(Quantity.of("share", 60, "%"), "y"))
    assert heat_of_combustion("a.heat", [*known, unknown]).name == "heat of combustion, at least"
    whole = Content(
        "solvent", Given(Quantity.of("share", 60, "%"), "y"), True, Given(Quantity.of("heat", 20, "kJ/g"), "y")
    )
    assert heat_of_combustion("a.heat", [*known, whole]).name == "heat of combustion"


def test_the_law_of_the_exposure_limits_is_told_where_nobody_chose_it() -> None:
    air = {"jobs.refit.ventilation": "{room: 100 m3, flow: 9000 m3/h, spraying_rate: 700 g/h}"}
    chosen, not_chosen = air | {"project.jurisdictions": "[GB]"}, ("project.jurisdictions",)
    told = "The jurisdiction is not stated for this project; the limits shown are those of EU"
    assert told not in " ".join(_statement(chosen).safety.air.statements)
    assert "Exposure limits shown: GB." in " ".join(_statement(chosen).safety.air.statements)
    without = not_chosen if "jurisdictions" in good()["project"] else ()
    assert told in " ".join(_statement(air, without).safety.air.statements)


def test_what_cannot_be_assessed_is_not_met_with_more_air() -> None:
    told = checked(good_with({"jobs.refit.ventilation": "{flow: 5000 m3/h}"})).report
    remedies = {one.remedy.partition(".")[0] for one in told if one.id == "AIR003"}
    assert remedies
    assert [text for text in remedies if not text.startswith("state what is missing")] == []

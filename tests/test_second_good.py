"""The second good specification is what it is for, and every document of it is printed."""

from __future__ import annotations

from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.printing.documents import print_documents
from tests.documents.conftest import views_of
from tests.good_spec import checked, second_good, spec_of
from tests.page_text import running_text


def _spec() -> Spec:
    return spec_of(second_good())


def test_it_has_what_the_first_has_not() -> None:
    spec = _spec()
    deck = spec.systems["deck"]
    own, borrowed = deck.layers[0], deck.layers[1]
    mastic = spec.product_of(own)
    assert own.film.max is not None
    assert mastic.film.max is not None
    assert own.film.max < mastic.film.max
    assert borrowed.film.min is None
    assert borrowed.film.max is None
    assert {(window.next_coat, window.air.to("degF")) for window in mastic.overcoat} == {
        ("any", 50),
        ("any", 77),
        ("itself", 50),
        ("itself", 77),
    }
    assert mastic.overcoat[0].air > mastic.overcoat[1].air, "the first that stands there is not the coldest"
    assert {product.pack.form.value for product in spec.products.values()} == {"aerosol", "liquid"}
    rails, lids = spec.jobs["rails"], spec.jobs["lids"]
    assert [len(item.old_coats) for item in rails.items] == [0, 2]
    assert [item.repair is not None for item in rails.items] == [False, True]
    assert _given(lids, spec) == [("sand", "touch"), ("blast", "deck")]
    assert _given(rails, spec) == [("blast", "deck"), ("abrade", "deck")]


def _given(job: Job, spec: Spec) -> list[tuple[str, str]]:
    pairs = [(spec.preparation_of(job, item), spec.system_of(job, item)) for item in job.items]
    return [(first.id, second.id) for first, second in pairs if first is not None and second is not None]


def test_every_document_is_printed() -> None:
    files = print_documents(checked(second_good()), formats=("html", "csv"))
    assert list(files) == [
        "MS-201-method-statement.html",
        "MS-202-method-statement.html",
        "MS-201-job-card.html",
        "MS-202-job-card.html",
        "MS-201-hazard-card.html",
        "MS-202-hazard-card.html",
        "DS-mastic-data-sheet.html",
        "DS-gloss-data-sheet.html",
        "DS-touch-up-data-sheet.html",
        "DS-mastic-label-sheet.html",
        "DS-gloss-label-sheet.html",
        "DS-touch-up-label-sheet.html",
        "RO-ferry-fittings-range-overview.html",
        "MS-201-materials-list.csv",
        "MS-202-materials-list.csv",
        "OL-ferry-fittings-order-list.html",
        "OL-ferry-fittings-order-list.csv",
        "MS-201-inspection-plan.html",
        "MS-202-inspection-plan.html",
        "MS-201-record-sheets.csv",
        "MS-202-record-sheets.csv",
    ]
    statement = running_text(files["MS-201-method-statement.html"].decode()).replace("\u00a0", " ")
    for shown in ("8 mil (203 µm)", "1 to 1.5 mil (25 to 38 µm)", "55 to 77 °F (13 to 25 °C)"):
        assert shown in statement


def test_every_view_is_laid_out() -> None:
    views = views_of(_spec())
    cards = sorted(name for name in views if "card" in name)
    assert cards == ["hazard_card_lids", "hazard_card_rails", "job_card_lids", "job_card_rails"]

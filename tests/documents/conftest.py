"""The good specification checked once, and the views every test of this folder looks at."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from specgen.checking import Checked
from specgen.documents.context import Context
from specgen.documents.parts.wording import Words
from specgen.documents.registry import KINDS
from specgen.facts.tests.qualification import bids
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH, Locale
from tests.good_spec import ON, checked, given, good, put, spec_of


def context(spec: Spec, **changed: Any) -> Context:
    """The specification in English on the day of the tests."""
    return Context(
        **{"spec": spec, "day": ON, "words": Words.of(spec.project, ENGLISH), "program": "specgen"} | changed
    )


def views_of(spec: Spec, locale: Locale = ENGLISH) -> dict[str, Any]:
    """Every laid-out view of a specification, by the name of its golden file."""
    views: dict[str, Any] = {}
    drawn_up = context(spec, words=Words.of(spec.project, locale))
    for kind in KINDS.values():
        named = kind.name.replace("-", "_")
        match kind.about:
            case "folder" | "jobs":
                if spec.jobs or kind.about == "folder":
                    views[named] = kind.view(spec, drawn_up)
            case "job" | "product":
                for subject in (spec.jobs if kind.about == "job" else spec.products).values():
                    if kind.applies(subject, spec):
                        views[f"{named}_{subject.id}"] = kind.view(subject, drawn_up)
            case "report":
                for report in spec.reports.values():
                    views[f"{named}_{report.id}"] = kind.view(report, drawn_up)
            case "bid":
                for job in spec.jobs.values():
                    for bid in bids(job, spec):
                        if kind.applies(bid, spec):
                            of = bid.offer.id if bid.offer is not None else job.id
                            views[f"{named}_{of}"] = kind.view(bid, drawn_up)
            case "offer":
                for offer in spec.offers.values():
                    views[f"{named}_{offer.id}"] = kind.view(offer, drawn_up)
    return views


_TESTS = (
    "[{id: creep, method: scribe_creep, standard: ISO 4628-8, after: {method: nss, standard: ISO 9227, duration: 480 h}, limit: max 2 mm},"
    " {id: longer, method: scribe_creep, after: {method: nss, duration: 720 h}, condition: {film: 70..90 um}, limit: max 2 mm, specimens: 4},"
    " {id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa, statistic: each, by: independent-laboratory},"
    " {id: bend, test: bent by hand, limit: no crack}]"
)


@pytest.fixture(scope="session")
def good_checked() -> Checked:
    return checked(good())


@pytest.fixture(scope="session")
def good_views(good_checked: Checked) -> dict[str, Any]:
    offers = views_of(spec_of(given("an offer for a coat without a product")))
    compared = given("a comparison of two coatings")
    put(compared, "systems.chassis.tests", _TESTS)
    tested = views_of(spec_of(compared))
    return (
        views_of(spec_of(good_checked))
        | {name: view for name, view in offers.items() if name.startswith("offer")}
        | {name: view for name, view in tested.items() if name.startswith(("test_report", "qualification"))}
    )


@pytest.fixture(scope="session")
def views_of_changed() -> Callable[[dict[str, object]], dict[str, Any]]:
    return lambda spec: views_of(spec_of(spec))

"""The good specification checked once, and the views every test of this folder looks at."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from specgen.checking import Checked
from specgen.documents.data_sheet.view import DataSheet, data_sheet
from specgen.documents.hazard_card.view import CUTS as HAZARD_CUTS
from specgen.documents.hazard_card.view import HazardCard, hazard_card
from specgen.documents.job_card.view import CUTS, JobCard, job_card
from specgen.documents.label_sheet.view import LabelSheet, label_sheet
from specgen.documents.method_statement.view import MethodStatement, method_statement
from specgen.documents.order_list.view import OrderList, order_list
from specgen.documents.range_overview.view import RangeOverview, range_overview
from specgen.facts.job.builds import builds_of
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH
from tests.good_spec import ON, checked, good, spec_of

View = DataSheet | HazardCard | JobCard | LabelSheet | MethodStatement | OrderList | RangeOverview


def views_of(spec: Spec) -> dict[str, View]:
    """Every laid-out view of a specification, by the name of its golden file."""
    views: dict[str, View] = {
        f"data_sheet_{product.id}": data_sheet(product, spec, on=ON, program="specgen", translate=ENGLISH)
        for product in spec.products.values()
    }
    for product in spec.products.values():
        sheet = label_sheet(product, spec, on=ON, program="specgen", translate=ENGLISH)
        views[f"label_sheet_{product.id}"] = sheet
    for job in spec.jobs.values():
        views[f"method_statement_{job.id}"] = method_statement(
            job, spec, on=ON, open_warnings=0, program="specgen", translate=ENGLISH
        )
        builds = len(builds_of(job, spec))
        views[f"job_card_{job.id}"] = job_card(
            job,
            spec,
            cuts=[CUTS[0]] * builds,
            vehicles=job.vehicles[:1],
            on=ON,
            program="specgen",
            translate=ENGLISH,
        )
        views[f"hazard_card_{job.id}"] = hazard_card(
            job, spec, cut=HAZARD_CUTS[0], on=ON, program="specgen", translate=ENGLISH
        )
    if spec.jobs:
        views["order_list"] = order_list(spec, on=ON, program="specgen", translate=ENGLISH)
    views["range_overview"] = range_overview(spec, on=ON, program="specgen", translate=ENGLISH)
    return views


@pytest.fixture(scope="session")
def good_checked() -> Checked:
    return checked(good())


@pytest.fixture(scope="session")
def good_views(good_checked: Checked) -> dict[str, View]:
    return views_of(spec_of(good_checked))


@pytest.fixture(scope="session")
def views_of_changed() -> Callable[[dict[str, object]], dict[str, View]]:
    return lambda spec: views_of(spec_of(checked(spec)))

"""What an item meets in service: the item's own word before the job's, the environment before the exposure."""

from __future__ import annotations

import pytest

from specgen.facts.job.exposure import severe_service, sun_on
from tests.good_spec import good, put, spec_of


@pytest.mark.parametrize(
    ("stated", "expected"),
    [
        ({}, None),
        ({"exposure": "exterior"}, (True, ("exposure",))),
        ({"exposure": "exterior", "environment": "{kind: atmosphere}"}, (True, ("exposure",))),
        ({"exposure": "exterior", "environment": "{kind: cavity}"}, (False, ("environment", "kind"))),
        ({"exposure": "interior", "items.DOOR.environment": "{kind: splash, sun: yes}"}, (True, ("items", "DOOR", "environment", "sun"))),
        ({"items.DOOR.exposure": "exterior", "environment": "{kind: underside}"}, (True, ("items", "DOOR", "exposure"))),
        ({"items.DOOR.exposure": "exterior", "environment": "{kind: buried}"}, (False, ("environment", "kind"))),
        ({"items.DOOR.exposure": "exterior", "items.DOOR.environment": "{kind: cavity}"}, (False, ("items", "DOOR", "environment", "kind"))),
        ({"exposure": "exterior", "environment": "{kind: immersion, sun: yes}"}, (True, ("environment", "sun"))),
    ],
)  # fmt: skip
def test_sun(stated: dict[str, str], expected: object) -> None:
    source = good()
    for key, value in stated.items():
        put(source, f"jobs.refit.{key}", value)
    job = spec_of(source).jobs["refit"]
    assert sun_on(job, next(item for item in job.items if item.id == "DOOR")) == expected


@pytest.mark.parametrize(
    ("environment", "claim", "severe"),
    [
        ("{kind: atmosphere, category: C4}", "C4", False),
        ("{kind: atmosphere, category: CX}", "C2", True),
        ("{kind: immersion}", "C2", True),
        ("{kind: splash}", "C5", True),
        ("{kind: splash}", "CX", True),
        ("{kind: splash, category: C5}", "C2", True),
    ],
)
def test_severe_service(environment: str, claim: str, severe: bool) -> None:
    source = good()
    put(source, "jobs.refit.environment", environment)
    put(source, "systems.cab.category", f"{{corrosivity: {claim}, durability: high, evidence: own report}}")
    spec = spec_of(source)
    assert severe_service(spec.jobs["refit"], spec.jobs["refit"].items[0], spec.systems["cab"]) is severe

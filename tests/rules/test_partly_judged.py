"""A fault in one record: the rules run on every other, and none of them tells what only the broken record makes it see."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from typing import Any

import pytest

from specgen.checking import Checked, check_loaded
from specgen.model.guarded import Guarded, NotWholeError, demand_all, every
from specgen.model.parse import parse
from specgen.source.project import Sources
from specgen.source.reader import read_text
from tests.good_spec import GOOD, ON, checked, good, put, second_good, take_out, written

_KINDS = ("products", "preparations", "systems", "jobs")
_PROJECT_FAULTS = {"page_size": "Z9", "titel": "x", "jurisdictions": "EU", "users": "nobody", "policies": "x"}
Spec = dict[str, Any]


def _ids(spec: Spec, kind: str) -> list[str]:
    return [record["id"] for record in spec[kind]]


def _broken(make: Callable[[], Spec]) -> Iterator[tuple[str, Spec]]:
    """The specification with each record and reference broken in turn, and its project in several ways."""
    for kind in _KINDS:
        for number, name in enumerate(_ids(make(), kind)):
            spec = make()
            spec[kind][number]["zzz"] = "x"
            yield f"unknown key in {kind}.{name}", spec
            if kind == "systems":
                spec = make()
                spec[kind][number]["layers"][0]["product"] = "gone"
                yield f"lost product of {name}", spec
            if kind == "jobs":
                for lost in ("system", "preparation"):
                    spec = make()
                    spec[kind][number][lost] = "gone"
                    yield f"lost {lost} of {name}", spec
                spec = make()
                spec[kind][number]["items"][0]["system"] = "gone"
                yield f"lost system of the first item of {name}", spec
    for key, value in _PROJECT_FAULTS.items():
        spec = make()
        spec["project"][key] = value
        yield f"project.{key}", spec
    spec = make()
    del spec["project"]
    yield "no project", spec


def _beside_an_unread_file(spec: Spec, on: date = ON) -> Checked:
    read, faults = read_text(written(spec).encode(), "spec.yaml")
    other, unread = read_text(b"products: [a", "unread.yaml")
    return check_loaded(parse(Sources(GOOD, (read, other), (*faults, *unread))), on)


def _told(result: Checked) -> set[tuple[str, str]]:
    return {(f.id, f.path) for f in result.report}


_CASES = [
    pytest.param(spec, id=f"{name}: {label}")
    for name, make in (("good", good), ("second", second_good))
    for label, spec in _broken(make)
]


@pytest.mark.parametrize("spec", _CASES)
def test_in_a_sound_specification_only_the_fault_itself_is_told(spec: Spec) -> None:
    result = checked(spec)
    assert _told(result)
    assert {rule for rule, _ in _told(result)} <= {"MOD001", "MOD002", "MOD003", "MOD004", "MOD005", "MOD008"}


@pytest.mark.parametrize("make", [good, second_good])
def test_what_may_stand_in_a_file_that_was_not_read_is_not_missing(make: Callable[[], Spec]) -> None:
    for kind in _KINDS:
        for number in range(len(make()[kind])):
            spec = make()
            if len(spec[kind]) == 1:
                del spec[kind]
            else:
                del spec[kind][number]
            result = _beside_an_unread_file(spec)
            assert {rule[:3] for rule, _ in _told(result)} == {"SRC"}
            assert result.report.not_judged[0].addresses == ("unread.yaml",)
    spec = make()
    del spec["project"]
    assert {rule[:3] for rule, _ in _told(_beside_an_unread_file(spec))} == {"SRC"}


def _planted() -> Spec:
    """Four faults that rules find: in a product, a preparation, a system and a job."""
    spec = good()
    take_out(spec, "products.clear.application.overlap")
    put(spec, "systems.cab.layers.primer.passes", "2")
    put(spec, "jobs.refit.consumption.transfer_efficiency", "5 %")
    return spec


_PLANTED = {
    ("CUR004", "products.clear.application.overlap"),
    ("FLM007", "systems.cab.layers.primer.passes"),
    ("USE007", "jobs.refit.consumption.transfer_efficiency"),
}


def test_what_is_planted_is_found() -> None:
    assert _told(checked(_planted())) == _PLANTED


@pytest.mark.parametrize(
    ("path", "value", "silent"),
    [
        # the cans of a job are judged by all its products together, the passes of a layer by its own alone
        ("products.base.binder", "glue", {"USE007"}),
        ("products.primer.binder", "glue", {"FLM007", "USE007"}),
        ("preparations.sand-steel.steps.sand.do", "dance", set()),
        ("jobs.refit.preparation", "gone", set()),
        ("jobs.refit.system", "gone", {"USE007"}),
        ("project.titel", "x", set()),
        ("project.jurisdictions", "EU", set()),
        ("project.policies", "x", set()),
        ("systems.cab.titel", "x", {"FLM007", "USE007"}),
        ("jobs.refit.titel", "x", {"USE007"}),
        ("products.clear.titel", "x", {"CUR004", "USE007"}),
    ],
)
def test_the_other_records_are_still_judged(path: str, value: str, silent: set[str]) -> None:
    spec = _planted()
    put(spec, path, value)
    told = {(rule, at) for rule, at in _told(checked(spec)) if not rule.startswith("MOD")}
    assert told == {(rule, at) for rule, at in _PLANTED if rule not in silent}


def test_beside_a_file_that_was_not_read_too() -> None:
    told = {(rule, at) for rule, at in _told(_beside_an_unread_file(_planted())) if not rule.startswith("SRC")}
    assert told == _PLANTED


def test_what_could_not_be_judged_is_said_with_its_reason() -> None:
    spec = good()
    put(spec, "products.primer.binder", "glue")
    first, second = checked(spec).report.not_judged
    assert (first.addresses, first.in_part) == (("products.primer",), False)
    assert (second.in_part, second.because) == (True, "for products.primer cannot be relied on")
    assert {"systems.cab", "jobs.refit"} <= {*second.addresses}
    assert checked(good()).report.not_judged == ()


def test_a_project_with_a_fault_stops_only_what_asks_for_the_faulty_key() -> None:
    spec = good()
    put(spec, "project.page_size", "Z9")
    assert [one.addresses for one in checked(spec).report.not_judged] == [("project",)]
    put(spec, "project.jurisdictions", "EU")
    because = [one.because for one in checked(spec).report.not_judged]
    assert because == ["for its own faults", "for project.jurisdictions cannot be relied on"]


def test_a_key_nobody_knows_may_have_been_meant_for_any_that_is_absent() -> None:
    spec = good()
    assert "jurisdictions" not in spec["project"]
    put(spec, "project.jurisdiction", "[US]")
    assert "for project.jurisdictions cannot be relied on" in {o.because for o in checked(spec).report.not_judged}


def test_a_waiver_of_what_could_not_be_judged_is_not_called_idle() -> None:
    spec = _planted()
    waiver = "{id: w, rule: FLM007, path: systems.cab.layers.primer.passes, reason: r, by: Quality, until: 2027-03-31}"
    put(spec, "jobs.refit.waivers", f"[{waiver}]")
    whole = {(f.id, f.severity.value) for f in checked(spec).report}
    assert ("FLM007", "note") in whole
    put(spec, "products.primer.binder", "glue")
    assert not {rule for rule, _ in _told(checked(spec))} & {"FLM007", "WVR001"}
    # where the rule did judge, an idle waiver still is one
    idle = good()
    put(idle, "jobs.refit.waivers", f"[{waiver.replace('FLM007', 'CUR004')}]")
    put(idle, "products.barrier.binder", "glue")
    assert "WVR001" in {rule for rule, _ in _told(checked(idle))}


def test_a_waiver_of_a_job_with_a_lost_reference_still_holds() -> None:
    spec = _planted()
    where = "jobs.refit.consumption.transfer_efficiency"
    put(spec, "jobs.refit.waivers", f"[{{id: w, rule: USE007, path: {where}, reason: r, by: Q, until: 2027-03-31}}]")
    put(spec, "jobs.refit.preparation", "gone")
    assert ("USE007", "note") in {(f.id, f.severity.value) for f in checked(spec).report}


def test_guarded_records() -> None:
    held = Guarded("systems", {"a": 1}, {"b": 2}, {"c"}, {"d"}, ())
    assert (list(held), held["a"], held["b"], held.get("z"), "z" in held) == (["a"], 1, 2, None, False)
    assert list(every(held)) == [("a", 1), ("b", 2)]
    for ask in (held.__getitem__, held.get, held.__contains__):
        for key in ("c", "d"):
            with pytest.raises(NotWholeError, match=rf"systems\.{key}"):
                ask(key)
    with pytest.raises(NotWholeError, match=r"systems\.c"):
        demand_all(held)
    demand_all(Guarded("systems", {"a": 1}, {"b": 2}, set(), {"d"}, ()))
    unread = Guarded("systems", {"a": 1}, {}, set(), set(), ("a.yaml",))
    with pytest.raises(NotWholeError, match=r"systems\.z"):
        unread.get("z")
    with pytest.raises(NotWholeError, match=r"a\.yaml"):
        demand_all(unread)


_CLAIM = "{corrosivity: C2, durability: high}"


@pytest.mark.parametrize(
    ("path", "value"),
    [("jobs.refit.titel", "x"), ("jobs.refit.preparation", "gone"), ("jobs.refit.items.STEP.system", "gone")],
)
def test_that_nothing_uses_a_record_is_not_concluded_from_what_was_read(path: str, value: str) -> None:
    """The claim of a category is told to be open where no job puts the system on steel, and here one does."""
    spec = good()
    put(spec, "systems.chassis.category", _CLAIM)
    put(spec, "jobs.refit.items.STEP.substrate", "{material: galvanized_hot_dip, thickness: 3 mm}")
    assert "FLM012" not in {rule for rule, _ in _told(checked(spec))}
    put(spec, path, value)
    assert "FLM012" not in {rule for rule, _ in _told(checked(spec))}

"""What the work itself answers of the conditions of the overcoating tables: one answer for what rules miss and what pages print."""

from __future__ import annotations

import pytest

from specgen.documents.method_statement.view import method_statement
from specgen.facts.pairs.answers import DULLING, answered_by_coat, answered_by_preparation, answered_on_part, dulled
from specgen.facts.pairs.papers import papers_between, papers_on_old_paint
from specgen.model.product import Role
from specgen.model.spec import Spec
from specgen.model.system import Layer
from tests.documents.conftest import context
from tests.good_spec import checked, good, put, take_out

NO_WINDOW = ("products.primer.overcoat",)
# an alkyd primer as the first coat on the electrocoat a part comes with
ALKYD_ON_ELECTROCOAT = {
    "products.primer.binder": "oil_alkyd",
    "jobs.refit.items.DOOR.old_coats": "[{id: works, family: ecoat, thickness: 25 um, sound: yes, cured: yes}]",
}


def _checked(changes: dict[str, str], out: tuple[str, ...] = ()) -> tuple[Spec, list[tuple[str, str, str]]]:
    source = good()
    for path in out:
        take_out(source, path)
    for path, value in changes.items():
        put(source, path, value)
    result = checked(source)
    assert result.loaded.spec is not None
    return result.loaded.spec, [(finding.id, finding.what, finding.remedy) for finding in result.report]


def _primer(**said: str) -> Layer:
    return (
        _checked({f"systems.cab.layers.primer.{name}": value for name, value in said.items()})[0]
        .systems["cab"]
        .layers[0]
    )


@pytest.mark.parametrize(
    ("said", "answer"),
    [
        ({"abraded_with": "grey pad"}, True),
        ({"before_next": "P400, then dust off."}, True),
        ({"before_next": "Scuff until dull."}, True),
        ({"before_next": "Blow off the dust."}, None),
        ({}, False),
    ],
)
def test_dulled_not_dulled_and_not_to_be_told(said: dict[str, str], answer: bool | None) -> None:
    assert dulled(_primer(**said)) is answer


@pytest.mark.parametrize(
    ("role", "family", "needs"),
    [
        ("primer", "epoxy_2k", {"primer_first", "epoxy_primer", "sealer"}),
        ("primer", "oil_alkyd", {"primer_first", "sealer"}),
        ("sealer", "pu_2k_aliphatic", {"sealer"}),
        ("topcoat", "epoxy_2k", set()),
    ],
)
def test_a_primer_is_the_primer_asked_for(role: str, family: str, needs: set[str]) -> None:
    assert answered_by_coat(_primer(role=role), family) == needs


def test_how_a_coat_begins() -> None:
    assert answered_by_coat(_primer(role="topcoat", mist_coat="yes"), "pu") == {"mist_coat"}
    assert answered_by_coat(_primer(role="topcoat", tie_coat="yes"), "pu") == {"tie_coat"}


def test_rule_and_page_ask_no_primer_below_a_primer() -> None:
    spec, found = _checked(ALKYD_ON_ELECTROCOAT)
    assert [what for rule, what, _ in found if rule == "OLD014"] == []
    statement = method_statement(spec.jobs["refit"], context(spec))
    (repair,) = statement.builds[0].repairs
    assert [step.text for step in repair.steps if "primer" in step.text] == []


def test_rule_and_page_name_the_same_papers() -> None:
    changes = {
        "products.base.binder": "pu_2k_aliphatic",
        "products.base.roles": "[basecoat]",
        "products.clear.binder": "pu_2k_aliphatic",
    }
    spec, found = _checked(changes, ("products.base.overcoat",))
    (remedy,) = [remedy for rule, _, remedy in found if rule == "OVR002"]
    below, above = spec.systems["cab"].layers[1:]
    assert papers_between(below, above) == "old_finish_before_colour"
    statement = method_statement(spec.jobs["refit"], context(spec))
    after_base = next(at for at in statement.builds[0].between if "basecoat" in at.when)
    papers = {
        text.partition(" with ")[2].rstrip(".")
        for text in (step.text for step in after_base.steps)
        if " with P" in text
    }
    assert len(papers) == 1
    assert papers.pop() in remedy


@pytest.mark.parametrize(
    ("family", "first", "row"),
    [
        ("ecoat", Role.PRIMER, "ecoat_scuff"),
        ("oil_alkyd", Role.TOPCOAT, "old_finish_before_colour"),
        (None, Role.PRIMER, "old_2k_before_epoxy_primer"),
    ],
)
def test_papers_on_old_paint(family: str | None, first: Role, row: str) -> None:
    assert papers_on_old_paint(family, first) == row


def test_sanding_steps_answer_for_old_paint_and_windows_for_a_pair() -> None:
    assert {"abrade", "sand", "sweep"} == DULLING
    told = {"systems.cab.layers.primer.before_next": "Blow off the dust."}
    assert [rule for rule, _, _ in _checked(told, NO_WINDOW)[1]] == ["LAY006"]
    assert [rule for rule, _, _ in _checked({}, NO_WINDOW)[1]] == ["LAY006", "OVR002"]


@pytest.mark.parametrize(
    ("step", "on_part", "on_paint"),
    [
        ("wash", {"degrease"}, {"degrease"}),
        ("power-tool", DULLING, DULLING),
        # a scraper keys metal and leaves most of a coat glossy
        ("hand-tool", DULLING, set()),
        ("conversion", {"passivate", "conversion_coat"}, set()),
        ("mask", set(), set()),
    ],
)
def test_a_step_answers_on_the_part_and_on_old_paint(step: str, on_part: set[str], on_paint: set[str]) -> None:
    steps = f"[{{id: a, do: {step}, text: Do it.}}]"
    preparation = _checked({"preparations.sand-steel.steps": steps})[0].preparations["sand-steel"]
    assert answered_on_part(preparation) == on_part
    assert answered_by_preparation(preparation) == on_paint

"""Conditions of the overcoating tables as numbered steps: at their place, with their source, and not where the author says them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

import pytest

from specgen.documents.method_statement.build import BuildView
from specgen.documents.method_statement.view import MethodStatement, method_statement
from tests.documents.conftest import context
from tests.good_spec import good, put, spec_of, take_out

NB = "\N{NO-BREAK SPACE}"
LIMITS = (
    "no lifting after 24 to 48 h, then after 7 days classification 1 or better by ISO 2409, or rating 4A or better (method A) or 4B or better (method B) by ASTM D3359 "
    "(limits: common practice; ASTM D5064 sets none)"
)


def _view(changes: Mapping[str, str], out: tuple[str, ...] = ()) -> MethodStatement:
    return _of(tuple(changes.items()), out)


@cache
def _of(changes: tuple[tuple[str, str], ...], out: tuple[str, ...]) -> MethodStatement:
    spec = good()
    for path, value in changes:
        put(spec, path, value)
    for path in out:
        take_out(spec, path)
    whole = spec_of(spec)
    return method_statement(whole.jobs["refit"], context(whole))


def _build(changes: Mapping[str, str], out: tuple[str, ...] = ()) -> BuildView:
    return _view(changes, out).builds[0]


def _between(changes: Mapping[str, str], out: tuple[str, ...] = ()) -> list[tuple[str, list[tuple[str, str]]]]:
    return [(at.when, [(step.text, step.source) for step in at.steps]) for at in _build(changes, out).between]


def _old(coats: str, **changes: str) -> list[tuple[str, str]]:
    more = {path.replace("__", "."): value for path, value in changes.items()}
    (repair,) = _build({"jobs.refit.items.DOOR.old_coats": coats, **more}).repairs
    return [(step.text, step.source) for step in repair.steps]


def test_window_is_a_step_where_it_is_the_condition() -> None:
    first, second = _between({})
    assert first == (
        "After coat 1 primer",
        [
            (
                f"Apply the next coat within the overcoating interval, 30{NB}min to 24{NB}h after the last cross coat of 1 primer. "
                "If the maximum interval is exceeded: abrade with P400 and dust off",
                "common practice, no source; epoxy with blocked hardener is treated as epoxy",
            )
        ],
    )
    assert second[0] == "After coat 2 basecoat"
    assert len(second[1]) == 1


def test_author_who_abrades_is_not_told_again() -> None:
    (when, steps), *_ = _between({"systems.cab.layers.primer.abraded_with": "P400, then P500"})
    assert (when, steps) == ("After coat 1 primer", [("Abrade with P400, then P500.", "")])


def test_paper_in_the_authors_words_is_said_once() -> None:
    (_, steps), *_ = _between(
        {
            "systems.cab.layers.primer.abraded_with": "P400",
            "systems.cab.layers.primer.before_next": "Sand level with P400.",
        }
    )
    assert steps == [("Sand level with P400.", "")]


def test_wash_in_the_authors_words_is_said_once() -> None:
    blush = {"systems.cab.layers.primer.blush_wash": "yes"}
    ours = "Wash with warm water and detergent, rinse, allow to dry and check that a drop of water spreads."
    for said, told in (("Washed with soap, then dried.", []), ("Sand level.", [ours])):
        (_, steps), *_ = _between({**blush, "systems.cab.layers.primer.before_next": said})
        assert steps[: len(told) + 1] == [*((text, "") for text in told), (said, "")]


def test_paper_is_that_of_the_table_where_no_window_is_stated() -> None:
    (_, steps), *_ = _between(
        {"systems.cab.layers.base.role": "topcoat", "products.base.binder": "oil_alkyd", "products.base.roles": "[topcoat]"},
        ("products.primer.overcoat", "systems.cab.layers.primer.overcoat_interval"),
    )  # fmt: skip
    assert steps == [
        ("The overcoating interval is not stated: call before proceeding.", "common practice, no source; epoxy with blocked hardener is treated as epoxy, as covered by MIL-HDBK-1110 / UFC 3-190-06, Protective Coatings and Paints, 2.2.3 (published)"),
        ("Abrade coat 1 primer to an even matt with P320 to P400.", "common practice, no source; epoxy with blocked hardener is treated as epoxy, as covered by MIL-HDBK-1110 / UFC 3-190-06, Protective Coatings and Paints, 2.2.3 (published); abrasive papers: USAF T.O. 1-1-8, application and removal of organic coatings, 5.6.2 e, f (secondary source, unconfirmed)"),
    ]  # fmt: skip


def test_tie_coat_is_a_step_and_answers_the_condition() -> None:
    changes = {
        "products.primer.binder": "zinc_organic",
        "products.base.binder": "pu_2k_aliphatic",
        "products.base.roles": "[topcoat]",
        "systems.cab.layers.base.role": "topcoat",
    }
    (_, steps), *_ = _between(changes)
    assert [text for text, _ in steps] == ["Apply an epoxy tie coat in between."]
    (_, told), *_ = _between({**changes, "systems.cab.layers.base.tie_coat": "yes"})
    assert [text for text, _ in told] == [
        "Coat 2 topcoat is a tie coat, or starts with a fog coat that is left until tacky.",
        "Apply an epoxy tie coat in between.",
    ]


def test_pair_that_nobody_lists_is_neither_leave_nor_prohibition() -> None:
    (_, steps), *_ = _between({"products.primer.binder": "silicone_heat"}, ("products.primer.overcoat",))
    assert steps == [
        (
            "No source covers solvent-borne basecoat over heat-resistant silicone. Prove it with a test patch of the full "
            f"system. Acceptance criterion: {LIMITS}.",
            "",
        )
    ]


def test_unknown_old_paint_is_rubbed_and_patched_first() -> None:
    steps = _old("[{id: a}]")
    assert [text.partition(".")[0] for text, _ in steps] == [
        "The existing coating is of unknown type: carry out a solvent rub on a small area with a white cloth wetted with MEK or acetone",
        "Apply a test patch of the full system to the existing coating, prepared as described here",
    ]
    assert steps[1][0].endswith(f"Acceptance criterion: {LIMITS}.")
    assert [source for _, source in steps] == [
        "MIL-HDBK-1110 / UFC 3-190-06, Protective Coatings and Paints, 4.2.4; 2.4 (published)",
        "ASTM D5064-16a (2021), patch test of coating compatibility, scope and significance (published)",
    ]


def test_tests_the_preparation_holds_are_not_told_again() -> None:
    rub = "{id: rub, do: test, text: Rub with a cloth wet with MEK.}"
    patch = "{id: patch, do: test, text: Lay the whole system on one place.}"
    assert _old("[{id: a}]", **{"preparations__sand-steel__steps__rub": rub, "preparations__sand-steel__steps__patch": patch}) == []  # fmt: skip


def test_old_alkyd_asks_for_all_its_conditions_and_both_sources_are_named() -> None:
    steps = _old("[{id: a, family: oil_alkyd}]", products__primer__binder="epoxy_2k")
    assert [text.partition(",")[0].partition(".")[0].partition(";")[0] for text, _ in steps] == [
        "Apply a test patch of the full system to the existing coating",
        "Check that the existing coating is sound and firmly adhering",
        "Check that the existing coating is aged and through-dry",
    ]
    assert all("sources differ" in source and "states not recommended" in source for _, source in steps)


def test_what_is_said_of_the_coat_answers_its_condition() -> None:
    steps = _old(
        "[{id: a, family: oil_alkyd, sound: yes, cured: yes}]",
        products__primer__binder="epoxy_2k",
        jobs__refit__items__DOOR__patch_test="{result: pass, limit: nothing lifts}",
    )
    assert steps == [
        (
            "A test patch of this system on this existing coating has passed. Acceptance criterion used: nothing lifts",
            "",
        )
    ]


def test_step_that_sands_without_a_paper_leaves_the_paper_to_the_table() -> None:
    sanded = "{id: sand, do: sand, text: Sand dull.}"
    ((text, source),) = _old("[{id: a, family: pu_2k_aliphatic}]", **{"preparations__sand-steel__steps__sand": sanded})
    assert text == "Abrade the existing coating to an even matt with P180 to P320."
    assert source.startswith("common practice, no source; epoxy with blocked hardener is treated as epoxy")


def test_metal_that_nobody_degreases_gets_the_step_of_the_table_in_its_place() -> None:
    bare = "{material: galvanized_hot_dip, thickness: 3 mm}"
    wipe = "{id: p, title: Dust, steps: [{id: dust, do: dust-off, text: Blow off.}], coat_within: 4 h}"
    build = _build({"jobs.refit.substrate": bare, "preparations.p": wipe, "jobs.refit.preparation": "p", "products.primer.binder": "epoxy_2k"})  # fmt: skip
    assert [step.title for step in build.steps] == ["Degrease", "Prepare for the first coat", "Remove dust"]
    assert build.steps[0].text == "Degrease the substrate before any other work on it."
    assert "unconfirmed" in build.steps[0].source
    assert build.steps[1].text == (
        "Abrade the substrate to an even matt. Or: Sweep-blast the substrate to an even matt."
    )


@pytest.mark.parametrize("material", ["oem_finish", "ecoat_part", "powder_part"])
def test_what_paint_asks_for_is_told_with_the_old_paint_and_not_again_as_of_a_metal(material: str) -> None:
    dusted = "{id: p, title: Dust, steps: [{id: dust, do: dust-off, text: Blow off.}], coat_within: 4 h}"
    build = _build({"jobs.refit.substrate": f"{{material: {material}, thickness: 3 mm}}", "preparations.p": dusted, "jobs.refit.preparation": "p", "products.primer.binder": "epoxy_2k"})  # fmt: skip
    assert [step.text for step in build.steps] == ["Blow off."]
    assert any(step.text.startswith("Abrade the existing coating") for repair in build.repairs for step in repair.steps)


@pytest.mark.parametrize("do", ["sand", "power-tool"])
def test_metal_that_a_step_roughens_is_not_abraded_again(do: str) -> None:
    bare = "{material: galvanized_hot_dip, thickness: 3 mm}"
    rough = f"{{id: p, title: Rough, steps: [{{id: wash, do: degrease, text: Degrease.}}, {{id: rough, do: {do}, text: Make dull.}}], coat_within: 4 h}}"
    build = _build({"jobs.refit.substrate": bare, "preparations.p": rough, "jobs.refit.preparation": "p", "products.primer.binder": "epoxy_2k"})  # fmt: skip
    assert [step.text for step in build.steps] == ["Degrease.", "Make dull."]


@pytest.mark.parametrize("do", ["blast", "strip"])
def test_old_paint_that_comes_off_asks_for_nothing(do: str) -> None:
    changes = {
        "jobs.refit.items.DOOR.old_coats": "[{id: a, family: vinyl}]",
        "preparations.sand-steel.steps.sand.do": do,
    }
    (repair,) = _build(changes).repairs
    assert (repair.stays, repair.steps, repair.section) == (False, (), "")

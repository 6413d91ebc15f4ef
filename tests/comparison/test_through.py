"""References that lead elsewhere: a record replaced by another is judged as the first edited into the second."""

from __future__ import annotations

import copy
from collections import Counter
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.comparison.alike import alike
from specgen.comparison.changes import Answer, Change, Comparison, Decision, Effect, Kind
from specgen.comparison.compare import Side, compare
from specgen.comparison.gate import shuts
from specgen.comparison.sentences import reach_text, sentence
from specgen.model.declaring import Concern
from specgen.model.spec import LIST_KINDS, Spec
from tests.comparison.full_spec import built, place, tree
from tests.comparison.sides import ON, changed, compared, side
from tests.comparison.test_properties import drawn
from tests.comparison.way_back import mirrored
from tests.good_spec import put, take_out

# Kind and id of the record that is replaced, the reference, and where it leads away from a job's own, the item.
REFERENCES = {
    "jobs.refit.preparation": ("preparations", "sand-steel"),
    "jobs.refit.items.DOOR.preparation": ("preparations", "sand-steel"),
    "jobs.refit.system": ("systems", "cab"),
    "jobs.refit.items.DOOR.system": ("systems", "cab"),
    "jobs.refit.items.STEP.system": ("systems", "chassis"),
    "systems.cab.layers.primer.product": ("products", "primer"),
    "systems.cab.layers.clear.product": ("products", "clear"),
}
EDITS: dict[tuple[str, str], dict[str, Any]] = {
    ("preparations", "sand-steel"): {
        "coat_within": "72 h",
        "steps.sand.grade": None,
        "steps.sand.acceptance": "Looks clean.",
        "steps.dust": None,
        "steps.wash": "{id: wash, do: wash, text: Wash with clean water.}",
        "steps.degrease.text": "Wear a mask and degrease.",
    },
    ("systems", "cab"): {
        "layers.base.film.min": "10 um",
        "layers.primer.overcoat_interval": "30 min..72 h",
        "layers.clear.product": "barrier",
        "total.min": None,
        "service_after": "3 days",
        "layers.clear.passes": "2",
    },
    ("systems", "chassis"): {
        "layers.barrier.film.max": "150 um",
        "layers.barrier.product": "base",
        "layers.top": "{id: top, role: topcoat, product: base, film: {min: 20 um, nominal: 25 um, max: 30 um}}",
        "handle_after": "2 h",
    },
    ("products", "primer"): {
        "film.min": "30 um",
        "overcoat.any-warm.interval": "20 min..48 h",
        "hazards.statements": "[H222, H229]",
        "hazards.isocyanates": "{monomer_at_limit: yes}",
        "hazards.protection.spray.respiratory": "none",
        "voc.content": "700 g/L",
        "drying.dust.time": "10 min",
        "direct_to_metal": "no",
    },
    ("products", "clear"): {
        "hazards.cautions.training": None,
        "hazards.health_surveillance": None,
        "hazards.protection.spray": None,
        "climate.humidity": "max 85 %",
        "film.per_pass": "20 um",
    },
}


@cache
def _good() -> Side:
    return side(changed())


def _edited(spec: dict[str, Any], record: str, edits: dict[str, Any]) -> dict[str, Any]:
    for path, value in edits.items():
        if value is None:
            take_out(spec, f"{record}.{path}")
        else:
            put(spec, f"{record}.{path}", value)
    return spec


def _swapped(reference: str, edits: dict[str, Any]) -> dict[str, Any]:
    """The good specification where the reference leads to a second record, which is the first with the edits."""
    kind, key = REFERENCES[reference]
    spec = changed()
    second = copy.deepcopy(next(entry for entry in spec[kind] if entry["id"] == key))
    spec[kind].append({**second, "id": "other"})
    put(spec, reference, "other")
    return _edited(spec, f"{kind}.other", edits)


def _all(found: Comparison) -> list[Change]:
    return [change for top in found.changes for one in (top, *top.alike) for change in (one, *one.follows)]


def _judgements(changes: list[Change]) -> Counter[tuple[str, ...]]:
    return Counter(
        (
            *(owner.name for owner in change.difference.owners),
            change.difference.name,
            change.difference.kind.value,
            change.effect.value,
            change.concern.value,
        )
        for change in changes
        if change.difference.kind is not Kind.RENAMED
    )


def _through(found: Comparison) -> list[Change]:
    return [change for change in _all(found) if change.difference.through is not None]


@pytest.mark.parametrize("reference", REFERENCES)
@settings(max_examples=12, deadline=None)
@given(data=st.data())
def test_another_record_is_judged_as_the_record_edited(reference: str, data: st.DataObject) -> None:
    kind, key = REFERENCES[reference]
    edits = EDITS[kind, key]
    chosen = {path: edits[path] for path in data.draw(st.sets(st.sampled_from(sorted(edits)), min_size=1))}
    swap = compare(_good(), side(_swapped(reference, chosen)))
    edit = compare(_good(), side(_edited(changed(), f"{kind}.{key}", chosen)))
    inside = Counter(_judgements(_through(swap)))
    # what is reached further on, through a reference of the swapped record, is among both
    assert inside == _judgements(_all(edit))
    assert inside


@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_generated_records_are_judged_alike(data: st.DataObject) -> None:
    root = data.draw(st.sampled_from(["preparations", "systems", "products"]))
    first, second = drawn(data.draw, root), drawn(data.draw, root)
    before, after = _referring(first, first, root, "first"), _referring(second, second, root, "first")
    edit = compare(Side(before, place), Side(after, place), renames=_same(first, second, root))
    old, new = _referring(first, second, root, "first"), _referring(first, second, root, "other")
    there, back = compare(Side(old, place), Side(new, place)), compare(Side(new, place), Side(old, place))
    assert _judgements(_through(there)) == _judgements(_all(edit))
    turned = Counter((c.difference.name, mirrored(c.effect), c.concern) for c in _all(back))
    assert Counter((c.difference.name, c.effect, c.concern) for c in _all(there)) == turned
    assert compare(Side(new, place), Side(new, place)).is_empty


def _same(first: Spec, second: Spec, root: str) -> dict[tuple[str, ...], str]:
    return dict(alike(getattr(first, root)["first"], getattr(second, root)["first"], (root, "first")))


def _referring(first: Spec, second: Spec, root: str, key: str) -> Spec:
    """Both records, and one that refers to the one called `key`."""
    held = {
        "first": getattr(first, root)["first"],
        "other": getattr(second, root)["first"].model_copy(update={"id": "other"}),
    }
    above = "systems" if root == "products" else "jobs"
    holder = getattr(built(above, tree(LIST_KINDS[above], "first")), above)["first"]
    if root == "products":
        layer = holder.layers[0].model_copy(update={"product": key, "variant": None})
        holder = holder.model_copy(update={"layers": (layer,)})
    else:
        items = (holder.items[0].model_copy(update={root.removesuffix("s"): None}),)
        holder = holder.model_copy(update={root.removesuffix("s"): key, "items": items})
    if first is second:
        del held["other"]
    return Spec(first.project, **{root: held, above: {"first": holder}})


def test_entries_under_other_ids_are_paired_by_their_kind() -> None:
    new = _swapped("jobs.refit.preparation", {"coat_within": "72 h"})
    other = next(entry for entry in new["preparations"] if entry["id"] == "other")
    for number, step in enumerate(other["steps"]):
        step["id"] = f"s{number}"
    found = compared(changed(), new)
    assert [(change.path, change.effect) for change in _through(found)] == [
        ("preparations.other.coat_within", Effect.RELAXED)
    ]


def test_a_swap_is_told_once_with_its_items() -> None:
    new = _swapped("jobs.refit.items.DOOR.preparation", {"coat_within": "72 h"})
    put(new, "jobs.refit.items.STEP.preparation", "other")
    found = compared(changed(), new)
    (told,) = _through(found)
    assert reach_text(told) == "in MS-001: DOOR, STEP"
    assert sentence(told).replace("\N{NO-BREAK SPACE}", " ") == (
        "Maximum interval from the last step to the first coat for the preparation other (Degrease and sand) rose from 4 h to 72 h, "
        "because the preparation other takes the place of sand-steel."
    )


def test_an_item_that_states_what_its_job_says_swaps_nothing() -> None:
    assert _through(compared(changed(), changed({"jobs.refit.items.DOOR.preparation": "sand-steel"}))) == []


def test_a_preparation_that_is_dropped_is_told_step_by_step() -> None:
    found = compared(changed(), changed(takes=["jobs.refit.preparation"]))
    assert "relaxed preparations.sand-steel.steps.degrease" in {f"{c.effect} {c.path}" for c in _through(found)}


def test_a_decision_on_a_swap_ends_when_the_record_is_weakened_again() -> None:
    reference = "jobs.refit.preparation"
    first, second = (_swapped(reference, {"coat_within": wait}) for wait in ("6 h", "72 h"))
    (asked,) = [change for change in compared(changed(), first).changes if change.path == reference]
    said = Decision(asked.fingerprint, Answer.NEUTRAL, "A. Body", "tried on a door", ON)
    assert not any(change.is_open for change in compared(changed(), first, decisions=[said]).changes)
    again = compared(changed(), second, decisions=[said])
    assert any(change.is_open and change.path == reference for change in again.changes)
    assert again.unused_decisions == (said,)


def test_a_decision_on_a_system_ends_when_a_product_of_it_is_weakened() -> None:
    reference = "jobs.refit.system"
    weaker = _swapped(reference, {"total.min": "90 um"})
    prints = set()
    for spec in (weaker, _edited(copy.deepcopy(weaker), "products.clear", {"hazards.health_surveillance": None})):
        prints |= {change.fingerprint for change in compared(changed(), spec).changes if change.path == reference}
    assert len(prints) == 2


def test_what_a_swap_weakens_shuts_the_gate_though_the_reference_was_decided() -> None:
    new = _swapped("jobs.refit.preparation", {"coat_within": "72 h"})
    (asked,) = compared(changed(), new).open()
    said = Decision(asked.fingerprint, Answer.NEUTRAL, "A. Body", "tried on a door", ON)
    assert shuts("relaxed", compared(changed(), new, decisions=[said]))


def test_isocyanate_that_comes_in_through_a_product_is_safety() -> None:
    edits = {"hazards.isocyanates": "{monomer_at_limit: yes}", "hazards.supplemental": "[EUH204, EUH205]"}
    found = compared(changed(), _swapped("systems.cab.layers.primer.product", edits))
    told = {change.path: change.concern for change in found.changes}
    assert told["systems.cab.layers.primer.product"] is Concern.SAFETY
    assert told["products.other.hazards.isocyanates.monomer_at_limit"] is Concern.SAFETY
    assert told["products.other.hazards.supplemental"] is Concern.SAFETY


def test_a_job_that_gets_a_system_with_such_a_product_is_safety_too() -> None:
    new = changed({"jobs.refit.items.STEP.system": "cab"})
    told = {change.path: change.concern for change in compared(changed(), new).changes}
    assert told["jobs.refit.items.STEP.system"] is Concern.SAFETY


def test_another_system_without_other_hazards_is_no_safety() -> None:
    found = compared(changed(), _swapped("jobs.refit.system", {"service_after": "3 days"}))
    assert all(change.concern is not Concern.SAFETY for change in found.changes)


@pytest.mark.parametrize(
    ("puts", "takes", "safety"),
    [
        # protection weakened
        ({"products.clear.hazards.protection.spray.respiratory": '"half mask A2-P3, EN 14387"'}, [], True),
        ({}, ["products.clear.hazards.cautions.training"], True),
        # a number to call in need
        ({}, ["jobs.refit.call.phone"], True),
        # a hold point on what poisons
        ({"jobs.refit.inspection.prepared.hold_point": '"no"'}, [], False),
        ({"preparations.sand-steel.steps.sand.text": "Sand matt. Never sand dry."}, [], True),
        ({"preparations.sand-steel.steps.sand.text": "Sand matt, with extraction at the tool."}, [], True),
        ({"preparations.sand-steel.steps.sand.text": "Sand to a matt surface."}, [], False),
    ],
)
def test_what_follows_for_people_is_safety(puts: dict[str, str], takes: list[str], safety: bool) -> None:
    old, new = changed(), changed(puts, takes)
    for found in (compared(old, new), compared(new, old)):
        assert [change.concern is Concern.SAFETY for change in found.changes] == [safety]


LEAD = "{id: lead, check: Old paint tested for lead, at: receipt, criterion: {text: below 0.06 %}, hold_point: yes}"


def test_a_hold_point_on_lead_is_safety_whether_it_goes_or_is_loosened() -> None:
    old = changed({"jobs.refit.inspection.lead": LEAD})
    loosened = changed({"jobs.refit.inspection.lead": LEAD.replace("hold_point: yes", "hold_point: no")})
    for new in (changed(), loosened):
        (change,) = compared(old, new).changes
        assert (change.effect, change.concern) == (Effect.RELAXED, Concern.SAFETY)


def test_a_dropped_emergency_number_is_relaxed_and_safety() -> None:
    old = changed({"project.emergency_phone": '"+00 000 001"'})
    (change,) = compared(old, changed()).changes
    assert (change.effect, change.concern) == (Effect.RELAXED, Concern.SAFETY)


def test_what_only_the_old_record_holds_is_told_of_the_old_record() -> None:
    new = _swapped("jobs.refit.preparation", {"steps.dust": None, "steps.wash": "{id: wash, do: wash, text: Wash.}"})
    said = [sentence(change) for change in _through(compared(changed(), new))]
    place_taken = "because the preparation other takes the place of sand-steel."
    assert len(said) == 2
    assert said[0].startswith("The preparation step dust of the preparation sand-steel (Degrease and sand) no longer")
    assert said[1].startswith("The preparation step wash of the preparation other (Degrease and sand) is new: ")
    assert all(text.endswith(place_taken) for text in said)


@pytest.mark.parametrize(("binder", "is_safety"), [("pu_latent", True), ("epoxy_latent", False)])
def test_a_binder_that_cures_with_isocyanate_is_safety_there_and_back(binder: str, is_safety: bool) -> None:
    old = changed({"products.base.binder": "acrylic_1k"})
    new = changed({"products.base.binder": binder})
    for found in (compared(old, new), compared(new, old)):
        (change,) = found.changes
        assert (change.effect, change.concern is Concern.SAFETY) == (Effect.REPLACED, is_safety)


def _substrate(**more: str) -> str:
    held = {"material": "steel_cold_rolled", "thickness": "1.5 mm", "condition": "bare and free of rust"} | more
    return "{" + ", ".join(f"{key}: {value}" for key, value in held.items()) + "}"


def test_a_substrate_of_an_item_is_held_against_the_one_of_its_job() -> None:
    own = {"jobs.refit.items.DOOR.substrate": _substrate(thickness="0.8 mm")}
    at = "jobs.refit.items.DOOR.substrate"
    for old, new, said in (
        (changed(), changed(own), "1.5 mm to 0.8 mm"),
        (changed(own), changed(), "0.8 mm to 1.5 mm"),
    ):
        told = {change.path: change for change in compared(old, new).changes}
        assert said in sentence(told[f"{at}.thickness"]).replace("\N{NO-BREAK SPACE}", " ")
        assert {told[f"{at}.{key}"].effect for key in ("material", "condition")} == {Effect.EDITORIAL}
        assert len(told) == 3


def test_what_only_the_jobs_substrate_says_is_lost_with_one_of_the_items_own() -> None:
    own = {"jobs.refit.items.DOOR.substrate": "{material: steel_cold_rolled}"}
    gone = {c.path.rsplit(".", 1)[-1]: c.difference for c in compared(changed(), changed(own)).changes}
    assert (gone["thickness"].kind, gone["condition"].kind) == (Kind.REMOVED, Kind.REMOVED)


def test_a_substrate_of_its_own_stands_alone_where_the_job_has_none() -> None:
    bare = changed(takes=["jobs.refit.substrate"])
    new = changed({"jobs.refit.items.DOOR.substrate": _substrate()}, ["jobs.refit.substrate"])
    changes = compared(bare, new).changes
    assert {change.effect for change in changes} == {Effect.FACT, Effect.TIGHTENED}
    assert {change.difference.old for change in changes} == {None}


def test_another_variant_alone_is_told_line_by_line() -> None:
    spec = {"products.primer.variants.red": "{id: red, name: red, order_number: EX-2}"}
    ordered = {"jobs.refit.consumption.ordered": "[{id: p, product: primer, variant: grey, packs: 2}]"}
    for at in ("systems.cab.layers.primer.variant", "jobs.refit.consumption.ordered.p.variant"):
        found = compared(changed(spec | ordered), changed(spec | ordered | {at: "red"}))
        assert at in {change.path for change in _all(found)}
        through = {change.path for change in _through(found)}
        assert "products.primer.variants.red.order_number" in through
        assert all(change.difference.through is not None for change in _through(found))


def test_another_product_that_is_ordered_is_told_line_by_line() -> None:
    ordered = {"jobs.refit.consumption.ordered": "[{id: p, product: primer, packs: 2}]"}
    new = changed(ordered | {"jobs.refit.consumption.ordered.p.product": "barrier"})
    found = compared(changed(ordered), new)
    assert {change.path.split(".")[1] for change in _through(found)} == {"barrier", "primer"}

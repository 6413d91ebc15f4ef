"""What a comparison holds beside the effects: echoes, renames, figures, findings, tables, decisions, and what a customer may see."""

from __future__ import annotations

import copy
import json
from dataclasses import replace
from datetime import date
from typing import Any

from specgen.comparison.changes import Answer, Change, Comparison, Decision, Effect, Kind, TableMoved
from specgen.comparison.compare import compare
from specgen.comparison.edition import for_customer
from specgen.comparison.gate import shuts
from specgen.comparison.policy import ALL_WHERE_LEFT_OUT, INHERITED, ORDERED
from specgen.comparison.reference_snapshot import reference_snapshot
from specgen.comparison.sentences import reach_text, sentence
from specgen.comparison.tally import by_effect
from specgen.model.canonical import canonical
from specgen.model.declaring import Audience, Concern
from specgen.report import change_github, change_json, change_text
from tests.comparison.sides import changed, compared, judged, side

PRIMER = "systems.cab.layers.primer"


def _told(found: Comparison) -> list[str]:
    return [f"{change.effect.value} {change.path}" for change in found.changes]


def test_heaviest_first() -> None:
    new = changed(
        {
            "products.primer.name": "Other",
            f"{PRIMER}.film.min": "30 um",
            f"{PRIMER}.passes": "3",
            "products.primer.hazards.signal_word": "Warning",
            "products.primer.hazards.storage_max": "40 degC",
        }
    )
    assert _told(compared(changed(), new)) == [
        "relaxed products.primer.hazards.signal_word",
        f"relaxed {PRIMER}.film.min",
        f"shifted {PRIMER}.passes",
        "tightened products.primer.hazards.storage_max",
        "editorial products.primer.name",
    ]


def test_another_product_carries_its_echoes() -> None:
    new = changed()
    body = copy.deepcopy(new["products"][0])
    new["products"].append(
        {**body, "id": "primer-2", "variants": [{"id": "cream", "name": "cream", "order_number": "C"}]}
    )
    layer = new["systems"][0]["layers"][0]
    layer["product"], layer["variant"] = "primer-2", "cream"
    found = compared(changed(), new)
    assert _told(found) == [
        # the colour card of the variant that is gone
        "relaxed products.primer.variants.grey.colour.standard",
        "relaxed products.primer.variants.grey.colour.number",
        f"replaced {PRIMER}.product",
        "shifted products.primer-2.variants.cream.order_number",
        "fact products.primer.variants.grey",
        "fact products.primer-2.variants.cream",
        "editorial products.primer-2.variants.cream.name",
    ]
    found = replace(found, changes=tuple(change for change in found.changes if change.difference.through is None))
    assert sorted(echo.path for echo in found.changes[0].follows) == ["products.primer-2", f"{PRIMER}.variant"]
    assert [(job.number, job.items) for job in found.changes[0].reaches] == [("MS-001", ("DOOR",))]
    assert sentence(found.changes[0]) == (
        "Product of the primer of the system cab (Primer, base coat and clear) was primer (Example primer) and is now"
        " primer-2 (Example primer)."
    )


def test_a_film_range_of_a_product_is_named_once_with_the_jobs_it_reaches() -> None:
    (change,) = compared(changed(), changed({"products.primer.film.min": "45 um"})).changes
    assert change.path == "products.primer.film.min"
    assert [job.number for job in change.reaches] == ["MS-001"]


def test_an_entry_that_holds_the_same_under_another_id_is_renamed() -> None:
    new = changed()
    new["jobs"][0]["items"][0]["id"] = "DOOR-L"
    found = compared(changed(), new)
    assert _told(found) == ["editorial jobs.refit.items.DOOR-L"]
    assert found.changes[0].difference.kind is Kind.RENAMED
    assert sentence(found.changes[0]).startswith("The item DOOR is now called DOOR-L, in the job MS-001")


def test_an_entry_that_holds_anything_else_is_gone_and_new_until_it_is_declared() -> None:
    new = changed()
    new["jobs"][0]["items"][0] |= {"id": "DOOR-L", "count": "9"}
    told = sorted(_told(compared(changed(), new)))
    assert told == ["relaxed jobs.refit.items.DOOR", "tightened jobs.refit.items.DOOR-L"]
    declared = compared(changed(), new, renames={("jobs", "refit", "items", "DOOR"): "DOOR-L"})
    assert sorted(_told(declared)) == ["editorial jobs.refit.items.DOOR-L", "fact jobs.refit.items.DOOR-L.count"]


def test_two_that_hold_the_same_are_not_told_apart() -> None:
    old = changed()
    old["jobs"][0]["items"] += [copy.deepcopy(old["jobs"][0]["items"][0]) | {"id": "DOOR-2"}]
    new = copy.deepcopy(old)
    new["jobs"][0]["items"][0]["id"], new["jobs"][0]["items"][-1]["id"] = "LEFT", "RIGHT"
    told = sorted(_told(compared(old, new)))
    assert told == [
        *(f"relaxed jobs.refit.items.{id}" for id in ("DOOR", "DOOR-2")),
        *(f"tightened jobs.refit.items.{id}" for id in ("LEFT", "RIGHT")),
    ]


def test_a_preparation_under_another_id_carries_what_refers_to_it() -> None:
    new = changed()
    new["preparations"][0]["id"] = "prep-2"
    for job in new["jobs"]:
        job["preparation"] = "prep-2"
    found = compared(changed(), new)
    assert _told(found) == ["editorial preparations.prep-2"]
    assert not shuts("relaxed", found)


def test_a_job_under_another_id_is_known_by_its_number_and_keeps_its_findings_and_figures() -> None:
    new = changed({"jobs.refit.items.STEP.area": "0.24 m2", f"{PRIMER}.film.max": "90 um"})
    new["jobs"][0]["id"] = "doors"
    new["jobs"][0]["items"][0]["id"] = "D1"
    old = changed({f"{PRIMER}.film.max": "95 um"})
    found = compare(judged(old), judged(new))
    assert sorted(_told(found)) == [
        "editorial jobs.doors",
        "editorial jobs.doors.items.D1",
        "fact jobs.doors.items.STEP.area",
        f"tightened {PRIMER}.film.max",
    ]
    assert found.findings == ()
    assert {entry.jobs for entry in found.figures} == {("doors",)}
    assert {entry.causes for entry in found.figures} == {("jobs.doors.items.STEP.area",)}
    assert all(entry.old and entry.new for entry in found.figures)


def test_a_figure_that_is_printed_alike_has_not_moved() -> None:
    found = compare(judged(changed()), judged(changed({f"{PRIMER}.film.nominal": "60.01 um"})))
    assert _told(found) == [f"shifted {PRIMER}.film.nominal"]
    assert found.figures == ()


def test_what_changed_inside_a_renamed_entry_is_told() -> None:
    new = changed()
    new["products"][0]["id"] = "primer-2"
    new["products"][0]["film"]["min"] = "45 um"
    new["systems"][0]["layers"][0]["product"] = "primer-2"
    found = compared(changed(), new, renames={("products", "primer"): "primer-2"})
    assert _told(found) == ["tightened products.primer-2.film.min", "editorial products.primer-2"]
    assert found.changes[0].difference.old_path == ("products", "primer", "film", "min")
    old_place, new_place = found.changes[0].old_place, found.changes[0].new_place
    assert old_place is not None
    assert new_place is not None
    assert ("min: 40 um" in old_place.text, "min: 45 um" in new_place.text) == (True, True)


def test_what_names_a_renamed_entry_follows_it() -> None:
    old = changed()
    old["jobs"][0]["inspection"][1]["items"] = ["DOOR"]
    waiver = {
        "id": "w",
        "rule": "FLM002",
        "path": "systems.cab.layers.primer.film",
        "reason": "a",
        "by": "b",
        "until": "2027-01-01",
    }
    old["jobs"][0]["waivers"] = [waiver]
    new = copy.deepcopy(old)
    new["systems"][0]["layers"][0]["id"] = "ground"
    new["jobs"][0]["items"][0]["id"] = "DOOR-L"
    new["jobs"][0]["inspection"][1] |= {"after": "ground", "items": ["DOOR-L"]}
    new["jobs"][0]["waivers"][0]["path"] = "systems.cab.layers.ground.film"
    renames = {("systems", "cab", "layers", "primer"): "ground", ("jobs", "refit", "items", "DOOR"): "DOOR-L"}
    told = ["editorial jobs.refit.items.DOOR-L", "editorial systems.cab.layers.ground"]
    assert sorted(_told(compared(old, new, renames=renames))) == told
    assert sorted(_told(compared(old, new))) == told


def test_a_job_is_scope_though_it_brings_a_waiver() -> None:
    new = changed({"jobs.refit.waivers": "[{id: w, rule: HAZ001, path: a, reason: trial, by: QA, until: 2027-01-31}]"})
    second = copy.deepcopy(new["jobs"][0]) | {"id": "second"}
    second["document"]["number"] = "MS-002"
    second["scope"] = "Another job."
    old = copy.deepcopy(new)
    new["jobs"].append(second)
    assert _told(compared(old, new)) == ["tightened jobs.second"]
    assert _told(compared(new, old)) == ["relaxed jobs.second"]


def test_a_rename_that_leads_nowhere_is_nothing() -> None:
    found = compared(changed(), changed(), renames={("products", "primer"): "base", ("products", "gone"): "primer"})
    assert found.is_empty


def test_figures_that_moved_name_their_cause() -> None:
    new = changed({"jobs.refit.items.STEP.area": "0.24 m2"})
    found = compare(judged(changed()), judged(new))
    moved = {entry.id: (entry.old, entry.new, entry.causes) for entry in found.figures}
    cause = ("jobs.refit.items.STEP.area",)
    # by hand: four tubes of 0.12 m2 are 0.48 m2, of 0.24 m2 0.96 m2
    assert moved["area.STEP"] == ("0.48\N{NO-BREAK SPACE}m²", "0.96\N{NO-BREAK SPACE}m²", cause)
    assert {causes for _, _, causes in moved.values()} == {cause}
    assert all(entry.jobs == ("refit",) for entry in found.figures)


def test_figures_from_the_composition_do_not_name_it_to_a_customer() -> None:
    new = changed({"products.primer.composition.solids.density": "1.6 g/mL"})
    found = for_customer(compare(judged(changed()), judged(new)))
    assert found.figures
    assert {(entry.causes, entry.makers_cause) for entry in found.figures} == {((), True)}
    assert (found.changes, found.withheld) == ((), 1)


def test_air_for_one_vapour_is_the_makers() -> None:
    air = "{room: 100 m3, flow: 9000 m3/h, spraying_rate: 700 g/h, mixing: 3}"
    old = changed({"jobs.refit.ventilation": air, "products.primer.composition.solvent.cas": "123-86-4"})
    new = changed(
        {"jobs.refit.ventilation": air.replace("700", "900"), "products.primer.composition.solvent.cas": "123-86-4"}
    )
    whole = compare(judged(old), judged(new))
    shown = for_customer(whole)
    told = {entry.id for entry in whole.figures if ".primer." in entry.id}
    assert any("butyl" in id for id in told)
    assert not any("butyl" in text for entry in shown.figures for text in (entry.id, entry.name))


def test_findings_that_appear_and_vanish() -> None:
    new = changed({f"{PRIMER}.film.max": "90 um"})
    there = compare(judged(changed()), judged(new)).findings
    assert [(entry.old, entry.new.id, entry.new.path) for entry in there if entry.new is not None] == [
        (None, "FLM003", f"{PRIMER}.film.max"),
        (None, "INS013", "jobs.refit.inspection.primer-film.criterion.max"),
    ]
    back = compare(judged(new), judged(changed())).findings
    assert [(entry.new, entry.old.id) for entry in back if entry.old is not None] == [
        (None, "FLM003"),
        (None, "INS013"),
    ]


def test_a_finding_on_another_line_or_with_another_number_has_not_moved() -> None:
    old, new = changed({f"{PRIMER}.film.max": "90 um"}), changed({f"{PRIMER}.film.max": "95 um"})
    new["products"].reverse()
    assert compare(judged(old), judged(new)).findings == ()


def test_changed_tables_are_told() -> None:
    old = replace(side(changed()), tables={"a": "1", "b": "2", "c": "3"})
    new = replace(side(changed()), tables={"b": "2", "c": "4", "d": "5"})
    assert compare(old, new).tables == (
        TableMoved("a", Kind.REMOVED),
        TableMoved("c", Kind.CHANGED),
        TableMoved("d", Kind.ADDED),
    )
    assert {"content of table preparation_ladder", "document CLP"} <= set(reference_snapshot())
    assert all(len(digest) == 64 for digest in reference_snapshot().values())


def test_a_decision_is_found_again_by_the_change_and_by_no_other() -> None:
    new = changed({"preparations.sand-steel.steps.sand.acceptance": "No gloss."})
    (change,) = compared(changed(), new).changes
    assert change.is_open
    said = [
        Decision(change.fingerprint, Answer.RELAXED, "A. Body", "edges are left out", date(2026, 11, 25)),
        Decision("0" * 16, Answer.NEUTRAL, "A. Body", "gone", date(2026, 11, 25)),
    ]
    found = compared(changed(), new, decisions=said)
    assert [(c.effect, c.weighed, c.is_open) for c in found.changes] == [(Effect.REWORDED, Effect.RELAXED, False)]
    assert found.unused_decisions == (said[1],)
    other = changed({"preparations.sand-steel.steps.sand.acceptance": "No gloss at all."})
    assert compared(changed(), other, decisions=said).changes[0].is_open
    # the same change in another file, on another line, has the same fingerprint
    turned = changed({"preparations.sand-steel.steps.sand.acceptance": "No gloss."})
    turned["preparations"].reverse()
    assert compared(changed(), dict(reversed(turned.items())), decisions=said).changes[0].decision == said[0]


def test_a_decision_on_a_counting_rule_holds_for_the_limits_told_with_it_and_no_others() -> None:
    at = "jobs.refit.inspection.primer-film.criterion"
    old = changed({at: {"rule": "90-10", "nominal": "60 um", "max": "90 um"}})
    new = changed({at: {"rule": "own", "nominal": "60 um", "max": "95 um", "text": "as stated"}})
    (change,) = compared(old, new).changes
    said = [Decision(change.fingerprint, Answer.NEUTRAL, "A. Body", "agreed", date(2026, 11, 25))]
    assert not shuts("relaxed", compared(old, new, decisions=said))
    new["jobs"][0]["inspection"][1]["criterion"]["max"] = "99 um"
    found = compared(old, new, decisions=said)
    assert shuts("relaxed", found)
    assert found.unused_decisions == tuple(said)


def test_neutral_counts_as_editorial() -> None:
    new = changed({"preparations.sand-steel.steps.sand.acceptance": "No gloss."})
    (change,) = compared(changed(), new).changes
    said = [Decision(change.fingerprint, Answer.NEUTRAL, "A. Body", "the same in fewer words", date(2026, 11, 25))]
    found = compared(changed(), new, decisions=said)
    assert found.changes[0].weighed is Effect.EDITORIAL
    assert not shuts("relaxed", found)


def test_gates() -> None:
    def gates(puts: dict[str, str]) -> list[bool]:
        found = compared(changed(), changed(puts))
        return [shuts(gate, found) for gate in ("any", "relaxed", "safety")]

    assert gates({}) == [False, False, False]
    assert gates({"products.primer.name": "Other"}) == [True, False, False]
    assert gates({f"{PRIMER}.film.min": "45 um"}) == [True, False, False]
    assert gates({f"{PRIMER}.film.min": "35 um"}) == [True, True, False]
    assert gates({f"{PRIMER}.passes": "3"}) == [True, True, False]
    assert gates({"products.primer.hazards.signal_word": "Warning"}) == [True, True, True]
    assert gates({"products.primer.hazards.ventilation": "open the door"}) == [True, False, False]


def test_customer_sees_no_leaf_of_the_maker() -> None:
    new = changed(
        {"products.primer.composition.solids.mass_share": "31.7 %", "products.primer.composition.gas.name": "xyzzy"}
    )
    new["products"][0]["composition"].append(
        {"id": "plugh", "name": "plover", "kind": "solvent", "mass_share": "1 %", "density": "0.9 g/mL"}
    )
    new["jobs"][0]["waivers"] = [
        {
            "id": "w",
            "rule": "FLM015",
            "path": "products.primer.composition.plugh",
            "reason": "trial",
            "by": "QA",
            "until": "2027-01-31",
        }
    ]
    whole = compare(judged(changed()), judged(new))
    assert {change.difference.audience for change in whole.changes} == {Audience.MAKER, Audience.CUSTOMER}
    shown = for_customer(whole)
    assert shown.withheld == 3
    texts = [
        change_json.write(shown, old="a", new="b"),
        change_text.write(shown, old="a", new="b", old_prefix="", new_prefix=""),
    ]
    for text in texts:
        for secret in ("31.7", "xyzzy", "plugh", "plover", "composition"):
            assert secret not in text
    told = change_json.write(whole, old="a", new="b")
    assert all(secret in told for secret in ("31.7", "xyzzy", "plover"))


def test_only_what_is_in_force_alike_on_both_sides_is_called_the_same() -> None:
    """An item that leaves a system of its own for that of its job, and one that states another exposure than its job."""
    own = {"jobs.refit.exposure": "exterior", "jobs.refit.items.DOOR.exposure": "interior"}
    for old, new, path in (
        (changed(), changed({}, ("jobs.refit.items.STEP.system",)), "jobs.refit.items.STEP.system"),
        (changed(own), changed(own, ("jobs.refit.items.DOOR.exposure",)), "jobs.refit.items.DOOR.exposure"),
    ):
        for one, other in ((old, new), (new, old)):
            (found,) = [change for change in compared(one, other).changes if change.path == path]
            assert (found.effect is Effect.EDITORIAL, found.note) == (False, "")


def test_counts_are_said_in_a_line() -> None:
    new = changed(
        {"products.primer.hazards.signal_word": "Warning", f"{PRIMER}.film.min": "30 um", f"{PRIMER}.passes": "3"}
    )
    assert by_effect(compared(changed(), new)) == "2 relaxed (1 of safety), 1 for a person to decide."
    assert by_effect(compared(changed(), changed({"jobs.refit.items.DOOR.count": "3"}))) == "1 fact."
    assert by_effect(compared(changed(), changed())) == "no value changed."


def test_policy_names_what_the_model_has() -> None:
    for model, name in (*ORDERED, *INHERITED, *ALL_WHERE_LEFT_OUT):
        assert name in model.model_fields


def test_empty_means_the_same_canonical_form() -> None:
    first, second = side(changed()), side(changed())
    assert compare(first, second).is_empty
    assert canonical(first.spec) == canonical(second.spec)


def test_concerns_of_a_waiver_are_those_of_its_rule() -> None:
    puts = {"jobs.refit.waivers": "[{id: w, rule: HAZ001, path: a, reason: trial, by: QA, until: 2027-01-31}]"}
    (change,) = compared(changed(), changed(puts)).changes
    assert (change.effect, change.concern) == (Effect.RELAXED, Concern.SAFETY)


def test_long_reports_are_bounded_and_say_so() -> None:
    new = changed()
    for at in range(700):
        new["products"][0]["variants"].append({"id": f"v{at}", "name": f"v{at}", "order_number": f"N{at}"})
    found = compared(changed(), new)
    text = change_text.write(found, old="a", new="b", old_prefix="", new_prefix="")
    assert text.count("- product, fact:") == change_text.MOST == 500
    assert "200 more changes are not listed here; --format json holds them all." in text
    marks = change_github.write(found, new_prefix="")
    assert marks.count("::notice") == 500
    assert "200 more changes are not listed" in marks
    assert len(json.loads(change_json.write(found, old="a", new="b"))["changes"]) == 700


def _many_systems(product: str) -> dict[str, Any]:
    """Ten systems, each with one coat of the product, and a job that gets each of them."""
    spec = changed(takes=["systems.chassis.layers.barrier.variant"])
    (system,) = (entry for entry in spec["systems"] if entry["id"] == "chassis")
    (job,) = spec["jobs"]
    for number in range(10):
        layer = {**system["layers"][0], "product": product}
        spec["systems"].append({**system, "id": f"s{number}", "layers": [layer]})
        document = {**job["document"], "number": f"MS-{number + 100}"}
        items = [{**job["items"][0], "system": f"s{number}"}]
        spec["jobs"].append({**job, "id": f"j{number}", "document": document, "items": items})
    # what stands in the sources twice is written twice there
    return dict(json.loads(json.dumps(spec)))


def test_the_same_swap_in_ten_systems_is_one_line_with_its_number() -> None:
    old, new = _many_systems("barrier"), _many_systems("primer")
    found = compared(old, new)
    (swap,) = (change for change in found.changes if change.difference.refers == "products")
    assert (len(swap.alike), len(swap.reaches)) == (9, 10)
    assert {change.path for change in (swap, *swap.alike)} == {
        f"systems.s{number}.layers.barrier.product" for number in range(10)
    }
    assert swap.concern is Concern.SAFETY
    assert "(the same in 10 places, in 10 jobs)" in sentence(swap)
    assert "and 7 more" in reach_text(swap)
    text = change_text.write(found, old="a", new="b", old_prefix="", new_prefix="")
    assert text.count("and is now primer") == 1
    told = json.loads(change_json.write(found, old="a", new="b"))["changes"]
    (held,) = (change for change in told if change["alike"])
    assert len({change["path"] for change in held["alike"]} | {held["path"]}) == 10
    # a person decides on all ten at once, and on no eleventh
    said = [Decision(swap.fingerprint, Answer.NEUTRAL, "A. Body", "agreed", date(2026, 11, 25))]
    assert swap.path not in {change.path for change in compared(old, new, decisions=said).open()}
    new["systems"][-1]["layers"][0]["product"] = "barrier"
    assert swap.fingerprint not in {change.fingerprint for change in compared(old, new).changes}


def _open_swaps(found: Comparison) -> list[Change]:
    return [change for change in found.open() if change.difference.refers == "products"]


def test_an_answer_to_one_of_many_swaps_leaves_that_to_the_others_as_it_is() -> None:
    old, new = _many_systems("barrier"), _many_systems("primer")
    (swap,) = (change for change in compared(old, new).changes if change.difference.refers == "products")
    own = [
        Decision(other.fingerprint, Answer.TIGHTENED, "A. Body", "by itself", date(2026, 11, 25))
        for other in swap.alike
    ]
    of_all = Decision(swap.fingerprint, Answer.NEUTRAL, "A. Body", "agreed", date(2026, 11, 25))
    for number in (1, 3, 9):
        answers = [of_all, *own[:number]]
        found = compared(old, new, decisions=answers)
        told = [change for change in found.changes if change.difference.refers == "products"]
        by_path = {change.path: top.decision for top in told for change in (top, *top.alike)}
        assert len(told) == number + 1
        assert len(by_path) == 10
        for change, answer in zip(swap.alike, answers[1:], strict=False):
            assert by_path.pop(change.path) == answer
        assert set(by_path.values()) == {of_all}
        assert not found.unused_decisions
        # without an answer to all the others wait under the fingerprint they had, the last of them under its own
        (waiting,) = _open_swaps(compared(old, new, decisions=own[:number]))
        assert (waiting.fingerprint == swap.fingerprint) is (number < 9)
        last = Decision(waiting.fingerprint, Answer.NEUTRAL, "A. Body", "agreed", date(2026, 11, 25))
        assert not _open_swaps(compared(old, new, decisions=[*own[:number], last]))


def test_fingerprints_do_not_hang_on_the_order_of_the_sources() -> None:
    old, new = _many_systems("barrier"), _many_systems("primer")
    for at in range(10):
        new["systems"][-1 - at]["layers"][0]["film"]["min"] = "45 um"
    names = [change.fingerprint for change in compared(old, new).changes]
    for kind in ("systems", "jobs", "products"):
        old[kind].reverse()
    turned = compared(old, new)
    assert sorted(change.fingerprint for change in turned.changes) == sorted(names)
    new["systems"].reverse()
    assert sorted(change.fingerprint for change in compared(old, new).changes) == sorted(names)


def test_an_item_that_takes_a_product_with_it_says_so() -> None:
    (change,) = compared(changed(), changed(takes=["jobs.refit.items.STEP"])).changes
    assert change.note == "no longer used by any job: Example barrier"
    (back,) = compared(changed(takes=["jobs.refit.items.STEP"]), changed()).changes
    assert back.note == "brings in products that no job used before: Example barrier"

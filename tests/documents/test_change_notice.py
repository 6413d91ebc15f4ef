"""The change notice: its first page, the marked words, and what a customer must not see."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from specgen.comparison.changes import Comparison
from specgen.comparison.compare import compare
from specgen.comparison.edition import for_customer
from specgen.documents.change_notice.marked_words import marked
from specgen.documents.change_notice.view import LINES, ChangeNotice, Compared, change_notice
from tests.comparison.sides import RULES, changed, judged
from tests.documents.conftest import context
from tests.documents.test_golden import _lines as lines

GOLDEN = Path(__file__).parent / "golden/change_notice.txt"
PRIMER = "systems.cab.layers.primer"


def _found(puts: dict[str, Any], takes: tuple[str, ...] = ()) -> tuple[Comparison, Any]:
    old, new = judged(changed()), judged(changed(puts, takes))
    return compare(old, new, concern_of_rule=RULES), new.spec


def _notice(found: Comparison, spec: Any, *, for_maker: bool = False) -> ChangeNotice:
    compared = Compared(found=found, old_name="A", new_name="B", for_maker=for_maker)
    return change_notice(compared, context(spec))


def test_notice_is_as_expected(golden: Callable[[Path, str], None]) -> None:
    found, spec = _found(
        {
            f"{PRIMER}.film.min": "1.5 mil",
            "preparations.sand-steel.steps.sand.acceptance": "No gloss at the edges.",
            "preparations.sand-steel.steps.sand.grade": "St 2",
            "products.base.direct_to_metal": "yes",
            "products.primer.composition.solids.mass_share": "31 %",
            "jobs.refit.items.DOOR.count": "3",
        },
        ("products.clear.hazards.cautions.training",),
    )
    view = _notice(for_customer(found), spec)
    golden(GOLDEN, "\n".join(lines(view, "")) + "\n")


def test_first_page_holds_eight_lines_and_names_the_rest() -> None:
    puts = {
        f"{PRIMER}.film.min": "30 um",
        "systems.cab.layers.base.film.min": "10 um",
        "systems.cab.total.min": "80 um",
    }
    puts |= {"jobs.refit.climate.air": "10..30 degC", "jobs.refit.climate.humidity": "30..85 %"}
    puts |= {"jobs.refit.climate.surface": "10..40 degC", "jobs.refit.climate.dew_point_margin": "min 2 K"}
    puts |= {"preparations.sand-steel.coat_within": "8 h", "products.primer.hazards.signal_word": "Warning"}
    puts |= {"jobs.refit.inspection.prepared.hold_point": "no", f"{PRIMER}.overcoat_interval": "20 min..48 h"}
    view = _notice(*_found(puts))
    assert view.answer == "11 requirements have been relaxed; 1 of them are safety requirements."
    assert [line.number for line in view.weaker] == [str(at) for at in range(1, LINES + 1)]
    assert [line.is_safety for line in view.weaker] == [True] + [False] * (LINES - 1)
    assert view.rest == "3 more requirements were relaxed: see 9–11 in the tables."


@pytest.mark.parametrize(
    ("puts", "answer", "waiting"),
    [
        ({}, "No requirement has been relaxed, as far as the values show.", ""),
        ({f"{PRIMER}.film.min": "30 um"}, "One requirement has been relaxed; it is not a safety requirement.", ""),
        (
            {"products.primer.hazards.signal_word": "Warning"},
            "One requirement has been relaxed; it is a safety requirement.",
            "",
        ),
        (
            {f"{PRIMER}.passes": "3"},
            "No requirement has been relaxed, as far as the values show.",
            "One change awaits a decision: see 1.",
        ),
    ],
)
def test_answer(puts: dict[str, str], answer: str, waiting: str) -> None:
    view = _notice(*_found(puts))
    assert (view.answer, view.waiting) == (answer, waiting)


def test_approvals_are_those_the_policy_asks_for() -> None:
    policy = "{approvals_needed: 3, approvals: [{id: q, role: check, count: 2}, {id: e, role: approve, signed: yes}]}"
    view = _notice(*_found({"project.policies": policy}))
    assert view.approvals_needed == (
        "The project policy requires 3 approvals. To check: at least 2. To approve: at least 1, signed."
    )
    assert len(view.approvals.rows) == 3


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("60 um", "50 um", ("[60] um", "[50] um")),
        ("sand it well", "sand it", ("sand it[ well]", "sand it")),
        ("", "all new", ("", "all new")),
        ("the same", "the same", ("the same", "the same")),
    ],
)
def test_changed_words_are_marked(old: str, new: str, expected: tuple[str, str]) -> None:
    shown = ["".join(f"[{run.text}]" if run.changed else run.text for run in side) for side in marked(old, new)]
    assert tuple(shown) == expected


def test_customer_gets_no_leaf_of_the_maker() -> None:
    found, spec = _found(
        {
            "products.primer.composition.solids.mass_share": "31.7 %",
            "products.primer.composition.gas.name": "xyzzy",
            "products.primer.hazards.isocyanates": "{monomer: 0.07 %}",
            "jobs.refit.waivers": "[{id: w, rule: FLM015, path: products.primer.composition.solids, reason: a, by: b, until: 2027-01-31}]",
        }
    )
    shown = "\n".join(lines(_notice(for_customer(found), spec), ""))
    whole = "\n".join(lines(_notice(found, spec, for_maker=True), ""))
    for secret in ("31.7", "xyzzy", "0.07", "composition", "onomer"):
        assert secret not in shown
    for told in ("31.7", "xyzzy", "0.07"):
        assert told in whole
    assert "data held by the manufacturer" in shown
    assert ("MANUFACTURER'S COPY" in whole, "MANUFACTURER'S COPY" in shown) == (True, False)


def test_only_the_maker_is_told_where_it_stands_in_the_sources() -> None:
    found, spec = _found({f"{PRIMER}.film.max": "90 um"})
    assert found.findings
    customers = "\n".join(lines(_notice(for_customer(found), spec), ""))
    makers = "\n".join(lines(_notice(found, spec, for_maker=True), ""))
    for source in ("spec.yaml", f"{PRIMER}.film.max"):
        assert source in makers
        assert source not in customers


def test_maker_is_told_the_place_on_both_sides() -> None:
    """A line that was added above moves what stands below it; what is new has no old place, what is gone no new one."""
    new, moved, gone = "systems.chassis.layers.barrier.passes", "products.primer.shelf_life", "products.clear.hazards.cautions.training"  # fmt: skip
    found, spec = _found({new: "2", moved: "30 months"}, (gone,))
    line = {".".join(change.difference.path): (change.old_place, change.new_place) for change in found.changes}
    places = {row.subject: row.places for group in _notice(found, spec, for_maker=True).groups for row in group.rows}
    (old, now), (_, added), (removed, _) = line[moved], line[new], line[gone]
    assert old.line + 1 == now.line
    assert places == {
        "Shelf life of the unopened pack for the product Example primer": f"spec.yaml:{old.line}, now spec.yaml:{now.line}",
        "Number of cross coats for the primer barrier of the system “Barrier coat”": f"spec.yaml:{added.line}",
        "The caution training of the product Example clear": f"spec.yaml:{removed.line}",
    }


def test_an_interval_is_told_by_the_next_coat_and_the_air_it_holds_for() -> None:
    view = _notice(*_found({"products.primer.overcoat.any-warm.if_exceeded": "abrade with P320 and dust off"}))
    subjects = [row.subject.replace("\N{NO-BREAK SPACE}", " ") for group in view.groups for row in group.rows]
    about = "Action if the maximum overcoating interval is exceeded for the overcoating interval to any coat at 15 °C"
    assert subjects == [f"{about} of the product Example primer"]


def test_a_swapped_reference_shows_the_name_of_its_own_side() -> None:
    view = _notice(*_found({f"{PRIMER}.product": "barrier", f"{PRIMER}.variant": "standard"}))
    rows = [row for group in view.groups for row in group.rows if row.subject.startswith("Product ")]
    shown = [tuple("".join(run.text for run in side) for side in (row.old, row.new)) for row in rows]
    assert shown == [("Example primer", "Example barrier")]


@pytest.mark.parametrize(("words", "whole"), [(400, False), (401, True)])
def test_texts_past_eight_hundred_words_are_marked_as_a_whole(words: int, whole: bool) -> None:
    """At 800 words of both sides together they are still compared word by word."""
    same = "coat " * 399
    old, new = marked(f"{same}old", f"{same}{'new ' * (words - 399)}")
    assert [run.changed for run in old] == ([True] if whole else [False, True])
    assert [run.changed for run in new] == ([True] if whole else [False, True])


def test_view_is_frozen() -> None:
    view = _notice(*_found({}))
    with pytest.raises(dataclasses.FrozenInstanceError):
        view.answer = ""  # type: ignore[misc]

"""Which old paint stays on a part, and where paint meets metal: one answer for rules on metal and for those on old paint."""

from __future__ import annotations

import pytest

from specgen.facts.job.stack import stack
from specgen.facts.pairs.parts import parts_of
from tests.good_spec import checked, good, put

OLD = "[{id: works, family: oem_finish, thickness: 60 um, sound: yes}]"
SAND = "{id: a, do: sand, text: Sand., abrasive: P180}"
BLAST = (
    "{id: b, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}"
)
STRIP = "{id: c, do: strip, text: Strip.}"
FEATHER = "{id: d, do: feather-edge, text: Feather., abrasive: P180}"
SWEEP = "{id: e, do: sweep-blast, text: Sweep., medium: garnet}"


@pytest.mark.parametrize(
    ("steps", "stays"),
    [(SAND, True), (SWEEP, True), (BLAST, False), (STRIP, False), (f"{BLAST}, {FEATHER}", True)],
)
def test_old_paint_stays_for_the_part_as_for_the_stack(steps: str, stays: bool) -> None:
    source = good()
    put(source, "jobs.refit.items.DOOR.old_coats", OLD)
    put(source, "preparations.sand-steel.steps", f"[{steps}]")
    spec = checked(source).loaded.spec
    assert spec is not None
    job = spec.jobs["refit"]
    part = next(part for part in parts_of(job, spec) if part.item.id == "DOOR")
    whole = stack(job, part.item, spec)
    assert whole is not None
    assert [coat.id for coat in part.old_paint] == [old.coat.id for old in whole.old] == (["works"] if stays else [])
    # a feathered edge runs round a spot of bare metal in the coat that stays
    assert part.is_bare_metal is (not stays or FEATHER in steps)


def _found(old: str, changes: dict[str, str]) -> list[str]:
    source = good()
    put(source, "jobs.refit.items.STEP.old_coats", old)
    put(source, "jobs.refit.substrate.thickness", "4 mm")
    for path, value in changes.items():
        put(source, path, value)
    return sorted({finding.id for finding in checked(source).report if finding.path.startswith("systems.chassis")})


def test_blasted_to_metal_the_peaks_are_judged_though_there_was_old_paint() -> None:
    peaks = BLAST.replace("13..20 um", "25..65 um").replace("id: b", "id: sand")
    assert "PRE019" in _found(OLD, {"preparations.sand-steel.steps.sand": peaks})


def test_zinc_rich_paint_on_steel_that_was_stripped_of_its_paint() -> None:
    zinc = {"products.barrier.binder": "zinc_organic"}
    blasted = {**zinc, "preparations.sand-steel.steps.sand": BLAST.replace("id: b", "id: sand")}
    assert "SUB003" in _found(OLD, zinc)
    assert "SUB003" not in _found(OLD, blasted)


_HAND = "{id: h, do: hand-tool, text: Scrape., grade: St 2}"
_SWEPT = "{id: s, do: sweep-blast, text: Sweep., medium: garnet, grade: Sa 1}"
_KEYED = "{id: k, do: sand, text: Sand., abrasive: P180}"


@pytest.mark.parametrize(
    ("steps", "bare"),
    [
        (f"{_HAND}, {FEATHER}", True),
        # nothing is worked down to the steel, or nothing shows where the spot ends
        (f"{_KEYED}, {FEATHER}", False),
        (f"{_SWEPT}, {FEATHER}", False),
        (_HAND, False),
        # a grade of another metal
        (f"{_HAND.replace('St 2', 'SP 17')}, {FEATHER}", False),
    ],
)
def test_a_spot_in_old_paint_lays_steel_bare_where_it_is_worked_down_to_a_grade_of_steel(
    steps: str, bare: bool
) -> None:
    source = good()
    put(source, "jobs.refit.items.DOOR.substrate", "{material: old_paint, condition: Sound with rusted spots.}")
    put(source, "jobs.refit.items.DOOR.old_coats", OLD)
    put(source, "preparations.sand-steel.steps", f"[{steps}]")
    spec = checked(source).loaded.spec
    assert spec is not None
    part = next(part for part in parts_of(spec.jobs["refit"], spec) if part.item.id == "DOOR")
    assert part.lays_steel_bare is bare

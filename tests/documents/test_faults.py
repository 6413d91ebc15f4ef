"""Only faults that a job can have, each with a cause and a remedy; repairs with the figures of their system."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cache

import pytest

from specgen.documents.data_sheet.goes_over import goes_over, preparation_of_steel
from specgen.documents.method_statement.conditions import Condition
from specgen.documents.method_statement.faults import faults
from specgen.documents.method_statement.repair_procedure import repair_procedure
from specgen.documents.parts.application import application, application_at
from specgen.documents.parts.tables import TableView
from specgen.documents.parts.wording import Words
from specgen.facts.job.builds import builds_of
from specgen.facts.job.faults import OCCURS
from specgen.model.spec import Spec
from specgen.standards.tables import table
from specgen.units.locale import ENGLISH
from tests.good_spec import good, put, spec_of

NB = "\N{NO-BREAK SPACE}"
ALWAYS = {row["fault"] for row in table("faults").rows if row["when"] == "always"}


@cache
def _spec(changes: tuple[tuple[str, str], ...] = ()) -> Spec:
    spec = good()
    for path, value in changes:
        put(spec, path, value)
    return spec_of(spec)


def _words(spec: Spec) -> Words:
    return Words.of(spec.project, ENGLISH)


def _faults(**changes: str) -> set[str]:
    spec = _spec(tuple((path.replace("__", "."), value) for path, value in changes.items()))
    return {row[0] for row in faults(spec.jobs["refit"], spec, _words(spec)).table.rows} - ALWAYS


GOOD = {
    "Maximum overcoating interval exceeded",
    "Fine bubbles all over (carbon dioxide)",
    "Film stays soft or tacky",
    "Film stays soft, or patchy gloss",
    "Blushing (white haze) on the fresh film",
    "Amine blush: greasy or whitish layer on the epoxy",
    "Mottling or striping of the metallic colour",
    "Poor hiding: the coat below shows through",
}


def test_faults_of_the_good_job() -> None:
    assert _faults() == GOOD


@pytest.mark.parametrize(
    ("changes", "more"),
    [
        ({"products__primer__binder": "zinc_organic"}, {"Pinholes in the coat over zinc-rich primer", "White salts on the zinc-rich coat"}),
        ({"jobs__refit__items__DOOR__old_coats": "[{id: a, family: oil_alkyd}]"}, {"Lifting, wrinkling"}),
        ({"jobs__refit__items__DOOR__old_coats": "[{id: a}]"}, {"Lifting, wrinkling"}),
        ({"jobs__refit__items__DOOR__old_coats": "[{id: a, family: bituminous}, {id: b, family: epoxy_2k}]"}, {"Bleeding: brown stains come through"}),
        ({"preparations__sand-steel__steps__sand__do": "blast"}, {"Pinpoint rust in the first coat"}),
    ],
)  # fmt: skip
def test_fault_comes_with_what_makes_it(changes: dict[str, str], more: set[str]) -> None:
    assert more <= _faults(**changes)
    assert _faults(**changes) - _faults() <= more


def test_every_row_has_a_cause_or_is_the_rejected_place() -> None:
    rows = table("faults").rows
    assert [row["id"] for row in rows if not row["remedy"] or row["when"] not in OCCURS] == []
    assert [row["id"] for row in rows if not row["cause"] and not row["mechanism"]] == ["rejected"]
    assert [row["id"] for row in rows if row["cause"] and row["mechanism"]] == []


def test_mechanism_names_its_source_by_a_mark() -> None:
    spec = _spec()
    view = faults(spec.jobs["refit"], spec, _words(spec))
    marks = [row[3] for row in view.table.rows if row[3]]
    assert list(dict.fromkeys(marks)) == [mark for mark, _ in view.sources]
    assert ("1", "MIL-HDBK-1110 / UFC 3-190-06, Protective Coatings and Paints, 2.2.3; 2.3.4; 11.4.2 (published)") in (
        view.sources
    )


@dataclass(frozen=True)
class Repair:
    """What is said of the repair of one system: the steps of all and its own."""

    steps: list[Condition]
    coats: TableView


def _repairs(**changes: str) -> tuple[Repair, ...]:
    spec = _spec(tuple((path.replace("__", "."), value) for path, value in changes.items()))
    job = spec.jobs["refit"]
    found = repair_procedure(job, spec, builds_of(job, spec), _words(spec))
    assert found is not None
    return tuple(
        Repair(list(_own(found.steps, letter)), coats) for letter, coats in zip("AB", found.coats, strict=True)
    )


def _own(steps: Iterable[Condition], letter: str) -> Iterator[Condition]:
    for step in steps:
        own = [
            line.removeprefix(f"System {letter}: ")
            for line in step.text.split("\n")
            if line.startswith(f"System {letter}: ")
        ]
        # a step of all, or the line of this system
        if own or not step.text.startswith("System "):
            yield replace(step, text=own[0] if own else step.text)


def test_steps_of_all_systems_are_told_once() -> None:
    spec = _spec()
    job = spec.jobs["refit"]
    found = repair_procedure(job, spec, builds_of(job, spec), _words(spec))
    assert found is not None
    assert [table.caption for table in found.coats] == [
        "Coats to be reapplied, system A: Primer, base coat and clear",
        "Coats to be reapplied, system B: Barrier coat",
    ]
    texts = [step.text for step in found.steps]
    assert len([text for text in texts if text.startswith("Vacuum, degrease")]) == 1
    assert len([text for text in texts if text.startswith("Feather the edge")]) == 1
    apart = [text.split("\n") for text in texts if text.startswith("System ")]
    assert [[line[:9] for line in lines] for lines in apart] == [["System A:", "System B:"]] * len(apart)
    assert len(apart) == 2  # the papers around, the film of all coats


def test_repair_of_each_system() -> None:
    cab, chassis = _repairs()
    assert [step.text for step in cab.steps] == [
        "Wash and degrease the area and its surroundings first: sanding works dirt and grease into the surface.",
        f"Do not dry-sand any film before it is fully cured: until then its dust is harmful. A film that is already hard may be wet-sanded, with a P3 mask and gloves. Fully cured: Example clear 7{NB}days at 10{NB}°C (50{NB}°F); Example barrier 7{NB}days at 10{NB}°C (50{NB}°F).",
        "Sand the area back until the remaining coating is sound and adheres firmly at its edge: to the first undamaged coat, or to the substrate where the lowest coat is damaged or loose.",
        "Where the cold-rolled steel sheet of systems A, B is exposed, prepare it to P Ma as in their surface preparation.",
        "Feather the edge of every coat around the area, one ring per coat, with P180 to P320, until no step can be felt.",
        f"Abrade the sound coating around the feathered rings to an even matt with P800 to P1500, at least 25{NB}mm wide.",
        "Vacuum, degrease and wipe with a tack cloth. Mask the areas that are not to be coated.",
        f"Reapply the coats, starting from the exposed coat or substrate as shown in the table below, with the cross coats given in the coat table. Extend each coat beyond the one below it; the last coat must overlap the abraded area by at least 25{NB}mm.",
        "Once hard, measure the DFT on the repair, on the feathered rings and beside them, with the gauge used for the original readings.",
        f"Where bare substrate was exposed, total DFT: at least 95{NB}µm (3.7{NB}mil), nominal 130{NB}µm (5.1{NB}mil), at most 180{NB}µm (7.1{NB}mil).",
        "Then make the other checks of the inspection and test plan on the repair, and record it.",
    ]  # fmt: skip
    assert [step.source for step in cab.steps if step.source] == [
        "MIL-HDBK-1110 / UFC 3-190-06, Protective Coatings and Paints, 4.4 (published)"
    ]
    # a base coat that was sanded is laid again: the clear coat alone is laid only where damage stays within it
    assert [row[:3] for row in cab.coats.rows] == [
        ("the substrate", "P180", "1 primer"),
        ("1 primer or 2 basecoat", "P400", "2 basecoat"),
        ("3 clearcoat", "P800 to P1500", "3 clearcoat"),
    ]
    assert [row[:3] for row in chassis.coats.rows] == [
        ("the substrate", "P180", "1 primer"),
        ("1 primer", "P400 to P800", "1 primer"),
    ]


@pytest.mark.parametrize(
    ("below", "paper"),
    [("{id: primer, role: primer, product: primer,", "P320 to P400"), ("{id: primer, role: surfacer, product: primer,", "P400 to P600")],
)  # fmt: skip
def test_paper_nobody_names_is_that_of_the_table_for_the_coat_below(below: str, paper: str) -> None:
    cab, _ = _repairs(
        products__primer__roles="[primer, surfacer]",
        products__primer__overcoat="[{id: any-warm, next_coat: any, interval: 30 min..24 h, air: 20 degC}]",
        systems__cab__layers__primer=below
        + " variant: grey, film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4, overcoat_interval: 30 min..24 h}",
    )
    (row,) = [row for row in cab.coats.rows if row[2] == "2 basecoat"]
    assert row[1] == paper


def test_time_to_full_cure_is_named_where_the_product_states_it() -> None:
    rows = "[{id: a, stage: fully-cured, time: 12 days, air: 14 degC}, {id: b, stage: fully-cured, time: 7 days, air: 20 degC}]"
    cab, _ = _repairs(products__primer__drying=rows)
    assert cab.steps[1].text.startswith("Do not dry-sand any film before it is fully cured")
    assert f"Fully cured: Example primer 12{NB}days at 14{NB}°C" in cab.steps[1].text


def test_a_product_that_states_when_it_may_be_sanded_is_not_told_to_wait_for_full_cure() -> None:
    rows = "[{id: dry, sanding: dry, time: 6 h, air: 10 degC}, {id: wet, sanding: wet, time: 4 h, air: 25 degC}]"
    cab, _ = _repairs(products__primer__sandable_after=rows)
    said = cab.steps[1].text
    assert f"with dust extraction and a P3 mask: Example primer ready for dry sanding 6{NB}h at 10{NB}°C" in said
    assert f"ready for wet sanding not stated for 15{NB}°C" in said
    # the clear, which states no such time, still waits until it has cured
    assert "Do not dry-sand Example clear or Example barrier before it is fully cured" in said
    assert "any film" not in said


def test_paint_whose_dust_holds_neither_isocyanate_nor_epoxy_is_sanded_once_dry_to_handle() -> None:
    _, chassis = _repairs(
        products__barrier__binder="acrylic_1k",
        products__barrier__hazards__isocyanates="{contained: no}",
        products__barrier__hazards__epoxy_up_to_700="no",
        systems__chassis__handle_after="5 h",
    )
    assert (
        chassis.steps[1].text
        == f"Start only when the last coat is dry to handle, 5{NB}h after the end of its last cross coat."
    )


def test_widths_of_the_job_go_before_the_published_lap() -> None:
    cab, _ = _repairs(
        jobs__refit__items__DOOR__old_coats="[{id: a, family: pu_2k_aliphatic}]",
        jobs__refit__items__DOOR__repair="{feather: 21 mm, sanded: 61 mm, lap: 31 mm}",
        jobs__refit__items__DOOR__strip_limit="260 um",
    )
    texts = " ".join(step.text for step in cab.steps)
    assert [width in texts for width in (f"at least 21{NB}mm wide", f"at least 61{NB}mm wide", f"by at least 31{NB}mm")] == [True] * 3  # fmt: skip
    assert f"Existing and new coats together: at most 260{NB}µm" in texts
    # the published lap is that of the other system alone
    assert [step.source for step in cab.steps if step.source] == [
        "system B: MIL-HDBK-1110 / UFC 3-190-06, Protective Coatings and Paints, 4.4 (published)"
    ]


def test_spot_that_cannot_be_blasted_has_its_grade() -> None:
    cab, _ = _repairs(
        **{"preparations__sand-steel__steps__sand": "{id: sand, do: blast, text: Blast., grade: Sa 2 1/2}"}
    )
    assert cab.steps[3].text == (
        "Where the cold-rolled steel sheet of system A is exposed, prepare it to Sa 2 1/2 as in its surface preparation. Small areas that cannot be blast-cleaned: to SP 11 or P Ma."
    )


def test_application_begins_with_shaking_and_ends_with_the_valve() -> None:
    spec = _spec()
    words, job = _words(spec), spec.jobs["refit"]
    at_job = application_at(spec.products["primer"], job, words)
    assert tuple(step[:2] for step in at_job.steps) == (
        ("Shake", f"Shake for 2{NB}min after the mixing ball starts to rattle."),
        ("Spray", f"Spray distance 20 to 25{NB}cm, 50{NB}% overlap between strokes."),
        ("Clear the valve", "turn the can over and spray until only gas comes. Keep on what you wear for spraying."),
    )  # fmt: skip
    alone = application(spec.products["primer"], words)
    assert alone.steps[1][1].endswith(f"usually 4 cross coats, flash-off between cross coats 5 to 10{NB}min.")
    tin = application_at(spec.products["barrier"], job, words)
    assert [step.heading for step in tin.steps] == [
        "Mix",
        "Stir",
        "Thinning",
        "Induction time",
        "Nozzle",
    ]


def test_drying_is_that_of_the_coldest_air_of_the_job() -> None:
    rows = "[{id: a, stage: dust-free, time: 40 min, air: 10 degC}, {id: b, stage: dust-free, time: 30 min, air: 14 degC}, {id: c, stage: dust-free, time: 20 min, air: 20 degC}, {id: d, stage: dry-to-handle, time: 8 h, air: 20 degC}]"
    spec = _spec((("products.primer.drying", rows),))
    found = application_at(spec.products["primer"], spec.jobs["refit"], _words(spec)).drying
    assert [text.split(" (")[0] for _, text in found] == [f"30{NB}min at 14{NB}°C", f"not stated for 15{NB}°C"]
    assert len(application(spec.products["primer"], _words(spec)).drying) == 4


def test_part_temperature_is_the_jobs_where_it_states_one() -> None:
    spec = _spec((("products.primer.application.surface_temperature", "10..35 degC"),))
    product, words = spec.products["primer"], _words(spec)
    assert "Surface temperature" in dict(application(product, words).values)
    assert "Surface temperature" not in dict(application_at(product, spec.jobs["refit"], words).values)
    assert "Surface temperature" in dict(
        application_at(product, spec.jobs["refit"].model_copy(update={"climate": None}), words).values
    )


def test_goes_over_holds_what_the_tables_hold_and_no_more() -> None:
    spec = _spec()
    view = goes_over(spec.products["primer"], spec, _words(spec))
    rows = {below: (said, why) for said, below, why, _ in view.table.rows}
    assert rows["epoxy, two-pack or with blocked hardener"][0] == "Suitable if prepared"
    assert rows["aluminium"] == (
        "Suitable if prepared",
        "degrease first; abrade with the abrasive paper stated for the task or apply a conversion coating",
    )
    assert rows["alkyd, drying oil"][0] == "Conditional"
    assert rows["alkyd, drying oil"][1].endswith("; sources differ: 2 states not recommended")
    assert rows["heat-resistant silicone"][0] == "Not recommended"
    # copper, magnesium and wood are in no row of the matrix, and so in none of this table
    assert [row for row in view.table.rows if "copper" in row[1] or "wood" in row[1]] == []
    assert [said for said, *_ in view.table.rows] == sorted(
        (said for said, *_ in view.table.rows), key=["Suitable if prepared", "Conditional", "Not recommended"].index
    )
    assert dict(view.sources)["1"] == "common practice, no source"


def test_metal_is_left_to_the_products_own_word() -> None:
    spec = _spec((("products.primer.direct_to_metal", "no"),))
    product, words = spec.products["primer"], _words(spec)
    assert [
        row for row in goes_over(product, spec, words).table.rows if "steel" in row[1] or "aluminium" in row[1]
    ] == []
    assert preparation_of_steel(product, words) == ""
    allowed = _spec()
    assert preparation_of_steel(allowed.products["primer"], words) == (
        "SP 6 (commercial blast cleaning, SSPC): normal exposure; "
        "SP 11 (power tool cleaning to bare metal, SSPC) or P Ma (local machine abrading, ISO 8501-2): small areas; "
        "SP 10 (near-white blast cleaning, SSPC): immersion or severe exposure (common practice, no source)"
    )

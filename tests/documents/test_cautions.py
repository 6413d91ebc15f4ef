"""Panels, statements and cautions at the step, as a workshop reads them."""

from __future__ import annotations

import pytest

from specgen.documents.method_statement.build import builds
from specgen.documents.parts.caution_catalogue import NOT_STATED
from specgen.documents.parts.cautions import HazardView, emergency, hazards
from specgen.documents.parts.protection import protection
from specgen.documents.parts.step_cautions import at_steps, before_use, cautions_at, standing_at
from specgen.documents.parts.wording import Words
from specgen.documents.parts.work_wear import wear_for_cleaners
from specgen.facts.job.quantities import quantities
from specgen.model.application import Workplace
from specgen.model.hazards import Task
from specgen.model.spec import Spec
from specgen.units.locale import ENGLISH
from tests.documents.conftest import views_of
from tests.good_spec import good_with, spec_of

NB = "\N{NO-BREAK SPACE}"


def _spec(changes: dict[str, str]) -> Spec:
    return spec_of(good_with(changes))


def _words(spec: Spec) -> Words:
    return Words.of(spec.project, ENGLISH)


def _panels(changes: dict[str, str]) -> tuple[HazardView, ...]:
    spec = _spec(changes)
    return hazards(list(spec.products.values()), spec, _words(spec))


def test_the_gravest_word_comes_first() -> None:
    panels = _panels({})
    assert [(panel.signal_word, panel.product) for panel in panels] == [
        ("Danger", "Example primer"),
        ("Danger", "Example base coat"),
        ("Danger", "Example clear"),
        ("Warning", "Example barrier"),
    ]


def test_one_label_is_one_panel_that_names_its_products() -> None:
    """Primer and clear made alike: what both say stands once, what one says names it."""
    changes = {
        "products.clear.hazards.supplemental": "[EUH205]",
        "products.clear.hazards.disposal": "Hand in full cans.",
        "products.primer.hazards.disposal": "Hand in full cans.",
    }
    shared, *_ = _panels(changes)
    assert shared.product == "Example primer, Example clear"
    assert shared.data_sheets == (
        "Example primer: SDS-100, revision 3, 2026-02-01 (technical desk)",
        "Example clear: SDS-100, revision 3, 2026-02-01 (technical desk)",
    )
    assert ("Disposal", "Hand in full cans.") in shared.lines
    assert ("Released during cure (Example primer)", "ketone") in shared.lines
    assert ("Released during cure (Example clear)", "aldehyde") in shared.lines


def test_what_the_law_leaves_open_says_who_fills_it_in() -> None:
    barrier = _panels({"products.barrier.hazards.precautions": "[P210, P264, P280]"})[-1]
    assert [(entry.code, entry.note) for entry in barrier.precautions] == [
        ("P210", ""),
        ("P264", "(to be completed on the label)"),
        ("P280", "(for which, see Personal protective equipment)"),
    ]


def test_the_named_sensitiser_stands_in_the_statement() -> None:
    changes = {
        "products.base.hazards.supplemental": "[EUH208]",
        "products.base.hazards.sensitisers_named": "[phthalic anhydride]",
    }
    (panel,) = [entry for entry in _panels(changes) if entry.product == "Example base coat"]
    assert panel.statements[-1].text == "Contains phthalic anhydride. May produce an allergic reaction."


def test_storage_carriage_and_waste_are_printed() -> None:
    changes = {
        "products.primer.hazards.storage_min": "5 degC",
        "products.primer.hazards.transport": "{un_number: UN 1950, transport_class: '2.1', limited_quantity: 1 L, package_max: 30 kg}",
        "products.primer.hazards.waste_codes": "['16 05 04*', '99 99 99']",
        "products.primer.hazards.flash_point": "12 degC",
    }
    lines = dict(_panels(changes)[0].lines)
    assert lines["Storage temperature, unopened"] == f"5 to 50{NB}°C (41 to 122{NB}°F)"
    assert (
        lines["Transport"]
        == f"UN 1950, class 2.1, limited quantity, at most 1{NB}L per inner packaging, at most 30{NB}kg gross per package"
    )
    waste = "16\xa005\xa004* gases in pressure containers (including halons) containing hazardous substances; 99\xa099\xa099"
    assert lines["Waste codes"] == waste
    assert lines["Flash point of the liquid"] == f"12{NB}°C (54{NB}°F)"


def test_a_can_with_a_coldest_storage_alone_keeps_the_warmest_of_the_law() -> None:
    changes = {"products.base.hazards.storage_min": "5 degC"}
    spec = spec_of(good_with(changes, ["products.base.hazards.storage_max"]))
    (panel,) = hazards([spec.products["base"]], spec, _words(spec))
    stored = dict(panel.lines)["Storage temperature, unopened"].replace(NB, " ")
    assert stored.startswith("at least 5 °C (41 °F); maximum storage temperature: 50 °C (Regulation (EC) No 1272/2008")


@pytest.mark.parametrize(
    ("laws", "duties"),
    [
        ("[EU]", ["training completed before use"]),
        ("[GB]", ["health surveillance for asthma", "urine test of vehicle sprayers"]),
        ("[US]", ["supplied air, for the substance"]),
        (
            "[US, EU, AU]",
            ["supplied air, for the substance", "training completed before use", "air line or self-contained air"],
        ),
        ("[AU]", ["air line or self-contained air"]),
    ],
)
def test_duties_around_isocyanate_follow_the_law_of_the_place(laws: str, duties: list[str]) -> None:
    panels = _panels({"project.jurisdictions": laws})
    (clear,) = [panel for panel in panels if panel.product == "Example clear"]
    said = [text for name, text in clear.lines if name == "Legal requirement"]
    assert [text.startswith(duty) for text, duty in zip(said, duties, strict=True)] == [True] * len(duties)


def test_epoxy_in_germany_asks_for_a_doctor() -> None:
    panels = _panels({"project.jurisdictions": "[EU, DE]"})
    said = {panel.product: [text for name, text in panel.lines if name == "Legal requirement"] for panel in panels}
    assert [text.split(" (DE")[0] for text in said["Example primer"]] == [
        "mandatory occupational health surveillance for spraying uncured epoxy"
    ]


def test_the_number_to_call() -> None:
    spec = _spec({"project.emergency_phone": "'+00 999'"})
    assert emergency(spec.project, _words(spec)) == "In an emergency, call: +00 999"
    assert emergency(_spec({}).project, _words(spec)) == ""


def test_no_task_is_left_out_of_what_to_wear() -> None:
    spec = _spec({})
    rows = protection(list(spec.products.values()), _words(spec)).rows
    assert [row[0] for row in rows] == [
        "Surface preparation",
        "Sanding",
        "Spraying",
        "Spraying",
        "Clean-up",
        "Clean-up",
    ]
    assert rows[0][2] == NOT_STATED
    for_all = {"products.primer.hazards.protection.spray.task": "any"}
    spec = _spec(for_all)
    assert [row[0] for row in protection([spec.products["primer"]], _words(spec)).rows] == ["All tasks"]


def test_cautions_at_the_step() -> None:
    """Isocyanate before fire before allergy, then what to wear; each names its products where not all need it."""
    spec = _spec({"products.clear.hazards.ventilation": "Spray in a booth, breathing protection on."})
    products = [spec.products["primer"], spec.products["clear"]]
    found = cautions_at(Task.SPRAYING, products, _words(spec), place=None)
    assert [text.split(":")[0] for text in found] == [
        "Example clear",
        "Start the extraction before spraying and run it until the booth has cleared; no flames, sparks, hot surfaces or smoking within reach of spray or vapour.",
        "Example clear",
        "Example primer",
        "Example primer",
        "Example clear",
        "Example clear",
    ]
    assert "wait at least 30 min, extraction running" in found[0]
    assert found[2].startswith("Example clear: Absorbed through the skin")
    assert found[4].startswith("Example primer: Wear: Respiratory: half mask AXP3")
    assert found[-1] == "Example clear: Spray in a booth, breathing protection on."


@pytest.mark.parametrize("task", [Task.PREPARATION, Task.SPRAYING, Task.CLEAN_UP])
@pytest.mark.parametrize("place", [Workplace.CONFINED, Workplace.OUTDOORS])
def test_no_booth_is_waited_for_where_there_is_none(task: Task, place: Workplace) -> None:
    spec = _spec({})
    said = " ".join(cautions_at(task, list(spec.products.values()), _words(spec), place=place))
    assert not [word for word in ("booth has cleared", "posted, wait", "{") if word in said]


def test_in_a_confined_space_no_document_of_the_job_gives_a_time_to_wait() -> None:
    """The isocyanate stays in the space: apparatus comes off by the permit, on every page that speaks of it."""
    text = _printed({"jobs.refit.workplace": "confined-space"})
    assert "whoever signs the entry permit decides" in text
    assert not [
        said for said in ("booth has cleared", "posted at the booth", "wait 30", "30 min if none") if said in text
    ]


def test_outdoors_mist_and_vapour_disperse() -> None:
    text = _printed({"jobs.refit.workplace": "outdoors"})
    assert "until mist and vapour have dispersed" in text
    assert not [said for said in ("booth has cleared", "posted at the booth") if said in text]


def _printed(changes: dict[str, str]) -> str:
    """All that the documents of the job say."""
    views = views_of(_spec(changes))
    return " ".join(repr(views[name]) for name in views if name.endswith("refit"))


def test_oxidative_rags_are_cautioned_when_clearing_up() -> None:
    spec = _spec({"products.base.curing": "oxidative"})
    base, primer, words = spec.products["base"], spec.products["primer"], _words(spec)
    assert cautions_at(Task.CLEAN_UP, [base], words, place=None)[0].startswith(
        "Soaked rags and overspray can self-heat"
    )
    assert cautions_at(Task.CLEAN_UP, [primer, base], words, place=None)[0].startswith("Example base coat: Soaked rags")
    assert standing_at(Task.CLEAN_UP, [primer, base], words, place=None)[0].startswith("Soaked rags")
    assert not any("rags" in text for text in cautions_at(Task.CLEAN_UP, [primer], words, place=None))


def test_at_clearing_up_the_list_says_what_the_table_says() -> None:
    """Air-fed protection stays on after isocyanate; who only used the primer wears the gloves of usual practice."""
    spec = _spec({})
    products, words = [spec.products["primer"], spec.products["clear"]], _words(spec)
    said = [text for text in cautions_at(Task.CLEAN_UP, products, words, place=None) if "Wear" in text]
    assert said[0].startswith("Example clear: Wear: Respiratory: air-fed half mask, EN 14594")
    assert said[1].startswith("Example primer: Wear (common practice): Hands: nitrile")
    rows = [row for row in protection(products, words).rows if row[0] == "Clean-up"]
    assert rows[0][2] == "air-fed half mask, EN 14594"


def test_old_paint_is_cautioned_before_it_is_sanded() -> None:
    spec = _spec({})
    products, words = [spec.products["base"]], _words(spec)
    old = cautions_at(Task.SANDING, products, words, place=None, beside={"old-paint"})
    assert old[0].startswith("Existing coatings may contain lead or chromate")
    assert cautions_at(Task.SANDING, products, words, place=None) == old[1:]


def test_each_step_of_the_statement_carries_its_cautions_once() -> None:
    view = views_of(_spec({}))["method_statement_refit"]
    build = view.builds[0]  # type: ignore[union-attr]
    assert [bool(step.cautions) for step in build.steps] == [True, True, False]
    assert build.steps[0].cautions[0].startswith("Cleaners and degreasers are flammable")
    # on bare metal there is no paint of the job yet, so nothing is said of epoxy or isocyanate
    assert [text.split(":")[0] for text in build.steps[1].cautions] == [
        "Dust harms the lungs",
        "Wear (common practice)",
    ]
    # between the coats it is the dust of primer and base coat, not of the clear on top
    between = [text for phase in build.phases for text in phase.late_safety]
    assert not any("isocyanate" in text for text in between)
    assert any("Dust from epoxy" in text for text in between)


def test_a_late_coat_whose_dust_does_harm_is_sanded_wet_unless_its_product_says_from_when() -> None:
    def late(changes: dict[str, str]) -> tuple[str, ...]:
        view = views_of(_spec(changes))["method_statement_refit"]
        return view.builds[0].phases[1].late_safety  # type: ignore[union-attr,no-any-return]

    wet = "Sand it wet until it is fully cured."
    assert late({})[0] == wet
    assert wet not in late({"systems.cab.layers.primer.if_exceeded": "Dry-sand with P400."})
    timed = "[{id: dry, sanding: dry, time: 6 h, air: 15 degC}]"
    assert wet not in late({"products.primer.sandable_after": timed})


def test_a_two_pack_is_cautioned_from_the_opened_tin() -> None:
    spec = _spec({})
    found = before_use(spec.products["barrier"], _words(spec), place=None)
    assert found[0] == (
        "Mixing: Put on gloves and goggles before opening the tins; mix in a ventilated place and clean up spills at once."
    )
    assert not any(text.startswith("Mixing") for text in before_use(spec.products["primer"], _words(spec), place=None))


def test_blasting_after_hand_tools_adds_only_what_is_new() -> None:
    steps = (
        "[{id: a, do: hand-tool, text: Scrape.}, {id: b, do: blast, text: Blast.}, "
        "{id: c, do: blast, text: Blast the rest.}, {id: d, do: dust-off, text: Blow off.}]"
    )
    spec = _spec({"preparations.sand-steel.steps": steps})
    found = at_steps(spec.preparations["sand-steel"], _words(spec), place=None, old_paint=False, cleaners="")
    assert [len(texts) for texts in found] == [2, 1, 0, 0]
    assert found[1][0].startswith("Blasting: wear an air-fed blast helmet")


@pytest.mark.parametrize("do", ["drill", "cut"])
def test_drilling_and_cutting_carry_the_cautions_of_sanding(do: str) -> None:
    """Both raise the dust of old paint, which may hold lead."""
    spec = _spec(
        {"preparations.sand-steel.steps": f"[{{id: a, do: {do}, text: Do it.}}, {{id: b, do: degrease, text: Wipe.}}]"}
    )
    found = at_steps(spec.preparations["sand-steel"], _words(spec), place=None, old_paint=True, cleaners="")
    sanded = _spec({"preparations.sand-steel.steps": "[{id: a, do: sand, text: Do it.}]"})
    assert found[0] != ()
    assert (
        found[0]
        == at_steps(sanded.preparations["sand-steel"], _words(sanded), place=None, old_paint=True, cleaners="")[0]
    )


def test_a_product_without_hazards_has_no_panel() -> None:
    spec = _spec({})
    bare = spec.products["base"].model_copy(update={"hazards": None})
    assert hazards([bare], spec, _words(spec)) == ()


def test_a_wash_says_nothing_of_flames_and_each_cleaner_is_worn_for_where_it_is_used() -> None:
    wipe = "{id: wipe, what: degreaser EX-7, amount: 2 L, kind: cleaner, statements: [H225], gloves: nitrile 0.4 mm}"
    wash = "[{id: wash, do: wash, text: Wash.}, {id: wipe, do: degrease, text: Wipe.}]"
    spec = spec_of(good_with({"preparations.sand-steel.steps": wash, "jobs.refit.consumption.supplies": f"[{wipe}]"}))
    words = Words(ENGLISH, {})
    told = at_steps(
        spec.preparations["sand-steel"],
        words,
        place=None,
        old_paint=False,
        cleaners=wear_for_cleaners(spec.jobs["refit"], words),
    )
    assert told[0] == ("Wear: Hands: nitrile 0.4 mm (degreaser EX-7).",)
    assert told[0][0] in told[1]
    assert any("flammable" in text for text in told[1])


@pytest.mark.parametrize(
    ("before", "dust"),
    [("Wash with water and detergent, then rinse.", False), ("Abrade with P400.", True), ("Nass anschleifen.", True)],
)
def test_a_coat_that_is_washed_before_the_next_makes_no_dust(before: str, dust: bool) -> None:
    spec = _spec({"systems.cab.layers.primer.before_next": before})
    told = builds(spec.jobs["refit"], spec, quantities(spec.jobs["refit"], spec), _words(spec))
    rows = [row for phase in told[0].phases for row in phase.rows if row.title == "Before the next coat"]
    assert rows[0].text.startswith(before[:4])
    assert any("dust" in text for text in rows[0].safety) is dust

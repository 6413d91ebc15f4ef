"""Our own words on hazards stand in one place, and none of them is forgotten."""

from __future__ import annotations

import re
from pathlib import Path

from specgen.documents.parts.caution_catalogue import AT_STEPS, FILLED_IN, HURTS, PICTOGRAMS
from specgen.facts.product.dangers import STATEMENTS, traits_of
from specgen.figures.pictograms import CODES
from specgen.model.hazards import Task
from specgen.standards.tables import table
from tests.good_spec import good_with, spec_of

CATALOGUE = Path(__file__).parents[2] / "templates/locale/specgen.pot"
# These name no hurt: one points to the safety data sheet, the other to the instructions.
NO_HURT = {"EUH210", "EUH401"}


def test_every_statement_hurts_in_one_line() -> None:
    assert set(HURTS) == set(STATEMENTS)
    listed = [code for codes in STATEMENTS.values() for code in codes]
    assert len(set(listed)) == len(listed)
    known = {row["id"] for name in ("h_statements", "euh_statements") for row in table(name).rows}
    assert set(listed) == known - NO_HURT


# What the official wording of a statement speaks of, and what the line it brings has to speak of. The first that fits counts.
SPEAKS_OF = (
    (r"ozone", r"ozone"),
    (r"metals", r"metals"),
    (r"respiratory tract", r"airways"),
    (r"enters airways", r"swallowed.*airways"),
    (r"with water|with acids", r"water or acids"),
    (r"isocyanates|asthma", r"asthma"),
    (r"allergic", r"allergy"),
    (r"peroxides|under confinement", r"explode"),
    (r"under pressure|Pressurised|refrigerated gas", r"burst|Fire hazard"),
    (r"flammable|combustible|ignite|explosively", r"Fire hazard"),
    (r"aquatic|environment|contamination of water", r"environment"),
    (r"skin burns", r"burns to skin and eyes"),
    (r"serious eye damage", r"blindness"),
    (r"eye irritation", r"eyes"),
    (r"^(Fatal|Toxic) ", r"Toxic"),
    (r"droplets|respirable dust|respiratory irritation|drowsiness|harmful if inhaled", r"inhaled"),
    (r"harmful if swallowed|in contact with skin", r"swallowed or through the skin"),
    (r"skin irritation|skin dryness", r"Irritates or dries the skin"),
    (r"cancer|genetic|fertility|child|organs|endocrine|lead|cadmium", r"long-term"),
)


def test_a_line_speaks_of_what_its_statements_speak_of() -> None:
    wordings = {row["id"]: row["text"] for name in ("h_statements", "euh_statements") for row in table(name).rows}
    told_otherwise = []
    for danger, codes in STATEMENTS.items():
        for code in codes:
            wanted = next(line for official, line in SPEAKS_OF if re.search(official, wordings[code], re.IGNORECASE))
            if not re.search(wanted, HURTS[danger]):
                told_otherwise.append((code, wordings[code], HURTS[danger]))
    assert told_otherwise == []


def test_no_flame_near_what_may_explode_or_reacts_with_water() -> None:
    for code in ("EUH044", "EUH019", "EUH014", "H226"):
        spec = spec_of(
            good_with({"products.primer.hazards.statements": "[]", "products.primer.hazards.supplemental": "[]"})
        )
        assert "burns" not in traits_of(spec.products["primer"])
        field = "supplemental" if code.startswith("EUH") else "statements"
        spec = spec_of(
            good_with(
                {"products.primer.hazards.statements": "[]", "products.primer.hazards.supplemental": "[]"}
                | {f"products.primer.hazards.{field}": f"[{code}]"}
            )
        )
        assert "burns" in traits_of(spec.products["primer"])


def test_every_pictogram_has_a_name() -> None:
    assert set(PICTOGRAMS) == set(CODES)


def test_every_task_of_the_work_has_a_caution() -> None:
    assert {caution.task for caution in AT_STEPS} == set(Task) - {Task.ANY}


def test_what_is_filled_in_is_open_in_the_official_wording() -> None:
    assert [code for code in FILLED_IN if "…" not in table("p_statements").row("id", code)["text"]] == []


def test_all_of_it_can_be_translated() -> None:
    shipped = CATALOGUE.read_text("utf-8")
    texts = [*(caution.text for caution in AT_STEPS), *HURTS.values(), *PICTOGRAMS.values()]
    assert [text for text in texts if f'msgid "{text}"' not in shipped] == []

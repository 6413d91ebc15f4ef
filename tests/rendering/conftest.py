"""A small invented document that uses every part the templates offer; handed to the tests of this folder."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import jinja2
import pytest

from specgen.documents.emergency_call import EmergencyCall
from specgen.rendering.environment import Medium, environment, new_outline


def column(heading: str, width: str, *, numeric: bool = False) -> dict[str, Any]:
    return {"heading": heading, "width": width, "numeric": numeric}


VIEW: dict[str, Any] = {
    "number": "MS-0417",
    "revision": "B",
    "on": "2026-11-26",
    "kind": "Method statement",
    "title": "Touch-up of galvanised handrails",
    "subtitle": "Two coats from aerosol cans, on site, 23 °C ± 5 °C",
    "foot": "Printed copies are not kept up to date",
    "title_block": [
        ("Document", "MS-0417"),
        ("Revision", "B"),
        ("Status", "Draft"),
        ("Site", "North bank pump house"),
        ("Prepared by", "A. Writer"),
        ("Checked by", "B. Reader"),
    ],
    "headings": ["1  Figures and cautions", "2  Layers", "3  Steps", "4  Readings"],
    "key_figures": [
        {"label": "Dry film, total", "value": "90–130", "unit": "µm"},
        {"label": "Air temperature", "value": "10–35", "unit": "°C"},
        {"label": "Steel above dew point", "value": "≥ 3", "unit": "°C"},
        {"label": "Recoat at 23 °C", "value": "4", "unit": "h"},
    ],
    "opening": "Coat only what is **dry, clean and abraded**. See [the notice](https://example.org/a_b_c) first.",
    "cautions": [
        {"level": "danger", "word": "DANGER", "sign": "Warning sign", "text": "Extremely flammable aerosol."},
        {"level": "warning", "word": "WARNING", "sign": "Warning sign", "text": "Harmful if breathed in:\n\n- wear a filter\n- keep the air moving"},
        {"level": "caution", "word": "CAUTION", "sign": "", "text": "Overspray carries several metres in wind."},
        {"level": "notice", "word": "NOTICE", "sign": "", "text": "A film above 130 µm may wrinkle when recoated."},
    ],
    "note": "CO₂ and m² print as they should; so do ½, ³, ×, →, Δ, Ω and €.",
    "layers": {
        "caption": "Table 1. Layers from the metal outwards",
        "columns": [
            column("Layer", "w-20"),
            column("Product", "w-30"),
            column("Dry film (µm)", "w-15", numeric=True),
            column("Coats", "w-10", numeric=True),
            column("Recoat", "w-25"),
        ],
        "rows": [
            ("Primer", "Zinc phosphate primer, aerosol", "40–60", "1", "4 h to 7 d at 23 °C"),
            ("Top coat", "Acrylic enamel, aerosol, grey", "50–70", "2", "15 min between coats"),
        ],
    },
    "steps": [
        {"title": "Degrease", "hold": False, "text": "Wipe with a *clean* cloth; change it often (Δ, Ω and *Δ, Ω* alike)."},
        {"title": "Abrade", "hold": True, "text": "Fine pad, until dull. Wait for release."},
        {"title": "Prime", "hold": False, "text": "One full coat. Shake the can for **2 min** first."},
        {"title": "Top coat", "hold": False, "text": "Two thin coats, crosswise."},
    ],
    "ticks": [
        {"title": "Ticked", "ticked": True, "text": "Cans shaken and at room temperature"},
        {"title": "To be ticked", "ticked": False, "text": "Air and steel temperature noted"},
    ],
    "facts": [("Instrument", "Magnetic gauge, verified daily"), ("Acceptance", "No reading below 80 % of 90 µm")],
    "readings": {
        "caption": "Table 2. Dry film, µm",
        "columns": [column("No.", "w-10", numeric=True), column("Place", "w-40"), *(column(f"Reading {n}", "", numeric=True) for n in (1, 2, 3))],
        "rows": [(str(n), f"Rail {n}, upper side", str(90 + n), str(96 + n % 7), str(101 + n % 5)) for n in range(1, 91)],
    },
    "approvals": {
        "caption": "Approval",
        "columns": [column("Role", "w-25"), column("Name", "w-25"), column("Signature", "w-30"), column("Date", "w-20")],
        "rows": [("Prepared", "A. Writer", "", ""), ("Approved", "C. Signer", "", "")],
    },
}  # fmt: skip


def filled(medium: Medium, *, draft: bool = True, emergency: EmergencyCall | None = None, **changes: object) -> str:
    """The sample document filled for one medium, with some values of its view changed."""
    engine = environment("en")
    assert engine.loader is not None
    here = jinja2.FileSystemLoader(Path(__file__).parent)
    overlay = engine.overlay(loader=jinja2.ChoiceLoader([here, engine.loader]))
    page = overlay.get_template("sample.html.j2")
    return page.render(medium=medium, outline=new_outline(), draft=draft, emergency=emergency, view=VIEW | changes)


@pytest.fixture
def sample() -> Callable[..., str]:
    return filled


@pytest.fixture
def sample_view() -> dict[str, Any]:
    return VIEW

"""An item with another colour or film of its system: what is judged, ordered and printed."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.comparing import compare
from specgen.documents.method_statement.build import builds
from specgen.documents.parts.annex import annex
from specgen.documents.parts.wording import Words
from specgen.facts.job.quantities import quantities
from specgen.units.locale import ENGLISH
from tests.good_spec import checked, good, loaded, put, spec_of

NB = "\N{NO-BREAK SPACE}"


def _two_colours(coats: str = "[{id: primer, variant: red, film: {min: 44 um}}]") -> dict[str, Any]:
    spec = good()
    spec["products"][0]["variants"].append({"id": "red", "name": "red", "order_number": "EX-101"})
    put(spec, "jobs.refit.items.LID", "{id: LID, name: Lid, count: 3, area: 0.4 m2}")
    put(spec, "jobs.refit.items.LID.coats", coats)
    return spec


def test_an_item_has_a_system_that_differs_in_the_coats_it_names() -> None:
    read = loaded(_two_colours())
    assert read.findings == []
    assert read.spec is not None
    job = read.spec.jobs["refit"]
    door, lid = (read.spec.system_of(job, item) for item in (job.items[0], job.items[2]))
    assert door is not None
    assert lid is not None
    assert lid.id == "cab-red"
    assert (lid.layers[0].variant, str(lid.layers[0].film.min), str(lid.layers[0].film.max)) == (
        "red",
        "44 um",
        "80 um",
    )
    assert lid.layers[1:] == door.layers[1:]
    path = ("systems", "cab-red", "layers", "primer", "film")
    assert "44 um" in read.place((*path, "min")).text
    assert read.taken_from((*path, "min")) == ("jobs", "refit")
    assert read.taken_from((*path, "max")) == ("systems", "cab")


def test_rules_judge_the_film_of_the_item() -> None:
    found = [f for f in checked(_two_colours("[{id: primer, film: {max: 95 um}}]")).report if f.id == "FLM003"]
    (one,) = found
    assert one.path == "systems.cab-primer.layers.primer.film.max"
    assert "95 um" in one.place.text


def test_packs_are_counted_by_colour() -> None:
    spec = spec_of(_two_colours())
    packs = quantities(spec.jobs["refit"], spec).packs
    assert {("primer", "grey"), ("primer", "red")} <= set(packs)


def test_two_colours_are_one_coat_table_with_the_difference() -> None:
    spec = spec_of(_two_colours())
    job = spec.jobs["refit"]
    found = builds(job, spec, quantities(job, spec), Words.of(spec.project, ENGLISH))
    assert [build.letter for build in found] == ["A", "B"]
    (primer,) = (row for row in found[0].coats.rows if str(row[0]) == "1 primer")
    cells = [str(cell).replace(NB, " ") for cell in primer]
    assert cells[1] == "Example primer, grey, EX-100 (DOOR);\nred, EX-101 (LID)"
    assert "40 µm (1.6 mil) (DOOR);\n44 µm (1.7 mil) (LID)" in cells[4]
    assert "(DOOR)" not in cells[6]


def test_two_items_of_one_colour_are_one_system() -> None:
    spec = _two_colours()
    put(spec, "jobs.refit.items.FLAP", "{id: FLAP, name: Flap, count: 3, area: 0.4 m2}")
    put(spec, "jobs.refit.items.FLAP.coats", "[{id: primer, variant: red, film: {min: 44 um}}]")
    put(spec, "jobs.refit.items.SIDE", "{id: SIDE, name: Side, count: 3, area: 0.4 m2}")
    put(spec, "jobs.refit.items.SIDE.coats", "[{id: primer, variant: red}]")
    read = spec_of(spec)
    assert [item.system for item in read.jobs["refit"].items[2:]] == ["cab-red", "cab-red", "cab-red-2"]


def test_comparison_tells_another_colour() -> None:
    old = checked(_two_colours())
    new = checked(_two_colours("[{id: primer, variant: red, film: {min: 46 um}}]"))
    changes = compare(old, new).changes
    assert [change.difference.path[-2:] for change in changes] == [("film", "min")]


@pytest.mark.parametrize(
    ("coats", "said"),
    [
        ("[{id: top, variant: red}]", "top is no coat of the system cab"),
        ("[{id: primer, passes: 3}]", "passes of a coat is the same on all items of its system"),
        ("[]", "coats must be a list, each entry with a hyphen"),
        ("[{variant: red}]", "an entry without an id is no coat of the system cab"),
        ("[{id: primer, variant: blue}]", "blue is not a variant of the product primer"),
    ],
)
def test_faults(coats: str, said: str) -> None:
    assert said in [f.what for f in loaded(_two_colours(coats)).findings]


def test_coats_of_an_item_without_a_system() -> None:
    spec = _two_colours()
    del spec["jobs"][0]["system"]
    assert "coats are given for an item that has no system" in [f.what for f in loaded(spec).findings]


def test_figures_of_two_colours_are_told_apart() -> None:
    spec = spec_of(_two_colours())
    told = annex(quantities(spec.jobs["refit"], spec).told_once(), spec, Words.of(spec.project, ENGLISH))
    of = {entry.of for entry in told if "Primer, base coat and clear" in entry.of}
    assert {text.partition("(")[2].partition(")")[0] for text in of} == {"cab", "cab-red"}


def test_systems_made_by_coats_are_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("specgen.model.based_on.MOST_COLOURED", 2)
    spec = _two_colours()
    for name in ("FLAP", "SIDE", "HOOD"):
        put(spec, f"jobs.refit.items.{name}", f"{{id: {name}, name: {name}, count: 3, area: 0.4 m2}}")
        film = {"FLAP": 46, "SIDE": 48, "HOOD": 50}[name]
        put(spec, f"jobs.refit.items.{name}.coats", f"[{{id: primer, variant: red, film: {{min: {film} um}}}}]")
    (one,) = loaded(spec).findings
    assert (one.id, one.path) == ("MOD009", "jobs.refit.items.SIDE.coats")
    assert one.what == "with this item the coats of items make more than 2 systems; no more are read"
    assert one.place.text.strip() == "coats:"

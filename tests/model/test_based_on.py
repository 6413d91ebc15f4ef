"""A record based on another: what it carries over, where that stands, and what is wrong with how it says so."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.comparing import compare
from specgen.findings import Severity
from specgen.model.canonical import canonical
from specgen.model.declaring import Audience
from specgen.model.parse import Loaded, parse
from specgen.source.project import Sources
from specgen.source.reader import read_text
from tests.good_spec import ON, checked, good, put, written

BASED = """
systems:
  - id: cab-blue
    based_on: cab
    title: As the cab, in blue
    layers:
      - {id: base, film: {max: 28 um}}
      - {id: sealer, before: base, role: sealer, product: primer, variant: grey, film: {min: 40 um, max: 70 um}}
    without: [layers.clear, total]
"""


def _with(text: str, base: dict[str, Any] | None = None) -> Loaded:
    """The good specification in one file, what is written in another."""
    sources = []
    for name, raw in (("base.yaml", written(base or good())), ("more.yaml", text)):
        source, faults = read_text(raw.encode(), name)
        assert not faults
        sources.append(source)
    return parse(Sources(Path(), tuple(sources), ()))


def _found(text: str, base: dict[str, Any] | None = None) -> list[tuple[str, str, str]]:
    return [(f.id, f.path, f.what) for f in _with(text, base).findings]


def test_given_replaces_groups_merge_and_lists_merge_by_id() -> None:
    loaded = _with(BASED)
    assert loaded.findings == []
    assert loaded.spec is not None
    cab, blue = loaded.spec.systems["cab"], loaded.spec.systems["cab-blue"]
    assert blue.title == "As the cab, in blue"
    assert [layer.id for layer in blue.layers] == ["primer", "sealer", "base"]
    assert blue.layers[0] == cab.layers[0]
    changed = blue.layers[2]
    assert (str(changed.film.min), str(changed.film.max)) == ("15 um", "28 um")
    assert changed.overcoat_interval == cab.layers[1].overcoat_interval
    assert blue.total is None
    assert blue.handle_after == cab.handle_after


def test_each_value_has_the_place_it_is_written_at() -> None:
    loaded = _with(BASED)
    layer = ("systems", "cab-blue", "layers", "base")
    own, taken = loaded.place((*layer, "film", "max")), loaded.place((*layer, "film", "min"))
    assert (own.file, own.text.strip()) == ("more.yaml", "- {id: base, film: {max: 28 um}}")
    assert (taken.file, taken.line) == ("base.yaml", loaded.place(("systems", "cab", *layer[2:], "film", "min")).line)
    assert loaded.taken_from((*layer, "film", "min")) == ("systems", "cab")
    assert loaded.taken_from((*layer, "film", "max")) is None
    # what is not there is missing in the record itself
    assert loaded.place((*layer, "thinner")).file == "more.yaml"


def test_the_record_is_the_same_as_one_written_out() -> None:
    spec = good()
    put(spec, "systems.cab.title", "the same")
    based = _with("systems: [{id: twin, based_on: cab}]", spec).spec
    spec["systems"].append({**spec["systems"][0], "id": "twin"})
    assert based is not None
    out = parse(Sources(Path(), (read_text(written(spec).encode(), "x.yaml")[0],), ())).spec
    assert out is not None
    assert canonical(based) == canonical(out)
    assert "based_on" not in canonical(based, Audience.MAKER)


def test_what_could_harm_stays_unless_named() -> None:
    product = "products: [{id: second, based_on: primer, name: Second, direct_to_metal: no, %s variants: [{id: g, name: g, order_number: X-1}]}]"
    loaded = _with(product % "")
    assert loaded.findings == []
    assert loaded.spec is not None
    second = loaded.spec.products["second"]
    assert second.hazards is None
    assert [one.id for one in second.variants] == ["g"]
    assert second.voc is None
    assert second.composition == loaded.spec.products["primer"].composition
    named = _with(product % "including: [protection, voc.content],").spec
    assert named is not None
    second, primer = named.products["second"], named.products["primer"]
    assert second.hazards is not None
    assert primer.hazards is not None
    assert second.voc is not None
    assert second.hazards.protection == primer.hazards.protection
    assert second.hazards.model_fields_set == {"protection"}
    assert second.voc.model_fields_set == {"content"}
    whole = _with(product % "including: [hazards], without: [hazards.cure_releases],").spec
    assert whole is not None
    assert whole.products["second"].hazards is not None
    assert primer.hazards.model_fields_set - whole.products["second"].hazards.model_fields_set == {"cure_releases"}


def test_title_block_and_parts_belong_to_one_job() -> None:
    found = _found("jobs: [{id: second, based_on: refit}]")
    assert [(id, path) for id, path, _ in found] == [
        ("MOD002", "jobs.second.document"), ("MOD002", "jobs.second.scope"), ("MOD002", "jobs.second.items")
    ]  # fmt: skip
    remedies = {f.path: f.remedy for f in _with("jobs: [{id: second, based_on: refit}]").findings}
    assert remedies["jobs.second.items"].endswith("; refit states it, and items under including carries it over")
    assert "including" not in remedies["jobs.second.document"]


def test_a_rule_that_misses_what_stayed_names_it() -> None:
    spec = good()
    spec["products"].append(
        yaml.load(
            "{id: second, based_on: primer, name: S, direct_to_metal: no, variants: [{id: g, name: g, order_number: X}]}",
            yaml.CBaseLoader,
        )
    )
    found = [f for f in checked(spec).report if f.path.startswith("products.second.hazards")]
    assert found
    assert all("primer states it, and hazards under including carries it over" in f.remedy for f in found)


def test_one_fault_in_what_is_carried_over_is_told_once() -> None:
    spec = good()
    put(spec, "systems.cab.layers.primer.film.max", "95 um")
    spec["systems"].insert(0, {"id": "a-twin", "based_on": "cab"})
    told = [one for one in checked(spec).report.told() if one.finding.id == "FLM003"]
    (one,) = told
    assert one.finding.path == "systems.cab.layers.primer.film.max"
    assert [also.path for also in one.also] == ["systems.a-twin.layers.primer.film.max"]
    assert one.also[0].what.endswith("(carried over from cab)")
    assert one.also[0].place == one.finding.place


def test_a_fault_of_shape_in_what_is_carried_over_is_told_once() -> None:
    spec = good()
    put(spec, "systems.cab.layers.primer.passes", "many")
    spec["systems"].insert(0, {"id": "a-twin", "based_on": "cab"})
    told = [one for one in checked(spec).report.told() if one.finding.id == "MOD003"]
    (one,) = told
    assert one.finding.path == "systems.cab.layers.primer.passes"
    assert [also.path for also in one.also] == ["systems.a-twin.layers.primer.passes"]


def test_comparison_sees_what_is_carried_over() -> None:
    spec = good()
    spec["systems"].append({"id": "twin", "based_on": "cab"})
    old = checked(spec)
    put(spec, "systems.cab.layers.primer.film.max", "79 um")
    changes = compare(old, checked(spec)).changes
    paths = {change.difference.path for change in (*changes, *(a for c in changes for a in (*c.alike, *c.follows)))}
    assert ("systems", "twin", "layers", "primer", "film", "max") in paths


def test_a_chain_takes_over_from_each() -> None:
    text = """
systems:
  - {id: s1, based_on: cab, title: one}
  - {id: s2, based_on: s1, use: two}
  - {id: s3, based_on: s2}
  - {id: s4, based_on: s3}
"""
    loaded = _with(text)
    assert loaded.findings == []
    assert loaded.spec is not None
    last = loaded.spec.systems["s4"]
    assert (last.title, last.use, last.layers) == ("one", "two", loaded.spec.systems["cab"].layers)
    assert loaded.taken_from(("systems", "s4", "title")) == ("systems", "s1")
    assert loaded.bases["systems", "s4"].on == tuple(("systems", one) for one in ("s3", "s2", "s1", "cab"))
    more = text + "  - {id: s5, based_on: s4}\n  - {id: s6, based_on: s5}\n"
    assert _found(more) == [
        ("BAS002", "systems.s5.based_on", "s5 rests on 5 records, each based on the next; 4 at most can be followed")
    ]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("systems: [{id: a, based_on: cub}]", [("BAS001", "systems.a.based_on", "cub is not the id of any source in systems")]),
        (
            "systems: [{id: a, based_on: refit}]",
            [("BAS001", "systems.a.based_on", "refit stands in jobs, and a record is based on one of its own kind, systems")],
        ),
        ("systems: [{id: a, based_on: }]", [("BAS001", "systems.a", "a says based_on, and names no record it is based on")]),
        (
            "preparations: [{id: a, without: [steps.sand], title: T, steps: []}]",
            [("BAS001", "preparations.a", "a says without, and names no record it is based on")],
        ),
        ("systems: [{id: a, based_on: a}]", [("BAS002", "systems.a.based_on", "no record is at the beginning: a is based on a")]),
        (
            "systems: [{id: b, based_on: a}, {id: a, based_on: c}, {id: c, based_on: b}, {id: d, based_on: c}]",
            [("BAS002", "systems.a.based_on", "no record is at the beginning: a is based on c is based on b is based on a")],
        ),
        (
            "systems: [{id: a, based_on: cab, without: [layers.top, total]}]",
            [("BAS003", "systems.a.without.[0]", "layers.top names nothing that cab states")],
        ),
        (
            "systems: [{id: a, based_on: cab, including: [claims]}]",
            [("BAS003", "systems.a.including.[0]", "claims names nothing that cab states")],
        ),
        (
            "systems: [{id: a, based_on: cab, including: [total], without: [total]}]",
            [("BAS003", "systems.a.without.[0]", "total stands under including and under without")],
        ),
        (
            "jobs: [{id: a, based_on: refit, including: [document, items, scope], document: {number: N-1, title: T, owner: O}}]",
            [("BAS003", "jobs.a.including.[0]", "a title block belongs to one record and is never carried over")],
        ),
        (
            "systems: [{id: a, based_on: cab, layers: [{id: base, before: primer}]}]",
            [("BAS004", "systems.a.layers.base.before", "base is carried over and keeps its place in layers")],
        ),
        (
            "preparations: [{id: a, based_on: sand-steel, steps: [{id: x, before: rinse, do: wash, text: T}]}]",
            [("BAS004", "preparations.a.steps.x.before", "rinse is no entry of steps that is carried over")],
        ),
        ("systems: [{id: a, based_on: cab, title: }]", [("MOD007", "systems.a.title", "title has no value")]),
        (
            "systems: [{id: a, based_on: cab, layers: [{id: base}, {id: base}]}]",
            [
                ("MOD002", "systems.a.layers.base.film", "film is missing in base"),
                ("MOD002", "systems.a.layers.base.role", "role is missing in base"),
                ("MOD006", "systems.a.layers.base", "base is given twice in layers"),
            ],
        ),
        ("systems: [{based_on: cab}]", [("MOD002", "systems.[0].id", "id is missing in a record that is based on cab")]),
        ("systems: [{id: a, based_on: [cab]}]", [("BAS001", "systems.a", "a says based_on, and names no record it is based on")]),
        ("systems: [{id: a, based_on: cab, without: total}]", [("MOD004", "systems.a.without", "without must be a list")]),
    ],
)  # fmt: skip
def test_faults(text: str, said: list[tuple[str, str, str]]) -> None:
    assert sorted(_found(text)) == said


def test_a_base_in_a_file_that_was_not_read_is_not_missed() -> None:
    whole, _ = read_text(written(good()).encode(), "base.yaml")
    broken, faults = read_text(b"systems: [", "broken.yaml")
    more, _ = read_text(b"systems: [{id: a, based_on: elsewhere}]", "more.yaml")
    loaded = parse(Sources(Path(), (whole, broken, more), tuple(faults)))
    assert [f.id for f in loaded.findings if f.severity is Severity.ERROR] == [f.id for f in faults]
    assert "a" in loaded.ids["systems"]


def test_what_is_carried_over_is_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("specgen.model.based_on.NODES_LIMIT", 900)
    text = "systems:\n" + "".join(f"  - {{id: s{n}, based_on: cab}}\n" for n in range(40))
    found = [f for f in _with(text).findings if f.id == "SRC044"]
    assert len(found) == 1
    assert "more than 900 keys and values" in found[0].what


def test_checked_with_the_day() -> None:
    spec = good()
    spec["systems"].append({"id": "twin", "based_on": "cab"})
    assert [f.what for f in checked(spec, ON).report] == [f.what for f in checked(good(), ON).report]


def test_words_of_the_older_format_are_read_in_a_base() -> None:
    spec = good()
    spec["project"]["schema_version"] = "1"
    for layer in spec["systems"][0]["layers"]:
        if "overcoat_interval" in layer:
            layer["hold"] = layer.pop("overcoat_interval")
    loaded = _with("systems: [{id: twin, based_on: cab}]", spec)
    assert loaded.spec is not None
    assert str(loaded.spec.systems["twin"].layers[0].overcoat_interval) == "30 min..24 h"


def test_many_names_and_entries_take_their_time_once() -> None:
    steps = "".join(f"      - {{id: s{n}, before: sand, do: wash, text: T}}\n" for n in range(4000))
    names = "".join(f"\n      - steps.x{n}" for n in range(4000))
    loaded = _with(f"preparations:\n  - id: long\n    based_on: sand-steel\n    without:{names}\n    steps:\n{steps}")
    # the last says that there are more than are listed
    assert {f.id for f in loaded.findings} == {"BAS003", "SRC037"}
    assert loaded.judged is not None
    held = loaded.judged.preparations["long"].steps
    assert [step.id for step in held[:2]] == ["degrease", "s0"]
    assert [step.id for step in held[-2:]] == ["sand", "dust"]


@pytest.mark.parametrize(
    ("coat", "path", "remedy"),
    [
        (
            "{id: top, film: {max: 28 um}}",
            "role",
            "; or, where an entry carried over is meant, its id: primer, base, clear",
        ),
        ("{id: base, colour: standard}", "colour", "variant"),
    ],
)
def test_a_slip_in_an_entry_is_told_by_what_is_carried_over(coat: str, path: str, remedy: str) -> None:
    loaded = _with(f"systems: [{{id: cab-blue, based_on: cab, title: In blue, layers: [{coat}]}}]")
    assert remedy in next(f.remedy for f in loaded.findings if f.path.endswith(f".{path}"))

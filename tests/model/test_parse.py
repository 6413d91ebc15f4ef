"""Whole files and folders: which blocks they hold, where what is missing is missing in, and that one fault hides no other."""

from __future__ import annotations

import copy
from pathlib import Path

import pytest

from specgen.findings import Place
from specgen.model.parse import Loaded, parse
from specgen.model.system import Layer
from specgen.source.project import Sources
from specgen.source.reader import read_text
from specgen.standards.tables import table
from tests.good_spec import GOOD, checked, good, put

_PROJECT = "project: {id: a, title: A, maker: {name: M}, customer: {name: C}}\n"


def _folder(*texts: str) -> Loaded:
    read = [read_text(text.encode(), f"{number}.yaml") for number, text in enumerate(texts, 1)]
    faults = tuple(fault for _, found in read for fault in found)
    return parse(Sources(Path(), tuple(source for source, _ in read), faults))


def _found(loaded: Loaded) -> list[tuple[str, str, str]]:
    return sorted((str(f.place), f.id, f.path) for f in loaded.findings)


def test_project_alone_is_whole() -> None:
    loaded = _folder(_PROJECT)
    assert _found(loaded) == []
    assert loaded.spec is not None
    assert loaded.spec.project.language == "en"
    assert not loaded.spec.project.states("language")


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        ((), [("project.yaml:1:1", "MOD008", "project")]),
        (("",), [("1.yaml:1:1", "MOD008", "project"), ("1.yaml:1:1", "SRC011", "")]),
        (("# nothing\n",), [("1.yaml:1:1", "MOD008", "project"), ("1.yaml:1:1", "SRC011", "")]),
        ((_PROJECT, _PROJECT), [("1.yaml:1:1", "MOD008", "project"), ("2.yaml:1:1", "MOD008", "project")]),
        ((_PROJECT, "products:\n"), [("2.yaml:1:1", "MOD007", "products")]),
        ((_PROJECT, "# none yet\nproducts: []\n"), [("2.yaml:2:1", "MOD007", "products")]),
        ((_PROJECT, "# none yet\n"), [("2.yaml:1:1", "SRC011", "")]),
        (("project:\n",), [("1.yaml:1:1", "MOD004", "project")]),
        (("projekt: {id: a}\n",), [("1.yaml:1:1", "MOD001", "projekt")]),
        (("project: {id: a\n",), [("1.yaml:1:10", "SRC031", "")]),
        (("project: {id: a\n", "jobs: []\n"), [("1.yaml:1:10", "SRC031", ""), ("2.yaml:1:1", "MOD007", "jobs")]),
        ((_PROJECT, "- a\n"), [("2.yaml:1:1", "SRC012", "")]),
        ((_PROJECT, "product: []\n"), [("2.yaml:1:1", "MOD001", "product")]),
        ((_PROJECT, "products: [a]\n"), [("2.yaml:1:12", "MOD004", "products.[0]")]),
        (
            (
                _PROJECT,
                "preparations: [{id: p, title: P, steps: []}]\n",
                "preparations: [{id: p, title: P, steps: []}]",
            ),
            [("3.yaml:1:21", "MOD006", "preparations.p")],
        ),
    ],
    ids=[
        "no file",
        "empty file",
        "comment only",
        "two projects",
        "key without a value",
        "empty list",
        "comment only beside a project",
        "project without a value",
        "project misspelt",
        "project not read to its end",
        "the same beside another file",
        "list at the margin",
        "kind in the singular",
        "text among the entries",
        "same id in two files",
    ],
)
def test_blocks_of_a_folder(texts: tuple[str, ...], expected: list[tuple[str, str, str]]) -> None:
    assert _found(_folder(*texts)) == expected


def test_broken_product_hides_no_broken_job() -> None:
    spec = good()
    put(spec, "products.primer.curing", "warp")
    put(spec, "jobs.refit.items.DOOR.count", "many")
    put(spec, "systems.chassis.titel", "x")
    found = [(f.id, f.path) for f in checked(spec).loaded.findings]
    assert sorted(found) == [
        ("MOD001", "systems.chassis.titel"),
        ("MOD003", "jobs.refit.items.DOOR.count"),
        ("MOD003", "products.primer.curing"),
    ]


def test_system_of_a_broken_product_is_left_out_without_a_word() -> None:
    spec = good()
    put(spec, "products.primer.curing", "warp")
    loaded = checked(spec).loaded
    assert [f.id for f in loaded.findings] == ["MOD003"]
    assert loaded.spec is not None
    assert (list(loaded.spec.products), list(loaded.spec.systems), list(loaded.spec.jobs)) == (
        ["base", "clear", "barrier"],
        ["chassis"],
        [],
    )


@pytest.mark.parametrize(
    ("path", "value", "remedy"),
    [
        ("jobs.refit.vehicles", "van 17", "write vehicles: [van 17]"),
        ("jobs.refit.call", "Desk", "write its keys in { } or indented below it: name"),
        (
            "products.primer.variants",
            "grey",
            "begin each entry with a hyphen; write its keys in { } or indented below it: id, name, order_number",
        ),
        ("products.primer.abuot", "a primer", "did you mean about?"),
        # `film` stands there already, so it is not what was meant
        ("systems.cab.layers.base.films", "{min: 40 um}", "use one of: "),
        ("products.primer.binder", "epoxi_latent", "did you mean epoxy_latent?"),
        ("systems.cab.layers.primer.product", "Primer", "did you mean primer?"),
        ("systems.cab.layers.primer.variant", "gray", "did you mean grey?"),
        ("products.primer.pack.form", "Aerosol", "did you mean aerosol?"),
        ("products.primer.film.max", "80", "write the unit after a space, as in 60 um"),
        ("products.primer.climate.air", "20 degC", "write min 20 degC, max 20 degC, or both limits as in 40..60 degC"),
    ],
)
def test_remedy_names_what_to_write(path: str, value: str, remedy: str) -> None:
    spec = good()
    put(spec, path, value)
    (fault,) = checked(spec).loaded.findings
    assert fault.remedy == remedy or (remedy.endswith(": ") and fault.remedy.startswith(remedy))


def test_a_list_is_told_whole_and_holds_only_what_may_still_be_written_there() -> None:
    spec = good()
    put(spec, "products.primer.binder", "glue")
    put(spec, "systems.cab.layers.base.zzz", "x")
    key, word = sorted(checked(spec).loaded.findings, key=lambda f: f.id)
    assert word.remedy == "use one of: " + ", ".join(sorted(row["id"] for row in table("binder_families").rows))
    written = next(layer for layer in spec["systems"][0]["layers"] if layer["id"] == "base")
    assert key.remedy == "use one of: " + ", ".join(sorted(set(Layer.model_fields) - set(written)))


def test_ids_of_a_folder_are_no_closed_list() -> None:
    spec = good()
    first = spec["preparations"][0]
    spec["preparations"] = [copy.deepcopy(first) | {"id": f"prep-{number}"} for number in range(20)]
    put(spec, "jobs.refit.preparation", "zzz")
    assert checked(spec).loaded.findings[0].remedy.endswith(" and 8 more")


def test_missing_key_is_missing_in_its_parent() -> None:
    text = "project:\n  id: a\n  title: A\n  maker: {name: M}\n  customer:\n    address: here\n"
    loaded = _folder(text)
    (finding,) = loaded.findings
    assert finding.what == "name is missing in customer"
    assert finding.place == Place("1.yaml", 5, 3, 11, "  customer:")
    assert loaded.missing(("project", "customer", "name")) == "project.customer.name"


def test_place_of_a_value_in_a_list_goes_by_its_id() -> None:
    loaded = _folder(
        _PROJECT, "preparations:\n  - id: p\n    title: P\n    steps:\n      - {id: s, do: wash, text: T}\n"
    )
    place = loaded.place(("preparations", "p", "steps", "s", "do"))
    assert (place.file, place.line, place.column, place.end_column) == ("2.yaml", 5, 21, 25)


@pytest.mark.parametrize(
    ("path", "entry", "limit"),
    [
        ("jobs.refit.vehicles", "V{}", 200),
        ("jobs.refit.items", "{{id: I{}, name: N, count: 1, area: 1 m2}}", 500),
        ("project.numbering.skip", "S{}", 5000),
    ],
)
def test_list_that_is_too_long_is_refused(path: str, entry: str, limit: int) -> None:
    for length in (limit, limit + 1):
        spec = good()
        put(spec, path, "[" + ", ".join(entry.format(number) for number in range(length)) + "]")
        found = [(f.id, f.path, f.what) for f in checked(spec).loaded.findings]
        what = f"{path.rpartition('.')[2]} has {length} entries; at most {limit} are read"
        assert found == ([("MOD009", path, what)] if length > limit else [])


def test_faults_of_shape_are_listed_up_to_a_limit_in_each_file() -> None:
    loaded = _folder(_PROJECT, "jobs:\n" + "- {}\n" * 5_000, "jobs:\n- {}\n")
    first = [f for f in loaded.findings if f.place.file == "2.yaml"]
    assert len(first) == 501
    assert (first[-1].id, first[-1].what) == ("SRC037", "The faults from line 127 on are not listed.")
    assert {f.id for f in first[:-1]} == {"MOD002"}
    assert [f.id for f in loaded.findings if f.place.file == "3.yaml"] == ["MOD002"] * 4


def test_what_refers_to_an_entry_beyond_the_limit_is_not_lost() -> None:
    late = "preparations:\n" + "- {}\n" * 500 + "- {id: p, title: P, steps: []}\n"
    loaded = _folder(_PROJECT, late, "jobs: [{id: j, preparation: p}]\n")
    assert "MOD005" not in {f.id for f in loaded.findings}


def test_good_folder_is_read_from_disk() -> None:
    from specgen.model.parse import load

    loaded = load(GOOD)
    assert loaded.findings == []
    assert loaded.spec is not None
    assert list(loaded.spec.products) == ["primer", "base", "clear", "barrier"]

"""What a customer gets of a comparison, its JSON and its notice: no address, no key and no place of the sources."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema

from specgen.checking import check
from specgen.comparing import compare as compare_folders
from specgen.comparison.changes import Comparison
from specgen.comparison.compare import Side, compare
from specgen.comparison.edition import for_customer
from specgen.documents.change_notice.view import Compared, change_notice
from specgen.model.outline import value_type
from specgen.model.project import Project
from specgen.model.spec import KINDS, LIST_KINDS, Spec
from specgen.model.walk import models, records
from specgen.report import change_json
from specgen.standards.tables import table_names
from tests.comparison.full_spec import at, built, every_leaf, place, samples, tree
from tests.comparison.sides import ON, RULES, changed, judged
from tests.documents.conftest import context
from tests.documents.test_golden import _lines as lines
from tests.good_spec import DEMO, DEMO_RANGE, DEMOS

SCHEMA = jsonschema.Draft202012Validator(change_json.schema())
# keys of the sources that no reader takes for a word, `flash_between_passes`; `film` is one of English
KEYS = {name for root in KINDS.values() for record in models(root) for name in record.model_fields if "_" in name}
TABLE = re.compile("|".join(map(re.escape, sorted(table_names(), key=len, reverse=True))))
TOKEN = re.compile(r"[A-Za-z0-9_.:/-]+")


def _strings(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        for held in value.values():
            yield from _strings(held)
    elif isinstance(value, list):
        for held in value:
            yield from _strings(held)
    elif isinstance(value, str):
        yield value


def _addresses(*specs: Spec) -> set[str]:
    """Every record, part and leaf of both sides by its address, whole and without what leads to its record."""
    found = set()
    for spec in specs:
        for kind in LIST_KINDS:
            for key, entry in getattr(spec, kind).items():
                for path, held in records(entry):
                    whole = (kind, key, *path)
                    found |= {".".join(whole), ".".join(whole[1:]) if len(whole) > 2 else ".".join(whole)}
                    found |= {".".join((*whole, name)) for name in type(held).model_fields}
    return {address for address in found if "." in address}


def _told(found: Comparison, spec: Spec) -> list[str]:
    """Every string of the JSON and of the notice, but names of published tables, which are printed with their title."""
    whole = json.loads(change_json.write(found, old="A", new="B"))
    SCHEMA.validate(whole)
    compared = Compared(found=found, old_name="A", new_name="B")
    page = [line.partition(": ")[2] for line in lines(change_notice(compared, context(spec)), "")]
    return [TABLE.sub("", text) for text in (*_strings(whole), *page)]


def _assert_clean(found: Comparison, *specs: Spec, files: set[str] | None = None) -> None:
    addresses = _addresses(*specs)
    for text in _told(for_customer(found), specs[1]):
        tokens = {token.strip(".:") for token in TOKEN.findall(text)}
        assert not tokens & KEYS, text
        assert not tokens & addresses, text
        assert not any(file in text for file in files or ()), text


def test_nothing_of_the_full_specification_leads_into_the_sources() -> None:
    """Every leaf of every kind changed, taken out, and its record gone."""
    for root, model in {"project": Project, **LIST_KINDS}.items():
        whole = built(root, tree(model, "first"))
        other, fewer = tree(model, "first"), tree(model, "first")
        for leaf in every_leaf():
            if leaf.root == root and not leaf.many:
                info = leaf.model.model_fields[leaf.name]
                kind = value_type(info)
                assert kind is not None
                at(other, leaf.steps)[leaf.name] = samples(kind)[1]
                if not info.is_required():
                    at(fewer, leaf.steps).pop(leaf.name, None)
        for spec in (built(root, other), built(root, fewer)):
            found = compare(Side(whole, place), Side(spec, place))
            assert found.changes
            _assert_clean(found, whole, spec)


def test_nothing_of_the_demo_leads_into_the_sources(tmp_path: Path) -> None:
    """Every film, wait and reference to a preparation of the demo another one, every caution gone; there and back."""
    shutil.copytree(DEMOS, tmp_path / "new", ignore=shutil.ignore_patterns("register"))
    new = tmp_path / "new" / DEMO.name
    files = {
        file.relative_to(folder).as_posix(): file
        for folder in (new, new.parent / DEMO_RANGE.name)
        for file in folder.rglob("*.yaml")
        if file.name != "project.yaml"
    }
    for file in files.values():
        text = re.sub(r"\b(\d+) (um|h|min)\b", lambda at: f"{int(at[1]) + 1} {at[2]}", file.read_text("utf-8"))
        text = re.sub(r"(?m)^( *)cautions:\n(?:\1 .*\n|\1- .*\n)+", "", text)
        text = re.sub(r"preparation: [\w-]+", "preparation: sand-bare-steel", text)
        file.write_text(text, "utf-8")
    first, second = check(DEMO, ON), check(new, ON)
    for old, new in ((first, second), (second, first)):
        found = compare_folders(old, new)
        assert min(len(found.changes), len(found.figures), len(found.findings)) > 20
        assert found.new_errors or old is second
        specs = [side.loaded.spec for side in (old, new)]
        assert specs[0] is not None
        assert specs[1] is not None
        _assert_clean(found, specs[0], specs[1], files=set(files))


def test_nothing_of_a_comparison_with_findings_and_figures_leads_into_the_sources() -> None:
    waiver = "{id: w, rule: FLM002, path: systems.cab.layers.primer.film.max, reason: trial, by: QA, until: 2027-01-31}"
    puts = {
        "systems.cab.layers.primer.film.max": "90 um",
        "systems.cab.layers.primer.product": "barrier",
        "products.barrier.binder": "pu_latent",
        "jobs.refit.waivers": f"[{waiver}]",
        "jobs.refit.items.STEP.system": "cab",
    }
    moved = changed({**puts, "jobs.refit.waivers": f"[{waiver.replace('film.max', 'hold')}]"})
    for old, new in ((changed(), changed(puts)), (changed(puts), moved), (changed(puts), changed())):
        first, second = judged(old), judged(new)
        found = compare(first, second, concern_of_rule=RULES)
        _assert_clean(found, first.spec, second.spec, files={"spec.yaml"})


def test_a_value_a_waiver_names_is_told_in_words() -> None:
    waiver = "{id: w, rule: FLM002, path: systems.cab.layers.primer.film.max, reason: trial, by: QA, until: 2027-01-31}"
    old, new = (
        changed({"jobs.refit.waivers": f"[{held}]"})
        for held in (waiver, waiver.replace("film.max", "overcoat_interval"))
    )
    (change,) = for_customer(compare(judged(old), judged(new))).changes
    assert change.difference.old == "maximum DFT of the coat primer of the system cab"
    assert change.difference.new == "overcoating interval of the coat primer of the system cab"


def test_what_was_not_read_is_counted_for_a_customer() -> None:
    spec = judged(changed()).spec
    found = Comparison(not_compared=("jobs.refit", "systems.cab"), unread_files=(("new", "job.yaml"),))
    told = json.loads(change_json.write(for_customer(found), old="A", new="B"))
    assert (told["not_compared"], told["unread_files"]) == (2, [{"side": "new"}])
    whole = json.loads(change_json.write(found, old="A", new="B"))
    assert (whole["not_compared"], whole["unread_files"]) == (
        ["jobs.refit", "systems.cab"],
        [{"side": "new", "file": "job.yaml"}],
    )
    _assert_clean(found, spec, spec, files={"job.yaml"})

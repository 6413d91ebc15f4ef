"""Every case of `tests/bad_models` gives exactly the findings it names."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.checking import check_loaded
from specgen.findings import Finding
from specgen.model.parse import parse
from specgen.source.project import Sources
from specgen.source.reader import read_text
from tests.good_spec import GOOD, ON, good, loaded, put, take_out, written

_FILE = Path(__file__).parents[1] / "bad_models" / "cases.yaml"
CASES: list[dict[str, Any]] = yaml.load(_FILE.read_text("utf-8"), Loader=yaml.CBaseLoader)


def _findings(case: dict[str, Any]) -> list[Finding]:
    spec = good()
    for path in case.get("out", ()):
        take_out(spec, path)
    for path, value in case.get("put", {}).items():
        put(spec, path, value)
    text = written(spec)
    # the dumper knows no key with nothing behind it
    raw = text.replace(": null\n", ":\n").encode()
    source, faults = read_text(raw, "spec.yaml")
    return list(check_loaded(parse(Sources(GOOD, (source,), tuple(faults))), ON).report)


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_findings_are_exactly_these(case: dict[str, Any]) -> None:
    found = _findings(case)
    assert sorted([f.id, f.path, f.what] for f in found) == sorted(case["finds"])
    assert all(f.remedy and f.why and f.place.text for f in found)


def test_cases_have_names_of_their_own() -> None:
    assert len({case["case"] for case in CASES}) == len(CASES)


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "{{ 7 * 7 }} {% if x %}",
        "a & b &amp; c",
        "Größe 5 µm, 20 °C, 80 %",
        'rock & roll\'s "finish" #1',
        "no",
        "1_000",
        "2026-11-25",
        "null and void",
        "日本",
    ],
)
def test_text_is_only_text(text: str) -> None:
    """What means something to YAML, HTML or a template is text like any other, and arrives as written."""
    spec = good()
    spec["project"]["title"] = text
    read = loaded(spec)
    assert read.findings == []
    assert read.spec is not None
    assert read.spec.project.title == text

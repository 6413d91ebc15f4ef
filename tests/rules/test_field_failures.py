"""Failures met in the field, each as the job that would have led to it: the rules must find exactly what went wrong, and nothing else.

A case is an entry of a file in `field_failures/`, one file a topic:

    - case: what was seen in the field, in words
      out: [path, ...]              # taken out of the good specification first
      put: {path: value, ...}       # then set; a value is YAML, or a text that holds YAML
      finds: ["weight ID path", ...]
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.good_spec import checked, good, put, take_out

FOLDER = Path(__file__).parent / "field_failures"


def _cases() -> list[tuple[str, dict[str, Any]]]:
    return [
        (file.stem, case)
        for file in sorted(FOLDER.glob("*.yaml"))
        # BaseLoader leaves every scalar as text, as specgen itself does.
        for case in yaml.load(file.read_text("utf-8"), Loader=yaml.CBaseLoader)
    ]


CASES = _cases()


@pytest.mark.parametrize("case", [case for _, case in CASES], ids=[f"{topic}: {case['case']}" for topic, case in CASES])
def test_failure_is_found(case: dict[str, Any]) -> None:
    spec = good()
    for path in case.get("out", []):
        take_out(spec, path)
    for path, value in case.get("put", {}).items():
        put(spec, path, value if isinstance(value, str) else yaml.dump(value, Dumper=yaml.CSafeDumper))
    found = sorted(f"{finding.severity} {finding.id} {finding.path}" for finding in checked(spec).report)
    assert found == sorted(case["finds"])


def test_every_case_finds_something_and_has_a_name_of_its_own() -> None:
    assert [case["case"] for _, case in CASES if not case["finds"]] == []
    names = Counter(case["case"] for _, case in CASES)
    assert [name for name, count in names.items() if count > 1] == []
    assert {key for _, case in CASES for key in case} <= {"case", "out", "put", "finds"}

"""The promised names, and that no submodule shadows one of them."""

from __future__ import annotations

import doctest
import re
import shutil
from datetime import date
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages

import pytest

import specgen

GOOD = Path(__file__).parent / "good"


def test_names_are_pinned() -> None:
    assert sorted(specgen.__all__) == [
        "Finding",
        "__version__",
        "approve",
        "check",
        "compare",
        "issue",
        "load",
        "print_documents",
        "verify",
    ]


def test_names_stay_callable_once_every_module_is_imported() -> None:
    for module in walk_packages(specgen.__path__, "specgen."):
        if not module.name.endswith("__main__"):
            import_module(module.name)
    loaded = specgen.load(GOOD)
    assert list(loaded.spec.jobs) == ["refit"]
    checked = specgen.check(GOOD, date(2026, 11, 25))
    assert len(checked.report) == 0
    assert all(callable(getattr(specgen, name)) for name in set(specgen.__all__) - {"__version__"})


def test_every_name_has_an_example_that_runs_as_it_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = specgen.__doc__ or ""
    assert set(
        re.findall(r"specgen\.(\w+)", "".join(e.source for e in doctest.DocTestParser().get_examples(text)))
    ) == {name for name in specgen.__all__ if name != "__version__"}
    for name in ("specs", "specs_later"):
        shutil.copytree(GOOD, tmp_path / name)
    file = tmp_path / "specs_later" / "job.yaml"
    before = file.read_text("utf-8")
    file.write_text(before.replace("passes: 4", "passes: 2", 1), "utf-8")
    assert file.read_text("utf-8") != before
    monkeypatch.chdir(tmp_path)
    # nothing is at hand but what the examples import themselves
    examples = doctest.DocTestParser().get_doctest(text, {}, "specgen", None, None)
    told: list[str] = []
    failed, tried = doctest.DocTestRunner().run(examples, out=told.append)
    assert "".join(told) == ""
    assert failed == 0
    assert tried == text.count(">>> ")


def test_a_side_without_a_specification_is_refused(tmp_path: Path) -> None:
    (tmp_path / "project.yaml").write_text("project: [\n", "utf-8")
    with pytest.raises(ValueError, match="cannot be compared"):
        specgen.compare(specgen.check(tmp_path, date(2026, 11, 25)), specgen.check(GOOD, date(2026, 11, 25)))

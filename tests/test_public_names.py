"""The promised names, and that no submodule shadows one of them."""

from __future__ import annotations

from datetime import date
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages

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
    assert callable(specgen.print_documents)
    assert callable(specgen.compare)
    assert callable(specgen.approve)
    assert callable(specgen.issue)
    assert callable(specgen.verify)
    assert specgen.Finding.__name__ == "Finding"

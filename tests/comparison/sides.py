"""The two sides of a test: the good specification, each with changes, read as a command would. Called by the tests here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from specgen.comparison.changes import Comparison
from specgen.comparison.compare import Side, compare
from specgen.comparison.figures import Figures, figures_of_job, figures_of_product
from specgen.rules.declare import all_rules
from tests.good_spec import ON, checked, good, loaded, put, take_out

RULES = {rule.id: rule.concern for rule in all_rules()}


def changed(puts: Mapping[str, Any] | None = None, takes: Sequence[str] = ()) -> dict[str, Any]:
    """The good specification with values set and values taken out."""
    spec = good()
    for path, value in (puts or {}).items():
        put(spec, path, value if isinstance(value, str) else _as_yaml(value))
    for path in takes:
        take_out(spec, path)
    return spec


def _as_yaml(value: Mapping[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {held}" for key, held in value.items()) + "}"


def side(spec: dict[str, Any]) -> Side:
    """A side nobody has judged: no findings, no figures."""
    found = loaded(spec)
    assert found.spec is not None
    assert not found.findings
    return Side(found.spec, found.place)


def judged(spec: dict[str, Any]) -> Side:
    """A side with its findings and figures."""
    found = checked(spec)
    whole = found.loaded.spec
    assert whole is not None

    def figures(kind: str, key: str) -> Figures:
        if kind == "products":
            return figures_of_product(whole.products[key], whole, ON)
        return figures_of_job(whole.jobs[key], whole, ON)

    return Side(whole, found.loaded.place, found.report, figures)


def compared(old: dict[str, Any], new: dict[str, Any], **more: Any) -> Comparison:
    return compare(side(old), side(new), concern_of_rule=RULES, **more)

"""Every example on every rule page is run: Passes give no finding at all, Fails give exactly the findings they name."""

from __future__ import annotations

import pytest

from specgen.rules.declare import Rule, all_rules
from specgen.rules.page import Example
from specgen.source.reader import read_text
from tests.good_spec import checked, found, given, put, read_back, scenarios, take_out, written


def _cases(*, failing: bool) -> list[object]:
    return [
        pytest.param(rule, example, id=f"{rule.id}-{number}")
        for rule in all_rules()
        for number, example in enumerate(rule.page.examples(failing=failing), 1)
    ]


def _run(example: Example) -> list[tuple[str, str, str]]:
    """(id, path, weight) of every finding."""
    spec = given(example.given)
    for path in example.removed:
        take_out(spec, path)
    for path, value in example.set:
        put(spec, path, value)
    return sorted((finding.id, finding.path, str(finding.severity)) for finding in checked(spec).report)


@pytest.mark.parametrize("name", ["good", "second good", *scenarios()])
def test_what_is_given_is_sound(name: str) -> None:
    assert found(given(name)) == []


@pytest.mark.parametrize("name", ["good", "second good", *scenarios()])
def test_what_is_read_in_parts_is_what_is_read_as_a_whole(name: str) -> None:
    assert read_back(given(name)) == read_text(written(given(name)).encode(), "spec.yaml")


def test_every_scenario_is_named_by_a_page() -> None:
    examples = [e for r in all_rules() for failing in (True, False) for e in r.page.examples(failing=failing)]
    started = {example.given for example in examples} | {told["from"] for told in scenarios().values()}
    assert sorted(set(scenarios()) - started) == []


@pytest.mark.parametrize(("rule", "example"), _cases(failing=False))
def test_passes(rule: Rule, example: Example) -> None:
    seen = _run(example)
    assert not seen, f"an example under Passes of {rule.id} gives findings: {seen}"


@pytest.mark.parametrize(("rule", "example"), _cases(failing=True))
def test_fails(rule: Rule, example: Example) -> None:
    named = sorted((other or rule.id, path, weight) for other, path, weight in example.findings)
    assert named, "a failing example names its findings"
    assert any(rule_id == rule.id for rule_id, *_ in named)
    seen = _run(example)
    given_by, told = ([finding[:2] for finding in findings] for findings in (seen, named))
    assert given_by == told, f"an example under Fails of {rule.id} gives {given_by}; its page names {told}"
    # a weight is told where the page names one; of several findings at one place it is the sorted ones that meet
    untold = [(*at, weight and also) for (*at, also), (*_, weight) in zip(seen, named, strict=True)]
    assert untold == named


def test_every_rule_has_examples() -> None:
    lacking = [
        f"{rule.id} has no example under {'Fails' if failing else 'Passes'}"
        for rule in all_rules()
        for failing in (False, True)
        if not rule.page.examples(failing=failing)
    ]
    assert not lacking, "\n".join(lacking)

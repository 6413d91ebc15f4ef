"""The catalogue as a whole: weights fit their grounds, citations lead somewhere, ids keep their family and their meaning."""

from __future__ import annotations

import ast
from collections import defaultdict
from pathlib import Path

import pytest
import yaml

import specgen.rules
from specgen.findings import Finding, Severity
from specgen.rules.declare import Rule, all_rules
from specgen.rules.waivers import FAULTS
from specgen.standards.citations import Basis, documents
from tests.good_spec import checked, good, put, take_out

RULES = all_rules()
IDS = [rule.id for rule in RULES]

# Numbers that were used once and whose rule is gone: an id never comes back with another meaning. ID -> what became of it.
RETIRED: dict[str, str] = {}

# 0, 1, 2 and 100 count, halve and take percents; every other figure of the trade stands in a published table.
FREE_NUMBERS = {0, 1, 2, 100}


def _modules() -> list[Path]:
    root = Path(specgen.rules.__file__).parent
    return sorted(path for path in root.glob("*/*.py") if path.name != "__init__.py")


def _folder(rule: Rule) -> str:
    return rule.check.__module__.split(".")[2]


@pytest.mark.parametrize("rule", RULES, ids=IDS)
def test_weight_fits_the_ground(rule: Rule) -> None:
    if rule.severity is Severity.ERROR:
        assert rule.source.basis in {Basis.LOGIC, Basis.POLICY, Basis.PUBLISHED, Basis.REGULATION}
    if rule.source.basis in {Basis.PRACTICE, Basis.MEMORY, Basis.SECONDARY}:
        assert rule.severity in {Severity.WARNING, Severity.NOTE}


@pytest.mark.parametrize("rule", RULES, ids=IDS)
def test_citation_leads_to_a_document(rule: Rule) -> None:
    if rule.source.document:
        assert rule.source.document in documents()
    else:
        assert rule.source.basis not in {Basis.PUBLISHED, Basis.REGULATION, Basis.SECONDARY}


@pytest.mark.parametrize("rule", RULES, ids=IDS)
def test_what_cannot_be_waived_even_where_it_warns_is_an_error_first(rule: Rule) -> None:
    assert rule.waivable or rule.severity is Severity.ERROR


def test_a_folder_is_a_family() -> None:
    families, folders = defaultdict(set), defaultdict(set)
    for rule in RULES:
        families[_folder(rule)].add(rule.id[:3])
        folders[rule.id[:3]].add(_folder(rule))
    assert [folder for folder, found in families.items() if len(found) > 1] == []
    assert [family for family, found in folders.items() if len(found) > 1] == []


def test_ids_run_on_without_a_gap() -> None:
    numbers = defaultdict(list)
    for key in sorted([*IDS, *RETIRED]):
        numbers[key[:3]].append(int(key[3:]))
    told = [
        f"{family}: a new rule takes the next number, {family}{last:03}; numbers used are {found}"
        for family, found in numbers.items()
        if found != list(range(1, (last := len(found)) + 1))
    ]
    assert not told, "\n".join(told)


def test_an_id_means_one_thing() -> None:
    assert set(IDS) & set(RETIRED) == set()
    assert len(IDS) == len(set(IDS))
    assert set(IDS) & set(FAULTS) == set()
    titles = [rule.page.title for rule in RULES]
    twice = {title for title in titles if titles.count(title) > 1}
    assert not twice, f"two rules have one title: {twice}"


def test_one_rule_a_module() -> None:
    """What several rules ask is a fact, and stands below them: a folder of a family holds rules and nothing else."""
    declared = [rule.check.__module__.removeprefix("specgen.rules.") for rule in RULES]
    modules = {f"{path.parent.name}.{path.stem}" for path in _modules()}
    told = [
        f"specgen/rules/{name.replace('.', '/')}.py enters no rule: @rule is missing, or its folder has no __init__.py"
        for name in modules - set(declared)
    ]
    told += [f"specgen.rules.{name} enters more than one rule" for name in declared if declared.count(name) > 1]
    assert not told, "\n".join(sorted(told))


@pytest.mark.parametrize("path", _modules(), ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_no_stray_number(path: Path) -> None:
    stray = _stray(path.read_text("utf-8"))
    assert not stray, f"{path.name} holds {stray}: a figure of the trade stands in a published table, with its source"


def test_a_stray_number_is_seen() -> None:
    assert _stray('"""60 um."""\nif film > 60:\n    yield 0, 1, 2, 100, -1\nx = 2.5 * y["a"]') == [60, 2.5]


def _stray(text: str) -> list[float]:
    return [
        node.value
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and not isinstance(node.value, bool)
        and node.value not in FREE_NUMBERS
    ]


CASES = yaml.load((Path(__file__).parent / "severity_cases.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_parts_of_a_rule_weigh_as_their_own_ground(case: dict[str, object]) -> None:
    assert [_short(finding) for finding in _found(case)] == case["finds"]


def _found(case: dict[str, object]) -> list[Finding]:
    spec = good()
    for path in case.get("out", []):
        take_out(spec, path)
    for path, value in case.get("put", {}).items():
        put(spec, path, value)
    return sorted(checked(spec).report, key=lambda finding: (finding.path, finding.id))


def _short(finding: Finding) -> str:
    return f"{finding.severity} {finding.id} {finding.path}: {finding.what}"

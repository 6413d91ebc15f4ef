"""What is looked into is noted: by whoever listens, through every answer that is kept, and never while a module is imported."""

from __future__ import annotations

import ast
import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from types import ModuleType

import pytest

import specgen
from specgen.facts.memo import memoised
from specgen.facts.pairs.papers import grain
from specgen.model.parse import load
from specgen.model.spec import Spec
from specgen.rules.declare import all_rules
from specgen.standards.citations import Citation, documents
from specgen.standards.reads import note, recorded, remembered
from specgen.standards.tables import Table, cell_citation, table
from tests.good_spec import GOOD

ROOT = Path(specgen.__file__).parent


@cache
def _parsed() -> dict[str, ast.Module]:
    """Every module of the package, by its name."""
    return {
        path.relative_to(ROOT.parent).with_suffix("").as_posix().replace("/", "."): ast.parse(path.read_text("utf-8"))
        for path in sorted(ROOT.rglob("*.py"))
    }


# Answers that may be kept by functools although they look into tables, each with the reason.
MAY_BE_KEPT = {
    "specgen.rules.declare.all_rules": "imports the rules, whose citations carry the table they were read in",
    "specgen.rules.declare.rules_of": "imports the rules, whose citations carry the table they were read in",
    "specgen.rendering.pdf._print_sheet": "reads the style of paper, which knows no table",
    "specgen.facts.job.practices.ordered": "who asks it reads the same table for himself",
    "specgen.facts.job.safe_forms.lacking": "who asks it reads the same table for himself",
    "specgen.facts.job.made_light_of.passed_over": "who asks it reads the same tables for himself",
    "specgen.facts.job.practices.words": "compiles the expression of a row that was read already",
    "specgen.facts.job.schedule.least": "kept for one plan, which is worked out in one go",
    "specgen.facts.job.schedule.most": "kept for one plan, which is worked out in one go",
    "specgen.facts.job.schedule.needed": "kept for one plan, which is worked out in one go",
    "specgen.facts.job.schedule.first": "kept for one plan, which is worked out in one go",
    "specgen.facts.job.schedule.last": "kept for one plan, which is worked out in one go",
    "specgen.facts.job.schedule.begins": "kept for one plan, which is worked out in one go",
    "specgen.facts.job.schedule.reached": "kept for one plan, which is worked out in one go",
}
# The floors below, which know no tables: the import contract holds them to it.
BELOW = ("specgen.units", "specgen.source", "specgen.findings")


def test_looking_in_is_noted_and_having_is_not() -> None:
    with recorded() as names:
        held = table("comb_unfit_binders")
        entry = documents()
    assert names == set()
    with recorded() as names:
        assert held.rows
        assert entry["CLP"].title
    assert names == {"table comb_unfit_binders", "document CLP"}
    with recorded() as names:
        cell_citation("substrates", "wood", "most_moisture_pct")
    assert names == {"table substrates", "table substrates_read"}


@pytest.mark.parametrize(
    "shown", [name for name, _ in inspect.getmembers(Table, lambda held: isinstance(held, property))]
)
def test_everything_a_table_shows_is_noted(shown: str) -> None:
    held = table("climate_limits")
    with recorded() as names:
        getattr(held, shown)
    assert names == {"table climate_limits"}


def test_a_citation_taken_before_is_noted_where_it_is_printed() -> None:
    row = table("climate_limits").rows[0]
    source = table("climate_limits").row_citation(row)
    with recorded() as names:
        str(source)
    assert names == {"table climate_limits", *({f"document {source.document}"} if source.document else ())}
    assert source == Citation(source.basis, source.document, source.clause)


def test_who_listens_outside_hears_too_even_of_what_failed() -> None:
    with recorded() as outside:
        try:
            with recorded() as inside:
                note(("table a",))
                raise KeyError
        except KeyError:
            pass
        note(("table b",))
    assert (inside, outside) == ({"table a"}, {"table a", "table b"})


def test_a_kept_answer_brings_what_it_looked_into() -> None:
    asked: list[str] = []

    @remembered
    def inner(key: str) -> str:
        asked.append(key)
        note((f"table {key}",))
        return key

    @remembered
    def outer(*, key: str) -> str:
        return inner(key)

    @memoised
    def of_a_specification(spec: Spec, key: str) -> str:
        return outer(key=key)

    spec = load(GOOD).spec
    assert spec is not None
    heard = []
    for ask in (inner, inner, lambda key: outer(key=key), lambda key: of_a_specification(spec, key)) * 2:
        with recorded() as names:
            ask("a")
        heard.append(names)
    assert heard == [{"table a"}] * 8
    assert asked == ["a"]


def test_an_error_is_not_kept() -> None:
    tried: list[int] = []

    @remembered
    def fails() -> None:
        tried.append(1)
        raise ValueError

    for _ in range(2):
        with pytest.raises(ValueError):
            fails()
    assert len(tried) == 2


def test_a_table_that_is_read_through_a_kept_answer_only() -> None:
    grain("240")
    with recorded() as names:
        grain("240")
    assert names == {"table abrasive_grains"}


def _modules() -> Iterator[ModuleType]:
    all_rules()
    for found in pkgutil.walk_packages(specgen.__path__, "specgen."):
        if not found.name.endswith("__main__"):
            yield importlib.import_module(found.name)


def test_a_module_takes_nothing_but_citations_from_a_table_while_it_is_imported() -> None:
    """What else it took would be used later without a word: every value a module holds is worked out again, and listened to."""
    taken, citations = [], 0
    for module in _modules():
        for step in _parsed()[module.__name__].body if module.__name__ in _parsed() else ():
            if not isinstance(step, ast.Assign | ast.AnnAssign) or step.value is None:
                continue
            with recorded() as names:
                value = eval(compile(ast.Expression(step.value), module.__name__, "eval"), dict(vars(module)))
            if names:
                citations += isinstance(value, Citation)
            if names and not isinstance(value, Citation):
                taken.append(f"{module.__name__}:{step.lineno} takes {sorted(names)}")
    assert taken == []
    assert citations > 5


# --- no answer is kept by functools that looks into a table


def _names_in(node: ast.AST) -> Iterator[str]:
    for part in ast.walk(node):
        if isinstance(part, ast.Name):
            yield part.id
        elif isinstance(part, ast.Attribute):
            yield f".{part.attr}"


def _looking_in(trees: dict[str, ast.Module]) -> tuple[set[str], dict[str, set[str]]]:
    """Names, as `module.function`, of all that may look into a table, and of each function kept by functools what it names.

    Names are followed through imports; a method or property by its name alone, whatever it is asked of.
    """
    named: dict[str, set[str]] = {}
    kept: dict[str, set[str]] = {}
    methods: dict[str, set[str]] = {}
    for module, tree in trees.items():
        if module.startswith(BELOW):
            continue
        known: dict[str, str] = {}
        for step in ast.walk(tree):
            if isinstance(step, ast.ImportFrom):
                known |= {one.asname or one.name: f"{step.module}.{one.name}" for one in step.names}
        own = {step.name for step in tree.body if isinstance(step, ast.FunctionDef | ast.ClassDef)}
        own |= {
            name.id
            for step in tree.body
            if isinstance(step, ast.Assign)
            for name in step.targets
            if isinstance(name, ast.Name)
        }
        known |= {name: f"{module}.{name}" for name in own}

        def resolved(node: ast.AST, known: dict[str, str] = known) -> set[str]:
            inner = {
                one.asname or one.name: f"{step.module}.{one.name}"
                for step in ast.walk(node)
                if isinstance(step, ast.ImportFrom)
                for one in step.names
            }
            return {(known | inner).get(name, name) for name in _names_in(node)}

        for step in tree.body:
            if isinstance(step, ast.FunctionDef):
                named[f"{module}.{step.name}"] = resolved(step)
            elif isinstance(step, ast.ClassDef):
                for part in step.body:
                    if isinstance(part, ast.FunctionDef):
                        named[f"{module}.{step.name}.{part.name}"] = resolved(part)
                        methods.setdefault(f".{part.name}", set()).add(f"{module}.{step.name}.{part.name}")
            elif isinstance(step, ast.Assign):
                for target in step.targets:
                    if isinstance(target, ast.Name):
                        named[f"{module}.{target.id}"] = resolved(step.value)
        for step in ast.walk(tree):
            if isinstance(step, ast.FunctionDef) and any(
                name in {"cache", "lru_cache", ".cache", ".lru_cache", ".cached_property", "cached_property"}
                for decorator in step.decorator_list
                for name in _names_in(decorator)
            ):
                kept[f"{module}.{step.name}"] = resolved(step)
    looking = {f"specgen.standards.{name}" for name in ("tables.table", "tables.cell_citation", "citations.documents")}
    looking |= {"specgen.rules.kit.table", "specgen.rules.kit.cell_citation"}
    grown = 0
    while grown != len(looking):
        grown = len(looking)
        asked = looking | {name for name, meant in methods.items() if meant & looking}
        looking |= {name for name, names in named.items() if names & asked}
    return looking | {name for name, meant in methods.items() if meant & looking}, kept


def _kept_wrongly(trees: dict[str, ast.Module]) -> set[str]:
    looking, kept = _looking_in(trees)
    return {name for name, names in kept.items() if names & looking and not name.startswith("specgen.standards.")}


def test_no_answer_that_looks_into_a_table_is_kept_without_its_names() -> None:
    assert _kept_wrongly(_parsed()) == set(MAY_BE_KEPT)


@pytest.mark.parametrize(
    "written",
    [
        "@cache\ndef answer():\n    return table('comb').rows",
        "@lru_cache(maxsize=5)\ndef answer():\n    return _inner()\ndef _inner():\n    return _HELD.rows\n_HELD = table('comb')",
        "class Held:\n    def asked(self):\n        return grain('1')\n@functools.cache\ndef answer(held):\n    return held.asked()",
    ],
)
def test_the_search_finds_what_it_looks_for(written: str) -> None:
    head = (
        "import functools\nfrom specgen.standards.tables import table\nfrom specgen.facts.pairs.papers import grain\n"
    )
    assert _kept_wrongly(_parsed() | {"specgen.tried": ast.parse(head + written)}) - set(MAY_BE_KEPT) == {
        "specgen.tried.answer"
    }

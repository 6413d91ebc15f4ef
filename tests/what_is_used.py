"""Which definitions of the program a way from its entrances reaches, and which published tables a reached definition names.

Asked by `test_nothing_unused.py`. Names are followed through imports; a method counts as reached where its name is asked of
anything by reached code, which errs towards "used".
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import specgen
from specgen.standards.citations import documents
from specgen.standards.tables import table, table_names

PACKAGE = Path(specgen.__file__).parent
# loaded by name, so that no import leads there: all that stands at the top of these is an entrance
LOADED_BY_NAME = ("specgen.rules.", "specgen.commands.")
Name = tuple[str, str]  # module, and the name at its top or `Class.method`


@dataclass
class Module:
    """One module taken apart: what stands at its top under a name, and the rest, which runs on import."""

    imports: dict[str, tuple[str, str]] = field(default_factory=dict)  # local name: module and name there, or ""
    definitions: dict[str, ast.AST] = field(default_factory=dict)
    loose: list[ast.AST] = field(default_factory=list)


def unused_definitions(below: str, listed: Iterable[Name] = ()) -> set[Name]:
    """Definitions in modules whose name starts with `below` that no way from an entrance or from one of `listed` reaches."""
    reached, asked = _reached(frozenset(listed))
    unused = set()
    for module, found in _modules().items():
        if not module.startswith(below):
            continue
        for name, node in found.definitions.items():
            if (module, name) not in reached and not name.startswith("__"):
                unused.add((module, name))
            if isinstance(node, ast.ClassDef) and all(ast.unparse(base) == "NamedTuple" for base in node.bases):
                # what any other base class asks for is asked by another program, and is not seen from here
                methods = {one.name for one in node.body if isinstance(one, ast.FunctionDef)}
                unused |= {(module, f"{name}.{one}") for one in methods - asked if not one.startswith("__")}
    return unused


def unused_tables(listed: Iterable[Name] = ()) -> frozenset[str]:
    """Published tables that nothing reached from an entrance or from one of `listed` names."""
    return _unused_tables(frozenset(listed))


@cache
def _unused_tables(listed: frozenset[Name]) -> frozenset[str]:
    reached, _ = _reached(listed)
    nodes = [_modules()[module].definitions.get(name) for module, name in reached if module in _modules()]
    nodes += [node for found in _modules().values() for node in found.loose]
    texts = {text for node in nodes for text in _texts(node)}
    # `cell_citation` asks for NAME_read beside NAME, and a page in another language for official wordings beside the English ones
    own = re.compile(r"_read$|(?<=_statements)_[a-z]{2}(_[a-z]+)?$")
    return frozenset(name for name in table_names() if name not in texts and own.sub("", name) not in texts)


def uncited_documents() -> set[str]:
    """Documents of `documents.yaml` that neither the program nor a table cites."""
    nodes = [node for found in _modules().values() for node in (*found.definitions.values(), *found.loose)]
    cited = {text for node in nodes for text in _texts(node)}
    for name in table_names():
        found = table(name)
        cited |= {
            found.document,
            *(part for row in found.rows for cell in row.values() for part in re.split("[;,] *", cell)),
        }
    return set(documents()) - cited


def _texts(node: ast.AST | None) -> Iterator[str]:
    if node is None:
        return
    for inner in _parts(node):
        if isinstance(inner, ast.Constant) and isinstance(inner.value, str):
            yield inner.value


@cache
def _parts(node: ast.AST) -> tuple[ast.AST, ...]:
    """What names or says something below a node; walked once, for many questions."""
    return tuple(
        one for one in ast.walk(node) if isinstance(one, ast.Name | ast.Attribute | ast.Constant | ast.ImportFrom)
    )


@cache
def _reached(listed: frozenset[Name]) -> tuple[set[Name], set[str]]:
    modules = _modules()
    asked: set[str] = set()
    todo: list[Name] = [("specgen.commands", "main"), ("specgen.__main__", ""), *listed]
    todo += [(home, name) for name, home in specgen._HOMES.items()]
    for name, found in modules.items():
        if name.startswith("specgen.documents.") and "KIND" in found.definitions:
            # the registry loads the folders of documents by their names and asks each for its kind
            todo.append((name, "KIND"))
        if name.startswith(LOADED_BY_NAME):
            todo += [(name, "")]
            todo += [(name, one) for one, node in found.definitions.items() if getattr(node, "decorator_list", None)]
            if name.startswith("specgen.commands."):
                todo += [(name, one) for one in found.definitions]
    seen: set[Name] = set()
    while todo:
        at = todo.pop()
        if at in seen or at[0] not in modules:
            continue
        seen.add(at)
        todo.append((at[0], ""))
        found = modules[at[0]]
        nodes = found.loose if not at[1] else [found.definitions[at[1]]] if at[1] in found.definitions else []
        if at[1] in found.imports:
            todo.append(found.imports[at[1]])
        for node in nodes:
            for inner in _parts(node):
                if isinstance(inner, ast.Name):
                    todo.append(found.imports.get(inner.id, (at[0], inner.id)))
                elif isinstance(inner, ast.Attribute):
                    asked.add(inner.attr)
                    if isinstance(inner.value, ast.Name) and inner.value.id in found.imports:
                        home, name = found.imports[inner.value.id]
                        todo.append((home, inner.attr))
                        todo.append((f"{home}.{name}", inner.attr))
                elif isinstance(inner, ast.Constant) and isinstance(inner.value, str) and inner.value.isidentifier():
                    # getattr by a text, and annotations in quotes
                    asked.add(inner.value)
                    if inner.value in found.definitions:
                        todo.append((at[0], inner.value))
                elif isinstance(inner, ast.ImportFrom):
                    todo += [(home, name) for home, name in _imported(inner).values()]
    return seen, asked


def _imported(node: ast.ImportFrom) -> dict[str, tuple[str, str]]:
    return {alias.asname or alias.name: (node.module or "", alias.name) for alias in node.names}


@cache
def _modules() -> dict[str, Module]:
    return {_dotted(file): _module(ast.parse(file.read_text("utf-8"))) for file in sorted(PACKAGE.rglob("*.py"))}


def _dotted(file: Path) -> str:
    parts = file.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def _module(tree: ast.Module) -> Module:
    found = Module()
    for inner in ast.walk(tree):
        if isinstance(inner, ast.ImportFrom):
            found.imports |= _imported(inner)
        elif isinstance(inner, ast.Import):
            found.imports |= {(alias.asname or alias.name): (alias.name, "") for alias in inner.names}
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            found.definitions[node.name] = node
        elif isinstance(node, ast.Assign | ast.AnnAssign) and node.value is not None:
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            names = [one.id for target in targets for one in ast.walk(target) if isinstance(one, ast.Name)]
            for name in names:
                found.definitions[name] = node
            if not names:
                found.loose.append(node)
        elif not (isinstance(node, ast.Import | ast.ImportFrom) or _is_text(node)):
            found.loose.append(node)
    return found


def _is_text(node: ast.AST) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)

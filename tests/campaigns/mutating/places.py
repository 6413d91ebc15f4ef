"""Every place of a floor where the mutation campaign could change the meaning, and the draw among them by a seed. Called by `mutations`.

Left out by rule, for a change there has no meaning or only one of form: docstrings and other bare texts; type hints, unions of types, type variables and
what stands under TYPE_CHECKING; imports, `__all__` and `__slots__`; decorators and the keywords of `field`, `Field`, `ConfigDict`;
assertions (they are for the type checker) and the words of `raise`; the inside of f-strings, and texts that are sentences (wording is
held by the expected documents); keywords of form such as `strict`, `encoding`, `frozen`.
"""

from __future__ import annotations

import ast
import random
import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from mutating.changes import Package, Surroundings, changes, statement_changes

_TYPE_UNION = re.compile(r"[A-Z]\w*(\[.*\])?( \| ([A-Z]\w*(\[.*\])?|None))+")
_FORM = {"field", "Field", "ConfigDict", "TypeVar", "ParamSpec", "cast", "words", "getLogger", "namedtuple"}


@dataclass(frozen=True)
class Place:
    """One change: the bytes from `start` to `end` of the file become `text`. `key` finds it again when lines have moved."""

    file: str
    scope: str
    line: int
    end_line: int
    start: int
    end: int
    kind: str
    before: str
    after: str
    text: str
    nth: int

    @property
    def key(self) -> tuple[str, str, str, str, str, int]:
        return self.file, self.scope, self.kind, self.before, self.after, self.nth

    def changed(self, source: bytes) -> bytes:
        return source[: self.start] + self.text.encode() + source[self.end :]

    def changes(self, source: bytes) -> bool:
        """False where the text does not parse or reads as before."""
        try:
            return ast.dump(ast.parse(self.changed(source))) != ast.dump(ast.parse(source))
        except SyntaxError:
            return False


def places(tree: Path, floor: str) -> list[Place]:
    """All places of `specgen/FLOOR` in a copy of the sources, in order."""
    package = Package([ast.parse(file.read_bytes()) for file in sorted((tree / "specgen").rglob("*.py"))])
    found: list[Place] = []
    for file in sorted((tree / "specgen" / floor).rglob("*.py")):
        source = file.read_bytes()
        found += _Walk(str(file.relative_to(tree)), source, package).found
    return found


def draw(tree: Path, all_places: list[Place], number: int, seed: str) -> list[Place]:
    """A kind by the square root of how often it occurs, so that the rare kinds come up too, then a place of that kind."""
    chance = random.Random(seed)
    by_kind: dict[str, list[Place]] = defaultdict(list)
    for place in all_places:
        by_kind[place.kind].append(place)
    drawn: list[Place] = []
    while len(drawn) < number and by_kind:
        kinds = sorted(by_kind)
        kind = chance.choices(kinds, [len(by_kind[k]) ** 0.5 for k in kinds])[0]
        place = by_kind[kind].pop(chance.randrange(len(by_kind[kind])))
        if place.changes((tree / place.file).read_bytes()):
            drawn.append(place)
        if not by_kind[kind]:
            del by_kind[kind]
    return drawn


class _Walk:
    def __init__(self, file: str, source: bytes, package: Package) -> None:
        self.file, self.source = file, source
        self.starts = [0]
        for line in source.splitlines(keepends=True):
            self.starts.append(self.starts[-1] + len(line))
        module = ast.parse(source)
        self.around = Surroundings(module, package)
        self.scope: list[str] = []
        self.seen: Counter[tuple[str, ...]] = Counter()
        self.found: list[Place] = []
        self._children(module)

    def _children(self, node: ast.AST) -> None:
        for child in _meaningful(node):
            self._visit(child)

    def _visit(self, node: ast.AST) -> None:
        if _of_form(node):
            return
        named = isinstance(node, ast.FunctionDef | ast.ClassDef)
        if named:
            self.scope.append(node.name)
        outside = self.around.returns, self.around.types
        if isinstance(node, ast.FunctionDef):
            self.around.returns = ast.unparse(node.returns) if node.returns else ""
            self.around.types = {
                a.arg: ast.unparse(a.annotation) for a in ast.walk(node.args) if isinstance(a, ast.arg) and a.annotation
            }
        if isinstance(node, ast.stmt):
            for kind, old, text in statement_changes(node):
                self._add(kind, old, text, text)
        for kind, new in changes(node, self.around):
            # a loop or an answer keeps its statement: only what it runs over or answers is written anew
            old = node.iter if isinstance(node, ast.For) else node.value if isinstance(node, ast.Return) else node
            text = ast.unparse(ast.fix_missing_locations(new))
            self._add(kind, old, text, f"({text})")
        self._children(node)
        self.around.returns, self.around.types = outside
        if named:
            self.scope.pop()

    def _add(self, kind: str, old: ast.AST, after: str, text: str) -> None:
        start = self.starts[old.lineno - 1] + old.col_offset
        end = self.starts[old.end_lineno - 1] + old.end_col_offset
        before, scope = ast.unparse(old), ".".join(self.scope)
        what = (scope, kind, before, after)
        place = Place(
            self.file, scope, old.lineno, old.end_lineno, start, end, kind, before, after, text, self.seen[what]
        )
        self.seen[what] += 1
        self.found.append(place)


def _meaningful(node: ast.AST) -> Iterator[ast.AST]:
    """The nodes below one, less those of form."""
    for name, value in ast.iter_fields(node):
        if name in {"annotation", "returns", "decorator_list", "type_comment", "bases"}:
            continue
        if name == "keywords" and isinstance(node, ast.ClassDef):
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST):
                yield child


def _of_form(node: ast.AST) -> bool:
    if isinstance(node, ast.JoinedStr | ast.Assert | ast.Import | ast.ImportFrom | ast.Raise):
        return True
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return True
    if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING":
        return True
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _FORM:
        return True
    if isinstance(node, ast.Assign) and _TYPE_UNION.fullmatch(ast.unparse(node.value)):
        return True
    targets = node.targets if isinstance(node, ast.Assign) else []
    return any(isinstance(t, ast.Name) and t.id in {"__all__", "__slots__"} for t in targets)

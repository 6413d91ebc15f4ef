"""Every text a user meets, by the surface it is met on: rule pages, findings, leaves, printed pages, tables, help, README, demo.

Run by hand (`python -m tests.words.surfaces [PATTERN]`) it lists what `not_to_use.yaml` finds, by surface.
"""

from __future__ import annotations

import ast
import re
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from babel.messages.pofile import read_po

from specgen.model.faults import SHAPE_FAULTS
from specgen.model.parse import load
from specgen.model.spec import KINDS, LIST_KINDS
from specgen.model.walk import leaves, models
from specgen.rules.declare import all_rules
from specgen.rules.waivers import FAULTS as WAIVER_FAULTS
from specgen.source.project import projects_in

ROOT = Path(__file__).parents[2]
# modules whose texts reach a screen, by the surface they are met on
_MODULES = {
    "message": ["specgen/rules", "specgen/facts"],
    "help": ["specgen/commands"],
    "report": ["specgen/comparison", "specgen/report", "specgen/register", "specgen/issuing"],
    "fault": ["specgen/source/faults.py", "specgen/model/field_types.py", "specgen/model/shape.py"],
}
# what stands between backquotes or holds a low line, a full stop or a colon inside is a key, a command or a file
_NOT_PROSE = re.compile(r"`[^`]*`|%\(\w+\)s|\S*[_/=]\S*|\w+(?:\.[\w…]+)+|\{[^{}]*\}")


@dataclass(frozen=True, slots=True)
class Row:
    """One word not to use: what is searched, what to say, what is right all the same, and where it is searched."""

    pattern: re.Pattern[str]
    say: str
    but: tuple[re.Pattern[str], ...]
    only: tuple[str, ...]

    def hits(self, surface: str, text: str) -> list[str]:
        if self.only and not surface.startswith(self.only):
            return []
        for right in self.but:
            text = right.sub(" ", text)
        return [found.group() for found in self.pattern.finditer(text)]


@cache
def rows() -> tuple[Row, ...]:
    listed = yaml.load((Path(__file__).parent / "not_to_use.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)
    return tuple(
        Row(
            re.compile(row["not"], re.IGNORECASE),
            row["say"],
            tuple(re.compile(right, re.IGNORECASE) for right in row.get("but", ())),
            tuple(row.get("only", ())),
        )
        for row in listed
    )


@cache
def texts() -> tuple[tuple[str, str, str], ...]:
    """Surface, place and text of everything that is met, keys and code taken out."""
    return tuple((surface, place, " ".join(_NOT_PROSE.sub(" ", text).split())) for surface, place, text in _all())


def _all() -> Iterator[tuple[str, str, str]]:
    for rule in all_rules():
        page = rule.page
        for name in ("title", "checks", "why", "to_put_right"):
            yield f"rule {name}", rule.id, getattr(page, name)
    for surface, places in _MODULES.items():
        for place in places:
            path = ROOT / place
            for file in sorted(path.rglob("*.py")) if path.is_dir() else [path]:
                for line, text in _strings(file):
                    yield surface, f"{file.relative_to(ROOT)}:{line}", text
    for fault in (*SHAPE_FAULTS.values(), *WAIVER_FAULTS.values()):
        for text in (fault.title, fault.why, fault.remedy):
            yield "fault", fault.id, text
    for model in {model: None for root in KINDS.values() for model in models(root)}:
        for name, field in model.model_fields.items():
            yield "leaf", f"{model.__name__}.{name}", field.description or ""
    with (ROOT / "templates/locale/specgen.pot").open("rb") as file:
        for message in read_po(file):
            for text in message.id if isinstance(message.id, tuple) else (message.id,):
                place = str(message.locations[:1])
                yield "page", place, text
    yield from _readme()
    yield from _demo()


def _strings(file: Path) -> Iterator[tuple[int, str]]:
    """The texts of a module but for docstrings, words of one piece and what is compared or looked up."""
    tree = ast.parse(file.read_text("utf-8"))
    dull: set[ast.AST] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            dull.add(node.value)
        if isinstance(node, (ast.Compare, ast.Subscript)):
            dull.update(ast.walk(node))
    for node in ast.walk(tree):
        if (
            node not in dull
            and isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and " " in node.value.strip()
        ):
            yield node.lineno, node.value


def _readme() -> Iterator[tuple[str, str, str]]:
    fenced = False
    for number, line in enumerate((ROOT / "README.md").read_text("utf-8").splitlines(), start=1):
        fenced = fenced != line.startswith("```")
        if not fenced:
            yield "readme", f"README.md:{number}", line


def _demo() -> Iterator[tuple[str, str, str]]:
    records: list[tuple[tuple[str, ...], Any]] = []
    for folder in projects_in(ROOT / "specs_demo"):
        spec = load(folder).spec
        assert spec is not None
        records.append((("project",), spec.project))
        records += [((kind, key), record) for kind in LIST_KINDS for key, record in getattr(spec, kind).items()]
    for path, record in records:
        for where, value, _ in leaves(record, path):
            if isinstance(value, str) and " " in value:
                yield "demo", ".".join(where), value


def found(begins: str = "") -> Iterator[tuple[str, str, str, str, str]]:
    """Surface, place, the word, what to say instead, and the text, of everything that is not to be said, on surfaces whose name
    begins so.
    """
    for surface, place, text in texts():
        for row in rows() if surface.startswith(begins) else ():
            for word in row.hits(surface, text):
                yield surface, place, word, row.say, text


if __name__ == "__main__":
    wanted = re.compile(sys.argv[1] if len(sys.argv) > 1 else "")
    hits = [hit for hit in found() if wanted.search(f"{hit[0]} {hit[1]}")]
    for surface, place, word, say, text in hits:
        print(f"{surface} {place}: {word!r} (say {say}): {text[:150]}")
    print(Counter(surface for surface, *_ in hits))
    print(Counter(word.lower() for _, _, word, _, _ in hits).most_common(60))

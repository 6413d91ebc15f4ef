"""Campaign: changes that an author may rightly make to the demo and the second good specification, and whether `check` minds them.

    python tests/campaigns/sound_moves.py [--share 0.1] [--seed 1] [--processes 2] [FOLDER...]

The twin of `blind_quantities.py`; folders that are named take the place of the two. A value a little larger or smaller, the same value in another unit, a finer paper, an equivalent method,
lists in another order, records under other ids, comments: what is tried stands in `sound_moves.yaml`. No move may raise an error that was
not there before, and of all fewer than one in fifty a warning; else it ends with 1.
"""

from __future__ import annotations

import argparse
import multiprocessing
import platform
import re
import sys
import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fnmatch import fnmatchcase
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from specgen.findings import Finding, Severity  # noqa: E402
from specgen.source.tree import Mapping as Group  # noqa: E402
from specgen.source.tree import Node, Scalar, Sequence  # noqa: E402
from specgen.units.quantity import QuantityError, parse_one_or_range  # noqa: E402
from tests.campaigns.moving.folder import Folder, Leaf, is_drawn  # noqa: E402

FOLDERS: tuple[Path, ...] = (ROOT / "specs_demo/tramway", ROOT / "tests/second_good")
DATA = Path(__file__).with_suffix(".yaml")
ALLOWED = 0.02
_NUMBER = re.compile(r"(?<![A-Za-z0-9])(?<!\d\.)-?\d+(?:\.\d+)?")
# exactly the same in whole or short figures
_RESTATED = {
    "um": ("mm", Fraction(1, 1000)),
    "h": ("min", Fraction(60)),
    "days": ("h", Fraction(24)),
    "cm": ("mm", Fraction(10)),
    "m2": ("cm2", Fraction(10_000)),
    "L": ("mL", Fraction(1000)),
    "kPa": ("bar", Fraction(1, 100)),
    "g/mL": ("kg/L", Fraction(1)),
}


@dataclass(frozen=True)
class Move:
    """One sound change: of the text of a leaf, or of a whole folder by its name."""

    sort: str
    name: str
    leaf: Leaf | None = None
    text: str = ""


def main() -> int:
    global FOLDERS
    asked = _asked()
    FOLDERS = tuple(asked.folders) or FOLDERS
    begun = time.monotonic()
    drawn = draw(asked.share, asked.seed)
    told = _run(drawn, asked.processes)
    print(
        f"machine: {platform.machine()}, {platform.system()} {platform.release()}, Python {platform.python_version()}"
    )
    print(f"{len(drawn)} moves in {time.monotonic() - begun:.0f} s; share {asked.share}, seed {asked.seed}\n")
    print(f"{'move':14}{'tried':>7}{'errors':>8}{'warnings':>10}{'notes':>7}")
    for sort in dict.fromkeys(move.sort for _, move in drawn):
        these = [found for (_, move), found in zip(drawn, told, strict=True) if move.sort == sort]
        counts = [sum(weight in {w for _, w, _ in found} for found in these) for weight in ("error", "warning", "note")]
        print(f"{sort:14}{len(these):7}{counts[0]:8}{counts[1]:10}{counts[2]:7}")
    for (_, move), found in zip(drawn, told, strict=True):
        for rule, weight, where in found:
            print(f"  {weight:8}{rule} at {where}   after {move.name}")
    told = [[one for one in found if not rightly(move, one)] for (_, move), found in zip(drawn, told, strict=True)]
    errors, warnings = (share_with(told, weight) for weight in (Severity.ERROR, Severity.WARNING))
    print("beside what is told rightly: ", end="")
    print(f"with a new error {errors:.1%}, with a new warning {warnings:.1%}")
    return int(errors > 0 or warnings >= ALLOWED)


Told = list[tuple[str, str, str]]


def rightly(move: Move, told: tuple[str, str, str]) -> bool:
    """True where `sound_moves.yaml` says, with the reason, that a move of this leaf makes the rule tell there."""
    rule, _, where = told
    return move.leaf is not None and any(
        rule == row["rule"]
        and fnmatchcase(where, row["at"])
        and any(fnmatchcase(move.leaf.pattern, leaf) for leaf in row["leaves"])
        for row in data()["rightly"]
    )


def share_with(told: list[Told], weight: Severity) -> float:
    return sum(any(w == weight for _, w, _ in found) for found in told) / max(len(told), 1)


def draw(share: float, seed: int) -> list[tuple[int, Move]]:
    """A share of all moves, each with the number of its folder. A move is drawn by its own words, whatever else there is to draw."""
    every = ((number, move) for number in range(len(FOLDERS)) for move in moves(number))
    return [(number, move) for number, move in every if is_drawn(f"{seed} {number} {move.sort} {move.name}", share)]


def moves(number: int) -> Iterator[Move]:
    for leaf in folder(number).leaves():
        for sort, text in _texts(leaf):
            if text != leaf.text:
                yield Move(sort, f"{leaf}: {leaf.text} -> {text}", leaf, text)
    for key in data()["reordered"]:
        yield Move("reordered", f"{key} in the other order", text=key)
    for kind in ("products", "preparations", "systems", "jobs"):
        for name in getattr(folder(number).spec, kind):
            yield Move("renamed", f"{kind}.{name} under another id", text=name)
    yield Move("comments", "a comment on every line")


def _texts(leaf: Leaf) -> Iterator[tuple[str, str]]:
    for row in data()["slight"]:
        if fnmatchcase(leaf.pattern, row["leaf"]):
            yield from (("slight", text) for text in _slight(leaf.text, row["by"]))
    for row in data()["equivalent"]:
        if fnmatchcase(leaf.pattern, row["leaf"]) and leaf.text == row["from"]:
            yield from (("equivalent", text) for text in row["to"])
    finer = data()["finer"]
    if leaf.pattern in finer["leaves"] and (papers := re.findall(r"P\d+", leaf.text)) and papers[-1] in finer["papers"]:
        before, _, after = leaf.text.rpartition(papers[-1])
        yield "finer", f"{before}{finer['papers'][papers[-1]]}{after}"
    if leaf.kind.quantity:
        yield from (("restated", text) for text in _restated(leaf))


def _slight(text: str, factors: list[float]) -> Iterator[str]:
    found = list(_NUMBER.finditer(text))
    if len(found) == 2:
        low, high = (Fraction(number[0]) for number in found)
        yield _with(text, found, [low * Fraction(21, 20), high * Fraction(19, 20)])
    elif len(found) == 1:
        whole = text.isdigit() or text.endswith(("months", "years"))
        for factor in factors:
            value = Fraction(found[0][0]) * Fraction(str(factor))
            yield _with(text, found, [Fraction(round(value)) if whole else value])


def _restated(leaf: Leaf) -> Iterator[str]:
    unit = next((unit for unit in _RESTATED if leaf.text.endswith(f" {unit}")), None)
    if unit is None:
        return
    other, factor = _RESTATED[unit]
    found = list(_NUMBER.finditer(leaf.text))
    text = _with(leaf.text, found, [Fraction(number[0]) * factor for number in found]).replace(f" {unit}", f" {other}")
    try:
        same = parse_one_or_range(leaf.kind.quantity, text) == parse_one_or_range(leaf.kind.quantity, leaf.text)
    except QuantityError:
        return  # the two ends are in two units, or the kind does not take the other one
    if same:
        yield text


def _with(text: str, found: list[re.Match[str]], values: list[Fraction]) -> str:
    for match, value in reversed(list(zip(found, values, strict=True))):
        digits = f"{float(value):.6f}".rstrip("0").rstrip(".")
        text = text[: match.start()] + digits + text[match.end() :]
    return text


@cache
def folder(number: int) -> Folder:
    return Folder(FOLDERS[number])


@cache
def data() -> Mapping[str, Any]:
    return dict(yaml.load(DATA.read_text("utf-8"), Loader=yaml.CSafeLoader))


def tried(at: tuple[int, Move]) -> Told:
    """What is told of one move that was not told before."""
    number, move = at
    if move.leaf is not None:
        leaf, new = move.leaf, move.text
        found = folder(number).found(
            leaf.file,
            leaf.steps,
            lambda tree: tree._replace(text=new) if isinstance(tree, Scalar) else None,
            leaf.record,
        )
    elif move.sort == "reordered":
        found = folder(number).reshaped(lambda tree: _reordered(tree, move.text))
    elif move.sort == "renamed":
        found = folder(number).reshaped(lambda tree: _renamed(tree, move.text, f"{move.text}-x"))
    else:
        found = folder(number).rewritten(lambda line: f"{line}  # checked" if line.strip() else "# nothing here")
    return _short(found)


def _short(found: list[Finding]) -> Told:
    return [(finding.id, str(finding.severity), finding.path) for finding in found]


def _reordered(tree: Node, key: str) -> Node:
    """Every list under a key turned round."""
    if isinstance(tree, Sequence):
        return replace(tree, items=tuple(_reordered(entry, key) for entry in tree.items))
    if not isinstance(tree, Group):
        return tree
    entries = {name: _reordered(value, key) for name, value in tree.entries.items()}
    held = entries.get(key)
    if isinstance(held, Sequence):
        entries[key] = replace(held, items=held.items[::-1])
    return replace(tree, entries=entries)


def _renamed(tree: Node, old: str, new: str, key: str = "") -> Node:
    """An id replaced where it stands as one, where it is referred to, and in addresses."""
    if isinstance(tree, Sequence):
        return replace(tree, items=tuple(_renamed(entry, old, new, key) for entry in tree.items))
    if isinstance(tree, Group):
        entries = {name: _renamed(value, old, new, name) for name, value in tree.entries.items()}
        return replace(tree, entries=entries)
    if key == "path":
        return tree._replace(text=".".join(new if step == old else step for step in tree.text.split(".")))
    return tree._replace(text=new) if key in _IDS and tree.text == old else tree


_IDS = {"id", "based_on", "product", "variant", "system", "preparation", "job", "next_coat", "after", "items"}


def _run(drawn: list[tuple[int, Move]], processes: int) -> list[Told]:
    if processes == 1:
        return [tried(at) for at in drawn]
    global _drawn
    _drawn = drawn
    with multiprocessing.get_context("fork").Pool(processes) as pool:
        return pool.map(_told, range(len(drawn)), chunksize=20)


_drawn: list[tuple[int, Move]] = []


def _told(at: int) -> Told:
    return tried(_drawn[at])


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser()
    parser.add_argument("--share", type=float, default=1.0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--processes", type=int, choices=(1, 2), default=2)
    parser.add_argument("folders", nargs="*", type=Path)
    return parser.parse_args()


if __name__ == "__main__":
    sys.exit(main())

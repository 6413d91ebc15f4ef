"""Campaign: every quantity and choice of the demo and of the second good specification, changed one at a time, and what `check` says.

    python tests/campaigns/blind_quantities.py [--share 0.1 | --each 2] [--seed 1] [--processes 2] [--list] [FOLDER...]

Folders that are named take the place of the two. Each quantity is made four times as large and a quarter, given the next unit of its kind and left out; each word becomes the next of its
list. A move is silent where nothing is told that was not told before. `--each` tries so many moves of a sort for each leaf, drawn by the
seed, and counts them for all of that leaf: a tenth of the time, and every leaf is there. What nothing could contradict stands with its reason in
`blind_quantities.yaml`; beside those at most a tenth of the moves by four may be silent, or it ends with 1.
"""

from __future__ import annotations

import argparse
import multiprocessing
import platform
import sys
import time
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from zlib import crc32

import yaml

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from specgen.source.tree import Scalar  # noqa: E402
from tests.campaigns.moving.folder import Folder, is_drawn  # noqa: E402
from tests.campaigns.moving.moves import GRAVE, Move, moves  # noqa: E402

FOLDERS: tuple[Path, ...] = (ROOT / "specs_demo/tramway", ROOT / "tests/second_good")
REASONS = Path(__file__).with_suffix(".yaml")
ALLOWED = 0.10


@dataclass(frozen=True)
class Outcome:
    """What was told of one move: the gravest weight, the rules; nothing where it was silent."""

    folder: str
    move: Move
    weight: str
    rules: tuple[str, ...]
    excused: str
    stands_for: float = 1

    @property
    def silent(self) -> bool:
        return not self.weight


def main() -> int:
    global FOLDERS
    asked = _asked()
    FOLDERS = tuple(asked.folders) or FOLDERS
    begun = time.monotonic()
    weights = each(asked.each, asked.seed) if asked.each else dict.fromkeys(draw(asked.share, asked.seed), 1.0)
    print(f"{len(weights)} moves", flush=True)
    outcomes = _run(list(weights), asked.processes)
    outcomes = [replace(one, stands_for=weight) for one, weight in zip(outcomes, weights.values(), strict=True)]
    print(
        f"machine: {platform.machine()}, {platform.system()} {platform.release()}, Python {platform.python_version()}"
    )
    print(
        f"{time.monotonic() - begun:.0f} s in {asked.processes} processes; {f'{asked.each} each' if asked.each else f'share {asked.share}'}, seed {asked.seed}\n"
    )
    print(_table(outcomes))
    print(_silent(outcomes, asked.list))
    unused = (
        sorted({row["leaf"] for row in reasons()} - {o.excused for o in outcomes})
        if asked.share == 1 and not asked.each and not asked.folders
        else []
    )
    for pattern in unused:
        print(f"excused for nothing: {pattern}")
    share = silent_share(outcomes)
    print(f"silent of the moves by four, beside those that nothing could contradict: {share:.1%}")
    return int(share > ALLOWED or bool(unused))


def draw(share: float, seed: int) -> list[tuple[int, Move]]:
    """A share of all moves, each with the number of its folder. A move is drawn by its own words, whatever else there is to draw."""
    every = (
        (number, move) for number in range(len(FOLDERS)) for leaf in folder(number).leaves() for move in moves(leaf)
    )
    return [(number, move) for number, move in every if is_drawn(f"{seed} {number} {move.sort} {move}", share)]


def each(most: int, seed: int) -> dict[tuple[int, Move], float]:
    """So many moves of each sort of each leaf, and how many of them one stands for."""
    alike: dict[tuple[str, str, str], list[tuple[int, Move]]] = defaultdict(list)
    for number, move in draw(1, seed):
        alike[move.leaf.pattern, move.sort, move.end].append((number, move))
    found = {}
    for group in alike.values():
        group.sort(key=lambda at: crc32(f"{seed} {at[0]} {at[1].sort} {at[1]}".encode()))
        found |= dict.fromkeys(group[:most], len(group) / len(group[:most]))
    return found


@cache
def folder(number: int) -> Folder:
    return Folder(FOLDERS[number])


@cache
def reasons() -> Sequence[dict[str, str]]:
    """Patterns of leaves whose moves by four nothing could contradict: `leaf`, `moves` and `reason`."""
    return tuple(yaml.load(REASONS.read_text("utf-8"), Loader=yaml.CSafeLoader) or ()) if REASONS.exists() else ()


def tried(at: tuple[int, Move]) -> Outcome:
    """What `check` says of one move."""
    number, move = at
    leaf = move.leaf
    new = folder(number).found(
        leaf.file,
        leaf.steps,
        lambda tree: tree._replace(text=move.text) if isinstance(tree, Scalar) and move.text is not None else None,
        leaf.record,
    )
    weight = max((finding.severity for finding in new), key=lambda s: s.weight, default="")
    return Outcome(folder(number).name, move, str(weight), tuple(sorted({f.id for f in new})), excuse(move))


def excuse(move: Move) -> str:
    """The pattern by which nothing could contradict the move, empty where there is none."""
    for row in reasons():
        if move.sort in row.get("moves", GRAVE) and row["leaf"] in {move.leaf.pattern, str(move.leaf)}:
            return row["leaf"]
    return ""


def silent_share(outcomes: Iterable[Outcome]) -> float:
    counted = [o for o in outcomes if o.move.sort in GRAVE and not (o.silent and o.excused)]
    return _standing_for(o for o in counted if o.silent) / max(_standing_for(counted), 1)


def _standing_for(outcomes: Iterable[Outcome]) -> float:
    return sum(outcome.stands_for for outcome in outcomes)


def _run(drawn: list[tuple[int, Move]], processes: int) -> list[Outcome]:
    if processes == 1:
        return [tried(at) for at in drawn]
    # types hold functions, which no process can hand to another: the forked ones have the list, and get numbers
    global _drawn
    _drawn = drawn
    # moves of one record are tried beside each other, for what was told of its part before is kept
    with multiprocessing.get_context("fork").Pool(processes) as pool:
        found = pool.map(_told, range(len(drawn)), chunksize=25)
    return [
        Outcome(folder(number).name, move, *told, excuse(move))
        for (number, move), told in zip(drawn, found, strict=True)
    ]


_drawn: list[tuple[int, Move]] = []


def _told(at: int) -> tuple[str, tuple[str, ...]]:
    outcome = tried(_drawn[at])
    return outcome.weight, outcome.rules


def _table(outcomes: list[Outcome]) -> str:
    lines = [
        f"{'move':12}{'tried':>8}{'error':>8}{'warning':>9}{'note':>7}{'silent':>8}{'excused':>9}{'silent beside':>15}"
    ]
    for sort in dict.fromkeys(o.move.sort for o in outcomes):
        these = [o for o in outcomes if o.move.sort == sort]
        every = _standing_for(these)
        error, warning, note, silent = (
            _standing_for(o for o in these if o.weight == weight) for weight in ("error", "warning", "note", "")
        )
        excused = _standing_for(o for o in these if o.silent and o.excused) if sort in GRAVE else 0
        share = (silent - excused) / max(every - excused, 1)
        lines.append(
            f"{sort:12}{every:8.0f}{error:8.0f}{warning:9.0f}{note:7.0f}{silent:8.0f}{excused:9.0f}"
            f"{silent - excused:8.0f}{share:7.1%}"
        )
    return "\n".join(lines) + "\n"


def _silent(outcomes: list[Outcome], every: bool) -> str:
    """Silent moves by four, by leaf, the most frequent first."""
    by_leaf: dict[str, list[Outcome]] = defaultdict(list)
    for outcome in outcomes:
        if outcome.move.sort in GRAVE and outcome.silent and not outcome.excused:
            by_leaf[outcome.move.leaf.pattern].append(outcome)
    lines = ["silent moves by four, by leaf:"]
    for pattern, these in sorted(by_leaf.items(), key=lambda entry: (-_standing_for(entry[1]), entry[0])):
        told = ", ".join(sorted({f"{o.move.sort} {o.move.end}".strip() for o in these}))
        every_one = _standing_for(o for o in outcomes if o.move.sort in GRAVE and o.move.leaf.pattern == pattern)
        lines.append(f"{_standing_for(these):5.0f} of {every_one:4.0f}  {pattern}  ({told})")
        lines += [f"             {o.move}" for o in (these if every else these[:1])]
    return "\n".join(lines) + "\n"


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser()
    parser.add_argument("--share", type=float, default=1.0)
    parser.add_argument("--each", type=int, default=0)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--processes", type=int, choices=(1, 2), default=2)
    parser.add_argument("--list", action="store_true")
    parser.add_argument("folders", nargs="*", type=Path)
    return parser.parse_args()


if __name__ == "__main__":
    sys.exit(main())

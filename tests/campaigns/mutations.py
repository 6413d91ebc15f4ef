"""Campaign: small changes of meaning, drawn by a seed, and whether a test catches each.

    python tests/campaigns/mutations.py STORE [--seed 11] [--each 30] [--floors trade,facts] [--processes 2] [--again]

Works on the committed state, in copies under STORE, never in the working tree: notes once which test executes which line, draws
`--each` places a floor, and for each runs the tests of its floor and the nearest ones that execute it, quickest first, up to the first
that fails. What is tried is written to STORE/SEED.jsonl at once, so that a run that was ended goes on. `--again` tries what survived
once more on the state committed since, with the tests that are new to it first. Reasons of survivors stand in `mutations.csv`.
Prints a table; ends with 1 where fewer than 95 % of what changes behaviour is caught. `changes` says what is changed, `places` what is not.
"""

from __future__ import annotations

import argparse
import compileall
import csv
import json
import multiprocessing
import os
import platform
import py_compile
import shutil
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path
from typing import Any

from mutating.executed import TESTS, Executed, watch
from mutating.places import Place, draw, places
from mutating.trial import Outcome, run, warm_up

HERE = Path(__file__).resolve()
ROOT = HERE.parents[2]
REASONS = HERE.with_suffix(".csv")
WANTED = 0.95
# seconds of tests, as measured when watched: those that execute the line (twice that of the floor's own), those that enter the file
SURE, FURTHER = 30.0, 40.0

Key = tuple[str, str, str, str, str, int]


def main() -> int:
    asked = _asked()
    store: Path = asked.store.resolve()
    trees = [store / "tree-0", store / "tree-1"]
    begun = time.monotonic()
    watched = store / "watched"
    if not watched.exists():
        _lay(watched)
    floors = asked.floors.split(",")
    watch(watched, store / "map", floors, asked.processes)
    for tree in trees:
        _lay(tree)
    executed = Executed(store / "map", watched, trees[0])
    results = store / f"{asked.seed}.jsonl"
    drawn = _again(results, trees[0]) if asked.again else _drawn(asked, trees[0], results)
    names = _test_names(trees[0], floors)
    jobs = [(floor, place, executed.choose(place, floor, names, SURE, FURTHER)) for floor, place in drawn]
    print(f"{len(jobs)} mutations to try, prepared in {time.monotonic() - begun:.0f} s", flush=True)
    context = multiprocessing.get_context("fork")
    free = context.Queue()
    for tree in trees:
        free.put(tree)
    with context.Pool(asked.processes, _begin, (free, executed.seconds)) as pool, results.open("a") as out:
        for at, entry in enumerate(pool.imap_unordered(_try, jobs), 1):
            out.write(json.dumps(entry, ensure_ascii=False) + "\n")
            out.flush()
            print(f"{at:4} {entry['status']:9}{entry['seconds']:6.1f} s  {_told(entry)}", flush=True)
    return _summary(results, time.monotonic() - begun)


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser()
    parser.add_argument("store", type=Path)
    parser.add_argument("--seed", default="11")
    parser.add_argument("--each", type=int, default=30)
    parser.add_argument("--floors", default=",".join(TESTS))
    parser.add_argument("--processes", type=int, choices=(1, 2), default=2)
    parser.add_argument("--again", action="store_true")
    return parser.parse_args()


def _lay(tree: Path) -> None:
    """The committed state, its byte code bound to the text of each file, so that no clock can hide a change."""
    shutil.rmtree(tree, ignore_errors=True)
    tree.mkdir(parents=True)
    packed = subprocess.run(["git", "archive", "HEAD"], cwd=ROOT, capture_output=True, check=True).stdout
    subprocess.run(["tar", "-x"], cwd=tree, input=packed, check=True)
    mode = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "specgen", quiet=2, invalidation_mode=mode)


def _drawn(asked: argparse.Namespace, tree: Path, results: Path) -> list[tuple[str, Place]]:
    tried = {_key(entry) for entry in _latest(results)}
    drawn = [
        (floor, place)
        for floor in asked.floors.split(",")
        for place in draw(tree, places(tree, floor), asked.each, f"{asked.seed} {floor}")
        if place.key not in tried
    ]
    # one of each floor in turn, so that a run that is ended has told something of all
    rank: Counter[str] = Counter()
    order = []
    for floor, place in drawn:
        rank[floor] += 1
        order.append((rank[floor], floor, place))
    return [(floor, place) for _, floor, place in sorted(order, key=lambda entry: entry[:2])]


def _again(results: Path, tree: Path) -> list[tuple[str, Place]]:
    open_ones = [entry for entry in _latest(results) if entry["status"] in {"survived", "unclear"}]
    floors = sorted({entry["floor"] for entry in open_ones})
    now = {place.key: (floor, place) for floor in floors for place in places(tree, floor)}
    gone = [entry for entry in open_ones if _key(entry) not in now]
    for entry in gone:
        print(f"no longer there: {_told(entry)}")
    return [now[_key(entry)] for entry in open_ones if _key(entry) in now]


def _test_names(tree: Path, floors: list[str]) -> set[str]:
    folders = sorted({f"tests/{folder}" for floor in floors for folder in TESTS[floor]})
    told = subprocess.run(
        [sys.executable, "-m", "pytest", "--collect-only", "-p", "no:cacheprovider", *folders],
        cwd=tree, env={**os.environ, "PYTHONPATH": str(tree)}, capture_output=True, text=True, check=True,
    )  # fmt: skip
    return {line for line in told.stdout.split("\n") if "::" in line}


def _begin(free: Any, seconds: dict[str, float]) -> None:
    global _tree, _seconds, _killers
    _tree, _seconds, _killers = free.get(), seconds, {}
    warm_up()


def _try(job: tuple[str, Place, list[str]]) -> dict[str, Any]:
    floor, place, tests = job
    # what caught a change of this file before may well catch this one
    first = [test for test in _killers.get(place.file, []) if test in tests]
    tests = [*first, *(test for test in tests if test not in first)]
    file = _tree / place.file
    sound = file.read_bytes()
    outcome = Outcome("survived", "", 0, 0.0, "no test executes it")
    anyway = []
    try:
        while tests:
            file.write_bytes(place.changed(sound))
            outcome = run(_tree, tests, _seconds)
            file.write_bytes(sound)
            if outcome.status not in {"caught", "endless"} or not outcome.test.startswith("tests/"):
                break
            # a test that fails on the sound program as well has caught nothing
            again = run(_tree, [outcome.test], _seconds)
            if again.status == "survived":
                _killers.setdefault(place.file, []).append(outcome.test)
                break
            anyway.append(f"{outcome.test} fails anyway: {again.message}")
            tests = tests[tests.index(outcome.test) + 1 :]
            outcome = Outcome("survived", "", outcome.tests_run, outcome.seconds)
    finally:
        file.write_bytes(sound)
    names = ("file", "scope", "line", "kind", "before", "after", "nth")
    return {
        "floor": floor,
        **{name: getattr(place, name) for name in names},
        **vars(outcome),
        "chosen": len(tests),
        "anyway": anyway,
    }


def _key(entry: dict[str, Any]) -> Key:
    return tuple(entry[name] for name in ("file", "scope", "kind", "before", "after", "nth"))


def _latest(results: Path) -> list[dict[str, Any]]:
    entries = [json.loads(line) for line in results.read_text().splitlines()] if results.exists() else []
    return list({_key(entry): entry for entry in entries}.values())


def _told(entry: dict[str, Any]) -> str:
    what = f"{entry['before'][:70]}  ->  {entry['after'][:70]}"
    by = f"  [{entry['test'][-60:]}]" if entry["test"] else ""
    return f"{entry['file']}:{entry['line']} {entry['kind']}: {what}{by}"


def _summary(results: Path, seconds: float) -> int:
    entries = [json.loads(line) for line in results.read_text().splitlines()]
    first = {_key(entry): entry["status"] for entry in reversed(entries)}
    reasons = {_row_key(row): row["reason"] for row in csv.DictReader(REASONS.open())} if REASONS.exists() else {}
    counts: Counter[tuple[str, str]] = Counter()
    for entry in _latest(results):
        caught = entry["status"] in {"caught", "endless"}
        reason = "" if caught else reasons.get(_key(entry), "no reason yet")
        what = "caught" if caught else "equal" if reason.startswith("equal") else "survived"
        counts[entry["floor"], what] += 1
        counts[entry["floor"], "at first"] += first[_key(entry)] in {"caught", "endless"}
        counts[entry["floor"], "at import"] += entry["test"].startswith("(import)")
        if not caught:
            print(f"{what}: {_told(entry)}\n    {reason}")
    print(f"\n{'floor':12}{'tried':>7}{'at first':>10}{'caught':>8}{'equal':>7}{'survived':>10}{'at import':>11}")
    floors = [floor for floor in TESTS if any(counts[floor, what] for what in ("caught", "equal", "survived"))]
    for floor in [*floors, ""]:
        row = {
            w: sum(counts[f, w] for f in floors if floor in {f, ""})
            for w in ("at first", "caught", "equal", "survived", "at import")
        }
        tried = row["caught"] + row["equal"] + row["survived"]
        print(
            f"{floor or 'all':12}{tried:7}{row['at first']:10}{row['caught']:8}{row['equal']:7}{row['survived']:10}{row['at import']:11}"
        )
    rate = row["caught"] / max(1, tried - row["equal"])
    print(f"\n{rate:.1%} of what changes behaviour is caught; this run {seconds / 60:.1f} min on {platform.machine()},")
    print(f"{os.cpu_count()} cores, {platform.system()} {platform.release()}, Python {platform.python_version()}")
    return 0 if rate >= WANTED else 1


def _row_key(row: dict[str, str]) -> Key:
    return row["file"], row["scope"], row["kind"], row["before"], row["after"], int(row["nth"] or 0)


if __name__ == "__main__":
    sys.exit(main())

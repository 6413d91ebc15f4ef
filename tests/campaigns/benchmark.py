"""Figures of speed and memory, printed with the machine they were taken on. Nothing here fails on time.

    .venv/bin/python tests/campaigns/benchmark.py

Start-up, the demo as a whole process, checks of generated folders of 100, 300 and 1,000 jobs (10 items, 4 layers, 40 steps each,
300 products) to show how the work grows, and one method statement printed cold and warm. The figures go into DEVELOPERS.md.
"""

from __future__ import annotations

import platform
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from datetime import date
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "specs_demo/tramway"
PROGRAM = [sys.executable, "-m", "specgen"]
ON = "2026-11-25"
PRODUCTS = 300

PRODUCT = (ROOT / "tests/good/products.yaml").read_text("utf-8")
PROJECT = (ROOT / "tests/good/project.yaml").read_text("utf-8")


def main() -> None:
    print(f"machine: {platform.machine()}, {_cores()} cores, {platform.system()} {platform.release()}")
    print(f"python: {platform.python_version()}")
    _whole("specgen --help", ["--help"])
    _whole("specgen check specs_demo/tramway", ["check", str(DEMO), "--on", ON])
    with tempfile.TemporaryDirectory() as place:
        for jobs in (100, 300, 1000):
            folder = Path(place) / str(jobs)
            generate(folder, jobs)
            _whole(f"specgen check, {jobs} jobs and {PRODUCTS} products", ["check", str(folder), "--on", ON], runs=1)
        _on_a_range(Path(place), 1000)
        _compare(Path(place), 1000)
        _render(Path(place))


def _on_a_range(place: Path, jobs: int) -> None:
    """The same jobs, their products in a range beside them, taken in."""
    folder, shared = place / f"{jobs}_parted" / "yard", place / f"{jobs}_parted" / "range"
    shutil.copytree(place / str(jobs), folder)
    shared.mkdir()
    (folder / "products.yaml").rename(shared / "products.yaml")
    shutil.copy(folder / "project.yaml", shared)
    project = (folder / "project.yaml").read_text("utf-8")
    (folder / "project.yaml").write_text(project.replace("project:\n", "project:\n  range: ../range\n", 1), "utf-8")
    subprocess.run([*PROGRAM, "range", str(folder), "--accept"], check=True, stdout=subprocess.DEVNULL, cwd=ROOT)
    name = f"specgen check, {jobs} jobs on a range of {PRODUCTS} products"
    _whole(name, ["check", str(folder), "--on", ON], runs=1)


def _compare(place: Path, jobs: int) -> None:
    """Two folders that differ in every layer of every system."""
    old, new = place / str(jobs), place / f"{jobs}_new"
    shutil.copytree(old, new)
    for file in new.glob("jobs_*.yaml"):
        file.write_text(file.read_text("utf-8").replace("film: {min: 40 um", "film: {min: 42 um"), "utf-8")
    _whole(f"specgen compare, two folders of {jobs} jobs", ["compare", str(old), str(new), "--on", ON], runs=1)


def generate(folder: Path, jobs: int) -> None:
    """A clean folder of `jobs` jobs: ten items, a system of four layers and a preparation of forty steps each."""
    folder.mkdir(parents=True)
    (folder / "project.yaml").write_text(PROJECT, "utf-8")
    one = _primer()
    (folder / "products.yaml").write_text(
        "products:\n" + "".join(one.replace("PRODUCT", f"p{n}") for n in range(PRODUCTS)), "utf-8"
    )
    for start in range(0, jobs, 50):
        text = [_preparations(start, jobs), _systems(start, jobs), _jobs(start, jobs)]
        (folder / f"jobs_{start:05}.yaml").write_text("".join(text), "utf-8")


def _primer() -> str:
    """The first product of the good specification, fit for every layer of a generated system."""
    body = PRODUCT.split("  - id: base\n")[0].removeprefix("products:\n")
    return body.replace("id: primer\n", "id: PRODUCT\n", 1).replace(
        "roles: [primer]", "roles: [primer, surfacer, topcoat]"
    )


def _preparations(start: int, jobs: int) -> str:
    lines = ["preparations:\n"]
    for n in range(start, min(start + 50, jobs)):
        lines.append(f"  - id: prep{n}\n    title: Preparation {n}\n    coat_within: 4 h\n    steps:\n")
        lines.append("      - {id: s0, do: degrease, text: Degrease., acceptance: A white cloth stays white.}\n")
        lines.extend(
            f"      - {{id: s{k}, do: sand, text: Step {k} of it., abrasive: P180, grade: P Ma, acceptance: Even and matt.}}\n"
            for k in range(1, 39)
        )
        lines.append("      - {id: s39, do: dust-off, text: Blow off and wipe with a tack cloth.}\n")
    return "".join(lines)


def _systems(start: int, jobs: int) -> str:
    lines = ["systems:\n"]
    for n in range(start, min(start + 50, jobs)):
        lines.append(f"  - id: sys{n}\n    title: System {n}\n    layers:\n")
        for k, role in enumerate(("primer", "primer", "surfacer", "topcoat")):
            hold = "" if k == 3 else ", overcoat_interval: 30 min..24 h"
            film = "film: {min: 40 um, nominal: 60 um, max: 80 um}"
            lines.append(
                f"      - {{id: l{k}, role: {role}, product: p{(n * 4 + k) % PRODUCTS}, {film}, passes: 4{hold}}}\n"
            )
    return "".join(lines)


def _jobs(start: int, jobs: int) -> str:
    lines = ["jobs:\n"]
    for n in range(start, min(start + 50, jobs)):
        lines.append(
            f"  - id: job{n}\n    document: {{number: MS-{n}, title: Job {n}, owner: Desk}}\n    scope: Repainting.\n"
            "    substrate: {material: steel_cold_rolled, thickness: 2 mm}\n"
            f"    preparation: prep{n}\n    system: sys{n}\n"
            "    climate: {air: 15..25 degC, surface: 15..30 degC, humidity: 40..75 %, dew_point_margin: min 3 K}\n"
            "    consumption: {transfer_efficiency: 60 %}\n    items:\n"
        )
        shape = "shapes: [{id: b, kind: plate, length: 900 mm, width: 400 mm, sides: 2}]"
        lines.extend(f"      - {{id: i{k}, name: Panel {k}, count: 2, {shape}}}\n" for k in range(10))
        lines.append("    inspection:\n")
        lines.append(
            "      - {id: prepared, check: Surface prepared, at: after-preparation, criterion: {text: Matt all over.}, hold_point: yes}\n"
        )
        film = "criterion: {rule: own, min: 40 um, max: 80 um, text: No spot outside.}, gauge: {principle: magnetic}"
        lines.extend(f"      - {{id: f{k}, check: Dry film, after: l{k}, {film}}}\n" for k in range(4))
    return "".join(lines)


def _whole(name: str, arguments: list[str], runs: int = 5) -> None:
    """Median wall time of a whole process, and the largest memory it took."""
    times = []
    for _ in range(runs):
        begun = time.perf_counter()
        done = subprocess.run([*PROGRAM, *arguments], cwd=ROOT, capture_output=True, text=True, check=False)
        times.append(time.perf_counter() - begun)
    memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    last = done.stdout.strip().splitlines()[-1] if done.stdout.strip() else done.stderr.strip()
    print(
        f"{name}: {statistics.median(times):.2f} s, at most {memory:.0f} MB so far; exit {done.returncode}: {last[:80]}"
    )


def _render(place: Path) -> None:
    out = place / "out"
    call = ["render", str(DEMO), "--out", str(out), "--document", "method-statement", "--format", "pdf", "--on", ON]
    _whole("specgen render, method statements of the demo, cold", call, runs=3)
    sys.path.insert(0, str(ROOT))
    from specgen.checking import check
    from specgen.printing.documents import print_documents

    checked = check(DEMO, date.fromisoformat(ON))
    job = next(iter(checked.loaded.spec.jobs)) if checked.loaded.spec is not None else ""
    times = []
    for _ in range(4):
        begun = time.perf_counter()
        print_documents(checked, documents=["method-statement"], formats=["pdf"], jobs=[job])
        times.append(time.perf_counter() - begun)
    print(f"one method statement, first {times[0]:.2f} s, then {statistics.median(times[1:]):.2f} s warm")
    shutil.rmtree(out, ignore_errors=True)


def _cores() -> int:
    import os

    return os.cpu_count() or 1


if __name__ == "__main__":
    main()

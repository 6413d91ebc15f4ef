"""Campaign: PDFs, zips, git trees, folders, registers and receipts made to cost memory or to break a reader; what each process takes.

    python tests/campaigns/hostile_files.py [WORD]

Each case is made in a folder of its own and handed to commands that read it, each in a process; with WORD only those whose name holds
it. Prints a line a process: megabytes at its peak (its own or that of a copy it made), seconds, exit code, and what it said. Ends
with 1 where one took more than 500 MB or 120 s, showed a traceback, an "internal fault", or said nothing.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.campaigns.hostile import folders, git_trees, pdfs, registers, zips

ROOT = Path(__file__).resolve().parents[2]
MOST_MB, MOST_SECONDS = 500, 120
_ASIDE = """
import resource, sys
from specgen.commands import main
code = main(sys.argv[1:])
own, copies = (resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
print(f"\\nPEAK {max(own, copies) // 1024} {code}")
"""

Case = Callable[[Path], list[list[str]]]
"""Makes its files in the folder and returns the commands to run there."""


def cases() -> Iterator[tuple[str, Case]]:
    for kind in (pdfs, zips, git_trees, folders, registers):
        for name, case in kind.CASES.items():
            yield f"{kind.__name__.rpartition('.')[2]}: {name}", case


def main() -> int:
    word = sys.argv[1] if len(sys.argv) > 1 else ""
    bad = number = most = 0
    for name, case in cases():
        if word not in name:
            continue
        with tempfile.TemporaryDirectory(prefix="hostile-") as place:
            for command in case(Path(place)):
                number += 1
                fault, peak = _run(name, command, Path(place))
                bad, most = bad + fault, max(most, peak)
    print(f"{number} processes, at most {most} MB, {bad} faults")
    return 1 if bad else 0


def _run(name: str, command: list[str], place: Path) -> tuple[bool, int]:
    begun = time.monotonic()
    try:
        done = subprocess.run(
            [sys.executable, "-c", _ASIDE, *command],
            cwd=place, capture_output=True, text=True, timeout=MOST_SECONDS, errors="replace", check=False,
            env={**os.environ, "PYTHONPATH": str(ROOT)}, preexec_fn=_bounded,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        print(f"FAULT {name} {command[:2]}: more than {MOST_SECONDS} s")
        return True, 0
    took = time.monotonic() - begun
    said, _, measured = done.stdout.rpartition("\nPEAK ")
    lines = [line for line in (done.stderr or said).splitlines() if line.strip()]
    peak, code = (int(one) for one in measured.split()) if measured else (9999, done.returncode)
    fault = peak > MOST_MB or not lines or any(word in done.stderr + said for word in ("Traceback", "internal fault"))
    told = lines[0][:150] if lines else ""
    print(
        f"{'FAULT ' if fault else ''}{name} {' '.join(command[:2])[:40]}: {peak} MB, {took:.1f} s, code {code}: {told}",
        flush=True,
    )
    return fault, peak


def _bounded() -> None:
    # the machine that runs the campaign is not to be brought down by what it finds
    resource.setrlimit(resource.RLIMIT_AS, (6 * 1024**3,) * 2)


if __name__ == "__main__":
    sys.exit(main())

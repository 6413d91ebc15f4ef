"""Two hundred thousand readings assessed, as a process: seconds of CPU and memory. Ends with 1 where they take 5 s or 500 MB or more.

    .venv/bin/python tests/campaigns/assess_speed.py [ROWS]

The readings are invented: one spot in forty lies outside, so that reasons are found too.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
from pathlib import Path

ROWS = 200_000
MOST_SECONDS, MOST_MB = 5.0, 500
JOB, FOLDER = "tower-wagon-doors", Path(__file__).parents[2] / "specs_demo/tramway"


def readings(rows: int) -> str:
    lines = [
        "Film readings as the gauge wrote them",
        "point;item;part;spot;reading;value (µm);gauge;serial;checked_on;on;by",
    ]
    for number in range(rows):
        spot, reading = divmod(number, 3)
        value = 45 + spot * 7919 % 300 / 10 + reading - (20 if spot % 40 == 0 else 0)
        lines.append(
            f"primer-film;DOOR;{spot % 2 + 1};{spot};{reading + 1};{value:.1f}".replace(".", ",")
            + ";gauge;K-1;2026-11-16;2026-11-16 14:20;K. A."
        )
    return "\n".join(lines) + "\n"


def main(rows: int) -> int:
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "readings.csv"
        file.write_text(readings(rows), encoding="utf-8")
        run = subprocess.run(
            [sys.executable, "-m", "specgen", "assess", JOB, str(file), "--path", str(FOLDER), "--on", "2026-11-27"],
            capture_output=True,
            text=True,
            check=False,
        )
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    seconds, megabytes = used.ru_utime + used.ru_stime, used.ru_maxrss / 1024
    print(f"{rows:,} readings: {seconds:.2f} s of CPU, {megabytes:.0f} MB, exit code {run.returncode}")
    print("\n".join(run.stdout.splitlines()[:5]) or run.stderr)
    return int(run.returncode not in {0, 1} or seconds >= MOST_SECONDS or megabytes >= MOST_MB)


if __name__ == "__main__":
    raise SystemExit(main(int(sys.argv[1]) if len(sys.argv) > 1 else ROWS))

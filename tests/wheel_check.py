"""Build the wheel, compare what is in it with what git tracks, install it into an empty environment, and work with it elsewhere.

Run by `.ci/run` from a clean checkout; it needs the network for the dependencies. Ends with 1 and a line for each difference.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import venv
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def tracked() -> set[str]:
    """The files git tracks, under the names they have in the wheel."""
    listed = subprocess.run(
        ["git", "ls-files", "specgen", "templates"], cwd=ROOT, capture_output=True, text=True, check=True
    )
    names = listed.stdout.splitlines()
    return {f"specgen/_{name}" if name.startswith("templates/") else name for name in names}


def main() -> int:
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        subprocess.run([sys.executable, "-m", "build", "--wheel", "--outdir", str(place), str(ROOT)], check=True)
        wheel = next(place.glob("*.whl"))
        with zipfile.ZipFile(wheel) as archive:
            packed = {name for name in archive.namelist() if ".dist-info/" not in name}
        wanted = tracked()
        for name in sorted(wanted ^ packed):
            print(f"{'missing from' if name in wanted else 'stray in'} the wheel: {name}")
        if wanted != packed:
            return 1
        env = place / "env"
        venv.create(env, with_pip=True)
        subprocess.run([str(env / "bin/pip"), "install", "--quiet", str(wheel)], check=True)
        work = place / "elsewhere"
        shutil.copytree(ROOT / "specs_demo", work / "demo")
        program = str(env / "bin/specgen")
        subprocess.run([program, "check", "demo"], cwd=work, check=True)
        subprocess.run(
            [program, "render", "demo/tramway", "--job", "tower-wagon-doors", "--out", "out"], cwd=work, check=True
        )
        printed = sorted(path.suffix for path in (work / "out").iterdir())
        if not {".pdf", ".html"} <= set(printed):
            print(f"the installed wheel printed {printed}, not PDF and HTML")
            return 1
    print(f"wheel: {len(packed)} files as tracked, checks and prints the demo from an empty environment")
    return 0


if __name__ == "__main__":
    sys.exit(main())

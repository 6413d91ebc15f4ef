"""Judge PDF files by the profiles of the archival and of the accessibility standard, with a validator that is not ours.

    python tests/pdf_validator/judge.py --jars FOLDER FILE...

FOLDER is what `fetch.sh` has filled. Prints a line a file and profile, and for what fails its clause, place and reason; ends
with 0 when nothing fails, 1 when something does, 2 when it could not judge. Called by `tests/campaigns/lasting_documents.py`.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

DRIVER = Path(__file__).with_name("Judge.java")
PROFILES = ("3a", "ua1")
# A page of text alone gives some thousands; a profile that was not loaded gives none.
FEWEST_ASSERTIONS = 500


class CannotJudgeError(Exception):
    """The validator is not there, or did not do its work; the text says which."""


@dataclass(frozen=True)
class Failure:
    """One assertion of a profile that a file does not meet: the `clause` and `test` of the standard, and where."""

    clause: str
    test: str
    place: str
    reason: str


@dataclass(frozen=True)
class Verdict:
    """What one profile says of one file."""

    file: str
    profile: str
    assertions: int
    failures: tuple[Failure, ...]


def judge(files: Iterable[Path], jars: Path) -> tuple[Verdict, ...]:
    """One verdict for each file and profile, in their order. Raises CannotJudgeError."""
    names = [str(file) for file in files]
    if not (jars / "validator.jar").is_file():
        raise CannotJudgeError(f"There is no validator in {jars}. Run: {DRIVER.with_name('fetch.sh')} {jars}")
    classes = ":".join(str(jar) for jar in sorted(jars.glob("*.jar")))
    try:
        done = subprocess.run(
            ["java", "-cp", classes, str(DRIVER), *names], capture_output=True, text=True, check=False
        )
    except FileNotFoundError:
        raise CannotJudgeError(
            "There is no java. Install a JDK of 17 or newer (Debian: default-jdk-headless)."
        ) from None
    if done.returncode:
        raise CannotJudgeError(f"The validator ended with {done.returncode}: {done.stderr.strip()[:2000]}")
    return _verdicts([line.split("\t") for line in done.stdout.splitlines()], names)


def _verdicts(lines: Sequence[list[str]], names: Sequence[str]) -> tuple[Verdict, ...]:
    tested = {
        (file, profile): int(number) for _, file, profile, number in (one for one in lines if one[0] == "checked")
    }
    if list(tested) != [(name, profile) for name in names for profile in PROFILES]:
        raise CannotJudgeError(f"The validator judged {len(tested)} of {len(names) * len(PROFILES)}.")
    if poor := [at for at, number in tested.items() if number < FEWEST_ASSERTIONS]:
        raise CannotJudgeError(f"The validator tested next to nothing of {poor}.")
    return tuple(
        Verdict(*at, number, tuple(Failure(*one[3:]) for one in lines if one[0] == "failed" and tuple(one[1:3]) == at))
        for at, number in tested.items()
    )


def told(verdict: Verdict) -> str:
    """A verdict as text, a line for itself and one for each failure."""
    failed = f"{len(verdict.failures)} FAILED" if verdict.failures else "none failed"
    lines = [f"{Path(verdict.file).name}: {verdict.profile}: {verdict.assertions} assertions, {failed}"]
    lines += [f"    {one.clause}, test {one.test}, at {one.place}: {one.reason}" for one in verdict.failures]
    return "\n".join(lines)


def main() -> int:
    parser = argparse.ArgumentParser(description="Judge PDF files by two standards.")
    parser.add_argument("--jars", type=Path, required=True, help="folder that fetch.sh has filled")
    parser.add_argument("files", type=Path, nargs="+", metavar="FILE")
    asked = parser.parse_args()
    try:
        verdicts = judge(asked.files, asked.jars)
    except CannotJudgeError as why:
        print(why, file=sys.stderr)
        return 2
    print(*map(told, verdicts), sep="\n")
    return 1 if any(verdict.failures for verdict in verdicts) else 0


if __name__ == "__main__":
    sys.exit(main())
